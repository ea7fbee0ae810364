#include "xml/edit.h"

#include <doctest/doctest.h>

#include <cstdint>
#include <stdexcept>
#include <string>
#include <string_view>

using namespace winchbook::xml;  // NOLINT: the whole file tries this room

namespace {

Document parsed(std::string bytes) {
  auto document = Document::parse("record.xml", std::move(bytes));
  REQUIRE(document);
  return std::move(document).value();
}

std::string cut(const Document& document, Extent extent) {
  return document.source().bytes().substr(extent.begin, extent.size());
}

}  // namespace

TEST_CASE("splices are made at once, in any order, and touch nothing else") {
  CHECK(spliced("abcdef", {}) == "abcdef");
  CHECK(spliced("abcdef", {{4, 5, "EE"}, {0, 1, ""}, {2, 2, "+"}}) == "b+cdEEf");
  CHECK(spliced("abc", {{3, 3, "!"}}) == "abc!");
  CHECK(spliced("", {{0, 0, "new"}}) == "new");
}

TEST_CASE("what is put in at one place stands in the order given, before what is replaced there") {
  CHECK(spliced("abc", {{1, 2, "B"}, {1, 1, "1"}, {1, 1, "2"}}) == "a12Bc");
  CHECK(spliced("abc", {{2, 2, "+"}, {1, 2, "B"}}) == "aB+c");
}

TEST_CASE("splices that overlap are a fault of the program") {
  CHECK_THROWS_AS((void)spliced("abcdef", {{0, 3, ""}, {2, 4, ""}}), std::logic_error);
  CHECK_THROWS_AS((void)spliced("abcdef", {{1, 4, ""}, {2, 2, "x"}}), std::logic_error);
  CHECK_THROWS_AS((void)spliced("abc", {{2, 4, ""}}), std::logic_error);
  CHECK_THROWS_AS((void)spliced("abc", {{2, 1, ""}}), std::logic_error);
}

TEST_CASE("an element's extent ends behind its own end tag") {
  const auto document = parsed("<a><b>x<b>y</b>z</b><b/></a>");
  const auto outer = document.root().child("b");
  CHECK(cut(document, extent_of(document, outer).whole) == "<b>x<b>y</b>z</b>");
  CHECK(cut(document, extent_of(document, outer).content) == "x<b>y</b>z");
  const auto closed = extent_of(document, document.root().last_child());
  CHECK(closed.self_closing);
  CHECK(cut(document, closed.whole) == "<b/>");
  CHECK(closed.content == Extent{closed.whole.end, closed.whole.end});
}

TEST_CASE("end tags in comments, character data, instructions and attributes close nothing") {
  const auto document =
      parsed("<a><b t='>' u=\"&lt;/b>'/>\"><!-- </b> > --><![CDATA[</b>]]><?i </b>?>é</b ></a>");
  const auto b = document.root().child("b");
  const auto extent = extent_of(document, b);
  CHECK(cut(document, extent.content) == "<!-- </b> > --><![CDATA[</b>]]><?i </b>?>é");
  CHECK(cut(document, extent.whole).ends_with("</b >"));
  CHECK_FALSE(extent.self_closing);
}

TEST_CASE("a byte order mark and letters of several bytes move no extent") {
  const auto document = parsed("\xEF\xBB\xBF<a>Ærø <b>Öl</b></a>");
  const auto extent = extent_of(document, document.root().child("b"));
  CHECK(cut(document, extent.content) == "Öl");
  CHECK(cut(document, extent_of(document, document.root()).whole) == "<a>Ærø <b>Öl</b></a>");
}

TEST_CASE("the lines an element has to itself go without a trace") {
  // @ is where a line ends.
  const auto with_ends = [](std::string_view text, std::string_view end) {
    std::string out;
    for (const char sign : text)
      out += sign == '@' ? std::string(end) : std::string(1, sign);
    return out;
  };
  for (const std::string end : {"\n", "\r\n"}) {
    const auto document = parsed(with_ends("<a>@  <b>1</b> @\t<c/><d/>@  <e>@2</e>@</a>", end));
    const auto lines = [&](const char* name) {
      return lines_of(document, document.root().child(name));
    };
    const Extent b = lines("b");
    CHECK(spliced(document.source().bytes(), {{b.begin, b.end, ""}}) ==
          with_ends("<a>@\t<c/><d/>@  <e>@2</e>@</a>", end));
    CHECK(cut(document, lines("c")) == "<c/>");
    CHECK(cut(document, lines("d")) == "<d/>");
    CHECK(cut(document, lines("e")) == with_ends("  <e>@2</e>@", end));
  }
}

TEST_CASE("an attribute's value is found by its name, whatever the quotes and blanks") {
  const auto document = parsed("<a><b xid='1'\n id = \"the 'id'\" ref='x=\"y\"'/>id='3'</a>");
  const auto b = document.root().child("b");
  const auto value = [&](const char* name) {
    const auto found = attribute_of(document, b, name);
    return found ? cut(document, *found) : "none";
  };
  CHECK(value("id") == "the 'id'");
  CHECK(value("xid") == "1");
  CHECK(value("ref") == "x=\"y\"");
  CHECK(value("i") == "none");
  CHECK_FALSE(attribute_of(document, document.root(), "id"));
}

TEST_CASE("indentation is told only where nothing else stands before the element") {
  const auto document = parsed("<a>\n \t<b/>é<c/>\n<d/></a>");
  CHECK(indentation_of(document, document.root().child("b")) == " \t");
  CHECK(indentation_of(document, document.root().child("c")).empty());
  CHECK(indentation_of(document, document.root().child("d")).empty());
  const auto marked = parsed("\xEF\xBB\xBF  <a/>");
  CHECK(indentation_of(marked, marked.root()) == "  ");
}

TEST_CASE("the file's own line ends are known") {
  CHECK(line_end_of("a\r\nb\n") == "\r\n");
  CHECK(line_end_of("a\nb\r\n") == "\n");
  CHECK(line_end_of("a") == "\n");
  CHECK(line_end_of("\n") == "\n");
}

TEST_CASE("an escaped text reads back as it was") {
  const std::string text = "Calder & Finch <b> ]]> \"x\" 'y'\r\nÆ";
  const auto document = parsed("<a>" + escaped(text) + "</a>");
  CHECK(document.root().text().get() == text);
}

TEST_CASE("comments and instructions are found wherever they stand, the declaration is not one") {
  const auto document = parsed(
      "<?xml version=\"1.0\"?>\n<!--1--><a t=\"&lt;!--\"><?i?><![CDATA[<!--x-->]]></a><!--2-->");
  std::string found;
  for (const Extent& remark : remarks_of(document))
    found += cut(document, remark);
  CHECK(found == "<!--1--><?i?><!--2-->");
}
