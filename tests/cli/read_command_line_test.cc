#include "cli/read_command_line.h"

#include <doctest/doctest.h>

#include <array>
#include <string>
#include <vector>

#include "base/files.h"

namespace winchbook::cli {
namespace {

/// What the last made-up job was told.
std::vector<std::string> told;
bool told_flag = false;
int begun = 0;

forms::Job made_up() {
  ++begun;
  told.clear();
  told_flag = false;
  return {{forms::field("WHAT", "what is done", told), forms::flag("--all", "all", told_flag),
           forms::field("--also", "more", told)},
          [](forms::Setting&) -> base::Result<forms::Outcome> { return forms::Outcome{}; },
          {}};
}

forms::Job with_json() {
  forms::Job job = made_up();
  job.form.push_back(forms::flag("--json", "as JSON", told_flag));
  return job;
}

constexpr std::array kRows{
    forms::Row{"oil", "oil it", made_up}, forms::Row{"weigh", "weigh it", with_json},
    forms::Row{"photo", "photographs"}, forms::Row{"photo add", "take one in", made_up}};

Asked read(std::vector<const char*> words) {
  words.insert(words.begin(), "winchbook");
  begun = 0;
  return read_command_line(static_cast<int>(words.size()), words.data(), kRows, "9.9");
}

}  // namespace

TEST_CASE("the words of a command line go into the form of the job they name") {
  const auto asked = read({"oil", "spool", "knob", "--all", "--also", "post", "--also", "foot"});
  REQUIRE(asked.faults.empty());
  CHECK(asked.row->name == "oil");
  CHECK(told == std::vector<std::string>{"spool", "knob", "post", "foot"});
  CHECK(told_flag);
  CHECK(begun == 1);
}

TEST_CASE("one name may gather several jobs") {
  const auto asked = read({"photo", "add", "foot.jpg"});
  REQUIRE(asked.faults.empty());
  CHECK(asked.row->name == "photo add");
  CHECK(told == std::vector<std::string>{"foot.jpg"});
  CHECK_FALSE(read({"photo"}).faults.empty());
}

TEST_CASE("a name that is none is told, with the nearest") {
  const auto faults = read({"oli"}).faults;
  REQUIRE_FALSE(faults.empty());
  CHECK(faults.front().message == "there is no command \"oli\"");
  CHECK(faults.front().hint == "did you mean oil?");
  CHECK(faults.front().of == base::FaultOf::command);
  CHECK_FALSE(read({"oil", "--colour"}).faults.empty());
}

TEST_CASE("JSON is asked for where the job has it, however little else is understood") {
  CHECK(read({"weigh", "--json"}).json);
  CHECK_FALSE(read({"weigh"}).json);
  CHECK_FALSE(read({"oil", "--json"}).json);
  const auto wrong = read({"weigh", "--json", "--colour"});
  CHECK(wrong.json);
  CHECK_FALSE(wrong.faults.empty());
}

TEST_CASE("help and version are texts, and no job is run") {
  const auto version = read({"--version"});
  REQUIRE(version.faults.empty());
  CHECK(version.text == "winchbook 9.9\n");
  CHECK_FALSE(version.job.run);
  const auto help = read({"oil", "--help"});
  REQUIRE(help.faults.empty());
  CHECK(help.text.find("--also TEXT") != std::string::npos);
}

}  // namespace winchbook::cli
