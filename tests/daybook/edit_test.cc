#include "daybook/edit.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <thread>
#include <utility>
#include <vector>

#include "daybook/entries/undo.h"
#include "daybook/entries/work.h"
#include "daybook/history.h"
#include "support/on_disk.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;

/// The disk, on which writing stops working after so many operations, as when it is full or goes.
class FailingFiles final : public base::Files {
 public:
  explicit FailingFiles(int good) : left_(good) {}

  [[nodiscard]] base::Result<std::string> read(const fs::path& path,
                                               std::uintmax_t limit) const override {
    return real_.read(path, limit);
  }
  [[nodiscard]] bool exists(const fs::path& path) const override { return real_.exists(path); }
  [[nodiscard]] bool is_folder(const fs::path& path) const override {
    return real_.is_folder(path);
  }
  [[nodiscard]] base::Result<std::uintmax_t> size(const fs::path& path) const override {
    return real_.size(path);
  }
  [[nodiscard]] fs::path resolved(const fs::path& path) const override {
    return real_.resolved(path);
  }
  [[nodiscard]] base::Diagnostics write_aside(const fs::path& path,
                                              std::string_view bytes) override {
    return works() ? real_.write_aside(path, bytes) : broken();
  }
  [[nodiscard]] std::vector<std::string> names_in(const fs::path& folder) const override {
    return real_.names_in(folder);
  }
  [[nodiscard]] base::Diagnostics make_folder(const fs::path& folder) override {
    return works() ? real_.make_folder(folder) : broken();
  }
  [[nodiscard]] base::Diagnostics remove(const fs::path& path) override {
    return works() ? real_.remove(path) : broken();
  }
  [[nodiscard]] base::Result<std::unique_ptr<base::HeldLock>> lock(
      const fs::path& path, std::string_view holder) override {
    if (!works()) return broken();
    return real_.lock(path, holder);
  }

 private:
  static base::Diagnostics broken() { return {base::error("the disk is gone", "", "file-write")}; }
  bool works() { return left_-- > 0; }

  int left_;
  base::RealFiles real_;
};

Change some_work(const std::string& what) {
  WorkRequest request;
  request.on = {2026, 6, 1};
  request.what = what;
  request.by = "ines";
  request.hours = base::Hours{base::Decimal(5, 1)};
  return [request](Draft& draft) { return work(request, draft); };
}

/// What was put in, when taking it out again gives the file as it was; else nothing.
std::string put_in(const std::string& before, const std::string& after) {
  std::size_t head = 0;
  while (head < before.size() && before[head] == after[head])
    ++head;
  const std::size_t length = after.size() - before.size();
  return after.substr(0, head) + after.substr(head + length) == before ? after.substr(head, length)
                                                                       : "";
}

}  // namespace

TEST_CASE("an edit puts its lines in and leaves every other byte alone") {
  OpenBench bench("winchbook-edit-bytes");
  const std::string before = bench.now();
  const Edited edited = bench.edited(some_work("Oiled & wiped by Nell."));
  CHECK(edited.sentence == "work: Oiled & wiped by Nell. (0.5 h)");
  const std::string lines = put_in(before, bench.now());
  CHECK(says(lines, "<what>Oiled &amp; wiped by <person ref=\"nell\">Nell</person>.</what>"));
  CHECK(says(lines, "<by ref=\"ines\"/>"));
}

TEST_CASE("a file with line ends of two bytes, comments and tabs keeps them") {
  OpenBench bench("winchbook-edit-ends");
  std::string bytes;
  for (const char c : bench.now())
    bytes += c == '\n' ? std::string("\r\n") : std::string(1, c);
  const std::size_t at = bytes.find("      <tray>");
  bytes.insert(at, "\t<!-- a remark > here -->\r\n");
  bench.put(bytes);
  bench.edited(some_work("Oiled."));
  const std::string lines = put_in(bytes, bench.now());
  REQUIRE_FALSE(lines.empty());
  CHECK(std::count(lines.begin(), lines.end(), '\n') ==
        std::count(lines.begin(), lines.end(), '\r'));
}

TEST_CASE("a change that would make the record wrong is refused, with the reason") {
  OpenBench bench("winchbook-edit-refused");
  WorkRequest negative;
  negative.on = {2026, 6, 1};
  negative.what = "Oiled.";
  negative.hours = base::Hours{base::Decimal(-1, 0)};
  const std::string told = bench.refused(negative, work);
  CHECK(says(told, "nothing was changed"));
  CHECK(says(told, "-1"));
  negative.hours = base::Hours{base::Decimal(1, 0)};
  negative.on = {2020, 1, 1};
  CHECK(says(bench.refused(negative, work), "before the reel was taken in"));
}

TEST_CASE("a record that was spoiled by hand in between is told, and left alone") {
  OpenBench bench("winchbook-edit-by-hand");
  std::string bytes = bench.now();
  bench.put(bytes.replace(bytes.find("<kind>multiplier"), 16, "<kind>multiplex"));
  CHECK(says(bench.refused(some_work("Oiled.")), "multiplex"));
}

