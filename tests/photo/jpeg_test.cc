#include "photo/jpeg.h"

#include <doctest/doctest.h>

#include <cstdint>
#include <string>

#include "base/files.h"

using namespace winchbook;  // NOLINT

namespace {

std::string bytes_of(const std::string& name) {
  const auto bytes =
      base::RealFiles().read(WINCHBOOK_SOURCE_DIR "/tests/photo/files/" + name, 1U << 20U);
  REQUIRE(bytes);
  return *bytes;
}

std::string refusal(const std::string& bytes) {
  const auto facts = photo::decode(bytes);
  return facts ? std::string() : base::to_string(facts.faults().front());
}

std::string big_endian(unsigned value) {
  return {static_cast<char>(value >> 8U & 0xFFU), static_cast<char>(value & 0xFFU)};
}

/// A JPEG that says it is this large (the size stands five bytes behind the start-of-frame marker).
std::string claiming(unsigned width, unsigned height) {
  std::string bytes = bytes_of("plain.jpg");
  const std::size_t frame = bytes.find("\xFF\xC0");
  REQUIRE(frame != std::string::npos);
  return bytes.replace(frame + 5, 4, big_endian(height) + big_endian(width));
}

/// An Exif block with the given orientation, and a GPS directory if wanted, put behind the first
/// marker.
std::string with_exif(unsigned orientation, bool gps) {
  std::string tiff =
      std::string("MM\0\x2A\0\0\0\x08", 8) + std::string("\0", 1) + (gps ? "\x02" : "\x01");
  tiff +=
      std::string("\x01\x12\0\x03\0\0\0\x01", 8) + big_endian(orientation) + std::string(2, '\0');
  if (gps) tiff += std::string("\x88\x25\0\x04\0\0\0\x01\0\0\0\x30", 12);
  const std::string data = std::string("Exif\0\0", 6) + tiff;
  const std::string segment =
      "\xFF\xE1" + big_endian(static_cast<unsigned>(data.size() + 2)) + data;
  return bytes_of("plain.jpg").insert(2, segment);
}

}  // namespace

TEST_CASE("a plain JPEG is decoded and tells its size and colour") {
  const auto facts = photo::decode(bytes_of("plain.jpg"));
  REQUIRE(facts);
  CHECK(facts->width == 32);
  CHECK(facts->height == 24);
  CHECK(facts->colour == photo::Colour::rgb);
  CHECK(facts->orientation == photo::Orientation::upright);
  CHECK(facts->icc_profile.empty());
  CHECK_FALSE(facts->tells_where_taken);
  CHECK(photo::decode(bytes_of("grey.jpg"))->colour == photo::Colour::grey);
  CHECK(photo::decode(bytes_of("progressive.jpg")));
}

TEST_CASE("the colour profile is handed on whole") {
  // An ICC profile carries the letters "acsp" at byte 36 (ICC.1:2010, 7.2).
  const auto facts = photo::decode(bytes_of("profile.jpg"));
  REQUIRE(facts);
  REQUIRE(facts->icc_profile.size() > 128);
  CHECK(facts->icc_profile.substr(36, 4) == "acsp");
}

TEST_CASE("orientation and place are read from Exif data, and nonsense in it tells nothing") {
  CHECK(photo::inspect(with_exif(6, false))->orientation == photo::Orientation::turned_90);
  CHECK(photo::inspect(with_exif(9, false))->orientation == photo::Orientation::upright);
  CHECK(photo::inspect(with_exif(1, true))->tells_where_taken);
  CHECK_FALSE(photo::inspect(with_exif(8, false))->tells_where_taken);
}

TEST_CASE("what is no JPEG is named for what it is") {
  CHECK(refusal("") ==
        "error: the photograph is empty (0 bytes) [photo-empty]\n"
        "  hint: copy it again from the camera\n");
  CHECK(refusal(bytes_of("picture.png")) ==
        "error: the photograph is a PNG, expected a JPEG [photo-kind]\n"
        "  hint: save it as JPEG; renaming does not change what it is\n");
  CHECK(refusal("words") ==
        "error: the photograph is not a picture this program knows, expected a JPEG [photo-kind]\n"
        "  hint: save it as JPEG; renaming does not change what it is\n");
}

TEST_CASE("a JPEG cut short anywhere is refused") {
  const std::string whole = bytes_of("plain.jpg");
  CHECK(refusal(whole.substr(0, whole.size() - 40)) ==
        "error: the photograph is cut short [photo-truncated]\n"
        "  hint: copy it again from the camera or the backup\n");
  for (std::size_t length = 0; length < whole.size() - 2; length += 3) {
    CAPTURE(length);
    CHECK_FALSE(refusal(whole.substr(0, length)).empty());
  }
  CHECK_FALSE(photo::inspect(whole.substr(0, whole.size() - 40)));
  CHECK(photo::inspect(whole + "\n"));
  const std::string progressive = bytes_of("progressive.jpg");
  CHECK_FALSE(refusal(progressive.substr(0, progressive.size() / 2)).empty());
}

TEST_CASE("a damaged JPEG is refused") {
  std::string bytes = bytes_of("plain.jpg");
  bytes.replace(bytes.size() / 2 + 100, 2, "\xFF\xD0");
  CHECK(refusal(bytes).find("error: the photograph is") == 0);
}

TEST_CASE("an absurdly large picture is refused before it is decoded") {
  CHECK(refusal(claiming(60000, 24)) ==
        "error: the photograph is 60000 × 24 pixels, expected at most 20000 on a side and 100 "
        "million in all "
        "[photo-large]\n"
        "  hint: save it smaller: 2000 pixels on the longer side print well\n");
  CHECK(refusal(claiming(20000, 20000)).find("[photo-large]") != std::string::npos);
  CHECK(photo::inspect(claiming(20000, 5000)));
}

TEST_CASE("what PDF cannot hold is refused") {
  CHECK(refusal(bytes_of("cmyk.jpg")) ==
        "error: the photograph has 4 colour components, expected 1 (grey) or 3 (colour) "
        "[photo-coding]\n"
        "  hint: save it as RGB\n");
  CHECK(refusal(bytes_of("arithmetic.jpg")) ==
        "error: the photograph uses arithmetic coding, which PDF cannot hold [photo-coding]\n"
        "  hint: save it again as a plain JPEG\n");
}
