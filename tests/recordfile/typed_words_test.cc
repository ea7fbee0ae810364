#include "recordfile/typed_words.h"

#include <doctest/doctest.h>

#include <string>

#include "recordfile/element_text.h"
#include "recordfile/write_record.h"

using namespace winchbook;  // NOLINT

namespace {

record::Record record_with_gus() {
  record::Record record;
  record::Person gus;
  gus.id = {"gus"};
  gus.name = std::string("Augusta Merrow");
  gus.short_name = "Gus";
  record.people.push_back(gus);
  return record;
}

/// How the story stands in the file when this is typed.
std::string put(const std::string& typed) {
  record::Record record = record_with_gus();
  record.story.emplace().paragraphs = recordfile::prose_of(record, typed);
  const pugi::xml_document tree = recordfile::written_tree(record);
  return recordfile::written_on_one_line(tree.document_element().child("story"));
}

/// The same of a sentence.
std::string put_sentence(const std::string& typed) {
  record::Record record = record_with_gus();
  record.bench.terms = recordfile::words_of(record, typed);
  const pugi::xml_document tree = recordfile::written_tree(record);
  return recordfile::written_on_one_line(tree.document_element().child("bench").child("terms"));
}

}  // namespace

TEST_CASE("a sentence holds the record's own elements, and people by their names alone") {
  CHECK(put("Gus had <piece ref=\"knob\">the knob</piece>.") ==
        "<story><p><person ref=\"gus\">Gus</person> had <piece ref=\"knob\">the knob</piece>."
        "</p></story>");
  CHECK(put("See <photo ref=\"ph-1\"/>.<note>Told by Gus.</note>") ==
        "<story><p>See <photo ref=\"ph-1\"/>.<note>Told by <person ref=\"gus\">Gus</person>."
        "</note></p></story>");
  CHECK(put("<person ref=\"gus\"/> <emphasis>slowly</emphasis>") ==
        "<story><p><person ref=\"gus\"/> <emphasis>slowly</emphasis></p></story>");
}

TEST_CASE("any other angle brackets and ampersands are text") {
  CHECK(put("3 < 4 & 5 > 2") == "<story><p>3 &lt; 4 &amp; 5 &gt; 2</p></story>");
  CHECK(put_sentence("a <b>bold</b> word") == "<terms>a &lt;b&gt;bold&lt;/b&gt; word</terms>");
  CHECK(put_sentence("<piece ref=\"knob\">open") ==
        "<terms>&lt;piece ref=\"knob\"&gt;open</terms>");
  CHECK(put_sentence("</typed><typed>") == "<terms>&lt;/typed&gt;&lt;typed&gt;</terms>");
  CHECK(put_sentence("so <note>it was</note>") ==
        "<terms>so &lt;note&gt;it was&lt;/note&gt;</terms>");
}

TEST_CASE("paragraphs are parted by empty lines, and several notes of one are one") {
  CHECK(put("One\n  and more.\n \n\nTwo.\n") == "<story><p>One and more.</p><p>Two.</p></story>");
  CHECK(put("So.<note>First.</note> Then.<note>Second.</note>") ==
        "<story><p>So. Then.<note>First. Second.</note></p></story>");
}

TEST_CASE("a blank text says nothing") {
  CHECK(recordfile::words_of({}, " \n\t").empty());
  CHECK(recordfile::prose_of({}, "\n \n").empty());
}
