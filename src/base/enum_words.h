#pragma once

#include <optional>
#include <string_view>

namespace winchbook::base {

/// A value of a closed list and its word in files: small letters and hyphens, "worn-through".
/// The word is also the last part of its key in the message catalogues.
///
/// A list has its words in one table, the function `enum_words` beside it: every value in the order
/// of the list; the argument only chooses the list.
template <class Value> struct EnumWord {
  Value value;
  std::string_view word;
};

/// The word of a value.
template <class Value> [[nodiscard]] std::string_view word_of(Value value) {
  for (const auto& one : enum_words(value)) {
    if (one.value == value) return one.word;
  }
  return {};
}

/// The value of a word, or nothing.
template <class Value> [[nodiscard]] std::optional<Value> value_of(std::string_view word) {
  for (const auto& one : enum_words(Value{})) {
    if (one.word == word) return one.value;
  }
  return std::nullopt;
}

}  // namespace winchbook::base
