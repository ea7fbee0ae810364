#include "seal/short_code.h"

#include <fmt/format.h>

#include <cstddef>
#include <cstdint>
#include <stdexcept>

#include "base/words_of_text.h"

namespace winchbook::seal {
namespace {

/// Crockford's symbols: no I, L, O, U.
constexpr std::string_view kSymbols = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
constexpr std::size_t kDataCharacters = 11;
constexpr std::size_t kCharacters = kDataCharacters + 1;
constexpr std::size_t kGroup = 4;

/// Times x in GF(32) with x⁵ = x² + 1.
constexpr unsigned times_x(unsigned value) {
  const unsigned doubled = value << 1U;
  return doubled < 32U ? doubled : (doubled ^ 0b100101U);
}

/// The sum that a whole code makes zero, by Horner's rule.
unsigned check_sum(std::string_view code) {
  unsigned sum = 0;
  for (const char symbol : code) {
    sum = times_x(sum) ^ static_cast<unsigned>(kSymbols.find(symbol));
  }
  return sum;
}

/// The symbol somebody meant, or NUL.
char meant(char typed) {
  const char upper = base::in_capitals(typed);
  if (upper == 'O') return '0';
  if (upper == 'I' || upper == 'L') return '1';
  return kSymbols.find(upper) == std::string_view::npos ? '\0' : upper;
}

/// The first characters of a digest, five bits each, and the check character that fits them.
std::string code_of(const Digest& digest, std::size_t characters) {
  std::string code;
  for (std::size_t i = 0; i < characters; ++i) {
    const std::size_t bit = 5 * i;
    const unsigned two_bytes =
        static_cast<unsigned>(digest[bit / 8] << 8U) | static_cast<unsigned>(digest[bit / 8 + 1]);
    code += kSymbols[(two_bytes >> (11 - bit % 8)) & 31U];
  }
  code += kSymbols[times_x(check_sum(code))];
  return code;
}

}  // namespace

std::string short_code(const Sealed& sealed) {
  std::string line = hex(sealed.fingerprint) + '\n';
  for (const std::string* field : {&sealed.document, &sealed.edition, &sealed.date}) {
    if (field->find('\n') != std::string::npos) {
      throw std::invalid_argument("a line feed in what a seal vouches for");
    }
    line += *field + '\n';
  }
  return code_of(fingerprint(line), kDataCharacters);
}

std::string tag_code(std::string_view bytes) {
  constexpr std::size_t kTagCharacters = 7;
  return code_of(fingerprint(bytes), kTagCharacters);
}

std::string grouped(std::string_view code) {
  std::string out;
  for (std::size_t i = 0; i < code.size(); i += kGroup) {
    if (i > 0) out += '-';
    out += code.substr(i, kGroup);
  }
  return out;
}

base::Result<std::string> read_short_code(std::string_view typed) {
  const std::string hint = "read it again from the seal page: 0 is never O, 1 is never I or L";
  std::string code;
  for (const char character : typed) {
    if (character == '-' || character == ' ') continue;
    const char symbol = meant(character);
    if (symbol == '\0') {
      return base::error(fmt::format("seal code \"{}\" holds a character that seal codes do not "
                                     "have, expected digits and letters without U",
                                     typed),
                         hint, "seal-code");
    }
    code += symbol;
  }
  if (code.size() != kCharacters) {
    return base::error(fmt::format("seal code \"{}\" has {} characters, expected {}", typed,
                                   code.size(), kCharacters),
                       hint, "seal-code");
  }
  if (check_sum(code) != 0) {
    return base::error(
        fmt::format("seal code \"{}\" is misread: its check character does not fit", typed), hint,
        "seal-code");
  }
  return code;
}

}  // namespace winchbook::seal
