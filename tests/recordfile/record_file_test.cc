#include "recordfile/record_file.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "recordfile/small_record.h"

using namespace winchbook;  // NOLINT

namespace {

/// Everything that is printed of a record changed in these ways.
std::string printed_of(const std::string& bytes) {
  const auto read = recordfile::read_bytes("record.xml", bytes, record_schema());
  std::string out;
  for (const base::Diagnostic& one : read ? read->warnings : read.faults())
    out += to_string(one);
  return out;
}

std::string printed(const std::vector<Edit>& edits) {
  return printed_of(edited(edits));
}

recordfile::LoadedRecord loaded(const std::vector<Edit>& edits) {
  auto read = recordfile::read_bytes("record.xml", edited(edits), record_schema());
  REQUIRE(read);
  return std::move(read).value();
}

}  // namespace

TEST_CASE("the small record is read with what it says") {
  const recordfile::LoadedRecord read = loaded({});
  const record::Record& record = read.record;
  CHECK(read.bytes == small_record());
  CHECK(record.language == "en-GB");
  CHECK(record.bench.name == "The Lantern Bench");
  CHECK(record.reel.serial == "H 4417");
  CHECK(record.reel.sizes.at(0).size.value.text() == "98.4");
  CHECK(record.people.size() == 2);
  CHECK(*record::told(record.people[1].name) == "Nell Merrow");
  CHECK(std::holds_alternative<record::CustodyGap>(record.custody.at(0)));
  CHECK(std::get<record::CustodyStep>(record.custody.at(1)).holder.text == "nell");
  CHECK(record.pieces[0].made_by.answer == record::MadeBy::this_maker);
  CHECK(record.pieces[1].made_by.answer == record::MadeBy::not_determined);
  CHECK(record.pieces[0].made_by.evidence.markings.at(0).text == "mk-serial");
  CHECK(std::holds_alternative<record::ByBench>(record.fittings[2].by));
  CHECK(record.fittings[2].way_back->degree.value.text() == "100");
  const record::Visit& visit = record.visits.at(0);
  CHECK(visit.agreements.at(0).cost_limit->amount.text() == "180.00");
  CHECK(visit.agreements.at(0).cost_limit->currency == "GBP");
  CHECK(visit.findings.pieces.at(0).found->surface.size() == 2);
  CHECK(visit.findings.tests.at(0).after.reading->text() == "31");
  CHECK(visit.strip_down.at(0).number == 1);
  CHECK(visit.tray.at(0).bagged == 1);
  CHECK(record.photos.at(1).pair_of->text == "ph-before");
  CHECK_FALSE(record.value);
}

TEST_CASE("prose keeps its people and folds its white space") {
  const record::Record record =
      loaded({{"<person ref=\"nell\">Nell</person> found it in a biscuit tin.",
               "  <person ref=\"nell\"> Nell </person>\n found   "
               "<emphasis>it</emphasis> <piece ref=\"foot\"/>. "}})
          .record;
  const record::Paragraph& paragraph = record.story->paragraphs.at(0);
  CHECK(record::plain_text(record, paragraph.words) == "Nell found it Foot.");
  CHECK(record::plain_text(record, *paragraph.note) == "Told in March 2026.");
  REQUIRE(std::holds_alternative<record::PersonMention>(paragraph.words.runs.at(0)));
}

TEST_CASE("a withheld person is told by the stand-in everywhere") {
  const record::Record record =
      loaded({{"<name>Nell Merrow</name>", "<name><withheld>" SIXTY_FOUR "</withheld></name>"},
              {"<short-name>Nell</short-name>",
               "<short-name><withheld>" SIXTY_FOUR "</withheld></short-name>"},
              {"      <salt>5f0c9a3be1d24c7780aa61b2c3d4e5f6</salt>\n", ""}})
          .record;
  CHECK(record::plain_text(record, record.story->paragraphs.at(0).words) ==
        "the owner found it in a biscuit tin.");
  CHECK(record.people[1].short_name.empty());
}

TEST_CASE("a bench's own notes are kept in the bytes and never read") {
  const recordfile::LoadedRecord read = loaded(
      {{"<people>", "<people xmlns:own=\"urn:bench:own\">"},
       {"<salt>5f0c9a3be1d24c7780aa61b2c3d4e5f6</salt>",
        "<salt>5f0c9a3be1d24c7780aa61b2c3d4e5f6</salt><own:shelf><own:row "
        "id=\"nell\">3</own:row></own:shelf>"},
       {"</reel-record>", "<note xmlns=\"urn:bench:own\"><name>x</name></note></reel-record>"}});
  CHECK(read.warnings.empty());
  CHECK(read.record.people.size() == 2);
  CHECK(read.bytes.find("own:shelf") != std::string::npos);
}

