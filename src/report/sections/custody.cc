#include "report/provenance.h"
#include "report/sections.h"

namespace winchbook::report {

std::optional<document::Chapter> tell_custody(const Telling& telling) {
  if (telling.record.custody.empty()) return std::nullopt;
  document::Chapter chapter = telling.chapter("custody");
  document::Notes notes;
  document::Paragraph paragraph{provenance(telling, notes.notes)};
  paragraph.beside.emplace_back(document::SideNote{provenance_key(telling)});
  chapter.blocks.emplace_back(std::move(paragraph));
  chapter.blocks.emplace_back(telling.sentence(stays_at_bench(telling)));
  if (!notes.notes.empty()) chapter.blocks.emplace_back(std::move(notes));
  return chapter;
}

}  // namespace winchbook::report
