#include "recordfile/write_record.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <map>
#include <set>

#include "recordfile/demo_records.h"
#include "recordfile/filled_record.h"
#include "recordfile/sections.h"

using namespace winchbook;  // NOLINT

namespace {

using Names = std::set<std::string>;

std::string bare(std::string_view name) {
  return std::string(name.substr(name.find(':') + 1));
}

/// The elements that a type of the schema knows, each with its type.
void add_known(pugi::xml_node particle, std::map<std::string, std::string>& known) {
  for (const pugi::xml_node part : particle.children()) {
    if (bare(part.name()) == "element") {
      const std::string name = bare(part.attribute(part.attribute("ref") ? "ref" : "name").value());
      known[name] = part.attribute("ref") ? name : bare(part.attribute("type").value());
    } else {
      add_known(part, known);
    }
  }
}

/// What of the schema's elements is nowhere in a written one, by type.
class Unwritten {
 public:
  explicit Unwritten(pugi::xml_node schema) {
    for (const pugi::xml_node type : schema.children()) {
      if (bare(type.name()) == "complexType")
        add_known(type, known_[type.attribute("name").value()]);
    }
  }

  void look_at(pugi::xml_node element, const std::string& type) {
    const auto known = known_.find(type);
    if (known == known_.end() || known->second.empty()) return;
    Names& seen = seen_[type];
    for (const pugi::xml_node child : element.children()) {
      const auto slot = known->second.find(child.name());
      if (slot == known->second.end()) continue;
      seen.insert(child.name());
      look_at(child, slot->second);
    }
  }

  [[nodiscard]] Names found() const {
    Names found;
    for (const auto& [type, seen] : seen_) {
      for (const auto& [name, of] : known_.at(type)) {
        if (!seen.contains(name)) found.insert(fmt::format("{}/{}", type, name));
      }
    }
    return found;
  }

 private:
  std::map<std::string, std::map<std::string, std::string>> known_;
  std::map<std::string, Names> seen_;
};

}  // namespace

TEST_CASE("every record written anew is valid, and read again says the same") {
  for (const std::string& file : kRecords) {
    CAPTURE(file);
    const recordfile::LoadedRecord read = record_of(file);
    const std::string written = recordfile::write_new(read.record);
    const recordfile::LoadedRecord again = read_of(written);
    CHECK(recordfile::write_new(again.record) == written);
  }
}

TEST_CASE("a record in which every field says something keeps the schema and comes back whole") {
  const std::string written = recordfile::write_new(recordfile::filled_record());
  const auto document = xml::Document::parse("record.xml", written);
  REQUIRE(document);
  for (const recordfile::Section& section : recordfile::sections()) {
    for (const auto& fault :
         record_schema().faults_in(*document, document->root().child(section.name)))
      FAIL_CHECK(to_string(fault));
  }
  CHECK(recordfile::write_new(values_of(written)) == written);
}

TEST_CASE("there is no element of the schema that the values cannot say") {
  const auto schema = xml::Document::parse(
      "record-1.xsd", file_bytes(WINCHBOOK_SOURCE_DIR "/schemas/record-1.xsd"));
  REQUIRE(schema);
  Unwritten unwritten(schema->root());
  const pugi::xml_document written = recordfile::written_tree(recordfile::filled_record());
  for (const pugi::xml_node section : written.document_element().children())
    unwritten.look_at(section, section.name());
  std::string told;
  for (const std::string& name : unwritten.found())
    told += name + " ";
  // Of what excludes each other one is written, and the other in the next test.
  CHECK(told == "fitted-by/answer maybe-text/withheld photo/withheld ");
}

TEST_CASE("what may be withheld is written as its text or its digest") {
  record::Record record = recordfile::filled_record();
  record.people.front().name = record::Withheld{std::string(64, 'b')};
  record.photos.front() = record::Photo{};
  record.photos.front().withheld = record::Withheld{std::string(64, 'c')};
  for (const record::FittedBy& by :
       {record::FittedBy(record::ByMaker{}), record::FittedBy(record::ByBench{}),
        record::FittedBy(record::ByNobodyKnown{})}) {
    record.fittings.front().by = by;
    const std::string written = recordfile::write_new(record);
    const record::Record again = values_of(written);
    CHECK(again.people.front().name == record.people.front().name);
    CHECK(again.photos.front().withheld == record.photos.front().withheld);
    CHECK(again.fittings.front().by == by);
    CHECK(recordfile::write_new(again) == written);
  }
}

TEST_CASE("what says no more than its absence is left out") {
  record::Record record;
  record.visits.emplace_back();
  record.pieces.emplace_back();
  const std::string written = recordfile::write_new(record);
  CAPTURE(written);
  for (const char* name : {"hand", "wishes", "brake", "grounds", "findings", "tray", "made-by",
                           "count", "role", "story", "donors"})
    CHECK(written.find("<" + std::string(name)) == std::string::npos);
  CHECK(written.find("<places/>") != std::string::npos);
}

TEST_CASE("a new file holds a bench's own notes in the element they are of") {
  record::Record record;
  record::Place& place = record.places.emplace_back();
  place.id.text = "pl-foot";
  place.name = "Foot";
  const std::vector<recordfile::OwnNote> notes{
      {"pl-foot", "fitted-before", "urn:winchbook:bench-notes:1", "Foot: a < b"}};
  CHECK(recordfile::write_new(record, notes)
            .find("      <fitted-before xmlns=\"urn:winchbook:bench-notes:1\">Foot: a &lt; "
                  "b</fitted-before>\n    </place>\n") != std::string::npos);
}
