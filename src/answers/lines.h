#pragma once

#include <cstddef>
#include <string>
#include <string_view>

/// Words on a terminal.
namespace winchbook::answers {

/// The widest line that answers use, in columns.
inline constexpr std::size_t kColumns = 100;

/// How many columns the text takes: its characters, as UTF-8.
[[nodiscard]] std::size_t columns_of(std::string_view text);
/// Words broken into lines of at most kColumns, all indented; ends with a line break.
[[nodiscard]] std::string broken_into_lines(std::string_view text, std::size_t indent = 0);
/// The same, with `lead` in front of the first line and the others indented as far.
[[nodiscard]] std::string with_hanging_lead(std::string_view lead, std::string_view text);
/// A blank line, the heading, and a rule as long as it.
[[nodiscard]] std::string ruled_heading(std::string_view text);

}  // namespace winchbook::answers
