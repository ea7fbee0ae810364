#pragma once

#include <array>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/edtf_date.h"
#include "base/enum_words.h"
#include "base/result.h"
#include "knowledge/source.h"

namespace winchbook::knowledge {

/// How a fact came to us. That is told apart from how hard an end is: a law that nobody has looked
/// up binds all the same, and is listed as recalled.
enum class Known {
  read,      ///< seen in the source that is named
  recalled,  ///< from memory; nobody has looked it up
};

[[nodiscard]] constexpr auto enum_words(Known /*list*/) {
  return std::to_array<base::EnumWord<Known>>({
      {Known::read, "read"},
      {Known::recalled, "recalled"},
  });
}

/// One end of what a mark says of the piece that bears it. The day is within: "not before 1938" is
/// 1 January 1938, "not after 1956" is 31 December 1956.
struct BoundEnd {
  base::Day day;
  /// Law, physics, a printed date of issue; else custom, stock used up, lists of a shop.
  bool hard = false;
  Known known = Known::recalled;

  friend bool operator==(const BoundEnd&, const BoundEnd&) = default;
};

/// [not before, not after]; an end that is not there is not known, or there is none.
struct MarkBound {
  std::optional<BoundEnd> not_before;
  std::optional<BoundEnd> not_after;
  std::string basis;   ///< why, one or more sentences
  std::string source;  ///< where it was read, or "recalled"

  friend bool operator==(const MarkBound&, const MarkBound&) = default;
};

/// What a row of `shared/marks/marks.xml` is about.
enum class MarkSort { mark, address, country, material, finish, fastener };

[[nodiscard]] constexpr auto enum_words(MarkSort /*list*/) {
  return std::to_array<base::EnumWord<MarkSort>>({
      {MarkSort::mark, "mark"},
      {MarkSort::address, "address"},
      {MarkSort::country, "country"},
      {MarkSort::material, "material"},
      {MarkSort::finish, "finish"},
      {MarkSort::fastener, "fastener"},
  });
}

/// A mark, a form of address, a material …, and what it says of the year.
struct Mark {
  std::string word;  ///< "occupied-japan": its stable name
  MarkSort sort = MarkSort::mark;
  std::string name;                ///< "“Made in Occupied Japan”"
  std::vector<std::string> forms;  ///< phrases by which it is known, folded (see stamp_text.h)
  std::string where;               ///< the countries it belongs to; may be empty
  MarkBound bound;
};

/// The first number that an office gave out in a year.
struct FirstNumber {
  std::int64_t year = 0;
  std::int64_t first = 0;
  Known known = Known::recalled;
  std::string source;
  /// Another first number that some copies print for this year; see shared/marks/README.md.
  std::optional<std::int64_t> also;
  /// False: nothing decides between `first` and `also`; numbers between them belong to either year.
  bool settled = true;
  std::string note;
};

/// A series of numbers and when they were given out.
struct NumberSeries {
  std::string word;                ///< "us-patent", "us-design", "gb-design"
  std::string name;                ///< "US patent"
  std::vector<std::string> forms;  ///< phrases that stand before the number, folded
  int term = 0;                    ///< years of the right: the soft end
  std::string basis;
  std::string source;
  std::vector<FirstNumber> rows;  ///< years and numbers rising
};

/// The years in which a number can have been given out.
struct NumberYears {
  std::int64_t first_year = 0;
  std::optional<std::int64_t> last_year;   ///< empty: the table ends, it may be later
  Known known = Known::recalled;           ///< recalled when either row that encloses it is
  std::int64_t first_number = 0;           ///< of the row
  std::optional<std::int64_t> next_first;  ///< of the next row
  std::string source;
  std::string doubt;  ///< other copies' figures, when they would give another year
};

/// Error when the number is below the first or beyond the table: the last year is open, so a number
/// may lie beyond its first by twice as many as the year before gave out, and is then "that year or
/// later"; beyond that nothing is said.
[[nodiscard]] base::Result<NumberYears> years_of(const NumberSeries& series, std::int64_t number);

/// On which day of the week an office issues.
struct IssueDay {
  base::Day since;    ///< the first day of the rule
  int weekday = 2;    ///< 1 = Monday … 7 = Sunday
  base::Day opened;   ///< no date of issue lies before this
  std::string basis;  ///< with the exceptions that are known
  std::string source;
};

/// All that is known of marks: `shared/marks/`.
struct Marks {
  std::vector<Mark> marks;
  std::vector<NumberSeries> series;
  IssueDay us_issue;
};

/// The row of that word, or null.
[[nodiscard]] const Mark* find_mark(const Marks& marks, std::string_view word);
/// The series of that word, or null.
[[nodiscard]] const NumberSeries* find_series(const Marks& marks, std::string_view word);
/// The row of a sort whose longest form stands in `text` ("acetal, dark grey" → acetal), or null.
[[nodiscard]] const Mark* best_mark(const Marks& marks, MarkSort sort, std::string_view text);

/// Reads `shared/marks/marks.xml` (validated by `schemas/knowledge-1.xsd`) and its tables of
/// numbers. Error when a table does not rise, or an end lies before its beginning.
[[nodiscard]] base::Result<Marks> load_marks(const Source& source);

}  // namespace winchbook::knowledge
