#include <utility>

#include "answers/shelf.h"

namespace winchbook::answers {
namespace {

std::string state_of(const ShelfReel& reel, const words::Catalogue& words) {
  if (reel.taken_in.empty()) return words.say("answer.shelf.never-here");
  return reel.handed_back.empty() ? words.say("answer.shelf.here", {{"day", reel.taken_in}})
                                  : words.say("answer.shelf.back", {{"day", reel.handed_back}});
}

std::vector<std::string> cells_of(const ShelfReel& reel, const words::Catalogue& words) {
  std::string made_by = words.joined("join.comma", {reel.maker, reel.model});
  if (made_by.empty()) made_by = reel.kind;
  return {reel.name, std::move(made_by), reel.owner.empty() ? "–" : reel.owner,
          state_of(reel, words), words.joined("join.semicolon", reel.open)};
}

std::string line_of(const ShelfFitting& fitting, const words::Catalogue& words) {
  std::vector<std::string> parts{
      words.say("answer.shelf.fitted", {{"piece", fitting.piece}, {"place", fitting.place}}),
      fitting.on};
  if (!fitting.donor.empty())
    parts.push_back(words.say("answer.shelf.donor", {{"donor", fitting.donor}}));
  if (!fitting.bore.empty())
    parts.push_back(words.say("answer.shelf.bore", {{"bore", fitting.bore}}));
  if (!fitting.outside.empty()) {
    parts.push_back(
        words.say(fitting.bore.empty() ? "answer.shelf.seat-outside" : "answer.shelf.outside",
                  {{"outside", fitting.outside}}));
  }
  return words.joined("join.comma", parts);
}

}  // namespace

Blocks shelf_told(const Shelf& shelf, bool with_fitted, const words::Catalogue& words) {
  document::Table reels;
  reels.columns.resize(5);
  reels.columns.front().row_name = true;
  const auto below = [&](const std::string& text) {
    reels.rows.push_back(row_of({"  " + text}));
    reels.rows.back().cells.front().columns = 5;
  };
  for (const ShelfReel& reel : shelf.reels) {
    reels.rows.push_back(row_of(cells_of(reel, words)));
    below(reel.folder.string());
    if (!with_fitted) continue;
    for (const ShelfFitting& one : reel.fitted)
      below(line_of(one, words));
  }
  Blocks blocks;
  if (!reels.rows.empty()) blocks.emplace_back(std::move(reels));
  blocks.emplace_back(
      next_line(words.say("answer.shelf.count", {{"shown", fmt::format("{}", shelf.reels.size())},
                                                 {"one", shelf.looked == 1 ? "one" : "other"},
                                                 {"looked", fmt::format("{}", shelf.looked)}})));
  return blocks;
}

}  // namespace winchbook::answers
