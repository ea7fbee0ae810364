#include "answers/figures.h"

#include <charconv>

#include "base/words_of_text.h"

namespace winchbook::answers {
namespace {

constexpr const char* kRule = "command-measure";

std::optional<double> number(std::string_view text) {
  text = base::trimmed(text);
  double value = 0;
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, value, std::chars_format::fixed);
  const bool plain = text.find_first_not_of("0123456789.") == std::string_view::npos;
  if (!plain || read.ec != std::errc() || read.ptr != end) return std::nullopt;
  return value;
}

std::string quoted(std::string_view typed) {
  return "\"" + std::string(typed) + "\"";
}

}  // namespace

base::Diagnostics read_typed(std::string_view typed, Gearing& into) {
  const std::size_t colon = typed.find(':');
  const auto first = number(typed.substr(0, colon));
  const auto second =
      colon == std::string_view::npos ? std::optional(1.0) : number(typed.substr(colon + 1));
  if (!first || !second || *first <= 0 || *second <= 0) {
    return {base::error(quoted(typed) + " is not a ratio",
                        "write turns of the spool for one of the handle, 3:1, or teeth of gear and "
                        "pinion, 48:12",
                        kRule)};
  }
  into.ratio = *first / *second;
  return {};
}

base::Diagnostics read_typed(std::string_view typed, NumberRange& into) {
  const std::size_t dots = typed.find("..");
  const auto low = number(typed.substr(0, dots));
  const auto high = dots == std::string_view::npos ? low : number(typed.substr(dots + 2));
  if (!low || !high) {
    return {base::error(quoted(typed) + " is neither a number nor a range",
                        "write 0.2, or 0.15..0.25", kRule)};
  }
  into = {*low, *high};
  return {};
}

base::Diagnostics missing_among(const std::vector<NeededLength>& needed) {
  base::Diagnostics faults;
  for (const NeededLength& one : needed) {
    if (one.typed) continue;
    faults.push_back(base::of_command(
        base::error(std::string(one.option) + ": is missing",
                    "give it with its unit: " + base::units_of(base::Dimension::length), kRule)));
  }
  return faults;
}

}  // namespace winchbook::answers
