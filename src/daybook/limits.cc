#include "daybook/limits.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cctype>
#include <span>
#include <utility>

#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using base::Diagnostic;
using base::Diagnostics;
using Words = std::vector<std::string>;

/// One thing that benches do and owners forbid. A word stands for every word that begins with it;
/// "new hole" for two words that follow each other.
struct Act {
  std::span<const std::string_view> forbidden;  ///< as an agreement says it
  std::span<const std::string_view> done;       ///< as the work tells it
};

constexpr auto kHoleForbidden =
    std::to_array<std::string_view>({"hole", "bore", "boring", "drill", "tap", "ream"});
constexpr auto kHoleDone = std::to_array<std::string_view>(
    {"drill", "bored", "boring", "ream", "tapped", "new hole", "another hole", "enlarge"});
constexpr auto kPolishForbidden =
    std::to_array<std::string_view>({"polish", "buff", "shine", "look new"});
constexpr auto kPolishDone =
    std::to_array<std::string_view>({"polish", "buff", "burnish", "brighten", "shone"});
constexpr auto kPlateForbidden =
    std::to_array<std::string_view>({"plating", "replat", "nickel", "chrom"});
constexpr auto kPlateDone = std::to_array<std::string_view>(
    {"replat", "electroplat", "plated anew", "new nickel", "new plating", "new chrome", "chromed"});
constexpr auto kPaintForbidden = std::to_array<std::string_view>(
    {"dye", "paint", "lacquer", "varnish", "black", "stain", "refinish"});
constexpr auto kPaintDone = std::to_array<std::string_view>(
    {"dyed", "painted", "repaint", "lacquered", "varnished", "blackened", "refinish"});
constexpr auto kCutForbidden =
    std::to_array<std::string_view>({"cut", "fil", "grind", "machin", "turned"});
constexpr auto kCutDone = std::to_array<std::string_view>(
    {"filed", "sawn", "machined", "milled", "turned down", "ground", "cut off", "cut down"});
constexpr auto kBendForbidden = std::to_array<std::string_view>({"bend", "bent", "straight"});
constexpr auto kBendDone = std::to_array<std::string_view>({"bent", "straightened", "trued"});
constexpr auto kJoinForbidden =
    std::to_array<std::string_view>({"glu", "solder", "weld", "cement", "epox"});
constexpr auto kJoinDone =
    std::to_array<std::string_view>({"glued", "soldered", "welded", "cemented", "epox"});

constexpr auto kActs = std::to_array<Act>({
    {kHoleForbidden, kHoleDone},
    {kPolishForbidden, kPolishDone},
    {kPlateForbidden, kPlateDone},
    {kPaintForbidden, kPaintDone},
    {kCutForbidden, kCutDone},
    {kBendForbidden, kBendDone},
    {kJoinForbidden, kJoinDone},
});

constexpr auto kDenials = std::to_array<std::string_view>(
    {"no", "not", "never", "nothing", "without", "none", "neither", "nor"});

/// The words of a text, small letters.
Words words_of(std::string_view text) {
  Words words(1);
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x80 && std::isalnum(byte) != 0) {
      words.back() += static_cast<char>(std::tolower(byte));
    } else if (!words.back().empty()) {
      words.emplace_back();
    }
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

std::vector<Words> clauses_of(std::string_view text) {
  std::vector<Words> clauses;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find_first_of(".,;:!?"), text.size());
    clauses.push_back(words_of(text.substr(0, end)));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return clauses;
}

/// Where in the words one begins with the sought; their number when none does.
std::size_t place_of(const Words& words, std::string_view sought) {
  const std::size_t blank = sought.find(' ');
  const std::string_view first = sought.substr(0, blank);
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (blank == std::string_view::npos) {
      if (words[i].starts_with(first)) return i;
    } else if (words[i] == first && i + 1 < words.size() &&
               words[i + 1].starts_with(sought.substr(blank + 1))) {
      return i;
    }
  }
  return words.size();
}

bool says(const std::vector<Words>& clauses, std::span<const std::string_view> sought) {
  return std::any_of(clauses.begin(), clauses.end(), [&](const Words& words) {
    return std::any_of(sought.begin(), sought.end(),
                       [&](std::string_view one) { return place_of(words, one) < words.size(); });
  });
}

/// Whether the clauses tell that it was done, and not that it was left undone.
bool tells_done(const std::vector<Words>& clauses, std::span<const std::string_view> sought) {
  for (const Words& words : clauses) {
    const auto denial =
        std::find_first_of(words.begin(), words.end(), kDenials.begin(), kDenials.end());
    const auto denied = static_cast<std::size_t>(denial - words.begin());
    for (const std::string_view one : sought) {
      const std::size_t place = place_of(words, one);
      if (place < words.size() && place < denied) return true;
    }
  }
  return false;
}

