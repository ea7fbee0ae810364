#pragma once

#include <string>
#include <string_view>
#include <vector>

/// What text is made of. Letters are those of ASCII and bytes beyond it are left alone; letters of
/// every script are `text`'s.
namespace winchbook::base {

/// Without the spaces, tabs and ends of lines around it.
[[nodiscard]] std::string_view trimmed(std::string_view text);

/// What stands between the separators, empty parts too: one more part than separators, and one
/// empty part of an empty text.
[[nodiscard]] std::vector<std::string_view> parts_of(std::string_view text, char separator);

/// The words that spaces, tabs and ends of lines keep apart; none is empty.
[[nodiscard]] std::vector<std::string_view> words_of(std::string_view text);

/// With plain spaces in the place of no-break ones, wide or narrow.
[[nodiscard]] std::string with_plain_spaces(std::string text);

[[nodiscard]] char in_small_letters(char letter);
[[nodiscard]] std::string in_small_letters(std::string_view text);
[[nodiscard]] char in_capitals(char letter);
[[nodiscard]] std::string in_capitals(std::string_view text);
/// The words with one space between two of them.
[[nodiscard]] std::string on_one_line(std::string_view text);

/// The words in small letters, kept apart by whatever is no letter, no figure and no byte beyond
/// ASCII.
[[nodiscard]] std::vector<std::string> plain_words_of(std::string_view text);

/// Whether a name says anything: two letters or figures at least, and no word for nothing
/// ("unknown", "not known", "none").
[[nodiscard]] bool says_something(std::string_view name);

/// Whether it is letters of A to Z alone, and one at least.
[[nodiscard]] bool is_capitals(std::string_view text);

}  // namespace winchbook::base
