#include "photo/remarks.h"

#include <doctest/doctest.h>

#include <string>

using winchbook::photo::remarks_in;

namespace {

std::string segment(char marker, const std::string& content) {
  const std::size_t length = content.size() + 2;
  return std::string("\xFF") + marker + static_cast<char>(length / 256) +
         static_cast<char>(length % 256) + content;
}

const std::string kStart = "\xFF\xD8";
const std::string kScan = "\xFF\xDA";

}  // namespace

TEST_CASE("comments, Exif and IPTC are read up to the picture, other segments are not") {
  const std::string jpeg = kStart + segment('\xE0', "JFIF") + segment('\xE1', "Exif by Nell") +
                           segment('\xE2', "ICC") + segment('\xED', "IPTC") + "\xFF" +
                           segment('\xFE', "a comment") + kScan + std::string("\0\x08", 2) +
                           segment('\xFE', "not read");
  CHECK(remarks_in(jpeg) == "Exif by Nell\nIPTC\na comment\n");
}

TEST_CASE("words of two-byte letters read as words") {
  CHECK(remarks_in(kStart + segment('\xE1', std::string("N\0e\0l\0l\0", 8))) == "Nell\n");
}

TEST_CASE("what is cut short or no JPEG says what there is, or nothing") {
  CHECK(remarks_in("").empty());
  CHECK(remarks_in("\xFF\xD8\xFF").empty());
  CHECK(remarks_in("a text that is no picture").empty());
  CHECK(remarks_in(kStart + segment('\xFE', "cut short").substr(0, 8)) == "cut \n");
  CHECK(remarks_in(kStart + std::string("\xFF\xFE\0\0", 4) + "no length").empty());
}
