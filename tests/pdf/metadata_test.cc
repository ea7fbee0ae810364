#include "pdf/metadata.h"

#include <doctest/doctest.h>

namespace winchbook::pdf {
namespace {

// XML 1.0, 2.2 and 2.4.
TEST_CASE("what XML cannot hold is escaped or left out") {
  CHECK(escaped_for_xml("Fish & <Reel> \"40\"\x01\x1F") ==
        "Fish &amp; &lt;Reel&gt; &quot;40&quot;");
  CHECK(escaped_for_xml("— é\n") == "— é\n");
}

Metadata metadata() {
  return {"A & B", "Ines", "", "en-GB", "2026-06-19", "winchbook 0.1.0"};
}

TEST_CASE("the packet says what the file is") {
  const std::string packet = xmp_packet(metadata());
  const auto holds = [&](std::string_view part) { return packet.find(part) != std::string::npos; };
  CHECK(holds("<pdfaid:part>3</pdfaid:part>\n<pdfaid:conformance>A</pdfaid:conformance>"));
  CHECK(holds("<pdfuaid:part>1</pdfuaid:part>"));
  CHECK(holds("<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">A &amp; B</rdf:li></rdf:Alt>"));
  CHECK(holds("<dc:creator><rdf:Seq><rdf:li>Ines</rdf:li></rdf:Seq></dc:creator>"));
  CHECK(holds("<xmp:CreateDate>2026-06-19</xmp:CreateDate>"));
  CHECK(holds("<xmp:ModifyDate>2026-06-19</xmp:ModifyDate>"));
}

TEST_CASE("nothing is said of what is not known") {
  CHECK(xmp_packet(metadata()).find("dc:description") == std::string::npos);
  Metadata with = metadata();
  with.subject = "A reel";
  CHECK(xmp_packet(with).find("dc:description") != std::string::npos);
}

}  // namespace
}  // namespace winchbook::pdf
