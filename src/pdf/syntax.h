#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/length.h"

/// The written forms of PDF's own values (ISO 32000-1, 7.3), appended to a string.
namespace winchbook::pdf {

/// a / b rounded to the nearest integer, halves away from zero; b is positive.
[[nodiscard]] constexpr std::int64_t rounded_quotient(std::int64_t a, std::int64_t b) {
  return (a >= 0 ? a + b / 2 : a - b / 2) / b;
}
/// An integer.
void append_number(std::string& out, std::int64_t value);
/// `thousandths` / 1000 with no more than three decimals and no needless zeros: "-0.5", "12".
void append_thousandths(std::string& out, std::int64_t thousandths);
/// A length in points, followed by nothing.
void append_length(std::string& out, base::Length length);
/// UTF-16BE without byte order mark; bytes that are no UTF-8 become U+FFFD.
[[nodiscard]] std::string utf16(std::string_view utf8);
/// A text string: literal when it is plain ASCII, else UTF-16BE in hexadecimal with byte order
/// mark. Bytes that are no UTF-8 become U+FFFD.
void append_text(std::string& out, std::string_view utf8);
/// utf16() in upper-case hexadecimal, without angle brackets or byte order mark.
void append_utf16_hex(std::string& out, std::string_view utf8);
/// One byte of a literal string, escaped where it has to be.
inline void append_string_byte(std::string& out, unsigned byte) {
  const char c = static_cast<char>(byte);
  if (c == '(' || c == ')' || c == '\\') out += '\\';
  if (c == '\r') {  // read as a line feed otherwise
    out += "\\r";
  } else {
    out += c;
  }
}
/// A name with its slash; characters outside the regular ones are written #xx.
void append_name(std::string& out, std::string_view name);

}  // namespace winchbook::pdf
