#include "pdf/syntax.h"

#include <algorithm>
#include <charconv>
#include <cstddef>

namespace winchbook::pdf {
namespace {

constexpr std::string_view kHex = "0123456789ABCDEF";

void append_hex_byte(std::string& out, unsigned value) {
  out += kHex[value >> 4U & 15U];
  out += kHex[value & 15U];
}

void append_utf16_unit(std::string& out, unsigned unit) {
  out += static_cast<char>(unit >> 8U);
  out += static_cast<char>(unit & 0xFFU);
}

bool is_plain_ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return c >= ' ' && c <= '~'; });
}

}  // namespace

void append_number(std::string& out, std::int64_t value) {
  char digits[24];
  const auto end = std::to_chars(digits, digits + sizeof digits, value).ptr;
  out.append(digits, end);
}

void append_thousandths(std::string& out, std::int64_t thousandths) {
  if (thousandths < 0) {
    out += '-';
    thousandths = -thousandths;
  }
  if (thousandths >= 1000 || thousandths == 0) append_number(out, thousandths / 1000);
  std::int64_t rest = thousandths % 1000;
  if (rest == 0) return;
  out += '.';
  for (std::int64_t unit = 100; rest > 0; unit /= 10) {
    out += static_cast<char>('0' + rest / unit);
    rest %= unit;
  }
}

void append_length(std::string& out, base::Length length) {
  append_thousandths(out, length.thousandths);
}

std::string utf16(std::string_view utf8) {
  std::string out;
  out.reserve(2 * utf8.size());
  for (std::size_t i = 0; i < utf8.size();) {
    const auto lead = static_cast<unsigned char>(utf8[i]);
    const std::size_t length = lead < 0x80   ? 1
                               : lead < 0xC2 ? 0
                               : lead < 0xE0 ? 2
                               : lead < 0xF0 ? 3
                                             : 4;
    bool good = length > 0 && lead <= 0xF4 && i + length <= utf8.size();
    unsigned value = length > 1 ? lead & (0x7FU >> length) : lead;
    for (std::size_t k = 1; good && k < length; ++k) {
      const auto next = static_cast<unsigned char>(utf8[i + k]);
      good = (next & 0xC0U) == 0x80U;
      value = value << 6U | (next & 0x3FU);
    }
    if (!good) {
      append_utf16_unit(out, 0xFFFD);
      ++i;
      continue;
    }
    if (value >= 0x10000) {
      append_utf16_unit(out, 0xD800U | (value - 0x10000U) >> 10U);
      append_utf16_unit(out, 0xDC00U | ((value - 0x10000U) & 0x3FFU));
    } else {
      append_utf16_unit(out, value);
    }
    i += length;
  }
  return out;
}

void append_utf16_hex(std::string& out, std::string_view utf8) {
  for (const char byte : utf16(utf8))
    append_hex_byte(out, static_cast<unsigned char>(byte));
}

void append_text(std::string& out, std::string_view utf8) {
  if (!is_plain_ascii(utf8)) {
    out += "<FEFF";
    append_utf16_hex(out, utf8);
    out += '>';
    return;
  }
  out += '(';
  for (const char c : utf8)
    append_string_byte(out, static_cast<unsigned char>(c));
  out += ')';
}

void append_name(std::string& out, std::string_view name) {
  constexpr std::string_view kDelimiters = "()<>[]{}/%#";
  out += '/';
  for (const char c : name) {
    if (c > ' ' && c <= '~' && kDelimiters.find(c) == std::string_view::npos) {
      out += c;
    } else {
      out += '#';
      append_hex_byte(out, static_cast<unsigned char>(c));
    }
  }
}

}  // namespace winchbook::pdf
