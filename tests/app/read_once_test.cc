#include <doctest/doctest.h>

#include <map>
#include <stdexcept>
#include <string>

#include "answers/check.h"
#include "app/issue.h"
#include "forms/fill_and_run.h"

namespace winchbook::app {
namespace {

namespace fs = std::filesystem;

const fs::path kProject = WINCHBOOK_SOURCE_DIR;

/// The disk, with how often each file was read; nothing is written.
class CountedReads final : public base::Files {
 public:
  [[nodiscard]] base::Result<std::string> read(const fs::path& path,
                                               std::uintmax_t limit) const override {
    ++reads_[path.filename().string()];
    return disk_.read(path, limit);
  }
  [[nodiscard]] bool exists(const fs::path& path) const override { return disk_.exists(path); }
  [[nodiscard]] bool is_folder(const fs::path& path) const override {
    return disk_.is_folder(path);
  }
  [[nodiscard]] base::Result<std::uintmax_t> size(const fs::path& path) const override {
    return disk_.size(path);
  }
  [[nodiscard]] fs::path resolved(const fs::path& path) const override {
    return disk_.resolved(path);
  }
  [[nodiscard]] base::Diagnostics write_aside(const fs::path& /*path*/,
                                              std::string_view /*bytes*/) override {
    return {base::error("nothing is written here")};
  }
  [[nodiscard]] std::vector<std::string> names_in(const fs::path& folder) const override {
    return disk_.names_in(folder);
  }

  /// Those of an ending, with how often.
  [[nodiscard]] std::map<std::string, int> reads_of(std::string_view ending) const {
    std::map<std::string, int> found;
    for (const auto& [name, count] : reads_) {
      if (name.ends_with(ending)) found.emplace(name, count);
    }
    return found;
  }

 private:
  base::RealFiles disk_;
  mutable std::map<std::string, int> reads_;
};

base::Day no_clock() {
  throw std::logic_error("the clock was asked");
}

/// Runs a job on a demo reel where asking the clock is a fault of the program.
base::Result<forms::Done> run(base::Files& files, forms::Job job,
                              const std::map<std::string, std::string>& typed) {
  library::Library library({files, kProject, "test", no_clock});
  for (const auto& said : typed) {
    CAPTURE(said.first);
    REQUIRE(forms::say(*forms::find(job.form, said.first), said.second).empty());
  }
  forms::Setting setting{library, "winchbook", false, {}};
  return forms::fill_and_run(job, setting, nullptr);
}

std::string reel(const char* name) {
  return (kProject / "demo/reels" / name).string();
}

}  // namespace

TEST_CASE("an issue of a document that tells value, drag and line reads each schema once") {
  CountedReads files;
  const auto done = run(files, issue_job(),
                        {{"PATH", reel("skerry-40")},
                         {"--document", "bench-sheet"},
                         {"--date", "2026-06-19"},
                         {"--with-value", ""},
                         {"--dump", "pages"}});
  if (!done) FAIL(base::to_string(done.faults().front()));
  CHECK(done->outcome.text.find("page 2") != std::string::npos);
  CHECK(files.reads_of(".xsd") == std::map<std::string, int>{{"knowledge-1.xsd", 1},
                                                             {"record-1.xsd", 1},
                                                             {"template-1.xsd", 1}});
  for (const auto& read : files.reads_of(".xml"))
    CHECK_MESSAGE(read.second == 1, read.first);
}

TEST_CASE("neither a check nor an issue asks the clock") {
  CountedReads files;
  CHECK(run(files, answers::check_job(), {{"PATH", reel("dunlin-2")}}));
  CHECK(run(files, issue_job(),
            {{"PATH", reel("dunlin-2")}, {"--date", "2026-06-12"}, {"--dump", "words"}}));
  // Without one it is the day of the record's last entry.
  CHECK(run(files, issue_job(), {{"PATH", reel("dunlin-2")}, {"--dump", "words"}}));
}

}  // namespace winchbook::app
