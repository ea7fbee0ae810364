#include <doctest/doctest.h>
#include <fmt/format.h>

#include <map>
#include <pugixml.hpp>
#include <set>
#include <string>

#include "record/enum_words.h"
#include "recordfile/references.h"
#include "recordfile/sections.h"
#include "recordfile/small_record.h"
#include "xml/schema_words.h"

using namespace winchbook;  // NOLINT

namespace {

const pugi::xml_document& schema_tree() {
  static pugi::xml_document tree;
  if (!tree.first_child()) {
    REQUIRE(tree.load_file(WINCHBOOK_SOURCE_DIR "/schemas/record-1.xsd"));
  }
  return tree;
}

/// Referring elements of the schema's keyrefs, by the kind of thing they point at.
std::map<std::string, std::set<std::string>> keyrefs() {
  std::map<std::string, std::set<std::string>> all;
  for (const auto& found : schema_tree().select_nodes("//xs:keyref")) {
    const std::string refer = found.node().attribute("refer").value();
    const std::string kind = refer.substr(2, refer.size() - 2 - std::string("-id").size());
    const std::string paths = found.node().child("xs:selector").attribute("xpath").value();
    for (std::size_t at = paths.find("r:"); at != std::string::npos;
         at = paths.find("r:", at + 1)) {
      all[kind].insert(paths.substr(at + 2, paths.find(' ', at) - at - 2));
    }
  }
  return all;
}

}  // namespace

TEST_CASE("the reader knows the same references as the schema's keyrefs") {
  std::size_t tried = 0;
  for (const auto& [kind, names] : keyrefs()) {
    for (const std::string& name : names) {
      CAPTURE(name);
      const auto document =
          xml::Document::parse("r", "<reel-record xmlns=\"urn:winchbook:record:1\"><x><" + name +
                                        " ref=\"zz\"/></x></reel-record>");
      REQUIRE(document);
      const base::Diagnostics faults = recordfile::faults_of_references(*document);
      REQUIRE(faults.size() == 1);
      CHECK(faults.front().message ==
            fmt::format("\"{}\" points at \"zz\", and there is no such {}", name, kind));
      ++tried;
    }
  }
  CHECK(tried > 20);
}

TEST_CASE("every reference of the schema is looked after by a keyref") {
  const auto known = keyrefs();
  std::size_t tried = 0;
  for (const auto& found :
       schema_tree().select_nodes("//xs:element[starts-with(@type,'r:ref-')]")) {
    const std::string kind = found.node().attribute("type").value() + std::string("r:ref-").size();
    const std::string name = found.node().attribute("name").value();
    CAPTURE(name);
    CHECK(known.at(kind).count(name) == 1);
    ++tried;
  }
  CHECK(tried > 30);
}

TEST_CASE("the sections are the schema's, in its order") {
  const auto in_schema = schema_tree().select_nodes(
      "//xs:element[@name='reel-record']/xs:complexType/xs:sequence/xs:element");
  REQUIRE(in_schema.size() == recordfile::sections().size());
  std::size_t at = 0;
  for (const auto& found : in_schema) {
    const recordfile::Section& section = recordfile::sections()[at++];
    CHECK(std::string("r:") + section.name == found.node().attribute("ref").value());
    CHECK(section.required == !found.node().attribute("minOccurs"));
  }
}

TEST_CASE("every pattern of the schema is told in words") {
  std::size_t tried = 0;
  for (const auto& found : schema_tree().select_nodes("//xs:pattern")) {
    const std::string pattern = found.node().attribute("value").value();
    CAPTURE(pattern);
    const xml::ToldFault told = xml::in_our_words(
        {{1839, "Element 'e': [facet 'pattern'] The value 'v' is not accepted by the pattern '" +
                    pattern + "'."}},
        "e", "v");
    CHECK(told.message.find("\"e\" holds \"v\", expected ") == 0);
    ++tried;
  }
  CHECK(tried > 8);
}

TEST_CASE(
    "every word of the schema's closed lists is known to the record, and the other way round") {
  const auto words_of = [](const char* type) {
    std::set<std::string> words;
    const std::string path = "//xs:simpleType[@name='" + std::string(type) + "']//xs:enumeration";
    for (const auto& found : schema_tree().select_nodes(path.c_str())) {
      words.insert(found.node().attribute("value").value());
    }
    return words;
  };
  const auto known = [](auto list) {
    std::set<std::string> words;
    for (const auto& one : record::enum_words(list))
      words.insert(std::string(one.word));
    return words;
  };
  CHECK(words_of("certainty") == known(record::Certainty{}));
  CHECK(words_of("reel-kind") == known(record::ReelKind{}));
  CHECK(words_of("brake") == known(record::Brake{}));
  CHECK(words_of("hand") == known(record::Hand{}));
  CHECK(words_of("maker-kind") == known(record::MakerStatement::Kind{}));
  CHECK(words_of("named-to") == known(record::NamedTo{}));
  CHECK(words_of("held") == known(record::Held{}));
  CHECK(words_of("life-event-kind") == known(record::LifeEventKind{}));
  CHECK(words_of("finish-by") == known(record::FinishBy{}));
  CHECK(words_of("made-by-answer") == known(record::MadeBy{}));
  CHECK(words_of("of-this-reel-answer") == known(record::OfThisReel{}));
  CHECK(words_of("pattern-answer") == known(record::Pattern{}));
  CHECK(words_of("piece-role") == known(record::PieceRole{}));
  CHECK(words_of("whereabouts-kind") == known(record::Whereabouts::Kind{}));
  CHECK(words_of("mark-method") == known(record::MarkMethod{}));
  CHECK(words_of("mark-of") == known(record::MarkOf{}));
  CHECK(words_of("mark-state") == known(record::MarkState{}));
  CHECK(words_of("legibility") == known(record::Legibility{}));
  CHECK(words_of("firmness") == known(record::EndFirmness{}));
  CHECK(words_of("stage") == known(record::Stage{}));
  CHECK(words_of("use") == known(record::Use{}));
  CHECK(words_of("matter") == known(record::Matter{}));
  CHECK(words_of("presence") == known(record::Presence{}));
  CHECK(words_of("filled") == known(record::Filled{}));
  CHECK(words_of("surface-state") == known(record::SurfaceState{}));
  CHECK(words_of("fault-kind") == known(record::FaultKind{}));
  CHECK(words_of("severity") == known(record::Severity{}));
  CHECK(words_of("fault-left") == known(record::FaultLeft{}));
  CHECK(words_of("looked-for") == known(record::LookedFor{}));
  CHECK(words_of("looked") == known(record::Looked{}));
  CHECK(words_of("hazard") == known(record::Hazard{}));
  CHECK(words_of("verdict") == known(record::Verdict{}));
  CHECK(words_of("test-outcome") == known(record::TestResult::Kind{}));
  CHECK(words_of("flag-kind") == known(record::Flag::Kind{}));
  CHECK(words_of("course") == known(record::Course{}));
  CHECK(words_of("keyed") == known(record::Keyed{}));
  CHECK(words_of("sale-kind") == known(record::SaleKind{}));
}
