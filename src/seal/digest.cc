#include "seal/digest.h"

#include <nettle/sha2.h>

#include <bit>
#include <cstddef>
#include <span>

namespace winchbook::seal {
namespace {

constexpr std::string_view kDigits = "0123456789abcdef";

/// SHA-256 of what is added, piece by piece.
class Sha256 {
 public:
  Sha256() { sha256_init(&state_); }
  Sha256& add(std::string_view bytes) {
    sha256_update(&state_, bytes.size(), reinterpret_cast<const std::uint8_t*>(bytes.data()));
    return *this;
  }
  Sha256& add(const Digest& digest) {
    sha256_update(&state_, digest.size(), digest.data());
    return *this;
  }
  [[nodiscard]] Digest digest() {
    Digest out{};
    sha256_digest(&state_, out.size(), out.data());
    return out;
  }

 private:
  sha256_ctx state_{};
};

Digest tree_hash(std::span<const std::string> leaves) {
  using namespace std::string_view_literals;
  if (leaves.size() == 1) return Sha256().add("\0"sv).add(leaves.front()).digest();
  const std::size_t left = std::bit_floor(leaves.size() - 1);
  return Sha256()
      .add("\1"sv)
      .add(tree_hash(leaves.first(left)))
      .add(tree_hash(leaves.subspan(left)))
      .digest();
}

}  // namespace

Digest fingerprint(std::string_view bytes) {
  return Sha256().add(bytes).digest();
}

std::string hex(const Digest& digest) {
  std::string out;
  out.reserve(2 * digest.size());
  for (const std::uint8_t byte : digest) {
    out += kDigits[byte >> 4U];
    out += kDigits[byte & 0x0FU];
  }
  return out;
}

std::string hex_in_fours(const Digest& digest) {
  const std::string digits = hex(digest);
  std::string out;
  for (std::size_t i = 0; i < digits.size(); i += 4) {
    if (i > 0) out += ' ';
    out.append(digits, i, 4);
  }
  return out;
}

Digest withheld_digest(std::string_view salt_digits, std::string_view text) {
  return Sha256().add(salt_digits).add(text).digest();
}

Digest merkle_root(const std::vector<std::string>& leaves) {
  return leaves.empty() ? fingerprint({}) : tree_hash(leaves);
}

}  // namespace winchbook::seal
