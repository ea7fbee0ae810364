#include "knowledge/recognise.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "knowledge/stamp_numbers.h"
#include "knowledge/stamp_reading.h"

namespace winchbook::knowledge {
namespace {

constexpr std::size_t kNear = 2;
constexpr std::size_t kMostSuggested = 4;

/// How many letters must be changed, put in or taken out to make one word of the other.
std::size_t distance(std::string_view a, std::string_view b) {
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j)
    row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t corner = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t above = row[j];
      row[j] = std::min({above + 1, row[j - 1] + 1, corner + (a[i - 1] == b[j - 1] ? 0U : 1U)});
      corner = above;
    }
  }
  return row[b.size()];
}

/// Names of rows that are written nearly like it or share a word with it.
std::string suggestions(const Marks& marks, const std::vector<ReadAs>& kinds,
                        std::string_view text) {
  const std::string wanted = folded_phrase(text);
  const auto words = stamp_words(text);
  std::vector<std::string> near;
  for (const Mark& mark : marks.marks) {
    if (std::find(kinds.begin(), kinds.end(), read_as(mark.sort)) == kinds.end()) continue;
    const bool is_near =
        std::any_of(mark.forms.begin(), mark.forms.end(), [&](const std::string& form) {
          return distance(form, wanted) <= std::min(kNear, wanted.size() / 3) ||
                 std::any_of(words.begin(), words.end(), [&](const StampWord& word) {
                   return word.folded.size() > 3 &&
                          (" " + form + " ").find(" " + word.folded + " ") != std::string::npos;
                 });
        });
    if (is_near && near.size() < kMostSuggested) near.push_back(mark.name);
  }
  std::string out;
  for (const std::string& name : near)
    out += (out.empty() ? "" : ", ") + name;
  return out;
}

std::string_view plural(ReadAs as) {
  switch (as) {
    case ReadAs::material:
      return "materials";
    case ReadAs::finish:
      return "finishes";
    case ReadAs::fastener:
      return "fasteners";
    case ReadAs::address:
      return "forms of address";
    case ReadAs::country:
      return "countries of origin";
    case ReadAs::maker:
    case ReadAs::serial:
      return "maker files";
    default:
      return "marks";
  }
}

/// The tables know nothing of it.
base::Diagnostic unknown(const Marks& marks, ReadAs as, std::string_view text) {
  const auto kinds = as == ReadAs::mark
                         ? std::vector{ReadAs::mark, ReadAs::country, ReadAs::address}
                         : std::vector{as};
  const std::string near = suggestions(marks, kinds, text);
  std::string hint = "look in shared/marks/marks.xml for what is known";
  if (as == ReadAs::maker || as == ReadAs::serial)
    hint = "look in shared/makers/ for what is known, or write a file there";
  if (!near.empty()) hint = "near to it: " + near;
  return base::error_at(
      {"", 1, 1}, fmt::format("nothing in “{}” is among the {} that are known", text, plural(as)),
      std::move(hint), "lookup-unknown");
}

}  // namespace

