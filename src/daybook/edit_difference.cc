#include "daybook/edit_difference.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <utility>

namespace winchbook::daybook {
namespace {

constexpr std::size_t kContext = 2;

/// Lines with their ends cut off.
std::vector<std::string_view> lines_of(std::string_view text) {
  std::vector<std::string_view> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    std::string_view line = text.substr(0, end);
    if (line.ends_with('\r')) line.remove_suffix(1);
    lines.push_back(line);
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return lines;
}

std::size_t line_begin(std::string_view bytes, std::size_t at) {
  const std::size_t before = at == 0 ? std::string_view::npos : bytes.rfind('\n', at - 1);
  return before == std::string_view::npos ? 0 : before + 1;
}

std::size_t line_end(std::string_view bytes, std::size_t at) {
  const std::size_t end = bytes.find('\n', at);
  return end == std::string_view::npos ? bytes.size() : end + 1;
}

/// A run of splices whose whole lines touch.
struct Region {
  std::size_t begin = 0;
  std::size_t end = 0;
  std::vector<xml::Splice> splices;
};

std::vector<Region> regions_of(std::string_view bytes, const std::vector<xml::Splice>& splices) {
  std::vector<Region> regions;
  for (const xml::Splice& splice : splices) {
    const std::size_t begin = line_begin(bytes, splice.begin);
    const bool whole_lines = splice.begin == splice.end && begin == splice.begin;
    const std::size_t end = whole_lines ? begin : line_end(bytes, splice.end);
    if (regions.empty() || begin > regions.back().end ||
        (begin == regions.back().end && whole_lines)) {
      regions.push_back({begin, end, {}});
    }
    regions.back().end = std::max(regions.back().end, end);
    regions.back().splices.push_back(splice);
  }
  return regions;
}

std::string told(std::string_view bytes, const Region& region) {
  const std::string_view old = bytes.substr(region.begin, region.end - region.begin);
  std::vector<xml::Splice> shifted = region.splices;
  for (xml::Splice& one : shifted) {
    one.begin -= region.begin;
    one.end -= region.begin;
  }
  const std::string fresh = xml::spliced(old, std::move(shifted));
  const auto gone = lines_of(old);
  const auto come = lines_of(fresh);
  const std::size_t most = std::min(gone.size(), come.size());
  std::size_t head = 0;
  while (head < most && gone[head] == come[head])
    ++head;
  std::size_t tail = 0;
  while (tail < most - head && gone[gone.size() - 1 - tail] == come[come.size() - 1 - tail])
    ++tail;

  auto above = lines_of(bytes.substr(0, region.begin));
  const std::size_t line = above.size() + head + 1;
  above.insert(above.end(), gone.begin(), gone.begin() + static_cast<std::ptrdiff_t>(head));
  std::vector<std::string_view> below(gone.end() - static_cast<std::ptrdiff_t>(tail), gone.end());
  const auto rest = lines_of(bytes.substr(region.end).substr(0, 4096));
  below.insert(below.end(), rest.begin(), rest.end());
  std::string text = fmt::format("@@ line {} @@\n", line);
  for (std::size_t i = above.size() - std::min(kContext, above.size()); i < above.size(); ++i)
    text += fmt::format("  {}\n", above[i]);
  for (std::size_t i = head; i < gone.size() - tail; ++i)
    text += fmt::format("- {}\n", gone[i]);
  for (std::size_t i = head; i < come.size() - tail; ++i)
    text += fmt::format("+ {}\n", come[i]);
  for (std::size_t i = 0; i < std::min(kContext, below.size()); ++i)
    text += fmt::format("  {}\n", below[i]);
  return text;
}

}  // namespace

std::string difference(std::string_view bytes, std::vector<xml::Splice> splices) {
  std::stable_sort(splices.begin(), splices.end(),
                   [](const auto& one, const auto& other) { return one.begin < other.begin; });
  std::string text;
  for (const Region& region : regions_of(bytes, splices))
    text += told(bytes, region);
  return text;
}

std::string difference(std::string_view before, std::string_view after) {
  const std::size_t most = std::min(before.size(), after.size());
  const auto differs = std::mismatch(
      before.begin(), before.begin() + static_cast<std::ptrdiff_t>(most), after.begin());
  const std::size_t head =
      line_begin(before, static_cast<std::size_t>(differs.first - before.begin()));
  std::size_t tail = 0;
  while (tail < most - head && before[before.size() - 1 - tail] == after[after.size() - 1 - tail])
    ++tail;
  return difference(before, {{head, before.size() - tail,
                              std::string(after.substr(head, after.size() - tail - head))}});
}

}  // namespace winchbook::daybook
