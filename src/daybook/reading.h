#pragma once

#include <string>

namespace winchbook::daybook {

/// A reading as the record holds it: figures in a unit, or words.
struct Reading {
  std::string low;
  std::string high;
  std::string unit;
  std::string words;
};

/// "9 s", "3 to 22 N", "silent". Forces and lengths in other units are reckoned into N and mm
/// (base/measure.h), to hundredths; a reading that names no unit is in this one.
[[nodiscard]] Reading read_reading(std::string text, const std::string& unit);

}  // namespace winchbook::daybook
