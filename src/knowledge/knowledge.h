#pragma once

#include <array>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/decimal.h"
#include "base/enum_words.h"
#include "base/result.h"
#include "knowledge/care.h"
#include "knowledge/makers.h"
#include "knowledge/marks.h"
#include "knowledge/source.h"

namespace winchbook::knowledge {

/// What a place is lubricated with as the reel goes together (common practice).
enum class Lubricant { none, oil, grease };

[[nodiscard]] constexpr auto enum_words(Lubricant /*list*/) {
  return std::to_array<base::EnumWord<Lubricant>>({
      {Lubricant::none, "none"},
      {Lubricant::oil, "oil"},
      {Lubricant::grease, "grease"},
  });
}

/// A place as the trade finds it on reels of one kind.
struct PartsEntry {
  std::string word;        ///< "pinion": what Place::kind of a record says
  std::string name;        ///< "Pinion"
  std::string assembly;    ///< "handle side"
  int usual_quantity = 1;  ///< how many sit there on most reels
  base::Decimal weight;    ///< of the place with its usual quantity, in the index of originality
  base::Decimal exposed;   ///< share of the reel's outside that it shows; 0 inside
  bool consumable = false;
  bool captive_spring = false;
  std::string freed_by;  ///< the word of the place whose piece holds the spring down; or empty
  int loose_pieces = 1;  ///< in how many it comes out
  Lubricant lubricant = Lubricant::none;
};

/// The places of one kind of reel, in the order of a ledger.
struct PartsList {
  std::string reel_kind;       ///< "multiplier", as the record's kind is written
  base::Decimal other_weight;  ///< of one piece in a place whose word the list does not know
  std::vector<PartsEntry> places;
  std::string source;
};

/// A seat's part of an amount (a weight, an area), in units of 1/2,772,000, so that up to twelve
/// seats share it without a rest. What is finer than hundredths is cut off, and a million is the
/// most.
[[nodiscard]] std::int64_t units_per_seat(const base::Decimal& amount, int seats);

/// The entry of a word, or null.
[[nodiscard]] const PartsEntry* find(const PartsList& list, std::string_view word);

/// What a state counts in an index, with the reason printed beside it.
struct Credit {
  std::string state;  ///< as the record writes it: "worn-through", "running-change"
  int percent = 0;    ///< 0 to 100
  std::string reason;
};

/// The rules of the originality indices.
struct OriginalityRules {
  std::vector<Credit> surface;  ///< every surface state, and "cleaned-with-loss"
  std::vector<Credit> pattern;  ///< right, running-change, service-spare, wrong
  /// A reel is one reel while some one reel gave at least this share of its weight.
  int dominant_percent = 50;
  std::string dominant_reason;
  /// A reel that gave at least this share is one of those it is put together from.
  int another_percent = 20;
};

/// The credit of a state; every state is there (the loader sees to it).
[[nodiscard]] int credit(const std::vector<Credit>& credits, std::string_view state);

/// One word of an axis and the share from which it holds.
struct WordThreshold {
  std::string word;  ///< "over-half"
  int percent = 0;   ///< 0 for the last word
  /// False: the share must be over `percent`; true: `percent` itself is enough.
  bool inclusive = false;
  std::string rule;  ///< in words
};

/// An axis whose word follows from a share; the best word first.
struct ShareAxis {
  std::vector<WordThreshold> words;  ///< four
};

/// A word whose rule is no share.
struct RuledWord {
  std::string word;  ///< "weakened"
  std::string rule;  ///< in words
};

/// Whether a surface in this state still is the maker's finish.
enum class Counts { yes, no, not_determined };

[[nodiscard]] constexpr auto enum_words(Counts /*list*/) {
  return std::to_array<base::EnumWord<Counts>>({
      {Counts::yes, "yes"},
      {Counts::no, "no"},
      {Counts::not_determined, "not-determined"},
  });
}

struct FinishRule {
  std::string state;
  Counts counts = Counts::no;
  std::string reason;
};

/// The rules of the condition axes.
struct ConditionRules {
  ShareAxis surface;       ///< over-three-quarters, over-half, over-a-quarter, a-quarter-or-less
  ShareAxis completeness;  ///< whole, nearly, part, little
  std::vector<RuledWord> structure;  ///< sound, marked, weakened, unsafe
  std::vector<RuledWord> working;    ///< as-made, with-care, in-part, not
  std::vector<FinishRule> finish;
};

/// One step of the table of ISO 10289:1999 and ASTM B537: up to `percent` of the area, bound
/// included, the rating is `rating`.
struct CorrosionStep {
  base::Decimal percent;
  int rating = 0;
};

/// From 10 (nothing) down to 1; over the last bound the rating is 0.
struct CorrosionTable {
  std::vector<CorrosionStep> steps;
  std::string source;
};

/// The rating of an affected area, 10 (none) to 0.
[[nodiscard]] int rating(const CorrosionTable& table, const base::Percent& area);

/// Everything the bench knows that is not in a record.
struct Knowledge {
  std::vector<PartsList> parts_lists;
  OriginalityRules originality;
  ConditionRules condition;
  CorrosionTable corrosion;
  Marks marks;
  std::vector<Maker> makers;
  CareTable care;
};

/// The parts list of a reel kind ("fly-reel"), or null.
[[nodiscard]] const PartsList* parts_list(const Knowledge& knowledge, std::string_view reel_kind);

/// Reads `shared/parts/*.xml`, `shared/grading/grading.xml`, `shared/marks/`, `shared/makers/` and
/// `shared/care/`, each validated by `schemas/knowledge-1.xsd`. All faults of all
/// files, with their places. With a reel kind ("fly-reel") only that kind's parts list is read.
[[nodiscard]] base::Result<Knowledge> load(const Source& source, std::string_view reel_kind = {});

}  // namespace winchbook::knowledge
