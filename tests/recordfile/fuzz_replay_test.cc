#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <vector>

#include "recordfile/fuzz_read.h"
#include "recordfile/small_record.h"

namespace {

int read_as_record(const std::string& bytes) {
  const std::vector<std::uint8_t> data(bytes.begin(), bytes.end());
  return LLVMFuzzerTestOneInput(data.data(), data.size());
}

}  // namespace

TEST_CASE("the reader bears every file of its corpus") {
  std::vector<std::filesystem::path> files;
  for (const auto& entry :
       std::filesystem::directory_iterator(WINCHBOOK_SOURCE_DIR "/tests/recordfile/corpus")) {
    files.push_back(entry.path());
  }
  CHECK(files.size() >= 12);
  std::sort(files.begin(), files.end());
  for (const auto& file : files) {
    CAPTURE(file.filename().string());
    CHECK(read_as_record(file_bytes(file.string())) == 0);
  }
}

TEST_CASE("the reader bears one wrong byte anywhere in a record") {
  const std::string& whole = small_record();
  constexpr std::string_view kBytes("<>&\"\0\x80\xFF/", 8);
  for (std::size_t at = 0, turn = 0; at < whole.size(); at += 29, ++turn) {
    std::string bytes = whole;
    bytes[at] = kBytes[turn % kBytes.size()];
    CAPTURE(at);
    CHECK(read_as_record(bytes) == 0);
  }
}

TEST_CASE("the reader bears a record with a stretch cut out or doubled") {
  const std::string& whole = small_record();
  for (std::size_t at = 0; at + 90 < whole.size(); at += 83) {
    CAPTURE(at);
    CHECK(read_as_record(whole.substr(0, at) + whole.substr(at + 60)) == 0);
    CHECK(read_as_record(whole.substr(0, at + 90) + whole.substr(at)) == 0);
  }
}
