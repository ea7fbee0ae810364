#include "answers/shelf.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "answers/told.h"
#include "support/files_on_disk.h"

namespace winchbook::answers {
namespace {

using namespace on_disk;  // NOLINT: told in its words

namespace fs = std::filesystem;

/// A shelf with the demo's records, a broken one, a loop of links and a deep folder.
class TestShelf {
 public:
  TestShelf() {
    fs::remove_all(folder_);
    for (const char* reel : {"skerry-40", "dunlin-2", "wharfinger-5", "sandling-tern"}) {
      fs::create_directories(folder_ / "years" / reel);
      fs::copy(kProject / "demo/reels" / reel / "record.xml",
               folder_ / "years" / reel / "record.xml");
    }
    fs::create_directories(folder_ / "broken");
    put(folder_ / "broken/record.xml", "<reel-record><reel></reel-record>");
    fs::create_directory_symlink(folder_, folder_ / "years/loop");
    fs::create_directories(folder_ / ".hidden");
    fs::copy(kProject / "demo/reels/dunlin-2/record.xml", folder_ / ".hidden/record.xml");
  }
  ~TestShelf() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }
  TestShelf(const TestShelf&) = delete;
  TestShelf& operator=(const TestShelf&) = delete;

  Shelf looked(ShelfRequest request) {
    request.folder = folder_;
    auto shelf = look_through_shelf(library_, request);
    if (!shelf) FAIL(printed(shelf.faults()));
    return std::move(shelf).value();
  }
  std::string found(const ShelfRequest& request) {
    std::string names;
    for (const ShelfReel& one : looked(request).reels)
      names += (names.empty() ? "" : ", ") + one.folder.filename().string();
    return names;
  }
  [[nodiscard]] fs::path folder() const { return folder_; }

 private:
  base::RealFiles files_;
  library::Library library_{{files_, kProject, "test"}};
  fs::path folder_ = fs::temp_directory_path() / "winchbook-shelf-test";
};

}  // namespace

TEST_CASE("every record is found once, and a broken one is told and stops nothing") {
  TestShelf shelf;
  CHECK(shelf.found({}) == "dunlin-2, sandling-tern, skerry-40, wharfinger-5");
  const Shelf all = shelf.looked({});
  CHECK(all.looked == 5);
  CHECK(says(printed(all.warnings), "broken/record.xml"));
  CHECK(all.warnings.size() == 1);
}

TEST_CASE("reels are found by maker, model, owner, day, and what is not finished") {
  TestShelf shelf;
  CHECK(shelf.found(filled<ShelfRequest>([&](auto& r) { r.maker = "harro reel"; })) == "skerry-40");
  CHECK(shelf.found(filled<ShelfRequest>([&](auto& r) { r.maker = "reel harro"; })) == "");
  CHECK(shelf.found(filled<ShelfRequest>([&](auto& r) { r.model = "NO. 2"; })) == "dunlin-2");
  CHECK(shelf.found(filled<ShelfRequest>([&](auto& r) { r.owner = "nell"; })) == "skerry-40");
  CHECK(shelf.found(filled<ShelfRequest>([&](auto& r) { r.owner = "edwin"; })) == "");
  CHECK(shelf.found(filled<ShelfRequest>([&](auto& r) { r.since = "2030"; })) == "");
  CHECK(shelf
            .found(filled<ShelfRequest>([&](auto& r) {
              r.since = "2026-06-19";
              r.maker = "";
            }))
            .find("skerry-40") != std::string::npos);
  CHECK(shelf.found(filled<ShelfRequest>([&](auto& r) { r.unfinished = true; })) == "");
}

TEST_CASE("a part that was put in is found with its donor and its seat") {
  TestShelf shelf;
  const Shelf found = shelf.looked(filled<ShelfRequest>([&](auto& r) {
    r.maker = "Harroway";
    r.fitted = "drag washer";
  }));
  REQUIRE(found.reels.size() == 1);
  const auto& fitted = found.reels.front().fitted;
  CHECK(std::any_of(fitted.begin(), fitted.end(), [](const ShelfFitting& one) {
    return says(one.donor, "Tarn Friction") && one.outside == "23.7";
  }));
  CHECK(std::none_of(fitted.begin(), fitted.end(),
                     [](const ShelfFitting& one) { return one.piece == "Pinion"; }));
  CHECK(shelf.found(filled<ShelfRequest>([&](auto& r) { r.fitted = "magnet"; })) == "");
}

TEST_CASE("an open job tells what it waits for and what lies in the tray") {
  TestShelf shelf;
  const fs::path file = shelf.folder() / "years/dunlin-2/record.xml";
  std::string bytes = bytes_of(file);
  const std::size_t begin = bytes.find("<hand-back>");
  REQUIRE(begin != std::string::npos);
  const std::string end = "</hand-back>";
  bytes.erase(begin, bytes.find(end) + end.size() - begin);
  put(file, bytes);
  CHECK(shelf.found(filled<ShelfRequest>([&](auto& r) { r.unfinished = true; })) == "dunlin-2");
  const Shelf open = shelf.looked(filled<ShelfRequest>([&](auto& r) { r.unfinished = true; }));
  CHECK(says(told([&](const words::Catalogue& words) { return shelf_told(open, false, words); }),
             "here since 2026-06-08"));
}

TEST_CASE("a day that is none, or a folder that is not there, is told") {
  base::RealFiles files;
  library::Library library({files, kProject, "test"});
  CHECK(says(printed(look_through_shelf(library, filled<ShelfRequest>([&](auto& r) {
                                          r.folder = kProject;
                                          r.since = "soon";
                                        }))
                         .faults()),
             "\"soon\" is no day"));
  CHECK(says(printed(look_through_shelf(library, filled<ShelfRequest>([&](auto& r) {
                                          r.folder = kProject / "nowhere";
                                        }))
                         .faults()),
             "there is no such folder"));
}

}  // namespace winchbook::answers
