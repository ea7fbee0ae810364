#include "picture/prepare.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <string>
#include <string_view>

#include "base/files.h"
#include "photo/jpeg.h"
#include "picture/read.h"
#include "picture/write_jpeg.h"

namespace winchbook::picture {
namespace {

const std::filesystem::path kFiles =
    std::filesystem::path(WINCHBOOK_SOURCE_DIR) / "tests" / "photo" / "files";

std::string file(const char* name) {
  auto bytes = base::RealFiles().read(kFiles / name, 1U << 24U);
  REQUIRE(bytes);
  return std::move(bytes).value();
}

/// A JPEG as this program writes it, and so one that says nothing but its picture.
std::string bare_jpeg(int width, int height) {
  Raster raster{{width, height}, Space::rgb};
  raster.allocate();
  for (std::size_t i = 0; i < raster.samples.size(); ++i)
    raster.samples[i] = static_cast<unsigned char>(i * 7 % 251);
  auto jpeg = write_jpeg(raster);
  REQUIRE(jpeg);
  return std::move(jpeg).value();
}

/// Puts a segment behind the first two bytes.
std::string with_segment(std::string jpeg, char marker, const std::string& data) {
  const std::size_t length = data.size() + 2;
  std::string segment{'\xFF', marker, static_cast<char>(length >> 8U),
                      static_cast<char>(length & 0xFFU)};
  return jpeg.insert(2, segment + data);
}

TEST_CASE("a JPEG that says nothing but its picture keeps its bytes") {
  const std::string jpeg = bare_jpeg(40, 30);
  CHECK(is_bare(jpeg));
  const auto prepared = prepare(jpeg);
  REQUIRE(prepared);
  CHECK(prepared->answer.made == photo::Made::as_it_was);
  CHECK(prepared->jpeg == jpeg);
}

TEST_CASE("a JPEG that says more keeps its samples and says no more") {
  const std::string jpeg = bare_jpeg(40, 30);
  const std::string told = with_segment(jpeg, '\xFE', "Harbour Street 3, Port Ellery");
  CHECK_FALSE(is_bare(told));
  const auto prepared = prepare(told);
  REQUIRE(prepared);
  CHECK(prepared->answer.made == photo::Made::without_remarks);
  CHECK(prepared->jpeg.find("Harbour") == std::string::npos);
  const auto before = read_jpeg(jpeg);
  const auto after = read_jpeg(prepared->jpeg);
  REQUIRE(before);
  REQUIRE(after);
  CHECK(before->raster.samples == after->raster.samples);
}

TEST_CASE("what hides behind the end of a JPEG, between its segments or in its head is not bare") {
  const std::string jpeg = bare_jpeg(40, 30);
  CHECK_FALSE(is_bare(jpeg + "a film"));
  CHECK_FALSE(is_bare(jpeg + jpeg));
  CHECK_FALSE(is_bare(with_segment(jpeg, '\xE1', "anything")));
  CHECK_FALSE(is_bare(with_segment(jpeg, '\xEF', "anything")));
  CHECK_FALSE(is_bare(jpeg.substr(0, jpeg.size() - 2)));
  const auto prepared = prepare(jpeg + "a film");
  REQUIRE(prepared);
  CHECK(prepared->jpeg.find("a film") == std::string::npos);
}

TEST_CASE("a progressive JPEG becomes a baseline one with the same samples") {
  const std::string jpeg = file("progressive.jpg");
  const auto prepared = prepare(jpeg);
  REQUIRE(prepared);
  CHECK(prepared->answer.made == photo::Made::without_remarks);
  CHECK(is_bare(prepared->jpeg));
  const auto before = read_jpeg(jpeg);
  const auto after = read_jpeg(prepared->jpeg);
  REQUIRE(before);
  REQUIRE(after);
  CHECK(before->raster.samples == after->raster.samples);
}

TEST_CASE("whatever goes in, a plain JPEG within the print size comes out") {
  const std::string large = bare_jpeg(2500, 1000);
  for (const std::string& bytes :
       {file("plain.jpg"), file("grey.jpg"), file("profile.jpg"), file("progressive.jpg"),
        file("picture.png"), file("arithmetic.jpg"), large}) {
    const auto prepared = prepare(bytes);
    REQUIRE(prepared);
    CHECK(is_bare(prepared->jpeg));
    CHECK(photo::fits_print(prepared->answer.size));
    const auto facts = photo::decode(prepared->jpeg);
    REQUIRE(facts);
    CHECK(photo::Size{facts->width, facts->height} == prepared->answer.size);
  }
}

TEST_CASE("a file is known by what it is") {
  using namespace std::string_view_literals;
  CHECK(*kind_of("\xFF\xD8\xFF\xE0") == Kind::jpeg);
  CHECK(*kind_of("II*\0\x08\0\0\0"sv) == Kind::tiff);
  CHECK(*kind_of("\0\0\0\x18"
                 "ftypheic"sv) == Kind::heic);
  CHECK(*kind_of("\0\0\0\x18"
                 "ftypavif"sv) == Kind::avif);
  CHECK(*kind_of("RIFF\0\0\0\0WEBP"sv) == Kind::webp);
  const auto rule_of = [](std::string_view bytes) {
    const auto kind = kind_of(bytes);
    return kind ? "" : kind.faults().front().message;
  };
  CHECK(rule_of("") == "the photograph is empty (0 bytes)");
  CHECK(rule_of("\0\0\0\x18"
                "ftypisom"sv)
            .starts_with("the photograph is a video"));
  CHECK(rule_of("GIF89a").starts_with("the photograph is a GIF"));
  CHECK(rule_of("hello").starts_with("the photograph is no picture"));
}

TEST_CASE("a JPEG cut at any place is refused or whole, and never read beyond") {
  const std::string jpeg = bare_jpeg(40, 30);
  for (std::size_t length = 0; length < jpeg.size(); length += 3) {
    const auto prepared = prepare(std::string_view(jpeg).substr(0, length));
    CHECK_FALSE(prepared);
  }
}

TEST_CASE("sizes that nobody photographs are refused before they are decoded") {
  CHECK(fault_of_size(0, 5).front().rule == "photo-damaged");
  CHECK(fault_of_size(40000, 10).front().rule == "photo-large");
  CHECK(fault_of_size(20000, 20000).front().rule == "photo-large");
  CHECK(fault_of_size(16384, 12288).empty());
}

}  // namespace
}  // namespace winchbook::picture
