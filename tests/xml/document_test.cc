#include "xml/document.h"

#include <doctest/doctest.h>

#include <string>

using winchbook::base::to_string;
using winchbook::xml::Document;
using winchbook::xml::Limits;

namespace {

/// What the program prints for these bytes; empty when they are well-formed.
std::string said_of(std::string bytes, const Limits& limits = {}) {
  const auto document = Document::parse("record.xml", std::move(bytes), limits);
  return document ? std::string() : to_string(document.faults().front());
}

}  // namespace

TEST_CASE("a node knows its line and column, counted in characters") {
  const auto document = Document::parse("record.xml", "<a>\n <b>é</b><c/>text</a>");
  REQUIRE(document);
  CHECK(document->where(document->root()).line == 1);
  CHECK(document->where(document->root()).column == 1);
  const auto c = document->root().child("c");
  CHECK(document->where(c).line == 2);
  CHECK(document->where(c).column == 10);
  CHECK(document->offset(c) == 14);
}

TEST_CASE("a byte order mark moves no place") {
  const auto document = Document::parse("record.xml", "\xEF\xBB\xBF<a><b/></a>");
  REQUIRE(document);
  CHECK(document->offset(document->root().child("b")) == 6);
}

TEST_CASE("white space between the words of a text is kept") {
  const auto document = Document::parse("r", "<p><i>a</i> <i>b</i></p>");
  REQUIRE(document);
  CHECK(document->root().first_child().next_sibling().value() == std::string(" "));
}

TEST_CASE("what is not XML is told with its place and cure") {
  CHECK(said_of("") ==
        "record.xml:1:1: error: the file is empty, expected XML [not-xml]\n"
        "  hint: put the last good copy back, or begin a new record\n");
  CHECK(said_of("%PDF-1.7") ==
        "record.xml:1:1: error: this is not XML: it does not begin with \"<\" [not-xml]\n"
        "  hint: give the record.xml of a reel's folder\n");
  CHECK(said_of("<a>\n<b>\n</a>") ==
        "record.xml:3:5: error: an end tag does not fit: \"b\" is open, found the end of \"a\" "
        "[not-xml]\n"
        "  hint: close the elements in the order in which they were opened\n");
  CHECK(said_of("<a>\n<b>") ==
        "record.xml:2:4: error: the file ends before its last element is closed [not-xml]\n"
        "  hint: the file may have been cut short: put the last good copy back\n");
  CHECK(said_of("<a>Calder & Finch</a>") ==
        "record.xml:1:12: error: \"&\" or \"<\" stands in a text [not-xml]\n"
        "  hint: write &amp; for & and &lt; for <\n");
}

TEST_CASE("a document type and entities are refused") {
  CHECK(
      said_of("<?xml version=\"1.0\"?>\n<!DOCTYPE a [<!ENTITY b \"c\">]>\n<a>&b;</a>") ==
      "record.xml:2:1: error: a document type (<!DOCTYPE …>) stands here, expected none [doctype]\n"
      "  hint: take it out: a record has no document type and no entities of its own\n");
  CHECK(said_of("<a>&eacute;</a>") ==
        "record.xml:1:12: error: entity \"&eacute;\" is not known [not-xml]\n"
        "  hint: write the character itself; only &amp; &lt; &gt; &apos; &quot; are known\n");
  CHECK(said_of("<a><!-- <!DOCTYPE a> --><![CDATA[<!DOCTYPE a>]]></a>").empty());
}

TEST_CASE("another encoding than UTF-8 is refused") {
  CHECK(said_of("<?xml version=\"1.0\" encoding=\"ISO-8859-1\"?><a/>") ==
        "record.xml:1:31: error: the file says it is \"ISO-8859-1\", expected UTF-8 [encoding]\n"
        "  hint: save the file as UTF-8, and write encoding=\"UTF-8\" in its first line\n");
  CHECK(said_of("<a>\n caf\xE9</a>") ==
        "record.xml:2:5: error: byte 0xE9 is not UTF-8 [encoding]\n"
        "  hint: save the file as UTF-8\n");
  CHECK(said_of(std::string("\xFF\xFE<\0a\0/\0>\0", 10)) ==
        "record.xml:1:1: error: the file is UTF-16 or UTF-32, expected UTF-8 [encoding]\n"
        "  hint: save the file as UTF-8\n");
  CHECK(said_of("<?xml version=\"1.0\" encoding='utf-8'?><a>\xF0\x9F\x8E\xA3</a>").empty());
  // RFC 3629: overlong forms, surrogates and what lies over U+10FFFF are not UTF-8.
  CHECK_FALSE(said_of("<a>\xC0\xAF</a>").empty());
  CHECK_FALSE(said_of("<a>\xED\xA0\x80</a>").empty());
  CHECK_FALSE(said_of("<a>\xF4\x90\x80\x80</a>").empty());
}

TEST_CASE("deep nesting is refused before any parser sees it") {
  const auto nested = [](int depth) {
    std::string text;
    for (int i = 0; i < depth; ++i)
      text += "<a>";
    for (int i = 0; i < depth; ++i)
      text += "</a>";
    return text;
  };
  CHECK(said_of(nested(64)).empty());
  CHECK(said_of(nested(100000)) ==
        "record.xml:1:193: error: elements are nested more than 64 deep [depth]\n"
        "  hint: a record never needs that: look for a missing end tag\n");
}

TEST_CASE("a text, a tag, a comment and a file over their limits are refused") {
  const Limits small{1000, 64, 100};
  const std::string long_text(101, 'x');
  CHECK(said_of("<a>" + long_text + "</a>", small) ==
        "record.xml:1:4: error: text of more than 0 MB begins here [size]\n"
        "  hint: a record holds words; keep pictures and other data in files beside it\n");
  CHECK_FALSE(said_of("<a b=\"" + long_text + "\"/>", small).empty());
  CHECK_FALSE(said_of("<a><!--" + long_text + "--></a>", small).empty());
  CHECK_FALSE(said_of("<a>" + std::string(998, ' ') + "</a>", small).empty());
  CHECK(said_of("<a>" + std::string(100, 'x') + "</a>", small).empty());
}
