#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace winchbook::knowledge {

/// A number as it stands in a stamp.
struct StampNumber {
  std::int64_t value = 0;
  std::size_t digits = 0;  ///< figures written, leading noughts too
  bool grouped = false;    ///< by commas or points in threes
  /// "O taken for 0, l for 1 in 2,l85,17O"; empty when every figure is one.
  std::string assumed;
};

/// A word or a number of a stamp.
struct StampWord {
  std::string folded;     ///< capitals and figures: "DRGM", "PATD", "2185170"
  std::size_t begin = 0;  ///< bytes of the text
  std::size_t end = 0;
  std::string gap;  ///< what stands between the word before and this one
  std::optional<StampNumber> number;
};

/// The words of a stamp. Capitals and small letters, accents, full stops and apostrophes make no
/// difference: "D. R. G. M." is DRGM, "Pat’d" is PATD, "®" is CIRCLER. Figures grouped in threes by
/// commas or points are one number; O, I, l, S, B and Z among figures may be figures.
[[nodiscard]] std::vector<StampWord> stamp_words(std::string_view text);

/// The words of a text, folded, with one space between: "MADE IN USA".
[[nodiscard]] std::string folded_phrase(std::string_view text);

/// How many words of `form` (folded, one space between) stand at `at`; 0 when not all of them do.
[[nodiscard]] std::size_t phrase_at(const std::vector<StampWord>& words, std::size_t at,
                                    std::string_view form);

/// The words from `from` up to `to` as they were typed.
[[nodiscard]] std::string as_typed(std::string_view text, const std::vector<StampWord>& words,
                                   std::size_t from, std::size_t to);

}  // namespace winchbook::knowledge
