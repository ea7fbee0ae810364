#include "report/template.h"

#include <doctest/doctest.h>

#include "report/write.h"
#include "told_reel.h"

using namespace winchbook;
using document::Role;
using report_test::changed;
using report_test::printed;

namespace {

constexpr const char* kStyle = "report-templates/house-style.xml";
constexpr const char* kKeepsake = "report-templates/keepsake.xml";

std::string design(const std::string& inside) {
  return "<template xmlns=\"urn:winchbook:template:1\" document=\"keepsake\" "
         "style=\"house-style.xml\">" +
         inside + "</template>";
}

std::string refused_style(const std::string& bytes, const std::string& paper = "a4") {
  const auto style = report_test::read_look(bytes, paper);
  REQUIRE_FALSE(style);
  return printed(style.faults());
}

}  // namespace

TEST_CASE("chapters stand in the template's order, and only those it names") {
  const auto skerry = report_test::demo("skerry-40");
  const auto document = report_test::told(
      skerry, design("<section id=\"care\"/><section id=\"story\"/><section id=\"life\"/>"));
  CHECK(report_test::chapters(document) == std::vector<std::string>{"care", "story", "life"});
}

TEST_CASE("a template says where a page starts, and else the chapter does") {
  const auto skerry = report_test::demo("skerry-40");
  const auto document =
      report_test::told(skerry, design("<section id=\"story\" starts-page=\"true\"/>"
                                       "<section id=\"life\"/>"
                                       "<section id=\"first-ledger\" starts-page=\"false\"/>"
                                       "<section id=\"second-ledger\"/>"));
  REQUIRE(document.chapters.size() == 4);
  CHECK(document.chapters[0].starts_page);
  CHECK_FALSE(document.chapters[1].starts_page);
  CHECK_FALSE(document.chapters[2].starts_page);
  CHECK(document.chapters[3].starts_page);
}

TEST_CASE("a template's own words are printed in the place of the program's") {
  const auto skerry = report_test::demo("skerry-40");
  const auto document =
      report_test::told(skerry, design("<section id=\"care\"/>"
                                       "<words key=\"care.title\">To keep it running</words>"));
  CHECK(document.chapters.front().title == "To keep it running");
}

TEST_CASE("a section nobody knows is told with all that there are") {
  const auto read = report_test::read_design(changed(kKeepsake, "id=\"life\"", "id=\"lief\""));
  REQUIRE_FALSE(read);
  CHECK(printed(read.faults()) ==
        "own.xml:9:3: error: there is no section \"lief\" [template-section]\n"
        "  hint: the sections are account, room, story, dating, how-it-came, first-ledger, parts, "
        "life, "
        "second-ledger, work, before-and-after, not-put-right, advice, value, value-note, "
        "value-sales, value-limits, care, other-photographs, custody, later, seal, seal-note, "
        "statement-identity, statement-first-ledger, statement-life, statement-second-ledger, "
        "statement-figures, statement-photographs, statement-seal, intake-owner, intake-bench, "
        "hand-back-owner, hand-back-bench, reel-tags, bag-labels, step-cards, bench-sheet, "
        "bench-assembly, bench-drag, bench-tests, care-card\n");
}

TEST_CASE("what must hold before a document is printed stands in its template") {
  const auto keepsake = report_test::read_design(report_test::bytes_of(kKeepsake));
  REQUIRE(keepsake);
  CHECK(keepsake->needs.tray_closed);
  CHECK_FALSE(keepsake->needs.hand_back);
  CHECK_FALSE(keepsake->needs.value);
  const auto receipt =
      report_test::read_design(report_test::bytes_of("report-templates/hand-back-receipt.xml"));
  REQUIRE(receipt);
  CHECK(receipt->needs.tray_closed);
  CHECK(receipt->needs.hand_back);
  const auto nothing = report_test::read_design(changed(kKeepsake, "needs=\"tray-closed\"", ""));
  REQUIRE(nothing);
  CHECK_FALSE(nothing->needs.tray_closed);
}

TEST_CASE("a document is named by messages of its own, its cover by one more") {
  auto read = report_test::read_design(design("<section id=\"story\"/>"));
  REQUIRE(read);
  CHECK(report::name_messages(*read) == std::vector<std::string>{"document.keepsake",
                                                                 "subject.keepsake",
                                                                 "cover.eyebrow.keepsake"});
  read.value().cover = false;
  CHECK(report::name_messages(*read) ==
        std::vector<std::string>{"document.keepsake", "subject.keepsake"});
}

TEST_CASE("drag and line are reckoned where a chapter tells them, in the short list too") {
  const auto tells = [](const std::string& inside) {
    const auto read = report_test::read_design(design(inside));
    REQUIRE(read);
    return report::tells_drag_and_line(*read);
  };
  CHECK(tells("<section id=\"story\"/><section id=\"bench-drag\"/>"));
  CHECK(tells("<section id=\"care-card\"/>"));
  CHECK_FALSE(tells("<section id=\"story\"/><section id=\"bench-sheet\"/>"));
  CHECK(
      tells("<section id=\"story\"/><thin places=\"1\" photographs=\"1\">"
            "<section id=\"care-card\"/></thin>"));
}

