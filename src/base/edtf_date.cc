#include "base/edtf_date.h"

#include <date/date.h>
#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <utility>
#include <variant>

#include "base/words_of_text.h"

namespace winchbook::base {
namespace {

constexpr std::size_t kMostYearDigits = 12;
constexpr int kFirstSeason = 21;
constexpr int kWinter = 24;

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool all_digits(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), is_digit);
}

std::int64_t number(std::string_view digits) {
  std::int64_t value = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), value);
  return value;
}

Diagnostic refuse(std::string_view text, std::string_view why) {
  return error(fmt::format("\"{}\" is not a date: {}", text, why),
               "write EDTF: 1948, 1962-08, 2026-03-03, 1948~ (about), 196X, 1948/1979, "
               "1994/.. (still), 1994/ (end not known), [1938,1940] (one of these)",
               "date");
}

// The library keeps a year in 16 bits and EDTF has years of twelve digits: whole cycles of the
// calendar are counted apart, and the library reckons within one.
constexpr std::int64_t kCycleYears = 400;
constexpr std::int64_t kCycleDays =
    (date::sys_days{date::year{2400} / 1 / 1} - date::sys_days{date::year{2000} / 1 / 1}).count();

/// Rounds down, where C++ rounds towards zero.
std::int64_t whole_cycles(std::int64_t value, std::int64_t cycle) {
  return value / cycle - (value % cycle < 0 ? 1 : 0);
}

date::year_month month_in_cycle(std::int64_t year, int month) {
  const std::int64_t in_cycle = year - kCycleYears * whole_cycles(year, kCycleYears);
  return date::year{static_cast<int>(in_cycle)} / month;
}

/// A year as EDTF writes it: its first and last year, and how many digits are X.
struct Years {
  std::int64_t first = 0;
  std::int64_t last = 0;
  int unspecified = 0;
};

/// Reads and removes a year from the front of `rest`: "1948", "-0044", "196X", "Y-17000".
/// The sentence says why not.
std::variant<Years, std::string> take_year(std::string_view& rest) {
  const bool is_long = !rest.empty() && rest.front() == 'Y';
  if (is_long) rest.remove_prefix(1);
  const bool negative = !rest.empty() && rest.front() == '-';
  if (negative) rest.remove_prefix(1);
  std::size_t length = 0;
  while (length < rest.size() && (is_digit(rest[length]) || rest[length] == 'X'))
    ++length;
  const std::string_view digits = rest.substr(0, length);
  rest.remove_prefix(length);
  const std::size_t first_x = std::min(digits.find('X'), digits.size());
  if (is_long) {
    if (first_x != digits.size() || length < 5 || length > kMostYearDigits) {
      return std::string("a year after Y has 5 to 12 digits");
    }
  } else if (length != 4) {
    return std::string("a year has four digits");
  }
  if (digits.substr(first_x).find_first_not_of('X') != std::string_view::npos || first_x == 0) {
    return std::string("X stands only for the last one to three digits of a year");
  }
  std::string low(digits);
  std::string high(digits);
  std::replace(low.begin(), low.end(), 'X', '0');
  std::replace(high.begin(), high.end(), 'X', '9');
  Years years{number(low), number(high), static_cast<int>(digits.size() - first_x)};
  if (negative && years.last == 0) return std::string("there is no year -0000, write 0000");
  if (negative) years = {-years.last, -years.first, years.unspecified};
  return years;
}

EdtfPoint whole_years(const Years& years) {
  EdtfPoint point;
  point.earliest = {years.first, 1, 1};
  point.latest = {years.last, 12, 31};
  point.unspecified_digits = years.unspecified;
  return point;
}

/// Three months of the northern year. A winter is told by the year it begins or the year it ends
/// in, so it may mean either.
EdtfPoint season_of(std::int64_t year, int season) {
  EdtfPoint point;
  point.precision = EdtfPoint::Precision::season;
  point.season = season;
  if (season == kWinter) {
    point.earliest = {year, 1, 1};
    point.latest = {year + 1, 2, days_in_month(year + 1, 2)};
  } else {
    const int first_month = 3 + 3 * (season - kFirstSeason);
    point.earliest = {year, first_month, 1};
    point.latest = {year, first_month + 2, days_in_month(year, first_month + 2)};
  }
  return point;
}

bool is_two_digits(std::string_view text) {
  return text.size() == 2 && all_digits(text);
}

/// "T09:30:00", "T09:30:00Z", "T09:30:00+01:00".
bool is_time(std::string_view text) {
  const auto field = [&](std::size_t at, std::int64_t most) {
    return at + 2 <= text.size() && is_two_digits(text.substr(at, 2)) &&
           number(text.substr(at, 2)) <= most;
  };
  const bool clock = text.size() >= 9 && text[0] == 'T' && field(1, 23) && text[3] == ':' &&
                     field(4, 59) && text[6] == ':' && field(7, 59);
  if (!clock) return false;
  const std::string_view zone = text.substr(9);
  if (zone.empty() || zone == "Z") return true;
  if (zone.front() != '+' && zone.front() != '-') return false;
  if (!field(10, 23)) return false;
  return zone.size() == 3 || (zone.size() == 6 && zone[3] == ':' && field(13, 59));
}

