#include "daybook/sums.h"

namespace winchbook::daybook {
namespace {

std::string trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(' ') - first + 1));
}

}  // namespace

Sums read_sums(std::string_view text) {
  const std::size_t to = text.find(" to ");
  if (to == std::string_view::npos) return {trimmed(text), {}};
  Sums sums{trimmed(text.substr(0, to)), trimmed(text.substr(to + 4))};
  const std::size_t currency = sums.high.rfind(' ');
  if (currency != std::string::npos && sums.low.find(' ') == std::string::npos) {
    sums.low += sums.high.substr(currency);
  }
  return sums;
}

}  // namespace winchbook::daybook
