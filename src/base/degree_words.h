#pragma once

#include <array>
#include <string_view>

#include "base/decimal.h"

namespace winchbook::base {

/// How far something can be undone, in the words by which it is typed and printed.
struct DegreeWord {
  std::string_view word;
  std::string_view sentence;  ///< what a record holds where nothing more was typed
  int degree;                 ///< what a record holds where the word was typed
  int from;                   ///< the least degree that is printed so; nothing but 0 is "no"
};

inline constexpr std::array kDegreeWords{
    DegreeWord{"fully", "Fully.", 100, 100},
    DegreeWord{"mostly", "Mostly.", 75, 50},
    DegreeWord{"partly", "Partly.", 25, 0},
    DegreeWord{"no", "No.", 0, 0},
};

/// The word for a degree of 0 to 100. Example: 90 is "mostly".
[[nodiscard]] inline const DegreeWord& degree_word(const Percent& degree) {
  if (degree.value == Decimal(0, 0)) return kDegreeWords.back();
  for (const DegreeWord& one : kDegreeWords) {
    if (!(degree.value < Decimal(one.from, 0))) return one;
  }
  return kDegreeWords.back();
}

}  // namespace winchbook::base
