#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "answers/lines.h"
#include "answers/shelf.h"

namespace winchbook::answers {
namespace {

constexpr std::size_t kColumnsOfTable = 5;
using Row = std::array<std::string, kColumnsOfTable>;

std::string made_by(const ShelfReel& reel) {
  if (reel.maker.empty()) return reel.model.empty() ? reel.kind : reel.model;
  return reel.model.empty() ? reel.maker : reel.maker + ", " + reel.model;
}

std::string state_of(const ShelfReel& reel) {
  if (reel.taken_in.empty()) return "never here";
  return reel.handed_back.empty() ? "here since " + reel.taken_in : "back " + reel.handed_back;
}

Row row_of(const ShelfReel& reel) {
  std::string open;
  for (const std::string& one : reel.open)
    open += (open.empty() ? "" : "; ") + one;
  return {reel.name, made_by(reel), reel.owner.empty() ? "–" : reel.owner, state_of(reel), open};
}

std::string line_of(const ShelfFitting& fitting) {
  std::string text = fmt::format("    {} in {}", fitting.piece, fitting.place);
  if (!fitting.on.empty()) text += ", " + fitting.on;
  if (!fitting.donor.empty()) text += ", from " + fitting.donor;
  if (!fitting.bore.empty()) text += fmt::format(", seat bore {} mm", fitting.bore);
  if (!fitting.outside.empty()) {
    text += fmt::format(", {}outside {} mm", fitting.bore.empty() ? "seat " : "", fitting.outside);
  }
  return text + "\n";
}

std::string line_of(const Row& row, const std::array<std::size_t, kColumnsOfTable>& widths) {
  std::string line;
  for (std::size_t i = 0; i < row.size(); ++i) {
    line += row.at(i);
    line.append(widths.at(i) - columns_of(row.at(i)) + 2, ' ');
  }
  line.erase(line.find_last_not_of(' ') + 1);
  return line + "\n";
}

}  // namespace

std::string shelf_in_words(const Shelf& shelf, const ShelfRequest& request) {
  std::vector<Row> rows;
  std::array<std::size_t, kColumnsOfTable> widths{};
  for (const ShelfReel& reel : shelf.reels) {
    rows.push_back(row_of(reel));
    for (std::size_t i = 0; i < widths.size(); ++i)
      widths.at(i) = std::max(widths.at(i), columns_of(rows.back().at(i)));
  }
  std::string text;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const ShelfReel& reel = shelf.reels[i];
    text += line_of(rows[i], widths);
    text += "    " + reel.folder.string() + "\n";
    if (request.fitted.empty()) continue;
    for (const ShelfFitting& one : reel.fitted)
      text += line_of(one);
  }
  return text + fmt::format("{} of {} reel{}\n", shelf.reels.size(), shelf.looked,
                            shelf.looked == 1 ? "" : "s");
}

}  // namespace winchbook::answers