using PointOrWhy = std::variant<EdtfPoint, std::string>;

/// What follows the year and month: nothing, "-DD", "-XX", a time after a day.
PointOrWhy read_day(const Years& years, int month, std::string_view rest) {
  EdtfPoint point;
  point.precision = EdtfPoint::Precision::month;
  point.earliest = {years.first, month, 1};
  point.latest = {years.first, month, days_in_month(years.first, month)};
  if (rest.empty()) return point;
  if (rest.front() != '-' || rest.size() < 3) return std::string("expected -DD after the month");
  const std::string_view day = rest.substr(1, 2);
  if (day == "XX" && rest.size() == 3) {
    point.precision = EdtfPoint::Precision::day;
    point.unspecified_digits = 2;
    return point;
  }
  if (!is_two_digits(day)) return std::string("a day has two digits");
  const Day exact{years.first, month, static_cast<int>(number(day))};
  if (!is_real(exact)) {
    return fmt::format("the month has {} days", days_in_month(years.first, month));
  }
  if (rest.size() > 3 && !is_time(rest.substr(3))) {
    return std::string("expected the end, or a time such as T09:30:00Z, after the day");
  }
  point.precision = EdtfPoint::Precision::day;
  point.earliest = point.latest = exact;
  return point;
}

/// One date without its qualification.
PointOrWhy read_plain_point(std::string_view text) {
  std::string_view rest = text;
  auto year = take_year(rest);
  if (auto* why = std::get_if<std::string>(&year)) return std::move(*why);
  const Years& years = std::get<Years>(year);
  if (rest.empty()) return whole_years(years);
  if (rest.front() != '-' || rest.size() < 3) return std::string("expected -MM after the year");
  const std::string_view month = rest.substr(1, 2);
  rest.remove_prefix(3);
  if (month == "XX" && (rest.empty() || rest == "-XX")) {
    EdtfPoint point = whole_years(years);
    point.precision = rest.empty() ? EdtfPoint::Precision::month : EdtfPoint::Precision::day;
    point.unspecified_digits += rest.empty() ? 2 : 4;
    return point;
  }
  if (years.unspecified > 0) return std::string("a month cannot follow a year with X in it");
  if (!is_two_digits(month)) return std::string("a month has two digits");
  const int told = static_cast<int>(number(month));
  if (told >= kFirstSeason && told <= kWinter && rest.empty()) {
    return season_of(years.first, told);
  }
  if (told < 1 || told > 12) {
    return fmt::format("it has month {}, expected 01 to 12 or a season 21 to 24", month);
  }
  return read_day(years, told, rest);
}

PointOrWhy read_point(std::string_view text) {
  if (text.empty()) return std::string("a date is missing");
  const char last = text.back();
  const bool qualified = last == '?' || last == '~' || last == '%';
  PointOrWhy read = read_plain_point(qualified ? text.substr(0, text.size() - 1) : text);
  if (auto* point = std::get_if<EdtfPoint>(&read)) {
    point->uncertain = last == '?' || last == '%';
    point->approximate = last == '~' || last == '%';
  }
  return read;
}

using MemberOrWhy = std::variant<EdtfMember, std::string>;

/// An end of a span: a date, "..", or (where allowed) nothing.
std::variant<EdtfEnd, std::string> read_end(std::string_view text) {
  if (text.empty()) return EdtfEnd{EdtfEnd::Kind::unknown, {}};
  if (text == "..") return EdtfEnd{EdtfEnd::Kind::open, {}};
  PointOrWhy read = read_point(text);
  if (auto* why = std::get_if<std::string>(&read)) return std::move(*why);
  return EdtfEnd{EdtfEnd::Kind::told, std::get<EdtfPoint>(read)};
}

MemberOrWhy read_span(std::string_view from, std::string_view to) {
  auto first = read_end(from);
  if (auto* why = std::get_if<std::string>(&first)) return std::move(*why);
  auto last = read_end(to);
  if (auto* why = std::get_if<std::string>(&last)) return std::move(*why);
  EdtfMember member{std::get<EdtfEnd>(first), std::get<EdtfEnd>(last)};
  if (!member.from.point && !member.to.point) return std::string("neither end is told");
  if (member.from.point && member.to.point &&
      member.from.point->earliest > member.to.point->latest) {
    return fmt::format("it ends ({}) before it begins ({})", to, from);
  }
  return member;
}

MemberOrWhy read_single(std::string_view text) {
  PointOrWhy read = read_point(text);
  if (auto* why = std::get_if<std::string>(&read)) return std::move(*why);
  const EdtfEnd end{EdtfEnd::Kind::told, std::get<EdtfPoint>(read)};
  return EdtfMember{end, end};
}

