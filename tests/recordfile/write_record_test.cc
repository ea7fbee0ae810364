#include "recordfile/write_record.h"

#include <doctest/doctest.h>

#include "recordfile/demo_records.h"

using namespace winchbook;  // NOLINT

TEST_CASE("every record written anew is valid, and read again says the same") {
  for (const std::string& file : kRecords) {
    CAPTURE(file);
    const recordfile::LoadedRecord read = record_of(file);
    const std::string written = recordfile::write_new(read.record);
    const recordfile::LoadedRecord again = read_of(written);
    CHECK(recordfile::write_new(again.record) == written);
  }
}
