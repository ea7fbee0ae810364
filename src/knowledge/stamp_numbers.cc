#include "knowledge/stamp_numbers.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

namespace winchbook::knowledge {
namespace {

/// Patents of before 2 March 1861 ran for 14 years, and some for 7 more.
constexpr std::int64_t kOldTerm = 21;
constexpr base::Day kTermChanged{1861, 3, 2};
/// GB patents ran for 14 years, from 1919 for 16.
constexpr std::int64_t kGbTerm = 16;
constexpr std::int64_t kGbFirstContinuous = 100'001;
constexpr std::int64_t kGbLastContinuous = 1'605'999;
constexpr std::int64_t kGbFirstNew = 2'000'001;
constexpr std::int64_t kGbContinuousSince = 1916;
constexpr std::int64_t kGbNumbersSince = 1852;
/// No year before 1884 gave out so many.
constexpr std::int64_t kFewUntil1883 = 6'500;
constexpr std::int64_t kManySince = 1884;

std::int64_t term_of(const NumberSeries& series, std::int64_t year) {
  return series.word == "us-patent" && year <= kTermChanged.year ? kOldTerm : series.term;
}

ReadAs kind_of(const NumberSeries& series) {
  return base::value_of<ReadAs>(series.word).value_or(ReadAs::us_patent);
}

/// The same day so many years on; 29 February becomes the 28th.
base::Day years_on(base::Day day, std::int64_t years) {
  day.year += years;
  day.day = std::min(day.day, base::days_in_month(day.year, day.month));
  return day;
}

std::string years_told(const NumberYears& years) {
  if (!years.last_year) return fmt::format("{} or later", years.first_year);
  if (*years.last_year == years.first_year) return std::to_string(years.first_year);
  return fmt::format("{} to {}", years.first_year, *years.last_year);
}

void say_exceptions(const base::Day& day, Reading& reading) {
  if (day.month == 12 && day.day == 25 && day.year >= 1850 && day.year <= 1880) {
    reading.warnings.emplace_back(
        "a Tuesday on Christmas Day between 1850 and 1880: on a few of these nothing was issued");
  } else if (day.year == 1945 || day.year == 1970) {
    reading.warnings.push_back(
        fmt::format("on {} of {} nothing was issued; which, the sources do not say",
                    day.year == 1945 ? "some Tuesdays" : "one Tuesday", day.year));
  }
}

/// Whether the printed day can be a day of issue; told as a reason or a warning.
bool weekday_agrees(const IssueDay& issue, const base::Day& day, Reading& reading) {
  if (day < issue.since) {
    reading.reasons.emplace_back("Before 1848 patents were issued on other days of the week too.");
    return true;
  }
  if (base::weekday(day) == issue.weekday) {
    reading.reasons.push_back(fmt::format("{} was a {}, the day on which US patents are issued.",
                                          spoken_day(day), weekday_name(day)));
    say_exceptions(day, reading);
    return true;
  }
  const int back = (base::weekday(day) - issue.weekday + 7) % 7;
  reading.warnings.push_back(
      fmt::format("{} was a {}, and US patents are issued on Tuesdays ({} and {} were): read it "
                  "again, or it is "
                  "the date of something else",
                  spoken_day(day), weekday_name(day), spoken_day(base::days_on(day, -back)),
                  spoken_day(base::days_on(day, 7 - back))));
  return false;
}

}  // namespace

std::string with_commas(std::int64_t number) {
  std::string text = std::to_string(number);
  for (std::size_t at = text.size(); at > 3; at -= 3)
    text.insert(at - 3, ",");
  return text;
}

base::Result<Reading> reading_of_number(const NumberSeries& series, std::int64_t number) {
  const auto found = years_of(series, number);
  if (!found) return found.faults();
  const NumberYears& years = *found;
  Reading reading;
  reading.as = kind_of(series);
  reading.what = fmt::format("{} {}", series.name, with_commas(number));
  reading.bound.not_before = BoundEnd{{years.first_year, 1, 1}, true, years.known};
  reading.bound.basis = series.basis;
  reading.bound.source =
      fmt::format("table of first numbers: {}; rule: {}", years.source, series.source);
  const std::string until =
      years.next_first ? fmt::format(" to {}", with_commas(*years.next_first - 1)) : " on";
  reading.reasons.push_back(fmt::format("Numbers from {}{} were given out in {}.",
                                        with_commas(years.first_number), until, years_told(years)));
  if (years.last_year) {
    const std::int64_t term = term_of(series, *years.last_year);
    reading.bound.not_after = BoundEnd{{*years.last_year + term, 12, 31}, false, years.known};
    reading.reasons.push_back(
        fmt::format("The right ran for {} years at most, so until {}; few went on citing one that "
                    "had run out.",
                    term, *years.last_year + term));
  } else {
    reading.warnings.emplace_back("the table ends here, so it may be later, and no end is told");
  }
  if (years.known == Known::recalled) {
    reading.warnings.emplace_back(
        "this part of the table is only recalled: look the number up before money depends on it");
  }
  if (!years.doubt.empty()) reading.warnings.push_back(years.doubt);
  return reading;
}

base::Result<Reading> reading_of_date(const Marks& marks, const StampDate& date, bool numbered) {
  const bool is_day = date.first == date.last;
  const std::string told = is_day                                ? spoken_day(date.first)
                           : date.first.month == date.last.month ? spoken_day(date.first).substr(2)
                                                                 : std::to_string(date.first.year);
  if (date.last < marks.us_issue.opened) {
    return base::error(
        fmt::format("no numbered US patent is as old as {}: the office opened its series on {}",
                    told, spoken_day(marks.us_issue.opened)),
        "read the year again", "stamp-date");
  }
  const NumberSeries* series = find_series(marks, "us-patent");
  const Mark* rule = find_mark(marks, "us-patent-date");
  Reading reading;
  reading.as = ReadAs::us_patent_date;
  reading.what = fmt::format("US patent of {}", told);
  reading.assumed = date.assumed;
  const bool sure =
      !(is_day && !weekday_agrees(marks.us_issue, date.first, reading)) && !date.doubtful;
  reading.bound.not_before = BoundEnd{date.first, sure && is_day, Known::read};
  reading.bound.basis = "A printed day of issue: nothing that bears it is older.";
  reading.bound.source = marks.us_issue.source;
  const std::int64_t term =
      date.first < kTermChanged ? kOldTerm : (series != nullptr ? series->term : 17);
  base::Day end = years_on(date.last, term);
  reading.reasons.push_back(
      fmt::format("The right ran for {} years at most, so until {}.", term, spoken_day(end)));
  if (rule != nullptr && rule->bound.not_after && !numbered) {
    const base::Day changed = rule->bound.not_after->day;
    reading.reasons.push_back(rule->bound.basis);
    reading.bound.source += "; " + rule->bound.source;
    if (date.first < changed) {
      end = std::min(end, changed);
    } else {
      reading.warnings.emplace_back(
          "after 1 April 1927 a number should stand beside it: look for one");
    }
  }
  reading.bound.not_after = BoundEnd{end, false, Known::read};
  return reading;
}

std::string disagreement(const NumberSeries& series, std::int64_t number, const StampDate& date) {
  const auto years = years_of(series, number);
  if (!years) return {};
  const bool early = date.last.year < years->first_year;
  const bool late = years->last_year && date.first.year > *years->last_year;
  if (early || late) {
    return fmt::format("{} {} was issued in {}, and the date beside it is of {}", series.name,
                       with_commas(number), years_told(*years), date.first.year);
  }
  const bool is_day = date.first == date.last;
  const bool first_of_year = number == years->first_number && years->doubt.empty();
  if (is_day && first_of_year && date.first.year >= 1848 &&
      (date.first.month > 1 || date.first.day > 7)) {
    return fmt::format(
        "{} {} was the first of {}, issued on its first Tuesday, and the date beside it is {}",
        series.name, with_commas(number), years->first_year, spoken_day(date.first));
  }
  return {};
}

namespace {

/// The year of a two-figure year, or nothing when it can be of two centuries.
std::optional<std::int64_t> full_year(std::int64_t number, std::int64_t year, std::int64_t last) {
  if (year >= 1000) return year;
  const bool new_century = 1900 + year <= last;
  const bool old_century =
      1800 + year >= kGbNumbersSince && (number <= kFewUntil1883 || 1800 + year >= kManySince);
  if (new_century == old_century) return std::nullopt;
  return (new_century ? 1900 : 1800) + year;
}

base::Result<Reading> gb_with_year(const Mark& rule, std::int64_t number, std::int64_t year,
                                   bool provisional) {
  const std::int64_t last = provisional ? 1978 : kGbContinuousSince - 1;
  const auto full = full_year(number, year, last);
  if (!full || *full < kGbNumbersSince || *full > last) {
    return base::error(
        fmt::format("the year of {}/{:02} can not be told: such numbers run from {} to {}", number,
                    year, kGbNumbersSince, last),
        "give the year with four figures", "stamp-number");
  }
  Reading reading;
  reading.as = ReadAs::gb_patent;
  reading.what = fmt::format("GB {} {} of {}", provisional ? "application" : "patent",
                             with_commas(number), *full);
  reading.bound = rule.bound;
  reading.bound.not_before = BoundEnd{{*full, 1, 1}, true, Known::read};
  reading.bound.not_after.reset();
  reading.reasons.push_back(fmt::format("The year stands beside the number: {}.", *full));
  if (year < 100) reading.assumed.push_back(fmt::format("{:02} taken for {}", year, *full));
  if (!provisional) {
    reading.bound.not_after = BoundEnd{{*full + kGbTerm, 12, 31}, false, Known::recalled};
    reading.reasons.push_back(
        fmt::format("The right ran for {} years at most, so until {}.", kGbTerm, *full + kGbTerm));
  }
  return reading;
}

}  // namespace

base::Result<Reading> reading_of_gb_patent(const Marks& marks, std::int64_t number,
                                           std::int64_t year, bool provisional) {
  const Mark* rule = find_mark(marks, provisional ? "gb-application"
                                      : year > 0  ? "gb-patent-year"
                                                  : "gb-patent-continuous");
  if (rule == nullptr) return base::error("the table of marks has no row for GB patents");
  const bool continuous =
      (number >= kGbFirstContinuous && number <= kGbLastContinuous) || number >= kGbFirstNew;
  if (year > 0 && !(continuous && !provisional)) {
    return gb_with_year(*rule, number, year, provisional);
  }
  if (!continuous) {
    return base::error(
        fmt::format("GB {} {} says nothing without its year: until 1915 numbers began anew each "
                    "January",
                    provisional ? "application" : "patent", with_commas(number)),
        "look for the year beside it: 12345/09, or No 12345 of 1909", "stamp-number");
  }
  Reading reading;
  reading.as = ReadAs::gb_patent;
  reading.what = fmt::format("GB patent {}", with_commas(number));
  const Mark* series = find_mark(marks, "gb-patent-continuous");
  reading.bound = series != nullptr ? series->bound : rule->bound;
  if (number >= kGbFirstNew) {
    reading.bound.not_before = BoundEnd{{1979, 1, 1}, true, Known::read};
  }
  reading.warnings.emplace_back(
      "the year within the continuous series is not in the tables: look the number up");
  return reading;
}

}  // namespace winchbook::knowledge
