#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "seal/digest.h"

namespace winchbook::seal {

/// What a short code vouches for.
struct Sealed {
  Digest fingerprint{};  ///< of the attached record's bytes
  std::string document;  ///< "keepsake"
  std::string edition;   ///< "2"
  std::string date;      ///< day of issue, "2026-06-19"
};

/// The seal's short code: twelve characters of Crockford's base 32 without hyphens.
///
/// The first eleven are the first 55 bits of SHA-256 over the bytes
/// `fingerprint LF document LF edition LF date LF`, the fingerprint as 64 lower-case hexadecimal
/// digits, LF a line feed; so anybody can check it without this program:
/// `printf '%s\n%s\n%s\n%s\n' FINGERPRINT keepsake 2 2026-06-19 | sha256sum`.
///
/// The twelfth is the check character. With the characters' values c1 … c12 as elements of GF(32)
/// (polynomial x⁵ + x² + 1, a = x), a¹¹·c1 + a¹⁰·c2 + … + a·c11 + c12 = 0. Every single wrong
/// character and every exchange of two different characters breaks that sum.
/// Throws std::invalid_argument when document, edition or date hold a line feed.
[[nodiscard]] std::string short_code(const Sealed& sealed);

/// A shorter code for what is only told apart on one bench: eight characters, the first seven the
/// first 35 bits of SHA-256 over `bytes`, the last their check character as above.
[[nodiscard]] std::string tag_code(std::string_view bytes);

/// "7K2M-9QX4-B0TD": as it is printed.
[[nodiscard]] std::string grouped(std::string_view code);

/// Reads a code as somebody typed it: any case, hyphens and spaces anywhere, O for 0, I and L for
/// 1. Gives the twelve characters. Errors: another length, a character base 32 does not have, a
/// check character that does not fit.
[[nodiscard]] base::Result<std::string> read_short_code(std::string_view typed);

}  // namespace winchbook::seal
