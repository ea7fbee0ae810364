#include "answers/lines.h"

#include <fmt/format.h>

#include <algorithm>

namespace winchbook::answers {

std::size_t columns_of(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
  }));
}

std::string broken_into_lines(std::string_view text, std::size_t indent) {
  std::string out(indent, ' ');
  std::size_t column = indent;
  while (!text.empty()) {
    const std::size_t space = text.find(' ');
    const std::string_view word = text.substr(0, space);
    text = space == std::string_view::npos ? std::string_view() : text.substr(space + 1);
    if (column > indent && column + 1 + columns_of(word) > kColumns) {
      out += "\n" + std::string(indent, ' ');
      column = indent;
    }
    if (column > indent) {
      out += ' ';
      ++column;
    }
    out += word;
    column += columns_of(word);
  }
  return out + "\n";
}

std::string with_hanging_lead(std::string_view lead, std::string_view text) {
  std::string lines = broken_into_lines(text, columns_of(lead));
  return lines.replace(0, columns_of(lead), lead);
}

std::string ruled_heading(std::string_view text) {
  return fmt::format("\n{}\n{}\n", text, std::string(columns_of(text), '-'));
}

}  // namespace winchbook::answers