MemberOrWhy read_set_member(std::string_view text) {
  const std::size_t dots = text.find("..");
  if (dots == std::string_view::npos) return read_single(text);
  const std::string_view from = text.substr(0, dots);
  const std::string_view to = text.substr(dots + 2);
  return read_span(from.empty() ? ".." : from, to.empty() ? ".." : to);
}

std::variant<std::vector<EdtfMember>, std::string> read_set(std::string_view inside) {
  std::vector<EdtfMember> members;
  for (const std::string_view one : parts_of(inside, ',')) {
    MemberOrWhy read = read_set_member(one);
    if (auto* why = std::get_if<std::string>(&read)) return std::move(*why);
    members.push_back(std::get<EdtfMember>(read));
  }
  return members;
}

}  // namespace

int days_in_month(std::int64_t year, int month) {
  const date::year_month_day_last end = month_in_cycle(year, month) / date::last;
  return static_cast<int>(static_cast<unsigned>(end.day()));
}

bool is_real(Day day) {
  return day.month >= 1 && day.month <= 12 && day.day >= 1 &&
         day.day <= days_in_month(day.year, day.month);
}

std::int64_t day_number(Day day) {
  const date::sys_days in_cycle = month_in_cycle(day.year, day.month) / day.day;
  return whole_cycles(day.year, kCycleYears) * kCycleDays + in_cycle.time_since_epoch().count();
}

Day days_on(Day day, std::int64_t days) {
  const std::int64_t number = day_number(day) + days;
  const std::int64_t cycles = whole_cycles(number, kCycleDays);
  const date::year_month_day there{
      date::sys_days{date::days{static_cast<int>(number - cycles * kCycleDays)}}};
  return {static_cast<int>(there.year()) + cycles * kCycleYears,
          static_cast<int>(static_cast<unsigned>(there.month())),
          static_cast<int>(static_cast<unsigned>(there.day()))};
}

int weekday(Day day) {
  const date::sys_days in_cycle = month_in_cycle(day.year, day.month) / day.day;
  return static_cast<int>(date::weekday{in_cycle}.iso_encoding());
}

std::string iso_text(Day day) {
  return fmt::format("{}{:04}-{:02}-{:02}", day.year < 0 ? "-" : "",
                     day.year < 0 ? -day.year : day.year, day.month, day.day);
}

Result<Day> parse_day(std::string_view text) {
  const auto read = EdtfDate::parse(text);
  if (read && text.size() == 10 && all_digits(text.substr(8)) &&
      read->form() == EdtfDate::Form::point) {
    return *read->earliest();
  }
  return error(
      fmt::format("\"{}\" is not a day, expected year, month and day such as 2026-03-03", text),
      "write the day as YYYY-MM-DD", "date");
}

Result<EdtfDate> EdtfDate::parse(std::string_view text) {
  EdtfDate date;
  date.text_ = text;
  const auto closes = [&](char open, char close) {
    return text.size() > 2 && text.front() == open && text.back() == close;
  };
  if (closes('[', ']') || closes('{', '}')) {
    date.form_ = text.front() == '[' ? Form::one_of : Form::all_of;
    auto read = read_set(text.substr(1, text.size() - 2));
    if (auto* why = std::get_if<std::string>(&read)) return refuse(text, *why);
    date.members_ = std::get<std::vector<EdtfMember>>(std::move(read));
    return date;
  }
  const std::size_t slash = text.find('/');
  date.form_ = slash == std::string_view::npos ? Form::point : Form::interval;
  MemberOrWhy read = slash == std::string_view::npos
                         ? read_single(text)
                         : read_span(text.substr(0, slash), text.substr(slash + 1));
  if (auto* why = std::get_if<std::string>(&read)) return refuse(text, *why);
  date.members_.push_back(std::get<EdtfMember>(read));
  return date;
}

std::optional<Day> EdtfDate::earliest() const {
  std::optional<Day> first;
  for (const EdtfMember& member : members_) {
    if (!member.from.point) return std::nullopt;
    if (!first || member.from.point->earliest < *first) first = member.from.point->earliest;
  }
  return first;
}

std::optional<Day> EdtfDate::latest() const {
  std::optional<Day> last;
  for (const EdtfMember& member : members_) {
    if (!member.to.point) return std::nullopt;
    if (!last || member.to.point->latest > *last) last = member.to.point->latest;
  }
  return last;
}

bool EdtfDate::uncertain() const {
  return std::any_of(members_.begin(), members_.end(), [](const EdtfMember& member) {
    return (member.from.point && member.from.point->uncertain) ||
           (member.to.point && member.to.point->uncertain);
  });
}

bool EdtfDate::approximate() const {
  return std::any_of(members_.begin(), members_.end(), [](const EdtfMember& member) {
    return (member.from.point && member.from.point->approximate) ||
           (member.to.point && member.to.point->approximate);
  });
}

bool surely_before(const EdtfDate& a, const EdtfDate& b) {
  const auto end = a.latest();
  const auto begin = b.earliest();
  return end && begin && *end < *begin;
}

}  // namespace winchbook::base
