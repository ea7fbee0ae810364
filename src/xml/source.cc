#include "xml/source.h"

#include <algorithm>
#include <utility>

namespace winchbook::xml {

Source::Source(std::string file, std::string bytes)
    : file_(std::move(file)), bytes_(std::move(bytes)), line_starts_{0} {
  for (std::size_t at = bytes_.find('\n'); at != std::string::npos;
       at = bytes_.find('\n', at + 1)) {
    line_starts_.push_back(at + 1);
  }
}

base::Location Source::where(std::size_t offset) const {
  offset = std::min(offset, bytes_.size());
  const auto after = std::upper_bound(line_starts_.begin(), line_starts_.end(), offset);
  const auto line = after - line_starts_.begin();
  const auto begin = bytes_.begin() + static_cast<std::ptrdiff_t>(*(after - 1));
  const auto end = bytes_.begin() + static_cast<std::ptrdiff_t>(offset);
  const auto characters = std::count_if(
      begin, end, [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; });
  return {file_, static_cast<int>(line), static_cast<int>(characters) + 1};
}

std::size_t Source::line_start(int line) const {
  const auto index = static_cast<std::size_t>(std::max(line, 1) - 1);
  return index < line_starts_.size() ? line_starts_[index] : bytes_.size();
}

}  // namespace winchbook::xml
