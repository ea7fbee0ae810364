#include "cli/measures.h"

#include <fmt/format.h>

#include <charconv>
#include <ostream>
#include <utility>

namespace winchbook::cli {
namespace {

std::optional<double> number(std::string_view text) {
  while (text.starts_with(' '))
    text.remove_prefix(1);
  while (text.ends_with(' '))
    text.remove_suffix(1);
  double value = 0;
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, value, std::chars_format::fixed);
  const bool plain = text.find_first_not_of("0123456789.") == std::string_view::npos;
  if (!plain || read.ec != std::errc() || read.ptr != end) return std::nullopt;
  return value;
}

}  // namespace

void Measures::tell(std::string_view option, std::string message, std::string hint) {
  faults_.push_back(
      base::error(fmt::format("{}: {}", option, message), std::move(hint), "command-measure"));
}

std::optional<base::Measure> Measures::given(std::string_view option, const std::string& text,
                                             base::Dimension dimension, bool may_be_below) {
  if (text.empty()) return std::nullopt;
  auto measure = base::parse_measure(text, dimension);
  if (!measure) {
    for (const base::Diagnostic& fault : measure.faults())
      tell(option, fault.message, fault.hint);
    return std::nullopt;
  }
  if (!may_be_below && measure->value <= 0) {
    tell(option, fmt::format("\"{}\" is not above zero", text), "measure again");
    return std::nullopt;
  }
  if (!measure->assumed.empty()) {
    assumed_.push_back(fmt::format("{}: {}", option, measure->assumed));
  }
  return std::move(measure).value();
}

base::Measure Measures::needed_measure(std::string_view option, const std::string& text,
                                       base::Dimension dimension) {
  if (text.empty()) {
    tell(option, "is missing", "give it with its unit: " + base::units_of(dimension));
  }
  return given(option, text, dimension).value_or(base::Measure{});
}

double Measures::needed(std::string_view option, const std::string& text,
                        base::Dimension dimension) {
  return needed_measure(option, text, dimension).value;
}

double Measures::ratio(std::string_view option, const std::string& text) {
  if (text.empty()) return 1;
  const std::size_t colon = text.find(':');
  const auto first = number(std::string_view(text).substr(0, colon));
  const auto second = colon == std::string::npos ? std::optional(1.0)
                                                 : number(std::string_view(text).substr(colon + 1));
  if (first && second && *first > 0 && *second > 0) return *first / *second;
  tell(option, fmt::format("\"{}\" is not a ratio", text),
       "write turns of the spool for one of the handle, 3:1, or teeth of gear and pinion, 48:12");
  return 1;
}

std::optional<std::pair<double, double>> Measures::range(std::string_view option,
                                                         const std::string& text) {
  if (text.empty()) return std::nullopt;
  const std::size_t dots = text.find("..");
  const auto low = number(std::string_view(text).substr(0, dots));
  const auto high =
      dots == std::string::npos ? low : number(std::string_view(text).substr(dots + 2));
  if (low && high) return std::pair(*low, *high);
  tell(option, fmt::format("\"{}\" is neither a number nor a range", text),
       "write 0.2, or 0.15..0.25");
  return std::nullopt;
}

Exit wrong_command(const base::Diagnostics& faults, std::ostream& err) {
  for (const base::Diagnostic& fault : faults)
    err << base::to_string(fault);
  return kCommandLineWrong;
}

}  // namespace winchbook::cli