void StampReading::read_numbers_of(ReadAs as) {
  Announced announced;
  announced.as = as;
  announced.asked = true;
  announced.series = find_series(marks_, as == ReadAs::us_patent_date || as == ReadAs::us_reissue
                                             ? "us-patent"
                                             : base::word_of(as));
  // A phrase of the kind, the longest, is passed over; one of another kind is a fault.
  std::size_t longest = 0;
  std::string_view other;
  const auto look = [&](const std::vector<std::string>& forms, std::string_view kind, bool same) {
    for (const std::string& form : forms) {
      const std::size_t length = phrase_at(words_, 0, form);
      if (length <= longest) continue;
      longest = length;
      other = same ? std::string_view() : kind;
    }
  };
  for (const NumberSeries& series : marks_.series) {
    const bool same =
        &series == announced.series || (as == ReadAs::gb_patent && series.word == "us-patent");
    look(series.forms, series.word, same);
  }
  for (const auto& [row, kind] : {std::pair{"gb-patent-year", ReadAs::gb_patent},
                                  {"prov-pat", ReadAs::gb_patent},
                                  {"us-reissue", ReadAs::us_reissue}}) {
    const Mark* mark = find_mark(marks_, row);
    if (mark == nullptr) continue;
    const std::size_t before = longest;
    look(mark->forms, base::word_of(kind), kind == as);
    if (longest > before) announced.provisional = std::string_view(row) == "prov-pat";
  }
  if (!other.empty()) {
    return refuse(0, longest,
                  fmt::format("this is a {}, and a {} was asked for", other, base::word_of(as)),
                  fmt::format("winchbook lookup {} \"{}\"", other, text_), "stamp-kind");
  }
  std::vector<Item> items;
  const std::size_t end = items_at(longest, announced, items);
  if (!out.faults.empty()) return;
  const bool date_wanted = as == ReadAs::us_patent_date;
  if (items.empty() || end < words_.size()) {
    const std::size_t from = items.empty() ? std::min(longest, words_.size()) : end;
    return refuse(from, words_.size(),
                  fmt::format("expected {}{}", items.empty() ? "" : "nothing more behind ",
                              items.empty() ? (date_wanted ? "a date" : "a number")
                                            : (date_wanted ? "the date" : "the number")),
                  date_wanted ? "write it as printed: July 4, 1911"
                              : "write it as stamped: 2,185,170; commas stand before threes",
                  date_wanted ? "stamp-date" : "stamp-number");
  }
  tell(items, announced);
}

void StampReading::read_address() {
  for (std::size_t at = 0; at < words_.size();) {
    std::size_t length = address_step(at, true);
    if (length == 0) length = maker_step(at, 0);
    at += std::max<std::size_t>(length, 1);
  }
  if (!out.readings.empty()) return;
  if (const Mark* mark = best_mark(marks_, MarkSort::address, text_))
    keep_mark(*mark, ReadAs::address, 0, words_.size());
}

void StampReading::read_named(ReadAs as) {
  const MarkSort sort = as == ReadAs::material ? MarkSort::material
                        : as == ReadAs::finish ? MarkSort::finish
                                               : MarkSort::fastener;
  if (const Mark* mark = best_mark(marks_, sort, text_)) keep_mark(*mark, as, 0, words_.size());
}

void StampReading::read_maker() {
  const std::string wanted = folded_phrase(text_);
  for (const Maker& maker : makers_) {
    maker_ = &maker;
    for (std::size_t at = 0; at < words_.size();) {
      std::size_t length = serial_step(at, false);
      if (length == 0) length = maker_step(at, 0);
      at += std::max<std::size_t>(length, 1);
    }
    for (const MakerRow& row : maker.rows) {
      if (row.sort != MakerRowSort::feature || row.word != text_) continue;
      Reading reading;
      reading.as = ReadAs::maker;
      reading.what = fmt::format("{}: {}", maker.name, row.name);
      reading.bound = row.bound;
      keep(std::move(reading), 0, words_.size(), {});
    }
    if (!out.readings.empty()) return;
  }
}

Readings recognise(const Marks& marks, const std::vector<Maker>& makers, std::string_view text,
                   const Maker* maker) {
  StampReading reading(marks, makers, text, maker);
  reading.read_all();
  return std::move(reading.out);
}

Readings recognise_as(const Marks& marks, const std::vector<Maker>& makers, ReadAs as,
                      std::string_view text) {
  StampReading reading(marks, makers, text, nullptr);
  switch (as) {
    case ReadAs::mark:
    case ReadAs::country:
      reading.read_all();
      if (reading.out.readings.empty() && reading.out.faults.empty()) reading.read_address();
      break;
    case ReadAs::address:
      reading.read_address();
      break;
    case ReadAs::material:
    case ReadAs::finish:
    case ReadAs::fastener:
      reading.read_named(as);
      break;
    case ReadAs::maker:
    case ReadAs::serial:
      reading.read_maker();
      break;
    default:
      reading.read_numbers_of(as);
      break;
  }
  if (reading.out.readings.empty() && reading.out.faults.empty())
    reading.out.faults.push_back(unknown(marks, as, text));
  return std::move(reading.out);
}

}  // namespace winchbook::knowledge