bool alters_anything(const std::vector<Words>& told) {
  return std::any_of(kActs.begin(), kActs.end(),
                     [&](const Act& act) { return tells_done(told, act.done); });
}

bool breaks(const std::vector<Words>& told, const std::vector<Words>& limit) {
  return std::any_of(kActs.begin(), kActs.end(), [&](const Act& act) {
    return says(limit, act.forbidden) && tells_done(told, act.done);
  });
}

bool holds(const std::vector<record::PieceId>& pieces, const record::PieceId& piece) {
  return std::find(pieces.begin(), pieces.end(), piece) != pieces.end();
}

/// Whether a sentence names the piece: "this knob stays" the one that is called "Knob, turned from
/// the handrail".
bool names(const std::string& sentence, const record::Piece& piece) {
  const Words words = words_of(sentence);
  const Words name = words_of(piece.name.substr(0, piece.name.find(',')));
  return !name.empty() && std::all_of(name.begin(), name.end(), [&](const std::string& one) {
    return std::find(words.begin(), words.end(), one) != words.end();
  });
}

std::string by_agreement(const record::Agreement& agreement) {
  return fmt::format("by the agreement \"{}\" of {}", agreement.id.text, agreement.on.text());
}

Diagnostic broken(const Draft& draft, const record::Agreement& agreement, const std::string& limit,
                  bool reel_altered) {
  return base::error_at(
      draft.loaded().where(agreement.id.text),
      reel_altered ? fmt::format("the reel itself is altered, and it was agreed {}: {}",
                                 agreement.on.text(), limit)
                   : fmt::format("it was agreed {}: {}", agreement.on.text(), limit),
      "agree with the owner first (winchbook agree), then give it with --agreed", "limit");
}

/// The agreement that lets it be done, or why it does not; nothing when none is named.
base::Result<const record::Agreement*> leave_named(const Draft& draft, const std::string& agreed) {
  if (agreed.empty()) return static_cast<const record::Agreement*>(nullptr);
  return record::find_agreement(draft.record(), agreed);
}

}  // namespace

std::string limit_on(const record::Record& record, const record::Visit& visit,
                     const record::Piece& piece) {
  std::string limit;
  for (const record::LifeEvent& event : record.life) {
    if (holds(event.must_stay, piece.id)) limit = "by its life, \"" + event.title + "\"";
  }
  for (const record::Agreement& agreement : visit.agreements) {
    if (holds(agreement.pieces_may_leave, piece.id)) limit.clear();
    const bool in_words = std::any_of(
        agreement.must_stay.begin(), agreement.must_stay.end(),
        [&](const record::Words& one) { return names(record::plain_text(record, one), piece); });
    if (in_words || holds(agreement.pieces_must_stay, piece.id)) limit = by_agreement(agreement);
  }
  return limit;
}

Diagnostics limits_broken(const Draft& draft, const record::Visit& visit, const Deed& deed,
                          const std::string& agreed) {
  const auto leave = leave_named(draft, agreed);
  if (!leave) return leave.faults();
  const record::Agreement* given = *leave;
  const std::vector<Words> told = clauses_of(deed.told);
  Diagnostics found;
  const auto tell = [&](Diagnostic fault, const record::Agreement* sets) {
    if (given != nullptr && given != sets) fault.severity = base::Severity::warning;
    if (given != nullptr && given == sets) {
      fault.hint = "the agreement named with --agreed is the one that forbids it";
    }
    if (given != nullptr && given != sets) fault.hint = "allowed by " + given->id.text;
    found.push_back(std::move(fault));
  };
  for (const record::Agreement& agreement : visit.agreements) {
    for (const record::Words& words : agreement.must_stay) {
      const std::string limit = record::plain_text(draft.record(), words);
      if (deed.reel_altered || breaks(told, clauses_of(limit))) {
        tell(broken(draft, agreement, limit, deed.reel_altered), &agreement);
      }
    }
  }
  if (!alters_anything(told)) return found;
  for (const record::Piece* piece : deed.pieces) {
    const std::string limit = limit_on(draft.record(), visit, *piece);
    if (limit.empty()) continue;
    tell(base::error(fmt::format("{} must stay as it is, {}", piece->name, limit),
                     "agree with the owner first (winchbook agree), then give it with --agreed",
                     "limit"),
         nullptr);
  }
  return found;
}

}  // namespace winchbook::daybook
