#include <doctest/doctest.h>

#include <ctime>
#include <random>

#include "recordfile/changed_records.h"
#include "recordfile/mutated_record.h"

using namespace winchbook;  // NOLINT

namespace {

const std::string kRemark = "  <!-- a remark > with <tags> & marks -->\n";
const std::string kNote =
    "  <mine:note xmlns:mine='urn:somebody:else'>  two  spaces </mine:note>\n";

/// The record as a person leaves it: remarks between the sections, explicit defaults, odd spaces.
std::string by_hand(std::string bytes) {
  for (const char* section : {"<people>", "<places>", "<visits>"})
    bytes.insert(bytes.rfind('\n', bytes.find(section)) + 1, kRemark);
  bytes.insert(bytes.rfind('\n', bytes.find("</places>")) + 1,
               "    <place   id='pl-odd' ><name>Odd</name>\t<kind>foot</kind><quantity>1</quantity"
               ">\n\t\t<consumable>no</consumable></place   >\n");
  bytes.insert(bytes.rfind('\n', bytes.find("</reel-record>")) + 1, kNote);
  return bytes;
}

std::size_t times(const std::string& text, const std::string& words) {
  std::size_t count = 0;
  for (std::size_t at = text.find(words); at != std::string::npos; at = text.find(words, at + 1))
    ++count;
  return count;
}

}  // namespace

TEST_CASE("whatever is changed in a record, its file says just that, and keeps the rest") {
  for (const std::string& file : kRecords) {
    std::string bytes = by_hand(file_bytes(std::string(WINCHBOOK_SOURCE_DIR "/") + file));
    std::mt19937 chance(7);
    int number = 0;
    int came_through = 0;
    for (int step = 0; step < 60; ++step) {
      recordfile::LoadedRecord before;
      before.file = "record.xml";
      before.bytes = bytes;
      before.record = values_of(bytes);
      record::Record after = before.record;
      const auto changes_made = chance() % 3 + 1;
      for (unsigned i = 0; i < changes_made; ++i)
        recordfile::change_one(after, chance, number);
      const auto splices = recordfile::changes(before, after, record_order());
      REQUIRE(splices);
      bytes = xml::spliced(before.bytes, *splices);
      came_through += bytes == before.bytes ? 0 : 1;
      const std::string wanted = recordfile::write_new(after);
      const std::string told = recordfile::write_new(values_of(bytes));
      CAPTURE(file);
      CAPTURE(step);
      if (told != wanted) {
        FAIL("wanted and told:\n"
             << line_difference(wanted, told) << "changed from the values before:\n"
             << line_difference(recordfile::write_new(before.record), wanted)
             << "changed in the file:\n"
             << line_difference(before.bytes, bytes));
      }
      CHECK(times(bytes, kRemark) == 3);
      CHECK(times(bytes, kNote) == 1);
    }
    CHECK(came_through > 40);
  }
}

TEST_CASE("a change of one field touches the lines of that field") {
  for (const std::string& file : kRecords) {
    const std::string bytes = by_hand(file_bytes(std::string(WINCHBOOK_SOURCE_DIR "/") + file));
    std::mt19937 chance(11);
    int number = 0;
    recordfile::LoadedRecord before;
    before.file = "record.xml";
    before.bytes = bytes;
    before.record = values_of(bytes);
    for (int step = 0; step < 12; ++step) {
      record::Record after = before.record;
      recordfile::change_one(after, chance, number);
      const std::string changed =
          xml::spliced(bytes, recordfile::changes(before, after, record_order()).value());
      const auto lines_gone = [](const std::string& one, const std::string& other) {
        return times("\n" + line_difference(one, other), "\n-");
      };
      // A written record has as many lines to a change as the file, but for those of one line.
      const std::string was = recordfile::write_new(before.record);
      const std::string is = recordfile::write_new(after);
      CAPTURE(file);
      CAPTURE(step);
      CAPTURE(line_difference(was, is));
      CAPTURE(line_difference(bytes, changed));
      CHECK(lines_gone(bytes, changed) <= lines_gone(was, is) * 2 + 2);
    }
  }
}

TEST_CASE("a change costs a few milliseconds") {
  const auto before = record_of("demo/reels/skerry-40/record.xml");
  record::Record after = before.record;
  after.visits.back().summary = {{record::Plain{"Another sentence."}}};
  const std::clock_t begin = std::clock();
  constexpr int kTimes = 20;
  for (int i = 0; i < kTimes; ++i)
    REQUIRE(recordfile::changes(before, after, record_order()));
  const double milliseconds = 1000.0 * static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
  // Five of them; an instrumented build takes longer.
  CHECK(milliseconds / kTimes < 100.0);
}
