#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace winchbook::text {

/// A word as it is compared with others, and where it stands.
struct FoldedWord {
  std::string folded;  ///< NFKC_Casefold (Unicode Standard, 3.13 and UAX #44): "MERROW" is "merrow"
  std::size_t begin = 0;  ///< byte offsets of the word as written
  std::size_t end = 0;
  bool capital = false;  ///< its first letter is a capital
  /// Nothing, or the end of a sentence or of a line, stands before it; the full stop of an initial
  /// ends none.
  bool opens_sentence = false;
};

/// The words of a text in order. A word is a run of letters, digits, their accents, and signs that
/// do not show (a soft hyphen, a joiner); everything else parts words. Bytes that are not UTF-8
/// part words too.
[[nodiscard]] std::vector<FoldedWord> folded_words(std::string_view utf8);

/// The ways in which a folded word may be spelled: first without its accents ("muller", "odegard"),
/// then as it is, then with them spelled out ("mueller", "oedegaard"); each once.
[[nodiscard]] std::vector<std::string> spellings_of(std::string_view folded);

/// Whether it has letters of a script that parts no words with spaces (Han, Kana, Thai …).
[[nodiscard]] bool parts_no_words(std::string_view utf8);

}  // namespace winchbook::text
