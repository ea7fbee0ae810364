#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/length.h"

/// The written forms of PDF's own values (ISO 32000-1, 7.3), appended to a string.
namespace winchbook::pdf {

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
/// A name with its slash; characters outside the regular ones are written #xx.
void append_name(std::string& out, std::string_view name);

}  // namespace winchbook::pdf
