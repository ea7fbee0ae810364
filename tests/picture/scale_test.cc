#include "picture/scale.h"

#include <doctest/doctest.h>

#include <array>
#include <string>
#include <vector>

namespace winchbook::picture {
namespace {

/// A grey picture from rows of letters, one a pixel.
Raster of_letters(const std::vector<std::string>& rows) {
  Raster raster{{static_cast<int>(rows.front().size()), static_cast<int>(rows.size())},
                Space::grey};
  for (const std::string& row : rows)
    raster.samples.insert(raster.samples.end(), row.begin(), row.end());
  return raster;
}

std::vector<std::string> letters_of(const Raster& raster) {
  std::vector<std::string> rows;
  for (int y = 0; y < raster.size.height; ++y)
    rows.emplace_back(raster.row(y), raster.row(y) + raster.size.width);
  return rows;
}

TEST_CASE("each of the eight orientations stands upright") {
  // The letter F as it is seen, and as a camera stores it under each number: row 0 and column 0 are
  // the seen top and left (1), top and right (2), bottom and right (3), bottom and left (4), left
  // and top (5), right and top (6), right and bottom (7), left and bottom (8): CIPA DC-008-2019,
  // 4.6.4, tag 274.
  const std::vector<std::string> seen{"FFF", "F..", "FF.", "F..", "F.."};
  const std::array<std::vector<std::string>, 8> stored{{
      {"FFF", "F..", "FF.", "F..", "F.."},
      {"FFF", "..F", ".FF", "..F", "..F"},
      {"..F", "..F", ".FF", "..F", "FFF"},
      {"F..", "F..", "FF.", "F..", "FFF"},
      {"FFFFF", "F.F..", "F...."},
      {"F....", "F.F..", "FFFFF"},
      {"....F", "..F.F", "FFFFF"},
      {"FFFFF", "..F.F", "....F"},
  }};
  for (int number = 1; number <= 8; ++number) {
    CAPTURE(number);
    const Raster raster = of_letters(stored.at(static_cast<std::size_t>(number - 1)));
    CHECK(letters_of(turned_upright(raster, number)) == seen);
    CHECK(upright_size(raster.size, number) == photo::Size{3, 5});
  }
}

TEST_CASE("three samples a pixel turn together") {
  Raster raster{{2, 1}, Space::rgb};
  raster.samples = {1, 2, 3, 4, 5, 6};
  const Raster turned = turned_upright(raster, 6);
  CHECK(turned.size == photo::Size{1, 2});
  CHECK(turned.samples == raster.samples);
  CHECK(turned_upright(raster, 8).samples == std::vector<unsigned char>{4, 5, 6, 1, 2, 3});
}

TEST_CASE("a picture is made smaller in the proportions of light") {
  // Black and white lines, one pixel each: half the light. By IEC 61966-2-1 half the light is
  // 1.055 × 0.5^(1 ÷ 2.4) − 0.055 = 0.7354, 188 of 255; half of the samples would be 128.
  Raster raster{{64, 64}, Space::grey};
  raster.allocate();
  for (int y = 0; y < 64; y += 2) {
    for (int x = 0; x < 64; ++x)
      raster.row(y)[x] = 255;
  }
  const auto smaller = scaled(raster, {16, 16});
  REQUIRE(smaller);
  CHECK(smaller->size == photo::Size{16, 16});
  for (int y = 4; y < 12; ++y) {
    CHECK(smaller->row(y)[8] >= 186);
    CHECK(smaller->row(y)[8] <= 190);
  }
}

TEST_CASE("one colour stays that colour") {
  Raster raster{{300, 200}, Space::rgb};
  raster.allocate();
  for (std::size_t i = 0; i < raster.samples.size(); i += 3) {
    raster.samples[i] = 200;
    raster.samples[i + 1] = 30;
    raster.samples[i + 2] = 90;
  }
  const auto smaller = scaled(raster, {31, 20});
  REQUIRE(smaller);
  for (std::size_t i = 0; i < smaller->samples.size(); i += 3) {
    CHECK(smaller->samples[i] == 200);
    CHECK(smaller->samples[i + 1] == 30);
    CHECK(smaller->samples[i + 2] == 90);
  }
}

TEST_CASE("what covers in part is laid over white") {
  Raster raster{{3, 1}, Space::grey, true};
  raster.samples = {100, 255, 100, 0, 0, 128};
  lay_over_white(raster);
  CHECK_FALSE(raster.alpha);
  CHECK(raster.samples == std::vector<unsigned char>{100, 255, 127});
}

}  // namespace
}  // namespace winchbook::picture
