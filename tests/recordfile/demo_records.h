#pragma once

#include <array>
#include <string>

#include "recordfile/small_record.h"

/// Every record of the demo and of these tests that is valid.
inline const std::array<std::string, 6> kRecords{
    "demo/reels/dunlin-2/record.xml",        "demo/reels/sandling-300/record.xml",
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