TEST_CASE("every section that is not known is told in one go, in the short list too") {
  const auto read = report_test::read_design(
      design("<section id=\"one\"/><section id=\"story\"/>"
             "<thin places=\"1\" photographs=\"1\"><section id=\"two\"/></thin>"));
  REQUIRE_FALSE(read);
  CHECK(read.faults().size() == 2);
}

TEST_CASE("a style has the measures of the paper asked for") {
  const std::string bytes = report_test::bytes_of(kStyle);
  const auto a4 = report_test::read_look(bytes, "a4");
  const auto letter = report_test::read_look(bytes, "letter");
  REQUIRE(a4);
  REQUIRE(letter);
  // ISO 216: A4 is 210 by 297 mm. ANSI/ASME Y14.1: Letter is 8.5 by 11 inches. 72 points an inch.
  CHECK(a4->paper.width == base::points(595.28));
  CHECK(a4->paper.height == base::points(841.89));
  CHECK(letter->paper.width == base::points(8.5 * 72));
  CHECK(letter->paper.height == base::points(11 * 72));
  for (const auto* style : {&*a4, &*letter}) {
    CHECK(style->paper.width - style->paper.left - style->paper.right == style->frame_width());
  }
}

TEST_CASE("colours, faces and sizes of a style reach the document") {
  std::string bytes = changed(kStyle, "ink=\"#1A1A1A\"", "ink=\"#0A141E\"");
  const auto put = [&](const std::string& before, const std::string& after) {
    const auto at = bytes.find(before);
    REQUIRE(at != std::string::npos);
    bytes.replace(at, before.size(), after);
  };
  put("accent=\"#7B2D22\"", "accent=\"#00FF80\"");
  put("regular=\"vollkorn-regular\"", "regular=\"gentium-regular\"");
  put("role=\"reading\" family=\"read\" size=\"11\" leading=\"15\"",
      "role=\"reading\" family=\"look-up\" size=\"10.5\" leading=\"15\" italic=\"true\"");
  const auto style = report_test::read_look(bytes, "a4");
  REQUIRE(style);
  CHECK(style->ink == document::Colour{10, 20, 30});
  CHECK(style->accent == document::Colour{0, 255, 128});
  CHECK(style->of(Role::eyebrow).colour == document::Colour{0, 255, 128});
  CHECK(style->of(Role::caption).colour == style->ink2);
  CHECK(style->of(Role::cover_name).family.regular == "gentium-regular");
  CHECK(style->of(Role::reading).family.regular == "lato-regular");
  CHECK(style->of(Role::reading).size == base::points(10.5));
  CHECK(style->of(Role::reading).italic);
  CHECK(style->of(Role::reading).features == std::vector<std::string>{"onum", "pnum"});
  CHECK(style->of(Role::eyebrow).capitals);
  CHECK(style->of(Role::cover_name).tracking == -10);
  CHECK(style->fallback.front() == "gentium-regular");
}

TEST_CASE("a paper the style does not have is told with those it has") {
  CHECK(refused_style(report_test::bytes_of(kStyle), "foolscap") ==
        "style.xml:4:1: error: there is no paper \"foolscap\" [template-paper]\n"
        "  hint: the papers are a4, letter\n");
}

TEST_CASE("margins that leave another frame are told") {
  CHECK(refused_style(changed(kStyle, "left=\"62\"", "left=\"72\"")) ==
        "style.xml:5:3: error: the margins leave a frame of another width than 471 points "
        "[template-paper]\n"
        "  hint: change left or right until width - left - right is 471\n");
}

TEST_CASE("a family that the style does not describe is told") {
  CHECK(refused_style(changed(kStyle, "role=\"subhead\" family=\"read\"",
                              "role=\"subhead\" family=\"shout\""))
            .find("there is no family \"shout\" [template-type]") != std::string::npos);
}

TEST_CASE("a role without type is told by its name") {
  const std::string line =
      "<type role=\"folio\" family=\"look-up\" size=\"7.5\" leading=\"11.25\" "
      "features=\"lnum tnum\"/>";
  CHECK(refused_style(changed(kStyle, line, "")) ==
        "style.xml:4:1: error: the role \"folio\" has no type [template-type]\n"
        "  hint: copy its line from the house style\n");
}

// CLDR 42, supplemental measurementData, paperSize US-Letter.
TEST_CASE("a region's paper follows from the language of the record") {
  CHECK(report::paper_of("en-US") == "letter");
  CHECK(report::paper_of("fr-CA") == "letter");
  CHECK(report::paper_of("en-GB") == "a4");
  CHECK(report::paper_of("en") == "a4");
}

TEST_CASE("a style tells where it names each face first") {
  const auto style = xml::Document::parse("style.xml",
                                          "<style>\n<family name=\"text\" regular=\"Cork\"/>\n"
                                          "<fallback face=\"Cork\"/>\n<fallback face=\"Felt\"/>\n"
                                          "<colours ink=\"#000000\"/></style>");
  REQUIRE(style);
  CHECK_FALSE(report::is_template(*style));
  const auto faces = report::faces_of(*style);
  REQUIRE(faces.size() == 2);
  CHECK(faces.at("Cork").line == 2);
  CHECK(faces.at("Felt").line == 4);
  const auto keepsake = xml::Document::parse("keepsake.xml", report_test::bytes_of(kKeepsake));
  REQUIRE(keepsake);
  CHECK(report::is_template(*keepsake));
}
