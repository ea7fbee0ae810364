#include "layout/characters.h"

namespace winchbook::layout {

char32_t next_character(std::string_view utf8, std::size_t& offset) {
  const auto byte = [&](std::size_t at) {
    return at < utf8.size() ? static_cast<unsigned char>(utf8[at]) : 0U;
  };
  const unsigned first = byte(offset);
  const int more = first < 0x80 ? 0 : first < 0xC0 ? -1 : first < 0xE0 ? 1 : first < 0xF0 ? 2 : 3;
  if (more < 0) {
    ++offset;
    return 0xFFFD;
  }
  char32_t character = more == 0 ? first : first & (0x3FU >> more);
  ++offset;
  for (int i = 0; i < more; ++i) {
    if ((byte(offset) & 0xC0U) != 0x80U) return 0xFFFD;
    character = (character << 6) | (byte(offset) & 0x3FU);
    ++offset;
  }
  return character;
}

bool leaves_no_mark(char32_t character) {
  return character <= 0x20 || character == 0xA0 || character == 0xAD || character == 0x34F ||
         (character >= 0x2000 && character <= 0x200F) ||
         (character >= 0x2028 && character <= 0x202F) ||
         (character >= 0x205F && character <= 0x206F) || character == 0x3000 ||
         (character >= 0xFE00 && character <= 0xFE0F) || character == 0xFEFF;
}

bool vanishes_at_line_end(char32_t character) {
  return character == ' ' || character == '\t' || character == '\n' || character == '\r' ||
         (character >= 0x2000 && character <= 0x200B && character != 0x2007) ||
         character == 0x2028 || character == 0x2029 || character == 0x3000;
}

}  // namespace winchbook::layout
