#include <utility>

#include "report/sections.h"
#include "report/statement.h"

namespace winchbook::report {
namespace {

document::Pair pair_of(const Telling& telling, const PairOfPictures& pictures) {
  document::Pair pair;
  if (pictures.found != nullptr)
    pair.found = telling.figure(*pictures.found, document::Width::main);
  if (pictures.left != nullptr) pair.left = telling.figure(*pictures.left, document::Width::main);
  pair.not_photographed = telling.words.say("pair.not-photographed");
  return pair;
}

}  // namespace

std::optional<document::Chapter> tell_statement_photographs(const Telling& telling) {
  const auto& marks = telling.pictures.of("statement-photographs");
  if (marks.empty() && telling.pictures.pairs.empty()) return std::nullopt;
  document::Chapter chapter = telling.chapter("statement-photographs");
  chapter.stand_first = telling.words.say("statement-photographs.answer");
  if (!marks.empty()) {
    chapter.blocks.emplace_back(ruled_subhead(telling, "statement.photographs-of-marks"));
    document::FigureRow row;
    for (const record::Photo* photo : marks)
      row.figures.push_back(telling.figure(*photo, document::Width::side));
    chapter.blocks.emplace_back(std::move(row));
  }
  if (!telling.pictures.pairs.empty()) {
    chapter.blocks.emplace_back(ruled_subhead(telling, "statement.photographs-before-after"));
    for (const PairOfPictures& pair : telling.pictures.pairs)
      chapter.blocks.emplace_back(pair_of(telling, pair));
  }
  return chapter;
}

}  // namespace winchbook::report
