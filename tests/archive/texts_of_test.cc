#include "archive/texts_of.h"

#include <doctest/doctest.h>
#include <vector>

#include <algorithm>
#include <string>

using namespace winchbook;

namespace {

/// A PDF without a table of its objects; readers make one up by looking through it.
std::string pdf(const std::string& more) {
  return "%PDF-1.4\n1 0 obj<</Type/Catalog/Pages 2 0 R/Outlines 4 0 R>>endobj\n"
         "2 0 obj<</Type/Pages/Kids[]/Count 0>>endobj\n3 0 obj<</Title(Nell)>>endobj\n"
         "4 0 obj<</First 5 0 R>>endobj\n5 0 "
         "obj<</Title<FEFF00C400640061>/Kin[(Tobias)]>>endobj\n" +
         more + "trailer<</Root 1 0 R/Info 3 0 R/Size 9>>\nstartxref\n0\n%%EOF\n";
}

std::string stream(const std::string& type, const std::string& bytes) {
  return "6 0 obj<</Type/" + type + "/Length " + std::to_string(bytes.size()) + ">>stream\n" +
         bytes + "\nendstream endobj\n";
}

bool has(const std::vector<archive::Text>& texts, const std::string& words) {
  return std::any_of(texts.begin(), texts.end(),
                     [&](const archive::Text& text) { return text.words == words; });
}

}  // namespace

TEST_CASE("every string of every object is read, in either of its alphabets") {
  const auto texts = archive::texts_of(pdf(""), "a.pdf");
  REQUIRE(texts);
  CHECK(has(*texts, "Nell"));
  CHECK(has(*texts, "Äda"));
  CHECK(has(*texts, "Tobias"));
}

TEST_CASE("metadata and attachments are read, and what is drawn is not") {
  for (const char* type : {"Metadata", "EmbeddedFile"}) {
    const auto texts = archive::texts_of(pdf(stream(type, "<who>Nell</who>")), "a.pdf");
    REQUIRE(texts);
    CHECK(has(*texts, "<who>Nell</who>"));
  }
  const auto drawn = archive::texts_of(pdf(stream("XObject", "<who>Nell</who>")), "a.pdf");
  REQUIRE(drawn);
  CHECK_FALSE(has(*drawn, "<who>Nell</who>"));
}

TEST_CASE("what is no PDF is told by name") {
  const auto texts = archive::texts_of("a text", "a.pdf");
  REQUIRE_FALSE(texts);
  CHECK(texts.faults().front().where.file == "a.pdf");
  CHECK(texts.faults().front().rule == "file-pdf");
}
