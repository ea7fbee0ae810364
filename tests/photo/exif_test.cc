#include "photo/exif.h"

#include <doctest/doctest.h>

#include <cstdint>
#include <string>
#include <string_view>

namespace winchbook::photo {
namespace {

/// A TIFF structure, least byte first (TIFF 6.0, section 2): first directory, Exif directory,
/// interoperability directory.
class Structure {
 public:
  explicit Structure(std::string_view original, std::string_view index = "R98") {
    bytes_ = std::string("II*\0\x08\0\0\0", 8);
    number(2, 2);
    entry(0x0112, 3, 1, 6);
    const std::uint32_t exif = 8 + 2 + 2 * 12 + 4;
    entry(0x8769, 4, 1, exif);
    number(0, 4);
    const std::uint32_t interoperability = exif + 2 + 2 * 12 + 4;
    const std::uint32_t text = interoperability + 2 + 12 + 4;
    number(2, 2);
    entry(0x9003, 2, static_cast<std::uint32_t>(original.size()), text);
    entry(0xA005, 4, 1, interoperability);
    number(0, 4);
    number(1, 2);
    number(0x0001, 2);
    number(2, 2);
    number(4, 4);
    bytes_ += index;
    bytes_ += '\0';
    number(0, 4);
    bytes_ += original;
  }
  [[nodiscard]] const std::string& bytes() const { return bytes_; }

 private:
  void number(std::uint32_t value, int size) {
    for (int i = 0; i < size; ++i)
      bytes_ += static_cast<char>(value >> 8 * i & 0xFF);
  }
  void entry(std::uint32_t tag, std::uint32_t type, std::uint32_t count, std::uint32_t value) {
    number(tag, 2);
    number(type, 2);
    number(count, 4);
    number(value, 4);
  }
  std::string bytes_;
};

TEST_CASE("the day of DateTimeOriginal is the day it was taken") {
  const ExifFacts facts = read_exif(Structure("2026:03:06 14:02:11").bytes());
  CHECK(facts.orientation == 6);
  CHECK(facts.taken == base::Day{2026, 3, 6});
  CHECK_FALSE(facts.adobe_rgb);
}

TEST_CASE("a clock that was never set tells no day") {
  CHECK_FALSE(read_exif(Structure("0000:00:00 00:00:00").bytes()).taken);
  CHECK_FALSE(read_exif(Structure("    :  :     :  :  ").bytes()).taken);
  CHECK_FALSE(read_exif(Structure("2026:02:30 14:02:11").bytes()).taken);
  CHECK_FALSE(read_exif(Structure("2026:XX:06 14:02:11").bytes()).taken);
  CHECK_FALSE(read_exif(Structure("2026-03-06T14:02:11").bytes()).taken);
  CHECK_FALSE(read_exif(Structure("2026").bytes()).taken);
}

TEST_CASE("the option file of DCF tells its colours in Adobe RGB") {
  CHECK(read_exif(Structure("2026:03:06 14:02:11", "R03").bytes()).adobe_rgb);
}

TEST_CASE("a structure cut anywhere tells what it can and harms nothing") {
  const std::string whole = Structure("2026:03:06 14:02:11").bytes();
  for (std::size_t length = 0; length < whole.size(); ++length) {
    const ExifFacts facts = read_exif(std::string_view(whole).substr(0, length));
    CHECK_FALSE(facts.taken);
    CHECK(facts.orientation >= 1);
  }
}

TEST_CASE("directories that lead in a circle or far away end") {
  std::string circle = Structure("2026:03:06 14:02:11").bytes();
  circle.replace(8 + 2 + 12 + 8, 4, std::string("\x08\0\0\0", 4));  // Exif is the first again
  CHECK(read_exif(circle).orientation == 6);
  std::string away = Structure("2026:03:06 14:02:11").bytes();
  away.replace(8 + 2 + 12 + 8, 4, "\xFF\xFF\xFF\xFF");
  CHECK_FALSE(read_exif(away).taken);
}

}  // namespace
}  // namespace winchbook::photo
