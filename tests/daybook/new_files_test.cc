#include "daybook/new_files.h"

#include <doctest/doctest.h>

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>

#include "seal/digest.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;

class Folder {
 public:
  Folder() {
    std::string name = (fs::temp_directory_path() / "winchbook-files-XXXXXX").string();
    REQUIRE(::mkdtemp(name.data()) != nullptr);
    path_ = name;
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;
  ~Folder() { fs::remove_all(path_); }
  [[nodiscard]] const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

NewFile file_of(const std::string& name, const std::string& bytes) {
  return {name, bytes, {}, seal::hex(seal::fingerprint(bytes))};
}

std::string rule_of(const base::Diagnostics& faults) {
  return faults.empty() ? "" : faults.front().rule;
}

TEST_CASE("files that are not kept in the end are taken away again") {
  const Folder folder;
  base::RealFiles files;
  {
    WrittenFiles brought(files, folder.path());
    REQUIRE(brought.write({file_of("photos/a.jpg", "a"), file_of("photos/b.jpg", "b")}).empty());
    CHECK(files.exists(folder.path() / "photos/b.jpg"));
  }
  CHECK(files.names_in(folder.path() / "photos").empty());
  {
    WrittenFiles brought(files, folder.path());
    REQUIRE(brought.write({file_of("photos/a.jpg", "a")}).empty());
    brought.keep();
  }
  CHECK(holds(files, folder.path() / "photos/a.jpg", seal::hex(seal::fingerprint("a"))));
}

TEST_CASE("a file that is there keeps its bytes, and stays when an edit fails") {
  const Folder folder;
  base::RealFiles files;
  {
    WrittenFiles first(files, folder.path());
    REQUIRE(first.write({file_of("photos/a.jpg", "a")}).empty());
    first.keep();
  }
  {
    WrittenFiles again(files, folder.path());
    CHECK(again.write({file_of("photos/a.jpg", "a")}).empty());
    CHECK(rule_of(again.write({file_of("photos/a.jpg", "other")})) == "photo-name");
  }
  CHECK(holds(files, folder.path() / "photos/a.jpg", seal::hex(seal::fingerprint("a"))));
}

TEST_CASE("a copy is made only of what was looked at") {
  const Folder folder;
  base::RealFiles files;
  const fs::path camera = folder.path() / "IMG_1.JPG";
  std::ofstream(camera) << "picture";
  WrittenFiles brought(files, folder.path());
  NewFile copy{"originals/img-1.jpg", {}, camera, seal::hex(seal::fingerprint("picture"))};
  CHECK(brought.write({copy}).empty());
  std::ofstream(camera) << "another";
  copy.file = "originals/img-2.jpg";
  CHECK(rule_of(brought.write({copy})) == "photo-changed");
}

TEST_CASE("a link in place of the photographs' folder is not followed out of the reel's") {
  const Folder folder;
  const Folder elsewhere;
  base::RealFiles files;
  fs::create_directory_symlink(elsewhere.path(), folder.path() / "photos");
  WrittenFiles brought(files, folder.path());
  CHECK(rule_of(brought.write({file_of("photos/a.jpg", "a")})) == "photo-path");
  CHECK(files.names_in(elsewhere.path()).empty());
}

TEST_CASE("what a stopped process left half written goes with the next of its name") {
  const Folder folder;
  base::RealFiles files;
  REQUIRE(files.make_folder(folder.path() / "photos").empty());
  std::ofstream(folder.path() / "photos/.a.jpg.Qw12er") << "half";
  WrittenFiles brought(files, folder.path());
  REQUIRE(brought.write({file_of("photos/a.jpg", "a")}).empty());
  CHECK(files.names_in(folder.path() / "photos") == std::vector<std::string>{"a.jpg"});
}

}  // namespace
}  // namespace winchbook::daybook
