#include "layout/set_words.h"

#include <doctest/doctest.h>

#include "laid_out.h"

namespace winchbook::layout {
namespace {

using base::points;
using base::to_points;
using document::Role;
using document::Run;
using document::Text;

struct Bench {
  document::Style style = fake::style();
  fake::Font fonts;
  std::vector<Tag> tags;
  Setting setting{style, fonts, "en-GB", tags};

  TagId paragraph() { return setting.add_tag({.type = TagType::paragraph}); }
  std::vector<std::string> lines(const Text& text, double width) {
    std::vector<std::string> found;
    const InlineText line = inline_text(text, Role::reading, paragraph(), setting);
    for (const SetLine& set : set_lines(line, {points(width)}, setting)) {
      std::string words;
      for (const Item& item : set.items) {
        if (const auto* one = std::get_if<TextItem>(&item)) words += one->text;
      }
      found.push_back(words);
    }
    return found;
  }
};

Run bold(std::string words) {
  Run run{std::move(words)};
  run.bold = true;
  return run;
}

using Lines = std::vector<std::string>;

}  // namespace

// Reading text is 11 points in the made-up font: 5.5 a character.

TEST_CASE("a line keeps its last space for those who read aloud, but not its width") {
  Bench bench;
  const InlineText line =
      inline_text(document::plain("aaaa bbbb"), Role::reading, kArtifact, bench.setting);
  const std::vector<SetLine> set = set_lines(line, {points(25)}, bench.setting);
  REQUIRE(set.size() == 2);
  CHECK(std::get<TextItem>(set[0].items[0]).text == "aaaa ");
  CHECK(to_points(set[0].width) == doctest::Approx(22));
  CHECK(std::get<TextItem>(set[1].items[0]).text == "bbbb");
}

TEST_CASE("no-break spaces hold their words together") {
  Bench bench;
  CHECK(bench.lines(document::plain("one 0.4 mm more"), 44) == Lines{"one 0.4 ", "mm more"});
  CHECK(bench.lines(document::plain("one 0.4\u00A0mm more"), 44) ==
        Lines{"one ", "0.4\u00A0mm ", "more"});
}

TEST_CASE("a word wider than its column breaks anywhere, without a hyphen") {
  Bench bench;
  const Lines found = bench.lines(document::plain("abcdefghijkl mn"), 22);
  std::string all;
  for (const std::string& line : found) {
    CHECK(line.size() <= 5);
    all += line;
  }
  CHECK(all == "abcdefghijkl mn");
  CHECK(found.size() == 4);
}

TEST_CASE("a character is never cut in two") {
  Bench bench;
  const Lines found = bench.lines(document::plain("äöüäöüäöü"), 17);
  CHECK(found == Lines{"äöü", "äöü", "äöü"});
}

TEST_CASE("soft hyphens show only where a line ends") {
  Bench bench;
  const InlineText line = inline_text(document::plain("hand\u00ADrail"), Role::reading,
                                      bench.paragraph(), bench.setting);
  const std::vector<SetLine> set = set_lines(line, {points(34)}, bench.setting);
  REQUIRE(set.size() == 2);
  const auto& hyphen = std::get<TextItem>(set[0].items.back());
  CHECK(hyphen.text == "-");
  CHECK(hyphen.actual_text == "\u00AD");
  CHECK(set_lines(line, {points(100)}, bench.setting).size() == 1);
}

TEST_CASE("a line end starts a new line") {
  Bench bench;
  Text text;
  text.parts = {Run{"one"}, document::LineEnd{}, Run{"two"}};
  CHECK(bench.lines(text, 300) == Lines{"one", "two"});
  CHECK(bench.lines(document::plain("one\ntwo"), 300) == Lines{"one", "two"});
}

TEST_CASE("manners take their faces, and italics inside italics stand upright") {
  Bench bench;
  Run italic{"italic"};
  italic.italic = true;
  Text text;
  text.parts = {Run{"plain "}, bold("bold "), italic};
  const InlineText line = inline_text(text, Role::reading, kArtifact, bench.setting);
  REQUIRE(line.spans.size() == 3);
  CHECK(line.spans[0].face == bench.fonts.face("text"));
  CHECK(line.spans[1].face == bench.fonts.face("text-bold"));
  CHECK(line.spans[2].face == bench.fonts.face("text-italic"));
  const InlineText title = inline_text(text, Role::stand_first, kArtifact, bench.setting);
  CHECK(title.spans[0].face == bench.fonts.face("text-italic"));
  CHECK(title.spans[2].face == bench.fonts.face("text"));
}

TEST_CASE("a note mark never begins a line and stands raised") {
  Bench bench;
  Text text;
  text.parts = {Run{"now?"}, document::NoteMark{3}, Run{" then"}};
  // Four characters fill the column; the mark hangs on to them all the same.
  const InlineText line = inline_text(text, Role::reading, bench.paragraph(), bench.setting);
  const std::vector<SetLine> set = set_lines(line, {points(24)}, bench.setting);
  REQUIRE(set.size() >= 2);
  for (const SetLine& one : set) {
    const auto* first = std::get_if<TextItem>(&one.items.front());
    if (first != nullptr) CHECK(first->text.substr(0, 1) != "3");
  }
  bool raised = false;
  for (const Span& span : line.spans)
    raised = raised || span.raise > Length{};
  CHECK(raised);
}

TEST_CASE("a link has a place to click on each of its lines, one tag, and all of its words") {
  Bench bench;
  Run link{"first second"};
  link.link = "https://bench.example/";
  Text text;
  text.parts = {Run{"see "}, link};
  const InlineText line = inline_text(text, Role::reading, bench.paragraph(), bench.setting);
  std::vector<LinkItem> links;
  for (const SetLine& set : set_lines(line, {points(60)}, bench.setting)) {
    for (const Item& item : set.items) {
      if (const auto* one = std::get_if<LinkItem>(&item)) links.push_back(*one);
    }
  }
  REQUIRE(links.size() == 2);
  CHECK(links[0].tag == links[1].tag);
  CHECK(links[0].words == "first second");
  CHECK(bench.tags[static_cast<std::size_t>(links[0].tag)].type == TagType::link);
}

TEST_CASE("a sign pushes what follows, and is heard only where no word says the same") {
  Bench bench;
  Text text;
  text.parts = {document::SignRun{document::Sign::original}, Run{"original"}};
  InlineText line = inline_text(text, Role::table, bench.paragraph(), bench.setting);
  CHECK(line.spans[0].places[0] == sign_advance(document::Sign::original));
  CHECK(line.signs[0].tag == kArtifact);
  text.parts = {document::SignRun{document::Sign::left, "as left"}, Run{"5"}};
  line = inline_text(text, Role::table, bench.paragraph(), bench.setting);
  REQUIRE(line.signs[0].tag != kArtifact);
  CHECK(bench.tags[static_cast<std::size_t>(line.signs[0].tag)].actual_text == "as left ");
}

TEST_CASE("small capitals tell what they stand for") {
  Bench bench;
  Run run{"gus"};
  run.small_capitals = true;
  Text text;
  text.parts = {run};
  const InlineText line = inline_text(text, Role::reading, kArtifact, bench.setting);
  const std::vector<SetLine> set = set_lines(line, {points(100)}, bench.setting);
  CHECK(std::get<TextItem>(set[0].items[0]).actual_text == "gus");
}

TEST_CASE("the widths a column needs are its widest word and everything in one line") {
  Bench bench;
  const InlineText line =
      inline_text(document::plain("aa bbbbbb cc"), Role::reading, kArtifact, bench.setting);
  const ContentWidths widths = content_widths(line, bench.setting);
  CHECK(to_points(widths.least) == doctest::Approx(6 * 5.5));
  CHECK(to_points(widths.most) == doctest::Approx(12 * 5.5));
}

TEST_CASE("no words set no line") {
  Bench bench;
  CHECK(set_words({}, Role::reading, points(100), kArtifact, bench.setting).height == Length{});
}

}  // namespace winchbook::layout
