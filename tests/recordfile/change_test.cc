#include "recordfile/change.h"

#include <doctest/doctest.h>

#include "recordfile/changed_records.h"
#include "recordfile/typed_words.h"

using namespace winchbook;  // NOLINT
using record::Record;

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
