#pragma once

#include <doctest/doctest.h>

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

#include "base/files.h"
#include "daybook/edit.h"
#include "forms/fill_and_run.h"
#include "support/files_on_disk.h"

/// What the tests of the jobs that read and write files share.
namespace winchbook::daybook {

using namespace on_disk;  // NOLINT: the tests of this room are told in its words

/// What is typed, field by field.
using Typed = std::vector<std::pair<std::string, std::string>>;

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
  void put(const std::string& bytes) { ::winchbook::on_disk::put(record(), bytes); }
  [[nodiscard]] library::Library& library() { return library_; }
  [[nodiscard]] EditRequest request() const {
    return {folder_, "winchbook work reel", false, false};
  }

  Edited edited(const Change& change) {
    auto done = edit(library_, request(), change);
    if (!done) FAIL(printed(done.faults()));
    return std::move(done).value();
  }
  template <class Request>
  Edited edited(const Request& wanted, base::Result<Said> (*change)(const Request&, Draft&)) {
    return edited([&](Draft& draft) { return change(wanted, draft); });
  }
  std::string refused(const Change& change) {
    const std::string before = now();
    const auto done = edit(library_, request(), change);
    REQUIRE_FALSE(done);
    CHECK(now() == before);
    return printed(done.faults());
  }
  template <class Request>
  std::string refused(const Request& wanted, base::Result<Said> (*change)(const Request&, Draft&)) {
    return refused([&](Draft& draft) { return change(wanted, draft); });
  }

  /// Runs a job with its fields as they would be typed: {"WHAT", "Oiled."}. PATH is this reel, and
  /// the day is 2026-06-01.
  base::Result<forms::Done> typed(forms::Job job, const Typed& fields,
                                  const forms::Ask& ask = nullptr) {
    const auto say = [&](const std::string& name, const std::string& text) -> base::Diagnostics {
      forms::Field* field = forms::find(job.form, name);
      CAPTURE(name);
      REQUIRE(field != nullptr);
      return forms::say(*field, text);
    };
    base::Diagnostics faults = say("PATH", folder_.string());
    if (forms::find(job.form, "--on") != nullptr) {
      REQUIRE(say("--on", "2026-06-01").empty());
    }
    for (const auto& [name, text] : fields) {
      const auto wrong = say(name, text);
      faults.insert(faults.end(), wrong.begin(), wrong.end());
    }
    if (!faults.empty()) return faults;
    forms::Setting setting{library_, "winchbook work reel", false, [](const forms::Outcome&) {}};
    return forms::fill_and_run(job, setting, ask);
  }

 private:
  base::RealFiles files_;
  library::Library library_{{files_, kProject, "test",
                             [] {
                               return base::Day{2026, 6, 1};
                             },
                             [] { return std::string(32, 'a'); }}};
  std::filesystem::path folder_;
};

}  // namespace winchbook::daybook
