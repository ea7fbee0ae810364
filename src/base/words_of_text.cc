#include "base/words_of_text.h"

#include <fmt/format.h>

#include <algorithm>

namespace winchbook::base {
namespace {

constexpr std::string_view kBlanks = " \t\r\n";

}  // namespace

std::string_view trimmed(std::string_view text) {
  const std::size_t first = std::min(text.find_first_not_of(kBlanks), text.size());
  text.remove_prefix(first);
  return text.substr(0, text.find_last_not_of(kBlanks) + 1);
}

std::vector<std::string_view> parts_of(std::string_view text, char separator) {
  std::vector<std::string_view> parts;
  for (;;) {
    const std::size_t end = text.find(separator);
    parts.push_back(text.substr(0, end));
    if (end == std::string_view::npos) return parts;
    text.remove_prefix(end + 1);
  }
}

std::vector<std::string_view> words_of(std::string_view text) {
  std::vector<std::string_view> words;
  for (text = trimmed(text); !text.empty(); text = trimmed(text)) {
    words.push_back(text.substr(0, text.find_first_of(kBlanks)));
    text.remove_prefix(words.back().size());
  }
  return words;
}

std::string with_plain_spaces(std::string text) {
  for (const std::string_view space : {"\u00a0", "\u202f"}) {
    for (std::size_t at = text.find(space); at != std::string::npos; at = text.find(space, at))
      text.replace(at, space.size(), 1, ' ');
  }
  return text;
}

char in_small_letters(char letter) {
  return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

std::string in_small_letters(std::string_view text) {
  std::string small(text);
  for (char& letter : small)
    letter = in_small_letters(letter);
  return small;
}

char in_capitals(char letter) {
  return letter >= 'a' && letter <= 'z' ? static_cast<char>(letter - 'a' + 'A') : letter;
}

std::string in_capitals(std::string_view text) {
  std::string capitals(text);
  for (char& letter : capitals)
    letter = in_capitals(letter);
  return capitals;
}

std::string on_one_line(std::string_view text) {
  return fmt::format("{}", fmt::join(words_of(text), " "));
}

std::vector<std::string> plain_words_of(std::string_view text) {
  std::vector<std::string> words(1);
  for (const char sign : text) {
    const char letter = in_small_letters(sign);
    if ((letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9') ||
        static_cast<unsigned char>(letter) >= 0x80) {
      words.back() += letter;
    } else if (!words.back().empty()) {
      words.emplace_back();
    }
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

bool says_something(std::string_view name) {
  static constexpr std::string_view kNothing[] = {
      "unknown", "not known", "none",       "not determined", "n a", "nobody", "me",
      "myself",  "the owner", "owner",      "my eyes",        "eye", "by eye", "tbd",
      "na",      "no",        "not entered"};
  const std::string words = fmt::format("{}", fmt::join(plain_words_of(name), " "));
  return words.size() >= 2 &&
         std::find(std::begin(kNothing), std::end(kNothing), words) == std::end(kNothing);
}

bool is_capitals(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(),
                                      [](char letter) { return letter >= 'A' && letter <= 'Z'; });
}

}  // namespace winchbook::base
