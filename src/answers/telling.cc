#include "answers/telling.h"

#include <utility>

namespace winchbook::answers {

document::Paragraph paragraph(std::string_view words) {
  return {document::in_lines(words), document::ParagraphManner::unindented};
}

document::Paragraph next_line(std::string_view words) {
  return {document::in_lines(words), document::ParagraphManner::small};
}

document::List list_of(const std::vector<std::string>& items) {
  document::List list;
  for (const std::string& item : items)
    list.items.push_back(document::in_lines(item));
  return list;
}

document::Row row_of(const std::vector<std::string>& cells) {
  document::Row row;
  for (const std::string& cell : cells)
    row.cells.push_back({document::plain(cell)});
  return row;
}

base::Result<forms::Outcome> tell(forms::Setting& setting, std::string_view language,
                                  const std::function<Blocks(const words::Catalogue&)>& blocks) {
  const auto words = setting.library.words(language);
  if (!words) return words.faults();
  document::Document answer;
  answer.language = words->language();
  answer.chapters.emplace_back().blocks = blocks(*words);
  forms::Outcome outcome;
  outcome.told = std::move(answer);
  return outcome;
}

}  // namespace winchbook::answers
