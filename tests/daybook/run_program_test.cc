#include "library/run_program.h"

#include <doctest/doctest.h>
#include <sys/stat.h>

#include <csignal>
#include <filesystem>
#include <fstream>
#include <string>

#include "daybook/picture_program.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;
using library::ProgramEnd;
using library::run_program;

/// A shell script that is a program for the time of a test.
class Script {
 public:
  explicit Script(const std::string& text) {
    std::string folder = (fs::temp_directory_path() / "winchbook-script-XXXXXX").string();
    REQUIRE(::mkdtemp(folder.data()) != nullptr);
    folder_ = folder;
    std::ofstream(path()) << "#!/bin/sh\n" << text << "\n";
    REQUIRE(::chmod(path().c_str(), 0755) == 0);
  }
  Script(const Script&) = delete;
  Script& operator=(const Script&) = delete;
  ~Script() { fs::remove_all(folder_); }
  [[nodiscard]] fs::path path() const { return folder_ / "program"; }

 private:
  fs::path folder_;
};

TEST_CASE("a program gets its input whole and its answers are taken whole") {
  const Script script("cat; echo said >&2; exit 5");
  const std::string input(3'000'000, 'x');
  const auto end = run_program(script.path(), input, {});
  REQUIRE(end);
  CHECK(end->by == ProgramEnd::By::itself);
  CHECK(end->code == 5);
  CHECK(end->out == input);
  CHECK(end->err == "said\n");
}

TEST_CASE("a program that wants nothing of its input is not waited for") {
  const Script script("exec <&-; echo no");
  const auto end = run_program(script.path(), std::string(3'000'000, 'x'), {});
  REQUIRE(end);
  CHECK(end->out == "no\n");
}

TEST_CASE("a program that takes too long or says too much is ended") {
  const Script slow("exec sleep 30");
  const auto late = run_program(slow.path(), "", {1, 1000, 1000});
  REQUIRE(late);
  CHECK(late->by == ProgramEnd::By::our_limit);
  const Script loud("exec yes");
  const auto much = run_program(loud.path(), "", {30, 1000, 1000});
  REQUIRE(much);
  CHECK(much->by == ProgramEnd::By::our_limit);
}

TEST_CASE("a program that falls over is told by its signal") {
  const Script script("kill -SEGV $$");
  const auto end = run_program(script.path(), "", {});
  REQUIRE(end);
  CHECK(end->by == ProgramEnd::By::signal);
  CHECK(end->code == SIGSEGV);
}

TEST_CASE("a program that is not there is a fault of the machine") {
  const auto end = run_program("/nowhere/winchbook-picture", "", {});
  REQUIRE_FALSE(end);
  CHECK(end.faults().front().rule == "file-picture-program");
}

/// What is said of a photograph when the program that reads it does this.
std::string said_of(const std::string& script) {
  const Script program(script);
  const auto picture = daybook::make_printable(program.path(), "anything");
  REQUIRE_FALSE(picture);
  CHECK(picture.faults().front().rule == "photo-limits");
  return picture.faults().front().message;
}

TEST_CASE("a picture program that falls over its picture is told in a sentence") {
  CHECK(said_of("kill -SEGV $$").ends_with("fell over it"));
  CHECK(said_of("kill -XCPU $$").ends_with("took too long"));
  CHECK(said_of("exit 3").ends_with("stopped without a word"));
  CHECK(said_of("exit 0").ends_with("answered nothing that makes sense"));
}

TEST_CASE("a picture program that was taken over cannot bring in what it likes") {
  const std::string answer = "printf 'width 10\\nheight 10\\nmade anew\\nending jpg\\n' >&2; ";
  CHECK(said_of(answer + "echo hello").ends_with("gave no picture that could be printed"));
  const std::string files = std::string(WINCHBOOK_SOURCE_DIR) + "/tests/photo/files/";
  CHECK(said_of(answer + "cat " + files + "plain.jpg")  // of another size than it says
            .ends_with("gave no picture that could be printed"));
}

}  // namespace
}  // namespace winchbook::daybook
