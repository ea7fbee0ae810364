#include "knowledge/marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "knowledge/stamp_numbers.h"
#include "knowledge/stamp_text.h"

namespace winchbook::knowledge {
namespace {

/// How far beyond its first number the last, open year of a table is believed: so many times what
/// the year before gave out.
constexpr std::int64_t kOpenYears = 2;

base::Diagnostic beyond(const NumberSeries& series, std::int64_t number) {
  const FirstNumber& last = series.rows.back();
  return base::error(fmt::format("{} {} is beyond the table, which ends in {} with {}", series.name,
                                 with_commas(number), last.year, with_commas(last.first)),
                     "read the number again; one as late as that is not in the tables",
                     "stamp-number");
}

/// Other copies print another first number for the row or the one behind it, which would give
/// another year to this number.
void look_for_doubt(const NumberSeries& series, std::size_t at, std::int64_t number,
                    NumberYears& years) {
  const auto between = [&](const FirstNumber& row) {
    return row.also && number >= std::min(row.first, *row.also) &&
           number < std::max(row.first, *row.also);
  };
  for (std::size_t i = at; i < std::min(at + 2, series.rows.size()); ++i) {
    const FirstNumber& row = series.rows[i];
    if (!between(row)) continue;
    years.doubt = fmt::format(
        "for {} some copies of the table print {} as the first number, "
        "where we take {}: {}",
        row.year, with_commas(*row.also), with_commas(row.first), row.note);
    if (row.settled) continue;
    const std::int64_t before = i == 0 ? row.year : series.rows[i - 1].year;
    years.first_year = std::min(years.first_year, before);
    if (years.last_year) years.last_year = std::max(*years.last_year, row.year);
  }
}

}  // namespace

base::Result<NumberYears> years_of(const NumberSeries& series, std::int64_t number) {
  const auto& rows = series.rows;
  if (number < rows.front().first) {
    return base::error(fmt::format("{} is no number of a {}: they begin with {}", number,
                                   series.name, rows.front().first),
                       "read the number again", "stamp-number");
  }
  const auto next = std::upper_bound(
      rows.begin(), rows.end(), number,
      [](std::int64_t wanted, const FirstNumber& row) { return wanted < row.first; });
  const auto row = std::prev(next);
  NumberYears years;
  years.first_year = row->year;
  years.first_number = row->first;
  years.known = row->known;
  years.source = row->source;
  if (next == rows.end()) {
    const std::int64_t usual = row->first - std::prev(row)->first;
    if (number >= row->first + kOpenYears * usual) return beyond(series, number);
  } else {
    years.last_year = next->year - 1;
    years.next_first = next->first;
    if (next->known == Known::recalled) years.known = Known::recalled;
    if (next->source != row->source) years.source += "; next year: " + next->source;
  }
  look_for_doubt(series, static_cast<std::size_t>(row - rows.begin()), number, years);
  return years;
}

const Mark* find_mark(const Marks& marks, std::string_view word) {
  const auto found = std::find_if(marks.marks.begin(), marks.marks.end(),
                                  [&](const Mark& mark) { return mark.word == word; });
  return found == marks.marks.end() ? nullptr : &*found;
}

const NumberSeries* find_series(const Marks& marks, std::string_view word) {
  const auto found = std::find_if(marks.series.begin(), marks.series.end(),
                                  [&](const NumberSeries& one) { return one.word == word; });
  return found == marks.series.end() ? nullptr : &*found;
}

const Mark* best_mark(const Marks& marks, MarkSort sort, std::string_view text) {
  const auto words = stamp_words(text);
  const Mark* best = nullptr;
  std::size_t longest = 0;
  for (const Mark& mark : marks.marks) {
    if (mark.sort != sort) continue;
    for (const std::string& form : mark.forms) {
      for (std::size_t at = 0; at < words.size(); ++at) {
        const std::size_t length = phrase_at(words, at, form);
        if (length <= longest) continue;
        longest = length;
        best = &mark;
      }
    }
  }
  return best;
}

}  // namespace winchbook::knowledge
