#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

/// What binds a document to its record: fingerprints, the short code, digests of what is withheld.
namespace winchbook::seal {

/// A SHA-256 digest (FIPS 180-4).
using Digest = std::array<std::uint8_t, 32>;

/// SHA-256 of the bytes.
[[nodiscard]] Digest fingerprint(std::string_view bytes);
/// 64 lower-case hexadecimal digits.
[[nodiscard]] std::string hex(const Digest& digest);
/// The same in sixteen groups of four, as the seal prints it: "ba78 16bf …".
[[nodiscard]] std::string hex_in_fours(const Digest& digest);

/// What stands in a withheld text's place: SHA-256 of the salt's hexadecimal digits as they are
/// written in the record, followed by the text's UTF-8 bytes. All salts of a record have one
/// length (32 digits), so the two cannot run into each other. Checkable with
/// `printf '%s%s' SALT TEXT | sha256sum`.
[[nodiscard]] Digest withheld_digest(std::string_view salt_digits, std::string_view text);

/// The Merkle tree hash of RFC 6962, 2.1 (the same in RFC 9162, 2.1.1): a leaf is
/// SHA-256(0x00 ‖ leaf), a node SHA-256(0x01 ‖ left ‖ right), split at the largest power of two
/// smaller than the number of leaves; no leaves give SHA-256 of nothing. The order of the leaves
/// counts: give the withheld digests in document order, each as its 64 hexadecimal digits. A seal
/// prints the root and the record does not hold it, since anybody can reckon it from the record. A
/// person's texts share one salt: proving one lets its reader try guesses at that person's others.
[[nodiscard]] Digest merkle_root(const std::vector<std::string>& leaves);

}  // namespace winchbook::seal
