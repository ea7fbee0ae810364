#include <utility>

#include "report/sections.h"

namespace winchbook::report {

std::optional<document::Chapter> tell_before_and_after(const Telling& telling) {
  if (telling.pictures.pairs.empty()) return std::nullopt;
  document::Chapter chapter = telling.chapter("before-and-after");
  for (const PairOfPictures& pictures : telling.pictures.pairs) {
    document::Pair pair;
    if (pictures.found != nullptr) {
      pair.found = telling.figure(*pictures.found, document::Width::full);
    }
    if (pictures.left != nullptr) {
      pair.left = telling.figure(*pictures.left, document::Width::full);
    }
    pair.not_photographed = telling.words.say("pair.not-photographed");
    chapter.blocks.emplace_back(std::move(pair));
  }
  return chapter;
}

std::optional<document::Chapter> tell_other_photographs(const Telling& telling) {
  const auto& pictures = telling.pictures.of("other-photographs");
  if (pictures.empty()) return std::nullopt;
  document::Chapter chapter = telling.chapter("other-photographs");
  document::FigureRow row;
  for (const record::Photo* photo : pictures) {
    row.figures.push_back(telling.figure(*photo, document::Width::side));
    if (row.figures.size() == 3) chapter.blocks.emplace_back(std::exchange(row, {}));
  }
  if (!row.figures.empty()) chapter.blocks.emplace_back(std::move(row));
  return chapter;
}

}  // namespace winchbook::report
