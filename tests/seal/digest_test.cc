#include "seal/digest.h"

#include <doctest/doctest.h>

#include <string>
#include <string_view>
#include <vector>

namespace winchbook::seal {
namespace {

using namespace std::string_literals;

// FIPS 180-4, examples for SHA-256 (NIST, "SHA256.pdf" of the Example Values): one block and two
// blocks; the message of no bits and a million a's as in NIST's SHA test vectors.
TEST_CASE("fingerprints are SHA-256 as NIST's examples have it") {
  CHECK(hex(fingerprint("abc")) ==
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  CHECK(hex(fingerprint("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq")) ==
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1");
  CHECK(hex(fingerprint("")) == "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855");
  CHECK(hex(fingerprint(std::string(1'000'000, 'a'))) ==
        "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0");
}

TEST_CASE("the printed fingerprint stands in sixteen groups of four") {
  CHECK(hex_in_fours(fingerprint("abc")) ==
        "ba78 16bf 8f01 cfea 4141 40de 5dae 2223 b003 61a3 9617 7a9c b410 ff61 f200 15ad");
}

TEST_CASE("a withheld text's digest needs its salt and its text") {
  // The digest of "abc" again: the salt's digits stand before the text.
  CHECK(hex(withheld_digest("ab", "c")) == hex(fingerprint("abc")));
  const std::string salt = "000102030405060708090a0b0c0d0e0f";
  CHECK(withheld_digest(salt, "Ferry Landing") != withheld_digest(salt, "Ferry landing"));
  CHECK(withheld_digest(salt, "Ferry Landing") !=
        withheld_digest("100102030405060708090a0b0c0d0e0f", "Ferry Landing"));
}

// Test leaves and roots of RFC 6962's reference implementation (certificate-transparency,
// merkle_tree_test: the tree of eight leaves and the roots of its first n).
const std::vector<std::string> kLeaves = {
    "",
    "\x00"s,
    "\x10",
    "\x20\x21",
    "\x30\x31",
    "\x40\x41\x42\x43",
    "\x50\x51\x52\x53\x54\x55\x56\x57",
    "\x60\x61\x62\x63\x64\x65\x66\x67\x68\x69\x6a\x6b\x6c\x6d\x6e\x6f"};
const std::vector<std::string> kRoots = {
    "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
    "6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d",
    "fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125",
    "aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77",
    "d37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7",
    "4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4",
    "76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef",
    "ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c",
    "5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328"};

TEST_CASE("the root over withheld digests is RFC 6962's Merkle tree hash") {
  for (std::size_t n = 0; n <= kLeaves.size(); ++n) {
    CAPTURE(n);
    const std::vector<std::string> first(kLeaves.begin(),
                                         kLeaves.begin() + static_cast<std::ptrdiff_t>(n));
    CHECK(hex(merkle_root(first)) == kRoots[n]);
  }
}

TEST_CASE("one other leaf, or another order, gives another root") {
  std::vector<std::string> leaves = kLeaves;
  leaves[3] += 'x';
  CHECK(hex(merkle_root(leaves)) != kRoots[8]);
  leaves = kLeaves;
  std::swap(leaves[0], leaves[7]);
  CHECK(hex(merkle_root(leaves)) != kRoots[8]);
}

}  // namespace
}  // namespace winchbook::seal
