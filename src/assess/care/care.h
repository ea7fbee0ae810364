#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/edtf_date.h"
#include "base/enum_words.h"
#include "knowledge/care.h"
#include "record/record.h"

/// How the pieces of a reel may be cleaned, and what to beware of in it.
namespace winchbook::assess::care {

/// What speaks for a verdict.
enum class Because {
  table,              ///< a row of the table: substance and method
  substance_unknown,  ///< of what it is, is not known
  method_unknown,     ///< the table does not know the method
  worn,               ///< the coating is worn through: what is gone does not come back
  captive,            ///< a spring or another piece is captive inside
  joined,             ///< another piece that it harms is still joined to it
  together,           ///< two methods, or two metals, that must not meet
  time,               ///< longer than does no harm
};

/// A verdict on one piece and one method.
struct Judged {
  record::PieceId piece = {};
  knowledge::CareVerdict verdict = knowledge::CareVerdict::not_known;
  Because because = Because::table;
  const knowledge::CareMethod* method = nullptr;    ///< null: not known
  const knowledge::Substance* substance = nullptr;  ///< what decided; null: not known
  const knowledge::CareRow* row = nullptr;          ///< null: no row of the table decided
  std::optional<record::PieceId> other = {};        ///< the piece captive in it, or joined to it
};

/// How a piece is to be cleaned.
struct Intent {
  const record::Piece& piece;
  std::string_view method;  ///< in the bench's words
  std::optional<base::Minutes> minutes;
  std::vector<record::PieceId> joined_to;  ///< not apart from it; itself while it is in the reel
  std::vector<record::PieceId> beside;     ///< cleaned together with it, in the same bath
};

/// What speaks against it or must be minded, the worst first; empty: it is usual. What the method
/// touches counts. An outside one: the outermost layer that closes over what is below, those above
/// it, and all below where it is worn through. One that goes through: every layer and the base.
/// Nickel-plated steel is neither nickel nor steel; a layer that nobody named is not known, never
/// usual.
[[nodiscard]] std::vector<Judged> judge(const knowledge::CareTable& table,
                                        const record::Record& record, const record::Visit& visit,
                                        const Intent& intent);

/// The worst of some verdicts; usual when there are none.
[[nodiscard]] knowledge::CareVerdict worst(const std::vector<Judged>& judged);

/// When a piece can have been made, as far as the record and its dating say; an end that is not
/// there is not known.
struct Made {
  std::optional<base::Day> first = {};
  std::optional<base::Day> last = {};
};

/// A hazard or a legal trap that follows from the record. What no eye can exclude is never "none":
/// it is excluded by a laboratory's report or as new material, or it may be. The bench's own flag
/// of the same matter comes first, as it is written.
struct Flag {
  const knowledge::FlagRule* rule = nullptr;
  knowledge::FlagTrigger::Says says = knowledge::FlagTrigger::Says::may_be;
  std::vector<record::PieceId> pieces = {};  ///< because of which it says so; empty: the whole reel
  std::vector<record::PieceId> may_be = {};  ///< pieces of which it may be, where it is of others
  std::vector<record::PieceId> excluded = {};  ///< pieces that would raise it but for their grounds
  Made made = {};                              ///< of those pieces together
  std::vector<std::size_t> written =
      {};  ///< the bench's own flags of it: positions in the findings
  /// Pieces that no flag of the bench's names; those of a flag that names none count as named.
  std::vector<record::PieceId> not_written = {};
  /// Made before the day that the law names: surely, surely not, or not decided.
  enum class Age { before, after, open };
  Age age = Age::open;
  bool needs_test = false;  ///< the bench's own flag does not say that nobody tested it
  bool in_care = false;     ///< the bench's advice on care speaks of it
  bool in_work = false;     ///< a caution beside a cleaning or a piece of work is

  /// Whether the bench warns of it anywhere in this stay.
  [[nodiscard]] bool said_by_bench() const { return !written.empty() || in_care || in_work; }
};

[[nodiscard]] constexpr auto enum_words(Flag::Age /*list*/) {
  return std::to_array<base::EnumWord<Flag::Age>>({
      {Flag::Age::before, "before"},
      {Flag::Age::after, "after"},
      {Flag::Age::open, "open"},
  });
}

/// Work, as it is told, that makes dust of pieces of which no eye can say what they hold.
struct Dust {
  const knowledge::FlagRule* rule = nullptr;
  std::vector<record::PieceId> pieces = {};  ///< empty: a lining that the text speaks of
  std::string act = {};                      ///< "sanding"
};

/// What stands beside a cleaning or a piece of work.
struct Cautions {
  std::vector<std::string> words = {};  ///< of the cautions of its methods and acts: "solvent"
  std::vector<Dust> dust = {};
};

/// What was found about one stay.
struct Finding {
  std::vector<Flag> flags;                     ///< in the order of the rules
  std::vector<std::vector<Judged>> cleanings;  ///< of each cleaning of the visit, the worst first
  /// What each cleaning, and each piece of work as it is told, asks for.
  std::vector<Cautions> cleaning_cautions;
  std::vector<Cautions> work_cautions;
  std::vector<Cautions> step_cautions;  ///< of each step of taking it apart
  std::vector<std::string> families;    ///< of what the fitted pieces are and bear, sorted
};

/// The flags of a reel as it stands at the visit, in the order of the rules. `reel` is when the
/// reel was made, for pieces of which nothing else is known.
[[nodiscard]] std::vector<Flag> flags(const record::Record& record, const record::Visit& visit,
                                      const knowledge::CareTable& table, const Made& reel);

/// What a text, told of some pieces, asks to be minded; it speaks of the pieces it names too.
[[nodiscard]] Cautions cautions(const record::Record& record, const knowledge::CareTable& table,
                                const std::vector<Flag>& flags,
                                const std::vector<record::PieceId>& pieces, std::string_view text);

/// What says that a piece holds nothing of a hazard that no eye can exclude: a laboratory's report
/// on it, or that it is new and who supplied it.
struct Grounds {
  const record::LaboratoryReport* report = nullptr;  ///< null: new material
};
[[nodiscard]] std::optional<Grounds> excluded_by(const record::Piece& piece,
                                                 const knowledge::FlagRule& rule);

/// The flags of a reel as it stands at the visit, and what the table says of its cleanings. `reel`
/// is when the reel was made, for pieces of which nothing else is known.
[[nodiscard]] Finding assess(const record::Record& record, const record::Visit& visit,
                             const knowledge::CareTable& table, const Made& reel);

}  // namespace winchbook::assess::care
