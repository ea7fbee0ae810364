#include "document/text.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "base/words_of_text.h"

namespace winchbook::document {

Text plain(std::string words) {
  Text text;
  if (!words.empty()) text.parts.emplace_back(Run{std::move(words)});
  return text;
}

Text in_lines(std::string_view words) {
  Text text;
  bool first = true;
  for (const std::string_view line : base::parts_of(words, '\n')) {
    if (!first) text.parts.emplace_back(LineEnd{});
    if (!line.empty()) text.parts.emplace_back(Run{std::string(line)});
    first = false;
  }
  return text;
}

void append(Text& text, Text more) {
  std::move(more.parts.begin(), more.parts.end(), std::back_inserter(text.parts));
}

Text with_lead(std::string lead, std::string words) {
  Text text;
  Run bold{std::move(lead)};
  bold.bold = true;
  text.parts.emplace_back(std::move(bold));
  if (!words.empty()) text.parts.emplace_back(Run{" " + std::move(words)});
  return text;
}

std::string spoken(const Text& text) {
  std::string words;
  for (const Inline& part : text.parts) {
    if (const auto* run = std::get_if<Run>(&part)) {
      words += run->text;
    } else if (const auto* sign = std::get_if<SignRun>(&part)) {
      words += sign->spoken;
    } else if (const auto* note = std::get_if<NoteMark>(&part)) {
      words += std::to_string(note->number);
    } else {
      words += ' ';
    }
  }
  return words;
}

}  // namespace winchbook::document