TEST_CASE("every thing knows its line") {
  const recordfile::LoadedRecord read = loaded({});
  const auto line_of = [&](const std::string& text) {
    const auto at = static_cast<std::ptrdiff_t>(small_record().find(text));
    return 1 + std::count(small_record().begin(), small_record().begin() + at, '\n');
  };
  CHECK(read.where("pinion-new").line == line_of("<piece id=\"pinion-new\""));
  CHECK(read.where("v-2026", "test", 0).line == line_of("<test>"));
  CHECK(read.where("", "story", 0).line == line_of("<story>"));
  CHECK(read.where("no-such-thing").line == 0);
}

TEST_CASE("another root, another namespace, another version are refused at once") {
  CHECK(
      printed_of("<rod-record/>") ==
      "record.xml:1:1: error: the root element is \"rod-record\", expected \"reel-record\" [root]\n"
      "  hint: give the record.xml of a reel's folder\n");
  CHECK(printed({{"urn:winchbook:record:1", "urn:another"}}) ==
        "record.xml:2:1: error: the record's namespace is \"urn:another\", expected "
        "\"urn:winchbook:record:1\" [namespace]\n"
        "  hint: write xmlns=\"urn:winchbook:record:1\" in the root\n");
  CHECK(
      printed_of("<w:reel-record xmlns:w=\"urn:winchbook:record:1\" version=\"1\"/>") ==
      "record.xml:1:1: error: the record's namespace has a prefix here, expected none [namespace]\n"
      "  hint: write xmlns=\"urn:winchbook:record:1\" in the root, and element names without "
      "prefix\n");
  CHECK(printed({{"version=\"1\" lang", "version=\"2\" lang"}}) ==
        "record.xml:2:1: error: the record is of version 2, and this winchbook reads versions up "
        "to 1 "
        "[version]\n"
        "  hint: use a newer winchbook; this one leaves the file as it is\n");
  CHECK(printed({{"version=\"1\" lang", "version=\"one\" lang"}}) ==
        "record.xml:2:1: error: the record's version is \"one\", expected a number such as 1 "
        "[version]\n"
        "  hint: write version=\"1\" in the root\n");
  CHECK(printed({{" lang=\"en-GB\"", ""}}) ==
        "record.xml:2:1: error: the record's language is nothing, expected a tag such as \"en-GB\" "
        "[language]\n"
        "  hint: write lang=\"en-GB\" or another tag of BCP 47 in the root\n");
}

TEST_CASE("sections unknown, twice, out of order and missing are told by name") {
  CHECK(printed({{"<story>", "<stroy/><story>"}}) ==
        "record.xml:49:3: error: \"stroy\" is not a section of a record [schema]\n"
        "  hint: did you mean \"story\"?\n");
  CHECK(printed({{"<story>", "<donors/><story>"}}) ==
        "record.xml:49:12: error: section \"story\" stands after \"donors\", expected before it "
        "[schema]\n"
        "  hint: move it up\n"
        "record.xml:54:3: error: section \"places\" stands after \"donors\", expected before it "
        "[schema]\n"
        "  hint: move it up\n"
        "record.xml:58:3: error: section \"donors\" stands twice, expected once [schema]\n"
        "  hint: put both into one\n");
}

TEST_CASE("a fault in one section does not hide the next section's") {
  CHECK(
      printed({{"<brake>star</brake>", "<brake>stat</brake>"},
               {"<from>1948</from>", "<from>1948-13</from>"},
               {"<kind>foot</kind>", "<knd>foot</knd>"},
               {"<taken-in>2026-03-03</taken-in>", "<taken-in>3 March 2026</taken-in>"},
               {"<width>32</width>", "<width>wide</width>"}}) ==
      "record.xml:12:5: error: \"brake\" holds \"stat\", expected \"star\", \"lever\", \"click\", "
      "\"front-drag\", \"rear-drag\", \"rim\", \"none\" or \"not-determined\" [schema]\n"
      "  hint: did you mean \"star\"?\n"
      "record.xml:40:20: error: \"1948-13\" is not a date: it has month 13, expected 01 to 12 or a "
      "season "
      "21 to 24 [date]\n"
      "  hint: write EDTF: 1948, 1962-08, 2026-03-03, 1948~ (about), 196X, 1948/1979, 1994/.. "
      "(still), "
      "1994/ (end not known), [1938,1940] (one of these)\n"
      "record.xml:55:42: error: \"knd\" is not expected here, expected \"kind\" [schema]\n"
      "  hint: did you mean \"kind\"?\n"
      "record.xml:128:7: error: \"taken-in\" holds \"3 March 2026\", expected a date such as 1948, "
      "1962-08, "
      "1948~ or 1948/1979 [schema]\n"
      "  hint: write EDTF (ISO 8601-2), with hyphens\n"
      "record.xml:178:7: error: \"width\" holds \"wide\", expected a whole number [schema]\n"
      "  hint: write digits only\n");
}

