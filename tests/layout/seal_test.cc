#include "layout/set_seal.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <stdexcept>

#include "layout/drawn_page.h"

namespace winchbook {
namespace {

using drawn::to_points;

constexpr double kModule = 3.9;

layout::Frame set(const std::string& payload, const drawn::Bench& bench) {
  return layout::set_qr_code({"K7QM 4XT2 9DHW", payload, "A square code"}, layout::kArtifact,
                             bench.setting);
}

/// Modules along one side.
int size_of(const layout::Frame& frame) {
  const auto shapes = drawn::shapes_in(frame);
  return static_cast<int>(std::lround(shapes.at(0).box.width() / kModule));
}

bool dark(const layout::Frame& frame, int x, int y) {
  const auto* path = std::get_if<layout::PathItem>(&frame.items.at(0));
  return drawn::covers(*path, (x + 0.5) * kModule, (y + 0.5) * kModule);
}

// ISO/IEC 18004:2015, 6.3.3: a finder pattern is a dark square of 7, in it a light one of 5, in it
// a dark one of 3; a light separator one module wide runs along it inside the symbol.
bool finder_at(const layout::Frame& frame, int left, int top) {
  constexpr std::array<const char*, 7> kFinder = {"#######", "#     #", "# ### #", "# ### #",
                                                  "# ### #", "#     #", "#######"};
  for (int y = 0; y < 7; ++y) {
    for (int x = 0; x < 7; ++x) {
      const bool wanted =
          kFinder.at(static_cast<std::size_t>(y))[static_cast<std::size_t>(x)] == '#';
      if (dark(frame, left + x, top + y) != wanted) return false;
    }
  }
  return true;
}

TEST_CASE("the QR code has its three finders and its timing lines where the standard wants them") {
  const drawn::Bench bench;
  const layout::Frame frame = set("K7QM4XT29DHW", bench);
  const int size = size_of(frame);
  CHECK((size - 17) % 4 == 0);  // ISO/IEC 18004: 21 modules for version 1, 4 more for each
  CHECK(finder_at(frame, 0, 0));
  CHECK(finder_at(frame, size - 7, 0));
  CHECK(finder_at(frame, 0, size - 7));
  CHECK_FALSE(finder_at(frame, size - 7, size - 7));
  for (int i = 0; i < 8; ++i)
    CHECK_FALSE(dark(frame, i, 7));
  for (int i = 8; i < size - 8; ++i) {
    CHECK(dark(frame, i, 6) == (i % 2 == 0));
    CHECK(dark(frame, 6, i) == (i % 2 == 0));
  }
}

TEST_CASE("the code is one path of squares of 3.9, from the frame's corner, white below it") {
  const drawn::Bench bench;
  const layout::Frame frame = set("K7QM4XT29DHW", bench);
  REQUIRE(frame.items.size() == 1);
  const auto shapes = drawn::shapes_in(frame);
  CHECK(shapes[0].box.left == doctest::Approx(0));
  CHECK(shapes[0].box.top == doctest::Approx(0));
  CHECK(to_points(frame.height) == doctest::Approx(kModule * (size_of(frame) + 4)));
  CHECK(to_points(frame.width) == doctest::Approx(147));
  for (const auto& step : shapes[0].path->steps) {
    CHECK(step.to.x.thousandths % 3900 == 0);
    CHECK(step.to.y.thousandths % 3900 == 0);
  }
}

TEST_CASE("another payload gives another code") {
  const drawn::Bench bench;
  const layout::Frame one = set("K7QM4XT29DHW", bench);
  const layout::Frame other = set("K7QM4XT29DHX", bench);
  int different = 0;
  REQUIRE(size_of(one) == size_of(other));
  for (int y = 0; y < size_of(one); ++y) {
    for (int x = 0; x < size_of(one); ++x) {
      if (dark(one, x, y) != dark(other, x, y)) ++different;
    }
  }
  CHECK(different > 8);
}

TEST_CASE("a payload of up to 106 bytes keeps inside the side column, a longer one needs more") {
  const drawn::Bench bench;
  // ISO/IEC 18004:2015, table 7: version 5 (37 modules) holds 84 bytes at level M, 106 at L.
  CHECK(size_of(set(std::string(84, 'a'), bench)) == 37);
  CHECK(size_of(set(std::string(106, 'a'), bench)) == 37);
  // and 122 or 154 when they are capitals and figures.
  CHECK(size_of(set(std::string(122, 'A'), bench)) == 37);
  CHECK(size_of(set(std::string(154, 'A'), bench)) == 37);
  const layout::Frame wider = set(std::string(107, 'a'), bench);
  CHECK(size_of(wider) > 37);
  CHECK(to_points(wider.width) > 147);
}

TEST_CASE("nothing, or far too much, cannot be a QR code") {
  const drawn::Bench bench;
  CHECK_THROWS_AS(set("", bench), std::invalid_argument);
  CHECK_THROWS_AS(set(std::string(3000, 'a'), bench), std::invalid_argument);
  CHECK_THROWS_AS(set(std::string("a\0b", 3), bench), std::invalid_argument);
}

TEST_CASE("the code is a figure with words, the short code a paragraph in its own type") {
  const drawn::Bench bench;
  (void)set("K7QM4XT29DHW", bench);
  REQUIRE(bench.tags.size() == 1);
  CHECK(bench.tags[0].type == layout::TagType::figure);
  CHECK(bench.tags[0].alternative == "A square code");
  const layout::Frame code =
      layout::set_seal_code({"K7QM 4XT2 9DHW", "x", ""}, layout::kArtifact, bench.setting);
  const auto words = drawn::find(code, bench.fonts, "K7QM");
  REQUIRE(words);
  CHECK(words->size == doctest::Approx(25));
  CHECK(bench.tags.at(static_cast<std::size_t>(words->tag)).type == layout::TagType::paragraph);
}

}  // namespace
}  // namespace winchbook
