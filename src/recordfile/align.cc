#include "recordfile/align.h"

#include <algorithm>
#include <string_view>

#include "recordfile/element_text.h"

namespace winchbook::recordfile {
namespace {

/// How much two elements are one; 0 when they cannot be. One that is the same in all outweighs any
/// number of those that only have the same name.
int likeness(const Aligned& one, const Aligned& other) {
  if (std::string_view(one.node.name()) != other.node.name() || one.id != other.id ||
      one.ref != other.ref) {
    return 0;
  }
  if (!one.id.empty() || one.text == other.text) return 10000;
  return !one.first.empty() && one.first == other.first ? 100 : 1;
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
void align_between(const std::vector<Aligned>& before, const std::vector<Aligned>& after,
                   Pair begin, Pair end, std::vector<Pair>& pairs) {
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

Aligned::Aligned(pugi::xml_node of)
    : node(of),
      id(of.attribute("id").value()),
      ref(of.attribute("ref").value()),
      text(written_on_one_line(of)) {
  if (of.first_child().type() == pugi::node_element) first = written_on_one_line(of.first_child());
}

std::vector<Pair> aligned(const std::vector<Aligned>& before, const std::vector<Aligned>& after) {
  const auto same = [](const Aligned& one, const Aligned& other) { return one.text == other.text; };
  const auto [head, ignored] =
      std::mismatch(before.begin(), before.end(), after.begin(), after.end(), same);
  const auto common = static_cast<std::size_t>(head - before.begin());
  const auto [tail, also_ignored] =
      std::mismatch(before.rbegin(), before.rend() - (head - before.begin()), after.rbegin(),
                    after.rend() - (head - before.begin()), same);
  const auto behind = static_cast<std::size_t>(tail - before.rbegin());
  std::vector<Pair> pairs;
  for (std::size_t i = 0; i < common; ++i)
    pairs.push_back({i, i});
  align_between(before, after, {common, common}, {before.size() - behind, after.size() - behind},
                pairs);
  for (std::size_t i = behind; i > 0; --i)
    pairs.push_back({before.size() - i, after.size() - i});
  return pairs;
}

}  // namespace winchbook::recordfile
