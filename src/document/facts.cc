#include "document/document.h"

namespace winchbook::document {

std::vector<Fact> facts(const Document& document) {
  std::vector<Fact> all;
  const auto add = [&](const std::vector<Fact>& told) {
    all.insert(all.end(), told.begin(), told.end());
  };
  add(document.tells);
  if (document.cover) add(document.cover->tells);
  for (const Chapter& chapter : document.chapters) {
    add(chapter.tells);
    for (const Block& block : chapter.blocks)
      add(block.tells);
  }
  return all;
}

}  // namespace winchbook::document
