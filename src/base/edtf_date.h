#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace winchbook::base {

/// A day of the proleptic Gregorian calendar; year 0 is 1 BC.
struct Day {
  std::int64_t year = 0;
  int month = 1;
  int day = 1;

  friend auto operator<=>(const Day&, const Day&) = default;
};

/// True for a day that the calendar has.
[[nodiscard]] bool is_real(Day day);
/// Days since 1 January 1970 (negative before).
[[nodiscard]] std::int64_t day_number(Day day);
/// So many days later, or earlier when there are fewer than none.
[[nodiscard]] Day days_on(Day day, std::int64_t days);
/// 1 = Monday … 7 = Sunday (ISO 8601).
[[nodiscard]] int weekday(Day day);
/// 28 to 31.
[[nodiscard]] int days_in_month(std::int64_t year, int month);
/// "2026-03-03".
[[nodiscard]] std::string iso_text(Day day);
/// Reads "2026-03-03" and nothing else.
[[nodiscard]] Result<Day> parse_day(std::string_view text);

/// One date of an EDTF expression: a year, a month, a season or a day, with digits not known.
struct EdtfPoint {
  enum class Precision { year, season, month, day };

  /// The first and last day it can mean; "198X" runs from 1980-01-01 to 1989-12-31.
  Day earliest;
  Day latest;
  Precision precision = Precision::year;
  /// Season as EDTF writes it: 21 spring, 22 summer, 23 autumn, 24 winter; else 0.
  int season = 0;
  /// Digits given as X: "198X" has one; 0 for a date that is fully told.
  int unspecified_digits = 0;
  bool uncertain = false;    ///< "?" or "%"
  bool approximate = false;  ///< "~" or "%"

  friend bool operator==(const EdtfPoint&, const EdtfPoint&) = default;
};

/// The end of an interval or of a set's range.
struct EdtfEnd {
  enum class Kind {
    told,     ///< there is a date
    unknown,  ///< there is one, but nobody knows it: "1948/"
    open,     ///< there is none (yet): "1948/.."
  };
  Kind kind = Kind::told;
  std::optional<EdtfPoint> point;

  friend bool operator==(const EdtfEnd&, const EdtfEnd&) = default;
};

/// One member of a set: a single date, or a range "1667..1672", "..1672", "1672..".
struct EdtfMember {
  EdtfEnd from;
  EdtfEnd to;

  friend bool operator==(const EdtfMember&, const EdtfMember&) = default;
};

/// A date as ISO 8601-2:2019 (EDTF) writes it: levels 0 and 1, and the sets of level 2.
/// The text is kept as it was written. A season is taken as three calendar months of the northern
/// year (spring March to May, winter December to February of the next year).
class EdtfDate {
 public:
  enum class Form {
    point,     ///< "1962-08", "1962~", "196X"
    interval,  ///< "1948/1979", "1948/", "../1979"
    one_of,    ///< "[1938,1940]": one of these
    all_of,    ///< "{1938,1940}": all of these
  };

  /// Error with what was found and what was expected: a day the calendar does not have, an interval
  /// that ends before it begins, a character EDTF does not know.
  [[nodiscard]] static Result<EdtfDate> parse(std::string_view text);

  [[nodiscard]] const std::string& text() const { return text_; }
  [[nodiscard]] Form form() const { return form_; }
  /// One member for a point or an interval, one or more for a set.
  [[nodiscard]] const std::vector<EdtfMember>& members() const { return members_; }
  /// The first day it can mean; empty when that end is unknown or open.
  [[nodiscard]] std::optional<Day> earliest() const;
  /// The last day it can mean; empty when that end is unknown or open.
  [[nodiscard]] std::optional<Day> latest() const;
  /// Any part of it carries "?" or "%".
  [[nodiscard]] bool uncertain() const;
  /// Any part of it carries "~" or "%".
  [[nodiscard]] bool approximate() const;

  friend bool operator==(const EdtfDate&, const EdtfDate&) = default;

 private:
  std::string text_;
  Form form_ = Form::point;
  std::vector<EdtfMember> members_;
};

/// True when every day `a` can mean lies before every day `b` can mean. Ends not known prove
/// nothing.
[[nodiscard]] bool surely_before(const EdtfDate& a, const EdtfDate& b);

}  // namespace winchbook::base
