#include "xml/schema.h"

#include <doctest/doctest.h>

#include <string>

#include "xml/schema_words.h"

using namespace winchbook;  // NOLINT

namespace {

constexpr const char* kSchema = R"(<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema">
  <xs:element name="box">
    <xs:complexType>
      <xs:sequence>
        <xs:element name="washer" type="xs:positiveInteger" maxOccurs="unbounded"/>
        <xs:element name="lid" type="xs:boolean"/>
      </xs:sequence>
    </xs:complexType>
  </xs:element>
</xs:schema>)";

std::string said_of(const std::string& bytes) {
  const auto schema = xml::Schema::compile("box.xsd", kSchema);
  REQUIRE(schema);
  const auto document = xml::Document::parse("box.xml", bytes);
  REQUIRE(document);
  std::string said;
  for (const auto& one : schema->faults_in(*document, document->root()))
    said += to_string(one);
  return said;
}

}  // namespace

TEST_CASE("a file that keeps its schema has no faults") {
  CHECK(said_of("<box><washer>1</washer><lid>true</lid></box>").empty());
}

TEST_CASE("several faults are told in the order of the file, each at its place") {
  CHECK(
      said_of("<box>\n  <washer>none</washer>\n  <washer>2</washer>\n  <lid>perhaps</lid></box>") ==
      "box.xml:2:3: error: \"washer\" holds \"none\", which it may not [schema]\n"
      "  hint: see the element's entry in the schema\n"
      "box.xml:4:3: error: \"lid\" holds \"perhaps\", which it may not [schema]\n"
      "  hint: see the element's entry in the schema\n");
  CHECK(said_of("<box><washer>1</washer></box>") ==
        "box.xml:1:1: error: \"box\" ends too early, expected \"washer\" or \"lid\" [schema]\n"
        "  hint: write what is missing; what is not known may be left out only where the schema "
        "says so\n");
  CHECK(said_of("<box><lid>true</lid></box>") ==
        "box.xml:1:6: error: \"lid\" is not expected here, expected \"washer\" [schema]\n"
        "  hint: elements stand in the order of the schema: move it, or take it out\n");
}

TEST_CASE("a schema that is not in order is our fault, and said to be") {
  const auto schema =
      xml::Schema::compile("box.xsd",
                           "<xs:schema xmlns:xs=\"http://www.w3.org/2001/XMLSchema\">"
                           "<xs:element name=\"a\" type=\"none\"/></xs:schema>");
  REQUIRE_FALSE(schema);
  const std::string said = to_string(schema.faults().front());
  CHECK(said.find("box.xsd: error: the schema is not in order: ") == 0);
  CHECK(said.find(
            "[schema-own]\n  hint: this is the program's own file: install winchbook again\n") !=
        std::string::npos);
}

TEST_CASE("the nearest word is offered, and none when none is near") {
  CHECK(xml::nearest("stroy", {"places", "story"}) == "story");
  CHECK(xml::nearest("polihsed", {"polished", "stripped"}) == "polished");
  CHECK(xml::nearest("markings", {"places", "story"}).empty());
  CHECK(xml::nearest("", {"places"}).empty());
}

TEST_CASE("a long text is quoted in part, by whole characters") {
  CHECK(xml::quoted("  a \n b ") == "\"a b\"");
  CHECK(xml::quoted("") == "nothing");
  std::string long_text;
  for (int i = 0; i < 61; ++i)
    long_text += "é";
  CHECK(xml::quoted(long_text) == "\"" + long_text.substr(0, 120) + "…\"");
}
