#include "knowledge/stamp_dates.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

#include "base/words_of_text.h"

namespace winchbook::knowledge {
namespace {

constexpr int kMonths = 12;
constexpr int kMostDay = 99;
constexpr std::int64_t kFirstYear = 1500;
constexpr std::int64_t kLastYear = 2100;

constexpr std::array<std::string_view, kMonths> kMonthNames{
    "January", "February", "March",     "April",   "May",      "June",
    "July",    "August",   "September", "October", "November", "December"};

/// Old ways to shorten months that are not the beginning of the name.
constexpr std::array<std::pair<std::string_view, int>, 4> kOldMonths{
    {{"JANY", 1}, {"FEBY", 2}, {"SEPTR", 9}, {"DECR", 12}}};

int month_of_letters(std::string_view folded) {
  if (folded.size() < 3) return 0;
  for (std::size_t i = 0; i < kMonthNames.size(); ++i) {
    if (base::in_capitals(kMonthNames.at(i)).starts_with(folded)) return static_cast<int>(i) + 1;
  }
  for (const auto& [word, month] : kOldMonths) {
    if (word == folded) return month;
  }
  return 0;
}

/// The month of a word, 0 when it is none; figures among its letters are taken for letters.
int month_of(const StampWord& word, std::vector<std::string>& assumed) {
  if (word.number) return 0;
  if (const int month = month_of_letters(word.folded)) return month;
  for (const char one : {'L', 'I'}) {
    std::string letters = word.folded;
    std::replace(letters.begin(), letters.end(), '0', 'O');
    std::replace(letters.begin(), letters.end(), '5', 'S');
    std::replace(letters.begin(), letters.end(), '1', one);
    const int month = letters == word.folded ? 0 : month_of_letters(letters);
    if (month == 0) continue;
    assumed.push_back(fmt::format("“{}” taken for {}", word.folded,
                                  kMonthNames.at(static_cast<std::size_t>(month - 1))));
    return month;
  }
  return 0;
}

/// "4", "04", "4TH"; 0 when it is none.
int day_of(const StampWord& word, std::vector<std::string>& assumed) {
  if (word.number) {
    if (word.number->digits > 2 || word.number->value > kMostDay || word.number->grouped) return 0;
    if (!word.number->assumed.empty()) assumed.push_back(word.number->assumed);
    return static_cast<int>(word.number->value);
  }
  const std::string_view text = word.folded;
  for (const std::string_view ending : {"ST", "ND", "RD", "TH"}) {
    if (!text.ends_with(ending) || text.size() > ending.size() + 2) continue;
    int value = 0;
    for (const char c : text.substr(0, text.size() - ending.size())) {
      if (c < '0' || c > '9') return 0;
      value = value * 10 + (c - '0');
    }
    return value;
  }
  return 0;
}

/// The years that a number can be: itself with four figures, one of two centuries with two.
std::vector<std::int64_t> years_of_word(const StampWord& word, std::vector<std::string>& assumed) {
  if (!word.number || word.number->grouped) return {};
  const StampNumber& number = *word.number;
  const bool four = number.digits == 4 && number.value >= kFirstYear && number.value <= kLastYear;
  if (!four && number.digits != 2) return {};
  if (!number.assumed.empty()) assumed.push_back(number.assumed);
  if (four) return {number.value};
  return {1800 + number.value, 1900 + number.value};
}

/// A day before it is known to be one.
using Days = std::vector<base::Day>;

DateRead refuse(std::size_t words, std::string fault, std::string hint) {
  DateRead read;
  read.words = words;
  read.fault = std::move(fault);
  read.hint = std::move(hint);
  return read;
}

std::string no_such_day(const base::Day& day) {
  if (day.month < 1 || day.month > kMonths) return fmt::format("there is no month {}", day.month);
  const auto name = kMonthNames.at(static_cast<std::size_t>(day.month - 1));
  return fmt::format("there is no {} {} {}: that month has {} days", day.day, name, day.year,
                     base::days_in_month(day.year, day.month));
}

bool can_be_issue(const base::Day& day, const IssueDay& issue) {
  if (day < issue.opened) return false;
  return day < issue.since || base::weekday(day) == issue.weekday;
}

/// The one day that is meant, of those that the figures can mean.
DateRead settle(Days days, std::size_t words, std::vector<std::string> assumed,
                const IssueDay& issue) {
  const base::Day first = days.front();
  days.erase(std::remove_if(days.begin(), days.end(),
                            [](const base::Day& day) { return !base::is_real(day); }),
             days.end());
  if (days.empty()) return refuse(words, no_such_day(first), "read the date again");
  DateRead read;
  read.words = words;
  read.date = StampDate{days.front(), days.front(), false, std::move(assumed)};
  if (days.size() == 1) return read;
  Days issued;
  std::string all;
  for (const base::Day& day : days) {
    all += (all.empty() ? "" : " or ") + spoken_day(day);
    if (can_be_issue(day, issue)) issued.push_back(day);
  }
  if (issued.size() != 1) {
    return refuse(words,
                  fmt::format("the date can mean {}, and {} of these can be a day of issue", all,
                              issued.empty() ? "none" : "more than one"),
                  "write the month in letters and the year with four figures");
  }
  read.date->first = read.date->last = issued.front();
  read.date->doubtful = true;
  read.date->assumed.push_back(
      fmt::format("taken for {}, of {}: the only one of them that can be a day of issue",
                  spoken_day(issued.front()), all));
  return read;
}

/// Reads the date at one place of the words.
class DateReading {
 public:
  DateReading(const std::vector<StampWord>& words, std::size_t at, const IssueDay& issue)
      : words_(words), at_(at), issue_(issue) {}

