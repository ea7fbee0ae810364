#include "recordfile/change.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <utility>

#include "recordfile/changed_records.h"
#include "recordfile/typed_words.h"

using namespace winchbook;  // NOLINT
using record::Record;

namespace {

record::Words sentence(const std::string& text) {
  return {{record::Plain{text}}};
}

record::Person somebody(const char* id) {
  record::Person person;
  person.id.text = id;
  person.name = std::string("Ansel Drake");
  person.stand_in = "a neighbour";
  return person;
}

}  // namespace

TEST_CASE("a record that says the same is no change") {
  for (const std::string& file : kRecords) {
    CAPTURE(file);
    const recordfile::LoadedRecord read = record_of(file);
    const auto splices = recordfile::changes(read, read.record, record_order());
    REQUIRE(splices);
    CHECK(splices->empty());
  }
}

TEST_CASE("what is added stands in lines of its own at its place, and nothing else is touched") {
  CHECK(difference(small_record(),
                   [](Record& record) {
                     record::Work work;
                     work.what = recordfile::words_of(record, "Oiled & wiped by Nell.");
                     work.by = record.bench.restorers.front();
                     work.hours = base::Hours{base::Decimal(5, 1)};
                     record.visits.back().work.push_back(work);
                   }) ==
        "+      <work>\n"
        "+        <what>Oiled &amp; wiped by <person ref=\"nell\">Nell</person>.</what>\n"
        "+        <by ref=\"ines\"/>\n"
        "+        <hours>0.5</hours>\n"
        "+      </work>\n");
}

TEST_CASE("a short element is one line, and stands before what it was put before") {
  CHECK(difference(small_record(),
                   [](Record& record) {
                     record::Place place;
                     place.id.text = "pl-spool";
                     place.name = "Spool";
                     place.kind = "spool";
                     record.places.insert(record.places.begin() + 1, place);
                     record.people.insert(record.people.begin(), somebody("ansel"));
                   }) ==
        "+    <person id=\"ansel\"><name>Ansel Drake</name><stand-in>a "
        "neighbour</stand-in></person>\n"
        "+    <place id=\"pl-spool\"><name>Spool</name><kind>spool</kind></place>\n");
}

TEST_CASE("in an element of one line what is added stays on it") {
  CHECK(difference(small_record(),
                   [](Record& record) {
                     record.places.front().quantity = 2;
                     record.reel.sizes.front().size = base::Millimetres{base::Decimal(99, 0)};
                   }) ==
        "-    <size><what>plate diameter</what><length>98.4</length></size>\n"
        "+    <size><what>plate diameter</what><length>99</length></size>\n"
        "-    <place id=\"pl-foot\"><name>Foot</name><kind>foot</kind></place>\n"
        "+    <place id=\"pl-foot\"><name>Foot</name><kind>foot</kind><quantity>2</quantity>"
        "</place>\n");
}

TEST_CASE("what is no longer said goes with its line") {
  CHECK(difference(small_record(),
                   [](Record& record) {
                     record.reel.weight.reset();
                     record.people[1].short_name.clear();
                     std::get<record::CustodyGap>(record.custody[0]).until.reset();
                   }) ==
        "-    <weight>612</weight>\n"
        "-      <short-name>Nell</short-name>\n"
        "-    <gap id=\"cu-1\"><from>1948</from><until>2025</until></gap>\n"
        "+    <gap id=\"cu-1\"><from>1948</from></gap>\n");
  const std::string without = changed(small_record(), [](Record& record) { record.story.reset(); });
  CHECK(without.find("story") == std::string::npos);
  CHECK(without.find("</custody>\n  <places>") != std::string::npos);
}

TEST_CASE("a reference to something else is taken out, and another put in at its place") {
  CHECK(difference(small_record(),
                   [](Record& record) {
                     record.reel.cover = record::PhotoId{"ph-before"};
                     std::get<record::CustodyStep>(record.custody[1]).holder.text = "ines";
                   }) ==
        "-    <cover ref=\"ph-after\"/>\n"
        "+    <cover ref=\"ph-before\"/>\n"
        "-      <holder ref=\"nell\"/>\n"
        "+      <holder ref=\"ines\"/>\n");
}

