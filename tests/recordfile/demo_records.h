#pragma once

#include <array>
#include <string>

#include "recordfile/fields.h"
#include "recordfile/reader.h"
#include "recordfile/small_record.h"

/// Every record of the demo and of these tests that is valid.
inline const std::array<std::string, 6> kRecords{
    "demo/reels/dunlin-2/record.xml",        "demo/reels/sandling-tern/record.xml",
    "demo/reels/skerry-40/record.xml",       "demo/reels/wharfinger-5/record.xml",
    "tests/recordfile/records/no_visit.xml", "tests/recordfile/records/small.xml"};

inline winchbook::recordfile::LoadedRecord read_of(const std::string& bytes) {
  auto read = winchbook::recordfile::read_bytes("record.xml", bytes, record_schema());
  if (!read) {
    for (const auto& fault : read.faults())
      MESSAGE(to_string(fault));
    FAIL("the record cannot be read");
  }
  return std::move(read).value();
}

inline winchbook::recordfile::LoadedRecord record_of(const std::string& file) {
  return read_of(file_bytes(std::string(WINCHBOOK_SOURCE_DIR "/") + file));
}

/// What a file says, whether it is valid or not.
inline winchbook::record::Record values_of(const std::string& bytes) {
  const auto document = winchbook::xml::Document::glance("record.xml", bytes);
  REQUIRE(document);
  winchbook::record::Record record;
  winchbook::base::Diagnostics faults;
  const winchbook::recordfile::Reader reader(
      winchbook::recordfile::Element(*document, faults, document->root()));
  fields(reader, record);
  CHECK(faults.empty());
  record.language = document->root().attribute("lang").value();
  return record;
}