TEST_CASE("what the schema finds is told in our own words") {
  CHECK(printed({{"<stand-in>the restorer</stand-in>\n      <named-to>anyone</named-to>", ""}}) ==
        "record.xml:26:5: error: \"person\" ends too early, expected \"short-name\" or "
        "\"stand-in\" [schema]\n"
        "  hint: write what is missing; what is not known may be left out only where the schema "
        "says so\n");
  CHECK(printed({{"<place id=\"pl-foot\">", "<place>"}})
            .find("record.xml:55:5: error: \"place\" has no attribute \"id\" [schema]\n"
                  "  hint: write <place id=\"…\">\n") == 0);
  CHECK(printed({{"<place id=\"pl-foot\">", "<place id=\"pl-foot\" weight=\"3\">"}}) ==
        "record.xml:55:5: error: \"place\" has an attribute \"weight\", which it may not [schema]\n"
        "  hint: facts stand in elements; attributes hold only ids and references\n");
  CHECK(printed({{"<places>", "<places>foot"}}) ==
        "record.xml:54:3: error: text stands between the elements of \"places\" [schema]\n"
        "  hint: put it in an element, or make a comment of it\n");
  CHECK(printed({{"<weight>612</weight>", "<weight>612 g</weight>"}}) ==
        "record.xml:22:5: error: \"weight\" holds \"612 g\", expected a number such as 12 or 12.5, "
        "not below 0 "
        "[schema]\n"
        "  hint: write the number alone, with a point; the unit is fixed by the element\n");
  CHECK(printed({{"<share>85</share>", "<share>850</share>"}}) ==
        "record.xml:148:46: error: \"share\" holds \"850\", expected a number of at most 100 "
        "[schema]\n"
        "  hint: correct it, or take the element out\n");
  CHECK(printed({{"180.00 GBP", "£180"}}) ==
        "record.xml:138:9: error: \"cost-limit\" holds \"£180\", expected an amount and a currency "
        "such as "
        "12.50 GBP [schema]\n"
        "  hint: use a point, and the three letters of ISO 4217\n");
  CHECK(printed({{"<name>Foot</name>", "<name><b>Foot</b></name>"}}) ==
        "record.xml:55:25: error: \"name\" holds something, but may hold only text [schema]\n"
        "  hint: take out what stands in it\n");
  CHECK(printed({{"<name>Foot</name>", "<name/>"}}) ==
        "record.xml:55:25: error: \"name\" holds nothing, expected some words [schema]\n"
        "  hint: correct it, or take the element out\n");
}

TEST_CASE("ids twice and references to nothing or to another kind are told with the nearest id") {
  CHECK(printed({{"<person id=\"nell\">", "<person id=\"ines\">"}})
            .find("record.xml:31:5: error: id \"ines\" stands twice, first in line 26 [id-twice]\n"
                  "  hint: give one of them another id\n") == 0);
  CHECK(printed({{"<holder ref=\"nell\"/>", "<holder ref=\"nel\"/>"}}) ==
        "record.xml:43:7: error: \"holder\" points at \"nel\", and there is no such person "
        "[reference]\n"
        "  hint: did you mean \"nell\"?\n");
  CHECK(printed({{"<donor ref=\"no-30\"/>", "<donor ref=\"ines\"/>"}}) ==
        "record.xml:90:7: error: \"donor\" points at \"ines\", which is a person, expected a donor "
        "[reference]\n"
        "  hint: give a donor the id \"ines\", or correct the reference\n");
}

TEST_CASE("what the schema cannot say of a value is told while reading") {
  CHECK(printed({{"</note></p>", "</note><note>Again.</note></p>"}}) ==
        "record.xml:50:99: error: a second note stands in one paragraph, expected one at most "
        "[one-note]\n"
        "  hint: put both in one note, or divide the paragraph\n");
  CHECK(printed({{"<name>Nell Merrow</name>",
                  "<name>Nell <withheld>" SIXTY_FOUR "</withheld></name>"}}) ==
        "record.xml:32:7: error: \"name\" holds a text and a digest that withholds it [withheld]\n"
        "  hint: keep the text in the full record, or the digest in a withheld edition\n");
  CHECK(printed({{"<weight>612</weight>", "<weight>1234567890.123456</weight>"}}) ==
        "record.xml:22:5: error: \"weight\" holds \"1234567890.123456\", expected fewer digits "
        "[schema]\n"
        "  hint: correct it, or take the element out\n");
}

TEST_CASE("a withheld digest that is none is refused") {
  CHECK(printed({{"<name>Nell Merrow</name>", "<name><withheld>0123</withheld></name>"}})
            .find("record.xml:32:13: error: \"withheld\" holds \"0123\", expected 64 hexadecimal "
                  "digits in small "
                  "letters [schema]\n"
                  "  hint: copy the whole digest\n") == 0);
}

TEST_CASE("no beginning of a record makes the reader stumble") {
  const std::string& whole = small_record();
  for (std::size_t length = 0; length < whole.size() - 16; length += 37) {
    CAPTURE(length);
    CHECK_FALSE(recordfile::read_bytes("record.xml", whole.substr(0, length), record_schema()));
  }
}