TEST_CASE("a section that is empty or missing opens for what comes into it") {
  const std::string bare = edited({{"  <people>\n", "  <people>\n    <!-- nobody else -->\n"}});
  const std::string opened = changed(bare, [](Record& record) {
    record.people.push_back(somebody("ansel"));
    record::LifeEvent& event = record.life.emplace_back();
    event.id.text = "le-1";
    event.title = "A fall";
    event.what = recordfile::prose_of(record, "It fell.");
    event.source = "told";
  });
  CHECK(opened.find("    <!-- nobody else -->\n    <person id=\"ines\">") != std::string::npos);
  CHECK(opened.find("  </story>\n"
                    "  <life>\n"
                    "    <event id=\"le-1\">\n"
                    "      <kind>other</kind>\n"
                    "      <title>A fall</title>\n"
                    "      <what><p>It fell.</p></what>\n"
                    "      <source>told</source>\n"
                    "    </event>\n"
                    "  </life>\n"
                    "  <places>") != std::string::npos);
  const std::string closed = "<visits><visit id='v' ><taken-in>2026</taken-in></visit ></visits>";
  const std::string file =
      "<reel-record xmlns=\"urn:winchbook:record:1\" version=\"1\" lang=\"en\">"
      "\n  <people/>\n  " +
      closed + "\n</reel-record>\n";
  recordfile::LoadedRecord before;
  before.bytes = file;
  before.record = values_of(file);
  CHECK(line_difference(file, bytes_after(before,
                                          [](Record& record) {
                                            record.people.push_back(somebody("ansel"));
                                            record.visits[0].number = "26-014";
                                            record.visits[0].wishes.use = record::Use::fish;
                                          })) ==
        "-  <people/>\n"
        "-  <visits><visit id='v' ><taken-in>2026</taken-in></visit ></visits>\n"
        "+  <people>\n"
        "+    <person id=\"ansel\"><name>Ansel Drake</name><stand-in>a "
        "neighbour</stand-in></person>\n"
        "+  </people>\n"
        "+  <visits><visit id='v' ><number>26-014</number><taken-in>2026</taken-in>"
        "<wishes><use>fish</use></wishes></visit ></visits>\n");
}

TEST_CASE("an element that said what its absence would is changed, not doubled") {
  const std::string bytes = edited(
      {{"<kind>foot</kind></place>",
        "<kind>foot</kind><quantity>1</quantity><mine:note xmlns:mine=\"urn:mine\"/></place>"},
       {"    <serial>",
        "    <!-- a remark -->\n    <hand><made>not-determined</made>"
        "<found>not-determined</found><left>not-determined</left></hand>\n"
        "    <serial>"}});
  const std::string sorted =
      edited({{"<kind>foot</kind></place>", "<kind>foot</kind><quantity>1</quantity></place>"}});
  CHECK(difference(sorted,
                   [](Record& record) {
                     record.places.front().quantity = 3;
                     record.places.front().assembly = "frame";
                   }) ==
        "-    <place id=\"pl-foot\"><name>Foot</name><kind>foot</kind><quantity>1</quantity>"
        "</place>\n"
        "+    <place id=\"pl-foot\"><name>Foot</name><kind>foot</kind><assembly>frame</assembly>"
        "<quantity>3</quantity></place>\n");
  recordfile::LoadedRecord before;
  before.bytes = bytes;
  before.record = values_of(bytes);
  CHECK(line_difference(bytes, bytes_after(before,
                                           [](Record& record) {
                                             record.places.front().quantity = 4;
                                             record.reel.hand.made = record::Hand::left;
                                           })) ==
        "-    <hand><made>not-determined</made><found>not-determined</found>"
        "<left>not-determined</left></hand>\n"
        "+    <hand><made>left</made></hand>\n"
        "-    <place id=\"pl-foot\"><name>Foot</name><kind>foot</kind><quantity>1</quantity>"
        "<mine:note xmlns:mine=\"urn:mine\"/></place>\n"
        "+    <place id=\"pl-foot\"><name>Foot</name><kind>foot</kind><quantity>4</quantity>"
        "<mine:note xmlns:mine=\"urn:mine\"/></place>\n");
}

TEST_CASE("a file with line ends of two bytes, comments and tabs keeps them") {
  std::string bytes;
  for (const char c : small_record())
    bytes += c == '\n' ? std::string("\r\n") : std::string(1, c);
  const std::string remark = "\t<!-- a remark > here -->\r\n";
  bytes.insert(bytes.find("      <tray>"), remark);
  const std::string now = changed(bytes, [](Record& record) {
    record.visits.back().work.push_back({});
    record.visits.back().work.back().what = sentence("Oiled.");
    record.visits.back().tray.clear();
  });
  CHECK(now.find(remark) != std::string::npos);
  CHECK(now.find("<tray>") == std::string::npos);
  CHECK(std::count(now.begin(), now.end(), '\n') == std::count(now.begin(), now.end(), '\r'));
}

TEST_CASE("of things alike the one that was changed is changed, and the others stay") {
  CHECK(difference(small_record(), [](Record& record) {
          std::swap(record.visits[0].tray.front().bagged, record.visits[0].tray.front().lost);
          record::Cleaning first = record.visits[0].cleaning.empty()
                                       ? record::Cleaning{}
                                       : record.visits[0].cleaning.front();
          first.material = "brass";
          first.method = "dry cloth";
          first.what = sentence("Wiped.");
          first.pieces.clear();
          record.visits[0].cleaning.insert(record.visits[0].cleaning.begin(), first);
        }).find("-      <cleaning") == std::string::npos);
}

TEST_CASE("white space stands as it was typed") {
  const auto before = read_of(small_record());
  const std::string now = bytes_after(before, [](Record& record) {
    record.visits.back().summary = recordfile::words_of(record, "Two  spaces.");
  });
  CHECK(now.find("<summary>Two  spaces.</summary>") != std::string::npos);
}
