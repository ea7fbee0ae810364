#pragma once

#include <concepts>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "base/decimal.h"
#include "base/edtf_date.h"
#include "base/enum_words.h"
#include "base/measure.h"

/// Reading what somebody typed into a value. Each gives its faults without the name of the field;
/// with a fault the value is left as it was.
namespace winchbook::forms {

[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, std::string& into);
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, std::filesystem::path& into);
/// A whole number, 1 to 1,000,000.
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, int& into);
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, base::Decimal& into);
/// "40 GBP", "40.00 GBP": an amount and its ISO 4217 code; two places are added to a whole amount.
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, base::Money& into);
/// "2026-06-19".
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, base::Day& into);
/// EDTF: "1948", "1962~", "1940/1950".
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, base::EdtfDate& into);

/// One sum or two of one currency: "40 GBP", "30 to 40 GBP", "30 GBP to 40 GBP".
struct Sums {
  base::Money low;
  std::optional<base::Money> high;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, Sums& into);

/// Words behind a lead and a colon: "Springs: cover it". No lead, when none of up to 24 characters
/// stands before a colon.
struct Labelled {
  std::string label;
  std::string words;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, Labelled& into);

/// How far something can be undone: "fully: The old one drops in.", a word of
/// `base::kDegreeWords` or a whole number of 0 to 100 first.
struct Degree {
  base::Percent degree;
  std::string words;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, Degree& into);

/// A length, force or mass above zero with its unit: "22 mm", "7/8 in".
template <base::Dimension wanted> struct Measured { base::Measure measure; };
/// The same where it may be zero or below: how far something stands under a rim.
template <base::Dimension wanted> struct MeasuredFromZero { base::Measure measure; };
[[nodiscard]] base::Diagnostics read_any_measure(std::string_view typed, base::Dimension wanted,
                                                 base::Measure& into);
[[nodiscard]] base::Diagnostics read_measure(std::string_view typed, base::Dimension wanted,
                                             base::Measure& into);
template <base::Dimension wanted>
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, Measured<wanted>& into) {
  return read_measure(typed, wanted, into.measure);
}
template <base::Dimension wanted>
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, MeasuredFromZero<wanted>& into) {
  return read_any_measure(typed, wanted, into.measure);
}

template <class Unit>
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, base::Quantity<Unit>& into) {
  return read_typed(typed, into.value);
}

/// Of what was typed and is none of these words.
[[nodiscard]] base::Diagnostics none_of(std::string_view typed,
                                        const std::vector<std::string>& words);

template <class Value> struct Inside { using Type = Value; };
template <class Value> struct Inside<std::optional<Value>> { using Type = Value; };

/// The words a value of this type may be; empty: there is no such list.
template <class Value> [[nodiscard]] std::vector<std::string> words_of_type() {
  std::vector<std::string> words;
  using Type = typename Inside<Value>::Type;
  if constexpr (std::is_enum_v<Type>) {
    for (const auto& one : enum_words(Type{}))
      words.emplace_back(one.word);
  }
  return words;
}

/// A word of a closed list.
template <class Value>
requires std::is_enum_v<Value>
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, Value& into) {
  for (const auto& one : enum_words(Value{})) {
    if (one.word != typed) continue;
    into = one.value;
    return {};
  }
  return none_of(typed, words_of_type<Value>());
}

template <class Value>
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, std::optional<Value>& into) {
  Value value{};
  base::Diagnostics faults = read_typed(typed, value);
  if (faults.empty()) into = std::move(value);
  return faults;
}

}  // namespace winchbook::forms
