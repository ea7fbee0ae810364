#include "daybook/typed_words.h"

#include <doctest/doctest.h>

#include <sstream>
#include <string>

namespace winchbook::daybook {
namespace {

/// What is put into an element when this is typed, as XML.
std::string put(const std::string& typed) {
  record::Record record;
  record::Person gus;
  gus.id = {"gus"};
  gus.name = std::string("Augusta Merrow");
  gus.short_name = "Gus";
  record.people.push_back(gus);
  pugi::xml_document document;
  const pugi::xml_node into = document.append_child("p");
  put_typed_words(record, typed, into);
  std::ostringstream out;
  into.print(out, "", pugi::format_raw);
  return out.str();
}

}  // namespace

TEST_CASE("a sentence holds the record's own elements, and people by their names alone") {
  CHECK(put("Gus had <piece ref=\"knob\">the knob</piece>.") ==
        "<p><person ref=\"gus\">Gus</person> had <piece ref=\"knob\">the knob</piece>.</p>");
  CHECK(put("See <photo ref=\"ph-1\"/>.<note>Told by Gus.</note>") ==
        "<p>See <photo ref=\"ph-1\"/>.<note>Told by <person ref=\"gus\">Gus</person>.</note></p>");
  CHECK(put("<person ref=\"gus\"/> <emphasis>slowly</emphasis>") ==
        "<p><person ref=\"gus\"/> <emphasis>slowly</emphasis></p>");
}

TEST_CASE("any other angle brackets and ampersands are text") {
  CHECK(put("3 < 4 & 5 > 2") == "<p>3 &lt; 4 &amp; 5 &gt; 2</p>");
  CHECK(put("a <b>bold</b> word") == "<p>a &lt;b&gt;bold&lt;/b&gt; word</p>");
  CHECK(put("<piece ref=\"knob\">open") == "<p>&lt;piece ref=\"knob\"&gt;open</p>");
  CHECK(put("</typed><typed>") == "<p>&lt;/typed&gt;&lt;typed&gt;</p>");
}

}  // namespace winchbook::daybook
