#pragma once

#include <doctest/doctest.h>

#include <filesystem>
#include <string>
#include <utility>

#include "base/files.h"
#include "daybook/edit.h"

/// What the tests of the jobs that read and write files share.
namespace winchbook::daybook {

inline const std::filesystem::path kProject = WINCHBOOK_SOURCE_DIR;

inline std::string bytes_of(const std::filesystem::path& path) {
  auto bytes = base::RealFiles().read(path, std::uintmax_t{64} << 20U);
  CAPTURE(path.string());
  REQUIRE(bytes);
  return std::move(bytes).value();
}

inline void put(const std::filesystem::path& path, const std::string& bytes) {
  REQUIRE(base::RealFiles().write_aside(path, bytes).empty());
}

inline std::string printed(const base::Diagnostics& faults) {
  std::string text;
  for (const base::Diagnostic& fault : faults)
    text += to_string(fault);
  return text;
}

inline bool says(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

/// A request with some of its fields filled in.
template <class Request, class Fill> Request filled(const Fill& fill) {
  Request request;
  fill(request);
  return request;
}

/// A copy of the small record, whose reel is still at the bench, in a folder that goes when the
/// test ends.
class OpenBench {
 public:
  explicit OpenBench(const char* name) : folder_(std::filesystem::temp_directory_path() / name) {
    std::filesystem::remove_all(folder_);
    std::filesystem::create_directories(folder_);
    const std::string whole = bytes_of(kProject / "tests/recordfile/records/small.xml");
    const std::size_t begin = whole.find("      <hand-back>");
    const std::size_t end = whole.find("</visit>");
    REQUIRE(begin != std::string::npos);
    put(whole.substr(0, begin) + "    " + whole.substr(end));
  }
  ~OpenBench() {
    std::error_code ignored;
    std::filesystem::remove_all(folder_, ignored);
  }
  OpenBench(const OpenBench&) = delete;
  OpenBench& operator=(const OpenBench&) = delete;

  [[nodiscard]] std::filesystem::path folder() const { return folder_; }
  [[nodiscard]] std::filesystem::path record() const { return folder_ / "record.xml"; }
  [[nodiscard]] std::string now() const { return bytes_of(record()); }
  void put(const std::string& bytes) { ::winchbook::daybook::put(record(), bytes); }
  [[nodiscard]] library::World world() { return {files_, kProject, "test"}; }
  [[nodiscard]] EditRequest request() const { return {folder_, "winchbook work reel", false}; }

  Edited edited(const Change& change) {
    auto done = edit(world(), request(), change);
    if (!done) FAIL(printed(done.faults()));
    return std::move(done).value();
  }
  std::string refused(const Change& change) {
    const std::string before = now();
    const auto done = edit(world(), request(), change);
    REQUIRE_FALSE(done);
    CHECK(now() == before);
    return printed(done.faults());
  }

 private:
  base::RealFiles files_;
  std::filesystem::path folder_;
};

}  // namespace winchbook::daybook
