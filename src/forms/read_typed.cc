#include "forms/read_typed.h"

#include <cctype>
#include <charconv>

#include "base/degree_words.h"
#include "base/words_of_text.h"

namespace winchbook::forms {
namespace {

using base::Diagnostics;

constexpr const char* kMeasureRule = "command-measure";

std::string trimmed(std::string_view text) {
  return std::string(base::trimmed(text));
}

std::string quoted(std::string_view typed) {
  return "\"" + std::string(typed) + "\"";
}

bool is_currency(std::string_view text) {
  return text.size() == 3 && base::is_capitals(text);
}

std::optional<base::Decimal> sum_of(std::string_view text) {
  auto amount = base::Decimal::parse(text);
  if (!amount || amount->units() < 0 || amount->places() > 2) return std::nullopt;
  while (amount->places() < 2)
    amount = base::Decimal(amount->units() * 10, amount->places() + 1);
  return *amount;
}

/// An amount with its currency, or with none when `currency` says it.
std::optional<base::Money> money_of(std::string_view text, std::string_view currency = {}) {
  const std::string whole = trimmed(text);
  const std::size_t space = whole.rfind(' ');
  const bool own = space != std::string::npos && is_currency(whole.substr(space + 1));
  const auto amount = sum_of(trimmed(own ? whole.substr(0, space) : whole));
  const std::string code = own ? whole.substr(space + 1) : std::string(currency);
  if (!amount || code.empty()) return std::nullopt;
  return base::Money{*amount, code};
}

}  // namespace

Diagnostics read_typed(std::string_view typed, std::string& into) {
  into = typed;
  return {};
}

Diagnostics read_typed(std::string_view typed, std::filesystem::path& into) {
  into = std::filesystem::path(std::string(typed));
  return {};
}

Diagnostics read_typed(std::string_view typed, int& into) {
  constexpr int kMost = 1'000'000;
  const std::string text = trimmed(typed);
  int number = 0;
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, number);
  if (read.ec != std::errc() || read.ptr != end || number < 1 || number > kMost) {
    return {base::error(quoted(typed) + " is not a whole number of 1 or more",
                        "write it in figures: 3")};
  }
  into = number;
  return {};
}

Diagnostics read_typed(std::string_view typed, base::Decimal& into) {
  const auto number = base::Decimal::parse(trimmed(typed));
  if (!number) {
    return {base::error(quoted(typed) + " is not a number",
                        "write figures, with a point where there are parts: 12.5")};
  }
  into = *number;
  return {};
}

Diagnostics read_typed(std::string_view typed, base::Money& into) {
  auto money = money_of(typed);
  if (!money) {
    return {base::error(quoted(typed) + " is not a sum",
                        "write the amount and the currency's three letters: 40 GBP")};
  }
  into = std::move(*money);
  return {};
}

Diagnostics read_typed(std::string_view typed, base::Day& into) {
  const auto day = base::parse_day(typed);
  if (!day) return day.faults();
  into = *day;
  return {};
}

Diagnostics read_typed(std::string_view typed, base::EdtfDate& into) {
  auto date = base::EdtfDate::parse(trimmed(typed));
  if (!date) return date.faults();
  into = std::move(date).value();
  return {};
}

Diagnostics read_typed(std::string_view typed, Sums& into) {
  constexpr std::string_view kTo = " to ";
  const std::size_t to = typed.find(kTo);
  Sums sums;
  if (to == std::string_view::npos) {
    if (auto faults = read_typed(typed, sums.low); !faults.empty()) return faults;
    into = std::move(sums);
    return {};
  }
  const auto high = money_of(typed.substr(to + kTo.size()));
  const auto low = high ? money_of(typed.substr(0, to), high->currency) : std::nullopt;
  if (!low || low->currency != high->currency) {
    return {base::error(quoted(typed) + " is neither a sum nor two of one currency",
                        "write 40 GBP, or 30 to 40 GBP")};
  }
  into = {*low, high};
  return {};
}

Diagnostics read_typed(std::string_view typed, Labelled& into) {
  constexpr std::size_t kLongestLabel = 24;
  const std::size_t colon = typed.find(':');
  if (colon == std::string_view::npos || colon > kLongestLabel) {
    into.label.clear();
    into.words = typed;
  } else {
    into.label = trimmed(typed.substr(0, colon));
    into.words = trimmed(typed.substr(colon + 1));
  }
  return {};
}

/// "fully" is 100, and so is "100".
std::optional<base::Decimal> degree_of(const std::string& typed) {
  const std::string word = base::in_small_letters(typed);
  for (const base::DegreeWord& one : base::kDegreeWords) {
    if (one.word == word) return base::Decimal(one.degree, 0);
  }
  const auto degree = base::Decimal::parse(typed);
  if (!degree || degree->places() > 0 || degree->units() < 0 || degree->units() > 100) return {};
  return *degree;
}

Diagnostics read_typed(std::string_view typed, Degree& into) {
  const std::size_t colon = typed.find(':');
  const auto degree = degree_of(trimmed(typed.substr(0, colon)));
  if (!degree) {
    return {base::error(quoted(typed) + " does not say how far it can be undone",
                        "write fully, mostly, partly or no, a colon, and how: \"fully: The old one "
                        "drops in.\"")};
  }
  into.degree = {*degree};
  into.words = colon == std::string_view::npos
                   ? std::string(base::degree_word(into.degree).sentence)
                   : trimmed(typed.substr(colon + 1));
  return {};
}

Diagnostics none_of(std::string_view typed, const std::vector<std::string>& words) {
  std::string list;
  for (const std::string& word : words)
    list += (list.empty() ? "" : ", ") + word;
  return {base::error(quoted(typed) + " is none of its words", "it is one of " + list)};
}

Diagnostics read_any_measure(std::string_view typed, base::Dimension wanted, base::Measure& into) {
  auto measure = base::parse_measure(typed, wanted);
  if (measure) {
    into = std::move(measure).value();
    return {};
  }
  Diagnostics faults = measure.faults();
  for (base::Diagnostic& fault : faults)
    fault.rule = kMeasureRule;
  return faults;
}

Diagnostics read_measure(std::string_view typed, base::Dimension wanted, base::Measure& into) {
  base::Measure measure;
  if (auto faults = read_any_measure(typed, wanted, measure); !faults.empty()) return faults;
  if (measure.value <= 0) {
    return {base::error(quoted(typed) + " is not above zero", "measure again", kMeasureRule)};
  }
  into = std::move(measure);
  return {};
}

}  // namespace winchbook::forms
