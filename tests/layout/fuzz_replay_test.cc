#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>

#include "layout/fuzz_lay_out.h"

TEST_CASE("layout bears every document of its corpus") {
  std::vector<std::filesystem::path> files;
  for (const auto& entry :
       std::filesystem::directory_iterator(WINCHBOOK_SOURCE_DIR "/tests/layout/corpus")) {
    files.push_back(entry.path());
  }
  CHECK(files.size() >= 8);
  std::sort(files.begin(), files.end());
  for (const auto& path : files) {
    std::ifstream file(path, std::ios::binary);
    const std::vector<char> read((std::istreambuf_iterator<char>(file)), {});
    const std::vector<std::uint8_t> bytes(read.begin(), read.end());
    CAPTURE(path.filename().string());
    CHECK(layout_faults(bytes) == std::vector<std::string>{});
  }
}

TEST_CASE("layout bears documents of any bytes") {
  for (unsigned seed = 1; seed <= 200; ++seed) {
    std::minstd_rand random(seed);
    std::vector<std::uint8_t> bytes(20 + seed * 7 % 1500);
    std::generate(bytes.begin(), bytes.end(),
                  [&] { return static_cast<std::uint8_t>(random() >> 8U); });
    CAPTURE(seed);
    CHECK(layout_faults(bytes) == std::vector<std::string>{});
  }
}
