#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace winchbook::xml {

/// What a validator says of one element, cut into what we need to say it in our own words.
struct ValidatorMessage {
  int code = 0;      ///< libxml2's XML_SCHEMAV_… number
  std::string text;  ///< its sentence
};

/// A fault told our way.
struct ToldFault {
  std::string message;
  std::string hint;
};

/// Puts the messages about one value or one element into one fault. `element` is its name, `value`
/// its text.
[[nodiscard]] ToldFault in_our_words(const std::vector<ValidatorMessage>& messages,
                                     std::string_view element, std::string_view value);

/// The one of `known` that looks most like `word`, or empty when none is near (at most two letters
/// away, and not more than a third of the word).
[[nodiscard]] std::string nearest(std::string_view word, const std::vector<std::string>& known);

/// "a", "a or b", "a, b or c".
[[nodiscard]] std::string either(const std::vector<std::string>& words);

/// The text in quotation marks, white space folded, and cut after 60 characters.
[[nodiscard]] std::string quoted(std::string_view text);

}  // namespace winchbook::xml