  DateRead read(bool bare_year) {
    if (at_ >= words_.size()) return {};
    if (const int month = month_of(words_[at_], assumed_)) return after_month(month);
    const bool parted = has(2) && joined(1) && joined(2);
    if (DateRead read = parted ? figures() : DateRead{}; read.words > 0) return read;
    if (DateRead read = has(2) ? day_first() : DateRead{}; read.words > 0) return read;
    if (bare_year) {
      const auto years = years_of_word(words_[at_], assumed_);
      if (years.size() == 1) return whole(years[0], 1, kMonths, 1);
    }
    return {};
  }

 private:
  bool has(std::size_t more) const { return at_ + more < words_.size(); }

  /// Figures parted as a date's are: "7-4-11", "7/4/1911", "7. 4. 1911".
  bool joined(std::size_t more) const {
    const std::string& gap = words_[at_ + more].gap;
    return words_[at_].number && words_[at_ + more].number &&
           gap.find_first_of("-/.") != std::string::npos &&
           gap.find_first_not_of("-/. ") == std::string::npos;
  }

  DateRead whole(std::int64_t year, int first_month, int last_month, std::size_t words) {
    DateRead read;
    read.words = words;
    read.date = StampDate{{year, first_month, 1},
                          {year, last_month, base::days_in_month(year, last_month)},
                          false,
                          assumed_};
    return read;
  }

  DateRead after_month(int month) {
    if (!has(1)) return {};
    const auto kept = assumed_;
    if (has(2)) {
      const int day = day_of(words_[at_ + 1], assumed_);
      const auto years = years_of_word(words_[at_ + 2], assumed_);
      if (day > 0 && !years.empty()) return on(month, day, years, 3);
    }
    assumed_ = kept;
    const auto years = years_of_word(words_[at_ + 1], assumed_);
    if (years.size() == 1) return whole(years[0], month, month, 2);
    if (day_of(words_[at_ + 1], assumed_) == 0) return {};
    return refuse(2, "the date names no year", "give the year with four figures");
  }

  DateRead day_first() {
    const auto kept = assumed_;
    const int day = day_of(words_[at_], assumed_);
    const int month = day > 0 ? month_of(words_[at_ + 1], assumed_) : 0;
    const auto years =
        month > 0 ? years_of_word(words_[at_ + 2], assumed_) : std::vector<std::int64_t>{};
    if (!years.empty()) return on(month, day, years, 3);
    assumed_ = kept;
    return {};
  }

  DateRead on(int month, int day, const std::vector<std::int64_t>& years, std::size_t words) {
    Days days;
    for (const std::int64_t year : years)
      days.push_back({year, month, day});
    return settle(std::move(days), words, assumed_, issue_);
  }

  DateRead figures() {
    if (words_[at_].number->digits == 4) return year_first();
    const int first = day_of(words_[at_], assumed_);
    const int second = day_of(words_[at_ + 1], assumed_);
    const auto years = years_of_word(words_[at_ + 2], assumed_);
    if (first == 0 || second == 0 || years.empty()) return {};
    Days days;
    for (const std::int64_t year : years) {
      if (first <= kMonths) days.push_back({year, first, second});
      if (second <= kMonths && first != second) days.push_back({year, second, first});
    }
    if (days.empty()) return refuse(3, "there is no such month", "read the date again");
    return settle(std::move(days), 3, assumed_, issue_);
  }

  DateRead year_first() {
    const auto years = years_of_word(words_[at_], assumed_);
    const int month = day_of(words_[at_ + 1], assumed_);
    const int day = day_of(words_[at_ + 2], assumed_);
    if (years.size() != 1 || month == 0 || day == 0) return {};
    return settle({{years[0], month, day}}, 3, assumed_, issue_);
  }

  const std::vector<StampWord>& words_;
  std::size_t at_;
  const IssueDay& issue_;
  std::vector<std::string> assumed_;
};

}  // namespace

DateRead date_at(const std::vector<StampWord>& words, std::size_t at, const IssueDay& issue,
                 bool bare_year) {
  return DateReading(words, at, issue).read(bare_year);
}

std::string_view weekday_name(const base::Day& day) {
  constexpr std::array<std::string_view, 7> kNames{"Monday", "Tuesday",  "Wednesday", "Thursday",
                                                   "Friday", "Saturday", "Sunday"};
  return kNames.at(static_cast<std::size_t>(base::weekday(day) - 1));
}

std::string spoken_day(const base::Day& day) {
  return fmt::format("{} {} {}", day.day, kMonthNames.at(static_cast<std::size_t>(day.month - 1)),
                     day.year);
}

}  // namespace winchbook::knowledge
