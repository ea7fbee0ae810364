#include "recordfile/align.h"

#include <algorithm>
#include <string_view>

namespace winchbook::recordfile {
namespace {

using Nodes = std::vector<pugi::xml_node>;

bool same_attribute(pugi::xml_node one, pugi::xml_node other, const char* name) {
  return std::string_view(one.attribute(name).value()) == other.attribute(name).value();
}

/// How much two elements are one; 0 when they cannot be. One that is the same in all outweighs any
/// number of those that only have the same name.
int likeness(pugi::xml_node one, pugi::xml_node other) {
  if (std::string_view(one.name()) != other.name() || !same_attribute(one, other, "id") ||
      !same_attribute(one, other, "ref")) {
    return 0;
  }
  if (one.attribute("id") || same(one, other)) return 10000;
  const pugi::xml_node first = one.first_child();
  return first.type() == pugi::node_element && same(first, other.first_child()) ? 100 : 1;
}

/// What the best pairing of the elements from `before` and `after` on is worth.
class Table {
 public:
  Table(std::size_t before, std::size_t after)
      : width_(after + 1), cells_((before + 1) * (after + 1), 0) {}
  int& at(std::size_t before, std::size_t after) { return cells_[before * width_ + after]; }

 private:
  std::size_t width_;
  std::vector<int> cells_;
};

/// The pairs of two stretches that have nothing in common at their ends.
void align_between(const Nodes& before, const Nodes& after, Pair begin, Pair end,
                   std::vector<Pair>& pairs) {
  const std::size_t rows = *end.before - *begin.before;
  const std::size_t columns = *end.after - *begin.after;
  const auto like = [&](std::size_t row, std::size_t column) {
    return likeness(before[*begin.before + row], after[*begin.after + column]);
  };
  Table worth(rows, columns);
  for (std::size_t row = rows; row-- > 0;) {
    for (std::size_t column = columns; column-- > 0;) {
      const int paired = like(row, column);
      worth.at(row, column) = std::max({worth.at(row + 1, column), worth.at(row, column + 1),
                                        paired == 0 ? 0 : paired + worth.at(row + 1, column + 1)});
    }
  }
  std::size_t row = 0;
  std::size_t column = 0;
  while (row < rows || column < columns) {
    const int paired = row < rows && column < columns ? like(row, column) : 0;
    const std::size_t one = *begin.before + row;
    const std::size_t other = *begin.after + column;
    if (paired > 0 && worth.at(row, column) == paired + worth.at(row + 1, column + 1)) {
      pairs.push_back({one, other});
      ++row;
      ++column;
    } else if (row < rows && worth.at(row, column) == worth.at(row + 1, column)) {
      pairs.push_back({one, std::nullopt});
      ++row;
    } else {
      pairs.push_back({std::nullopt, other});
      ++column;
    }
  }
}

}  // namespace

bool same(pugi::xml_node one, pugi::xml_node other) {
  if (one.type() != other.type() || std::string_view(one.name()) != other.name() ||
      std::string_view(one.value()) != other.value() || !same_attribute(one, other, "id") ||
      !same_attribute(one, other, "ref")) {
    return false;
  }
  pugi::xml_node part = one.first_child();
  pugi::xml_node twin = other.first_child();
  while (part && twin && same(part, twin)) {
    part = part.next_sibling();
    twin = twin.next_sibling();
  }
  return !part && !twin;
}

std::vector<Pair> aligned(const Nodes& before, const Nodes& after) {
  const auto [head, ignored] =
      std::mismatch(before.begin(), before.end(), after.begin(), after.end(), same);
  const auto common = static_cast<std::size_t>(head - before.begin());
  const auto [tail, also_ignored] =
      std::mismatch(before.rbegin(), before.rend() - (head - before.begin()), after.rbegin(),
                    after.rend() - (head - before.begin()), same);
  const auto behind = static_cast<std::size_t>(tail - before.rbegin());
  std::vector<Pair> pairs;
  for (std::size_t i = 0; i < common; ++i)
    pairs.push_back({i, i, true});
  align_between(before, after, {common, common}, {before.size() - behind, after.size() - behind},
                pairs);
  for (std::size_t i = behind; i > 0; --i)
    pairs.push_back({before.size() - i, after.size() - i, true});
  return pairs;
}

}  // namespace winchbook::recordfile
