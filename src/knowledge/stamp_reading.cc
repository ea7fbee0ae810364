#include "knowledge/stamp_reading.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "knowledge/stamp_addresses.h"
#include "knowledge/stamp_numbers.h"

namespace winchbook::knowledge {
namespace {

/// Lower numbers behind a bare "Pat." are a size or a model more often than a patent of before
/// 1853.
constexpr std::int64_t kLowNumber = 10'000;
/// GB patents of the series of 1916 bear numbers that US patents of 1870 to 1926 bear too.
constexpr std::int64_t kGbFirst = 100'001;
constexpr std::int64_t kGbLast = 1'605'999;

constexpr std::array kFillers{"NO", "NOS", "NUMBER", "NUMBERS", "NUM",   "NR",     "N",
                              "IN", "OF",  "THE",    "ON",      "DATED", "ISSUED", "GRANTED"};
constexpr std::array kOtherCountries{"CANADA",  "CAN",    "CANADIAN", "FRANCE",  "FRENCH",
                                     "GERMANY", "GERMAN", "SWEDEN",   "SWEDISH", "AUSTRALIA",
                                     "AUST",    "JAPAN",  "BELGIUM",  "ITALY",   "FOREIGN"};

template <class Words> bool holds(const Words& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

}  // namespace

ReadAs read_as(MarkSort sort) {
  switch (sort) {
    case MarkSort::address:
      return ReadAs::address;
    case MarkSort::country:
      return ReadAs::country;
    case MarkSort::material:
      return ReadAs::material;
    case MarkSort::finish:
      return ReadAs::finish;
    case MarkSort::fastener:
      return ReadAs::fastener;
    case MarkSort::mark:
      break;
  }
  return ReadAs::mark;
}

void StampReading::read_all() {
  for (std::size_t at = 0; at < words_.size();)
    at += std::max<std::size_t>(step(at), 1);
}

std::size_t StampReading::step(std::size_t at) {
  if (const std::size_t serial = serial_step(at, true)) return serial;
  if (const std::size_t phrase = phrase_step(at)) return phrase;
  return address_step(at, false);
}

bool StampReading::is_filler(std::size_t at) const {
  return at < words_.size() && holds(kFillers, words_[at].folded);
}

bool StampReading::says(std::string_view phrase) const {
  for (std::size_t at = 0; at < words_.size(); ++at) {
    if (phrase_at(words_, at, phrase) > 0) return true;
  }
  return false;
}

bool StampReading::other_country(std::size_t before, std::size_t after) const {
  return (before > 0 && holds(kOtherCountries, words_[before - 1].folded)) ||
         (after < words_.size() && holds(kOtherCountries, words_[after].folded));
}

/// The longest phrase that begins here: a maker's, a mark's, or one that announces a number.
std::size_t StampReading::phrase_step(std::size_t at) {
  std::size_t longest = 0;
  const Mark* mark = nullptr;
  Announced announced;
  for (const Mark& one : marks_.marks) {
    if (one.sort != MarkSort::mark && one.sort != MarkSort::country) continue;
    for (const std::string& form : one.forms) {
      const std::size_t length = phrase_at(words_, at, form);
      if (length <= longest) continue;
      longest = length;
      mark = &one;
    }
  }
  std::size_t mark_length = longest;
  for (const NumberSeries& series : marks_.series) {
    for (const std::string& form : series.forms) {
      const std::size_t length = phrase_at(words_, at, form);
      if (length <= longest) continue;
      longest = length;
      announced.series = &series;
      announced.american = form.find("US") == 0 || form.find("AM") == 0 || form.ends_with(" US");
    }
  }
  if (const std::size_t maker = maker_step(at, longest)) return maker;
  if (longest == 0) return 0;
  if (announced.series != nullptr && longest > mark_length) {
    announced.as = announced.series->word == "us-design"   ? ReadAs::us_design
                   : announced.series->word == "gb-design" ? ReadAs::gb_design
                                                           : ReadAs::us_patent;
    if (other_country(at, at + longest)) return longest;
    std::vector<Item> items;
    const std::size_t end = items_at(at + longest, announced, items);
    tell(items, announced);
    return items.empty() ? longest : end - at;
  }
  const bool provisional = mark->word == "prov-pat";
  if (provisional || mark->word == "gb-patent-year" || mark->word == "us-reissue") {
    announced = {
        provisional || mark->word == "gb-patent-year" ? ReadAs::gb_patent : ReadAs::us_reissue,
        nullptr, provisional, false, false};
    std::vector<Item> items;
    const std::size_t end = items_at(at + longest, announced, items);
    tell(items, announced);
    if (!items.empty()) return end - at;
    if (!provisional) return longest;
  }
  keep_mark(*mark, read_as(mark->sort), at, at + longest);
  return longest;
}

std::size_t StampReading::address_step(std::size_t at, bool asked) {
  std::size_t longest = 0;
  for (const AddressForm& form : addresses_at(words_, at, text_, asked)) {
    const Mark* mark = find_mark(marks_, form.mark);
    if (mark == nullptr) continue;
    keep_mark(*mark, ReadAs::address, form.from, form.to);
    Reading& reading = out.readings.back();
    reading.what = form.told;
    reading.assumed = form.assumed;
    longest = std::max(longest, form.to - at);
  }
  return longest;
}

/// A serial number is the whole of its mark.
std::size_t StampReading::serial_step(std::size_t at, bool whole) {
  if (maker_ == nullptr) return 0;
  for (const SerialRun& run : maker_->serials) {
    const std::size_t prefix = phrase_at(words_, at, run.prefix);
    if (prefix == 0 || at + prefix >= words_.size() || !words_[at + prefix].number) continue;
    if (whole && (at > 0 || at + prefix + 1 != words_.size())) continue;
    const StampNumber& number = *words_[at + prefix].number;
    Reading reading;
    reading.as = ReadAs::serial;
    reading.what = fmt::format("serial number {} {} of {}", run.prefix, number.value, maker_->name);
    reading.bound = bound_of(run, number.value);
    keep(std::move(reading), at, at + prefix + 1, number.assumed);
    return prefix + 1;
  }
  return 0;
}

std::size_t StampReading::maker_row_at(std::size_t at, const Maker& maker, bool everything,
                                       Reading& into) const {
  std::size_t longest = 0;
  for (const MakerRow& row : maker.rows) {
    const bool told = row.sort == MakerRowSort::name || row.sort == MakerRowSort::address;
    if (!everything && !told) continue;
    for (const std::string& form : row.forms) {
      const std::size_t length = phrase_at(words_, at, form);
      if (length <= longest) continue;
      longest = length;
      into = {};
      into.as = ReadAs::maker;
      into.what = fmt::format("{}: {}", maker.name, row.name);
      into.bound = row.bound;
    }
  }
  return longest;
}

std::size_t StampReading::maker_step(std::size_t at, std::size_t longer_than) {
  Reading best;
  std::size_t longest = 0;
  for (const Maker& maker : makers_) {
    if (maker_ != nullptr && maker_ != &maker) continue;
    Reading one;
    const std::size_t length = maker_row_at(at, maker, maker_ != nullptr, one);
    if (length <= longest) continue;
    longest = length;
    best = std::move(one);
  }
  if (longest == 0 || longest < longer_than) return 0;
  keep(std::move(best), at, at + longest, {});
  return longest;
}

/// Numbers and dates in a row, with "&" and "and" between. The place behind the last.
std::size_t StampReading::items_at(std::size_t at, const Announced& announced,
                                   std::vector<Item>& items) {
  const bool of_patents =
      announced.as == ReadAs::us_patent || announced.as == ReadAs::us_patent_date;
  const bool dates = of_patents || announced.as == ReadAs::us_design;
  bool numbered = announced.asked && announced.as != ReadAs::us_patent_date;
  std::size_t end = at;
  for (;;) {
    while (is_filler(at) ||
           (at < words_.size() && (words_[at].folded == "USA" || words_[at].folded == "US"))) {
      numbered = numbered || words_[at].folded.starts_with("NO") || words_[at].folded == "NR";
      ++at;
    }
    const std::size_t faults = out.faults.size();
    Item item;
    if (!item_at(at, dates && !numbered, dates, item)) {
      // What could not be read is passed over, so that its figures are not read again.
      if (out.faults.size() > faults) return item.to;
      return end;
    }
    end = at = item.to;
    items.push_back(std::move(item));
    if (at < words_.size() && (words_[at].folded == "AND" || words_[at].folded == "ALSO")) ++at;
  }
}

/// One number or date. A date that cannot be is a fault; `item.to` is then behind it.
bool StampReading::item_at(std::size_t at, bool bare_year, bool dates, Item& item) {
  if (at >= words_.size()) return false;
  item.from = at;
  if (dates) {
    DateRead date = date_at(words_, at, marks_.us_issue, bare_year);
    if (date.words > 0) {
      item.to = at + date.words;
      if (!date.date) {
        refuse(at, item.to, date.fault, std::move(date.hint), "stamp-date");
        return false;
      }
      item.date = std::move(*date.date);
      return true;
    }
  }
  if (!words_[at].number || words_[at].number->value == 0) return false;
  item.number = words_[at].number->value;
  item.assumed = words_[at].number->assumed;
  std::size_t to = at + 1;
  if (const std::size_t end = broken_groups(at); end > at + 1) {
    item.to = end;
    refuse(at, end, "commas stand before threes: a figure may be missing",
           "read the number again, and write it 2,185,170", "stamp-number");
    return false;
  }
  // "2 185 170": groups of three behind one of one to three.
  if (words_[at].number->digits <= 3 && !words_[at].number->grouped) {
    while (to < words_.size() && words_[to].number && words_[to].number->digits == 3 &&
           words_[to].gap == " " && !words_[to].number->grouped) {
      item.number = item.number * 1000 + words_[to].number->value;
      ++to;
    }
    if (to > at + 1)
      item.assumed = fmt::format("“{}” taken for one number", as_typed(text_, words_, at, to));
  }
  if (to < words_.size() && words_[to].number && (words_[to].gap == "/" || words_[to].gap == "-") &&
      (words_[to].number->digits == 2 || words_[to].number->digits == 4)) {
    item.year = words_[to].number->value;
    ++to;
  }
  item.to = to;
  return true;
}

/// Behind figures that commas or points part, but not before threes: "21,85,170".
std::size_t StampReading::broken_groups(std::size_t at) const {
  std::size_t end = at + 1;
  while (end < words_.size() && words_[end].number &&
         (words_[end].gap == "," || words_[end].gap == "."))
    ++end;
  return end;
}

void StampReading::tell(const std::vector<Item>& items, const Announced& announced) {
  if (announced.as == ReadAs::us_patent || announced.as == ReadAs::us_patent_date) {
    return tell_patents(items, announced);
  }
  for (const Item& item : items) {
    if (item.number > 0) {
      keep_number(item, announced, nullptr);
    } else {
      keep_date(item, false);
    }
  }
}

/// Numbers and printed dates of US patents: as many of one as of the other belong together.
void StampReading::tell_patents(const std::vector<Item>& items, const Announced& announced) {
  std::vector<const Item*> numbers;
  std::vector<const Item*> dates;
  for (const Item& item : items)
    (item.number > 0 ? numbers : dates).push_back(&item);
  const bool paired = numbers.size() == dates.size();
  for (std::size_t i = 0; i < numbers.size(); ++i) {
    const Item* date = paired ? dates[i] : nullptr;
    const std::string odds =
        date == nullptr ? "" : disagreement(*announced.series, numbers[i]->number, date->date);
    if (!odds.empty()) {
      refuse(std::min(numbers[i]->from, date->from), std::max(numbers[i]->to, date->to), odds,
             "read both again: one of them is wrong", "stamp-agreement");
      continue;
    }
    keep_number(*numbers[i], announced, date);
    if (date != nullptr) keep_date(*date, true);
  }
  if (paired) return;
  for (const Item* date : dates)
    keep_date(*date, !numbers.empty());
}

void StampReading::keep_number(const Item& item, const Announced& announced, const Item* date) {
  if (announced.as == ReadAs::us_reissue) {
    const Mark* mark = find_mark(marks_, "us-reissue");
    if (mark == nullptr) return;
    keep_mark(*mark, ReadAs::us_reissue, item.from, item.to);
    out.readings.back().what = fmt::format("US reissue {}", with_commas(item.number));
    return;
  }
  const bool bare = announced.as == ReadAs::us_patent && !announced.asked && !announced.american &&
                    date == nullptr && !says("USA") && !says("US");
  if (announced.as == ReadAs::gb_patent ||
      (bare && (item.year > 0 || (says("ENGLAND") && item.number <= kGbLast)))) {
    return keep(reading_of_gb_patent(marks_, item.number, item.year, announced.provisional),
                item.from, item.to, item.assumed);
  }
  if (announced.series == nullptr) return;
  auto reading = reading_of_number(*announced.series, item.number);
  if (reading && bare && item.number < kLowNumber) {
    reading.value().bound.not_before.reset();
    reading.value().bound.not_after.reset();
    reading.value().warnings.emplace_back(
        "so low a number would be of before 1853: taken for something else, so it says nothing");
  } else if (reading && bare && item.number >= kGbFirst && item.number <= kGbLast) {
    reading.value().bound.not_after.reset();
    reading.value().assumed.emplace_back("taken for a US patent: no country is named");
    reading.value().warnings.emplace_back(
        "a British patent of 1916 or later can bear the same number, so no end is told");
  } else if (reading && date != nullptr && date->date.first == date->date.last) {
    const bool doubtful = base::weekday(date->date.first) != marks_.us_issue.weekday;
    if (!doubtful) reading.value().bound.not_before->day = date->date.first;
    reading.value().reasons.emplace_back("The number and the date beside it agree.");
  }
  keep(std::move(reading), item.from, item.to, item.assumed);
}

void StampReading::keep_date(const Item& item, bool numbered) {
  keep(reading_of_date(marks_, item.date, numbered), item.from, item.to, item.assumed);
}

void StampReading::keep(base::Result<Reading> reading, std::size_t from, std::size_t to,
                        const std::string& assumed) {
  if (!reading) {
    const base::Diagnostic& fault = reading.faults().front();
    return refuse(from, to, fault.message, fault.hint, fault.rule);
  }
  Reading kept = std::move(reading).value();
  kept.begin = words_[from].begin;
  kept.end = words_[to - 1].end;
  if (!assumed.empty()) kept.assumed.push_back(assumed);
  out.readings.push_back(std::move(kept));
}

void StampReading::keep_mark(const Mark& mark, ReadAs as, std::size_t from, std::size_t to) {
  Reading reading;
  reading.as = as;
  reading.what = mark.name;
  reading.bound = mark.bound;
  keep(std::move(reading), from, to, {});
}

void StampReading::refuse(std::size_t from, std::size_t to, const std::string& message,
                          std::string hint, std::string rule) {
  const std::size_t begin = from < words_.size() ? words_[from].begin : text_.size();
  int column = 1;
  for (const char byte : text_.substr(0, begin))
    column += (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U ? 1 : 0;
  const std::string typed =
      from < to ? fmt::format("“{}”: ", as_typed(text_, words_, from, to)) : "";
  out.faults.push_back(
      base::error_at({"", 1, column}, typed + message, std::move(hint), std::move(rule)));
}

}  // namespace winchbook::knowledge
