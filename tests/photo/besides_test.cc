#include "photo/besides.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <string>
#include <vector>

using winchbook::photo::besides_the_picture;
using Strings = std::vector<std::string>;

namespace {

std::string segment(char marker, const std::string& content) {
  const std::size_t length = content.size() + 2;
  return std::string("\xFF") + marker + static_cast<char>(length / 256) +
         static_cast<char>(length % 256) + content;
}

const std::string kStart = "\xFF\xD8";
const std::string kHeader = segment('\xE0', std::string("JFIF\0\1\1\0\0\1\0\1\0\0", 14));
const std::string kProfile = segment('\xE2', std::string("ICC_PROFILE\0\1\1", 14) + "bytes");
// a stuffed zero byte and a restart stand in the picture
const std::string kPicture = segment('\xDA', "scan") + std::string("a\xFF\0b\xFF\xD0", 6) + "c";
const std::string kEnd = "\xFF\xD9";

}  // namespace

TEST_CASE("a picture alone carries nothing, with its profile and in several scans") {
  CHECK(besides_the_picture(kStart + kHeader + kProfile + kPicture + kPicture + kEnd).empty());
  CHECK(besides_the_picture(kStart + segment('\xEE', std::string("Adobe\0\x64", 7)) + kEnd) ==
        Strings{"application segment 14"});  // shorter than it must be
}

TEST_CASE("whatever else it carries is told, wherever it stands") {
  for (const char marker : {'\xE1', '\xE2', '\xE3', '\xE7', '\xED', '\xEF'}) {
    std::string jpeg = kStart;
    for (const std::string& part : {kHeader, segment(marker, "Nell"), kPicture, kEnd})
      jpeg += part;
    CHECK(besides_the_picture(jpeg) ==
          Strings{fmt::format("application segment {}", (marker & 0xFF) - 0xE0)});
  }
  CHECK(besides_the_picture(kStart + kHeader + kPicture + segment('\xFE', "Nell") + kPicture +
                            kEnd) == Strings{"a comment"});
  CHECK(besides_the_picture(kStart + kHeader + kPicture + kEnd + "Nell") ==
        Strings{"4 bytes behind its end"});
  CHECK(besides_the_picture(
            kStart + segment('\xE0', std::string("JFIF\0\1\1\0\0\1\0\1\1\1Nel", 17)) + kEnd) ==
        Strings{"application segment 0"});  // a thumbnail
}

TEST_CASE("what is cut short or no JPEG has nothing that can be told") {
  const std::string short_segment = kStart + segment('\xFE', "cut short").substr(0, 8);
  const std::string without_end = kStart + kHeader + kPicture;
  for (const std::string& bytes :
       {std::string(), std::string("\xFF\xD8\xFF"), std::string("a text that is no picture"),
        short_segment, without_end})
    CHECK(besides_the_picture(bytes).empty());
}

TEST_CASE("what is left is the picture, byte for byte, and carries nothing") {
  using winchbook::photo::bare_picture;
  const std::string bare = kStart + kHeader + kProfile + kPicture + kPicture + kEnd;
  CHECK(bare_picture(bare) == bare);
  CHECK(bare_picture(kStart + kHeader + segment('\xE1', "Exif") + kProfile +
                     segment('\xFE', "Nell") + kPicture + segment('\xE3', "more") + kPicture +
                     kEnd + bare) == bare);
  CHECK(bare_picture(kStart + kHeader + kPicture).empty());
}
