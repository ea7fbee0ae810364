#pragma once

#include <doctest/doctest.h>

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "base/files.h"
#include "recordfile/record_file.h"

#define SIXTY_FOUR "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef"

/// A value section with one sale on this day.
#define VALUE(day, rest)                                                                           \
  "<value><effective>2026-06-19</effective><basis>b</basis><purpose>p</purpose>"                   \
  "<currency>GBP</currency><sale id=\"sa\"><on>" day                                               \
  "</on><price>210.00 GBP</price><included>reel</included><kind>auction</kind><state>worn</state>" \
  "<source>printed list</source>" rest "</sale></value>"

/// Put `after` in the place of the first `before`.
struct Edit {
  std::string before;
  std::string after;
};

inline std::string file_bytes(const std::string& path) {
  auto bytes = winchbook::base::RealFiles().read(path, std::uintmax_t{64} << 20U);
  REQUIRE(bytes);
  return std::move(bytes).value();
}

/// The small record that keeps the schema and every rule.
inline const std::string& small_record() {
  static const std::string kBytes =
      file_bytes(WINCHBOOK_SOURCE_DIR "/tests/recordfile/records/small.xml");
  return kBytes;
}

inline std::string edited(const std::vector<Edit>& edits) {
  std::string bytes = small_record();
  for (const Edit& edit : edits) {
    const std::size_t at = bytes.find(edit.before);
    CAPTURE(edit.before);
    REQUIRE(at != std::string::npos);
    bytes.replace(at, edit.before.size(), edit.after);
  }
  return bytes;
}

inline const winchbook::xml::Schema& record_schema() {
  static const auto kSchema = winchbook::recordfile::load_schema(winchbook::base::RealFiles(),
                                                                 WINCHBOOK_SOURCE_DIR "/schemas");
  REQUIRE(kSchema);
  return *kSchema;
}