TEST_CASE("a dry run says what would change and writes nothing") {
  OpenBench bench("winchbook-edit-dry");
  const std::string before = bench.now();
  EditRequest request = bench.request();
  request.dry_run = true;
  const auto done = edit(bench.library(), request, some_work("Oiled."));
  REQUIRE(done);
  CHECK(says(done->difference, "+       <work>"));
  CHECK_FALSE(says(done->difference, "\n- "));
  CHECK(bench.now() == before);
  CHECK(fs::exists(bench.folder() / ".history") == false);
}

TEST_CASE("wherever the disk fails, the record is the one before or the one after") {
  bool done = false;
  for (int good = 0; !done; ++good) {
    REQUIRE(good < 20);
    CAPTURE(good);
    OpenBench bench("winchbook-edit-fails");
    bench.edited(some_work("First."));
    const std::string before = bench.now();
    FailingFiles files(good);
    library::Library library({files, kProject, "test"});
    done = static_cast<bool>(edit(library, bench.request(), some_work("Second.")));
    CHECK((bench.now() == before) == !done);
    CHECK(recordfile::read(base::RealFiles(), bench.folder(), kProject / "schemas"));
    // What comes next works, and undoing it brings back exactly what was there.
    const std::string then = bench.now();
    bench.edited(some_work("Third."));
    REQUIRE(undo(bench.library(), bench.request(), std::nullopt));
    CHECK(bench.now() == then);
  }
}

TEST_CASE("a change that was begun and never made is not one to undo") {
  OpenBench bench("winchbook-edit-begun");
  const std::string first = bench.now();
  bench.edited(some_work("First."));
  FailingFiles files(4);  // the lock, the folder, and both files of the history
  library::Library library({files, kProject, "test"});
  REQUIRE_FALSE(edit(library, bench.request(), some_work("Second.")));
  REQUIRE(versions(base::RealFiles(), bench.folder()).size() == 2);
  REQUIRE(undo(bench.library(), bench.request(), std::nullopt));
  CHECK(bench.now() == first);
}

TEST_CASE("an undo can be undone, and each change can be gone back to") {
  OpenBench bench("winchbook-edit-undo");
  const std::string zero = bench.now();
  bench.edited(some_work("First."));
  const std::string one = bench.now();
  bench.edited(some_work("Second."));
  const std::string two = bench.now();
  const auto back = undo(bench.library(), bench.request(), std::nullopt);
  REQUIRE(back);
  CHECK(back->sentence == "the record is again as it was before change 2: winchbook work reel");
  CHECK(bench.now() == one);
  REQUIRE(undo(bench.library(), bench.request(), std::nullopt));
  CHECK(bench.now() == two);
  REQUIRE(undo(bench.library(), bench.request(), 1));
  CHECK(bench.now() == zero);
  CHECK_FALSE(undo(bench.library(), bench.request(), 99));
}

TEST_CASE("an undo that takes out what was typed by hand says so, and keeps it") {
  OpenBench bench("winchbook-edit-undo-hand");
  bench.edited(some_work("First."));
  const std::string by_hand = bench.now() + "<!-- typed -->\n";
  bench.put(by_hand);
  const auto back = undo(bench.library(), bench.request(), std::nullopt);
  REQUIRE(back);
  CHECK(says(printed(back->warnings), "changed by hand"));
  REQUIRE(undo(bench.library(), bench.request(), std::nullopt));
  CHECK(bench.now() == by_hand);
}

TEST_CASE("of several who write at once, each waits for the others and nothing is lost") {
  constexpr int kWriters = 4;
  constexpr int kEach = 3;
  OpenBench bench("winchbook-edit-together");
  std::vector<std::thread> writers;
  std::vector<int> made(kWriters, 0);
  for (int writer = 0; writer < kWriters; ++writer) {
    writers.emplace_back([&bench, &made, writer] {
      base::RealFiles files;
      library::Library library({files, kProject, "test"});
      for (int i = 0; i < kEach; ++i) {
        const std::string what = "Work " + std::to_string(writer) + "." + std::to_string(i) + ".";
        while (!edit(library, bench.request(), some_work(what))) {
        }
        ++made[static_cast<std::size_t>(writer)];
      }
    });
  }
  for (std::thread& one : writers)
    one.join();
  const std::string bytes = bench.now();
  for (int writer = 0; writer < kWriters; ++writer) {
    for (int i = 0; i < kEach; ++i)
      CHECK(says(bytes, "Work " + std::to_string(writer) + "." + std::to_string(i) + "."));
  }
  CHECK(versions(base::RealFiles(), bench.folder()).size() == kWriters * kEach);
}

TEST_CASE("whoever waits in vain is told who writes") {
  OpenBench bench("winchbook-edit-waits");
  base::RealFiles files;
  const auto held = files.lock(bench.folder() / ".lock", "winchbook strip reel");
  REQUIRE(held);
  const std::string told = bench.refused(some_work("Oiled."));
  CHECK(says(told, "somebody else is writing here: process "));
  CHECK(says(told, "winchbook strip reel"));
  CHECK(says(told, "[file-locked]"));
}

}  // namespace winchbook::daybook
