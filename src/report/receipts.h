#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "document/document.h"
#include "report/telling.h"

/// What the two receipts share: each is signed by both, and each is written twice, for the owner
/// and for the bench, alike but for whose copy it is. Each counts its own pages: "1 of 2" on one
/// would ask for a page that is not its holder's.
namespace winchbook::report {

enum class Copy { owner, bench };

/// A chapter that is a copy of its own, under the reel's name: "Intake receipt · owner's copy".
[[nodiscard]] document::Chapter receipt_chapter(const Telling& telling, std::string_view id,
                                                Copy copy);

/// The bench's own number of the job, or the code that stands for it.
[[nodiscard]] std::string job_number(const Telling& telling);

/// Whether it was known on the day of issue: a receipt does not tell what came after it, when it is
/// printed again from a record that has grown.
[[nodiscard]] bool known_by_then(const Telling& telling, const std::optional<base::EdtfDate>& date);

/// Facts with labels of one width; a fact without words is left out.
class ReceiptFacts {
 public:
  explicit ReceiptFacts(const Telling& telling) : telling_(telling) { facts_.label_width = 60; }

  void add(const char* key, document::Text words);
  void add(const char* key, std::string words);
  /// The same; where there are no words, room to write them with a pen.
  void add_or_room(const char* key, document::Text words);
  void add_or_room(const char* key, std::string words);
  /// Each on a line of its own. Where there are none, what somebody answered (`none`, a message
  /// that needs that answer; null when nobody can); else room for the pen.
  void add_lines(const char* key, const std::vector<document::Text>& lines,
                 const char* none = nullptr);
  [[nodiscard]] document::Facts& facts() { return facts_; }

 private:
  const Telling& telling_;
  document::Facts facts_;
};

/// "A multiplying reel by Harroway Reel Works of Port Ellery. Skerry No. 40, serial H 4417."
[[nodiscard]] std::string reel_and_model(const Telling& telling);
/// "Drag washers, three".
[[nodiscard]] std::string name_and_count(const Telling& telling, const record::Piece& piece);
/// The same for so many of them.
[[nodiscard]] std::string name_and_count(const Telling& telling, const record::Piece& piece,
                                         int count);
/// "£260.00 to £340.00"; one sum where both are alike or one is not there.
[[nodiscard]] std::string cost_range(const Telling& telling, const std::optional<base::Money>& low,
                                     const std::optional<base::Money>& high);

/// The margin: the reel as it was photographed at that end of the visit, the job's number, the
/// bench, and who stands on the other side of the counter.
[[nodiscard]] std::vector<document::Beside> receipt_margin(
    const Telling& telling, record::Stage stage, const char* person_key,
    const std::optional<record::PersonId>& person);

/// Hazards that were seen, by name; the record tells what was seen of each.
[[nodiscard]] std::optional<document::Caution> hazards_by_name(const Telling& telling);

/// The bench's line and the other's; `above` is what they sign.
[[nodiscard]] document::Signatures receipt_signatures(
    const Telling& telling, const char* above, const char* person_key,
    const std::optional<record::PersonId>& person);

}  // namespace winchbook::report
