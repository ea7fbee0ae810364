#include "app/issue.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <string>
#include <utility>
#include <vector>

#include "app/editions.h"
#include "support/files_on_disk.h"

namespace winchbook::app {
namespace {

using namespace on_disk;  // NOLINT: told in its words

namespace fs = std::filesystem;
using namespace daybook;  // NOLINT: what all tests of files on disk share

void change(const fs::path& path, const std::string& before, const std::string& after) {
  std::string bytes = bytes_of(path);
  const auto at = bytes.find(before);
  CAPTURE(before);
  REQUIRE(at != std::string::npos);
  put(path, bytes.replace(at, before.size(), after));
}

/// A copy of the small demo reel and of the templates, in a folder that goes when the test ends.
class Bench {
 public:
  Bench() {
    fs::remove_all(folder_);
    fs::create_directories(folder_);
    fs::copy(kProject / "demo/reels/dunlin-2", reel(), fs::copy_options::recursive);
    fs::copy(kProject / "report-templates", folder_ / "designs");
    request.record = reel();
    request.date = {2026, 6, 12};
    request.output = folder_ / "out.pdf";
  }
  ~Bench() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }
  Bench(const Bench&) = delete;
  Bench& operator=(const Bench&) = delete;

  [[nodiscard]] fs::path folder() const { return folder_; }
  [[nodiscard]] fs::path reel() const { return folder_ / "reel"; }
  [[nodiscard]] library::Library& library() { return library_; }

  Issued issued() {
    auto done = issue(library_, request);
    if (!done) FAIL(printed(done.faults()));
    return std::move(done).value();
  }
  /// The faults as they are printed; nothing may have been written.
  std::string refused() {
    const auto before = names();
    const auto done = issue(library_, request);
    REQUIRE_FALSE(done);
    CHECK(names() == before);
    return printed(done.faults());
  }
  /// Everything below the folder but the lock that writers take, which stays.
  [[nodiscard]] std::string names() const {
    std::vector<std::string> all;
    for (const auto& one : fs::recursive_directory_iterator(folder_))
      if (one.path().filename() != ".lock")
        all.push_back(fs::relative(one.path(), folder_).string());
    std::sort(all.begin(), all.end());
    std::string text;
    for (const std::string& one : all)
      text += one + "\n";
    return text;
  }

  IssueRequest request;

 private:
  base::RealFiles files_;
  library::Library library_{
      {files_, kProject, "test", {}, {}, {}, "/usr/share/color/icc/sRGB.icc"}};
  fs::path folder_ = fs::temp_directory_path() / "winchbook-issue-test";
};

}  // namespace

TEST_CASE("the same record on the same day gives the same bytes") {
  Bench bench;
  const Issued first = bench.issued();
  const std::string bytes = bytes_of(first.file);
  CHECK(bytes.starts_with("%PDF-1.7"));
  CHECK(first.edition == 1);
  CHECK(bench.issued().code == first.code);
  CHECK(bytes_of(first.file) == bytes);
  bench.request.date = {2026, 6, 13};
  CHECK(bench.issued().code != first.code);
  CHECK(bytes_of(first.file) != bytes);
}

TEST_CASE("without a name for it the book stands beside the record") {
  Bench bench;
  bench.request.output.clear();
  CHECK(bench.issued().file == bench.reel() / "keepsake.pdf");
  CHECK_FALSE(fs::exists(bench.reel() / "editions.xml"));
}

TEST_CASE("an edition issued for good is kept, listed, and counted by the next") {
  Bench bench;
  bench.request.final = true;
  const Issued first = bench.issued();
  CHECK(bytes_of(bench.reel() / "issued/keepsake-1.pdf") == bytes_of(first.file));
  const std::string kept = bytes_of(first.file);
  const Issued second = bench.issued();
  CHECK(second.edition == 2);
  CHECK(second.code != first.code);
  CHECK(bytes_of(bench.reel() / "issued/keepsake-1.pdf") == kept);
  CHECK(fs::exists(bench.reel() / "issued/keepsake-2.pdf"));

  // read_editions holds the file against schemas/editions-1.xsd.
  const auto listed = read_editions(bench.library(), bench.reel());
  REQUIRE(listed);
  REQUIRE(listed->size() == 2);
  CHECK((*listed)[0].code == first.code);
  CHECK((*listed)[1].number == 2);
  CHECK((*listed)[1].issued_on == "2026-06-12");
  CHECK((*listed)[1].file == "issued/keepsake-2.pdf");
  CHECK((*listed)[1].fingerprint.size() == 64);

  bench.request.final = false;
  bench.request.dump = IssueRequest::Dump::words;
  CHECK(bench.issued().edition == 3);
  change(bench.folder() / "designs/keepsake.xml", "<section id=\"seal-note\"/>",
         "<section id=\"seal\"/>");
  bench.request.design = bench.folder() / "designs/keepsake.xml";
  CHECK(says(bench.issued().text, "Earlier editions: " + first.code + ", " + second.code));
}

TEST_CASE("a list of editions that its schema refuses stops the issue") {
  Bench bench;
  bench.request.final = true;
  static_cast<void>(bench.issued());
  const fs::path list = bench.reel() / "editions.xml";
  change(list, "<number>1</number>", "<number>first</number>");
  const std::string spoilt = bytes_of(list);
  CHECK(says(bench.refused(), "editions.xml:"));
  CHECK(bytes_of(list) == spoilt);
}

TEST_CASE("a photograph that is not the one recorded stops the issue") {
  Bench bench;
  const fs::path photo = bench.reel() / "photos/dunlin-left.jpg";
  std::string bytes = bytes_of(photo);
  bytes[bytes.size() / 2] = static_cast<char>(bytes[bytes.size() / 2] ^ 1);
  put(photo, bytes);
  const std::string told = bench.refused();
  CHECK(says(told,
             "photograph \"photos/dunlin-left.jpg\" is not there or not as it was recorded "
             "[photo-changed]"));
  CHECK(says(told, "hint: run winchbook check to see what is wrong with it"));
  CHECK_FALSE(says(told, "dunlin-found"));
  fs::remove(photo);
  CHECK(says(bench.refused(), "photograph \"photos/dunlin-left.jpg\" is missing [photo-missing]"));
}

TEST_CASE("a folder that is not there is told, and nothing is left behind") {
  Bench bench;
  bench.request.output = bench.folder() / "nowhere/out.pdf";
  CHECK(says(bench.refused(), "nowhere/out.pdf: error: cannot write: there is no folder"));
  bench.request.final = true;
  CHECK(says(bench.refused(), "[file-write]"));
}

TEST_CASE("a book is never written over the record, a photograph or a kept edition") {
  Bench bench;
  for (const char* name : {"record.xml", "photos/dunlin-left.jpg"}) {
    const std::string before = bytes_of(bench.reel() / name);
    bench.request.output = bench.reel() / name;
    CHECK(says(bench.refused(), "the file is there already and is not a PDF [file-output]"));
    CHECK(bytes_of(bench.reel() / name) == before);
  }
  bench.request.output = bench.folder() / "out.pdf";
  bench.request.final = true;
  CHECK(bench.issued().edition == 1);
  bench.request.output = bench.reel() / "issued/keepsake-1.pdf";
  CHECK(says(bench.refused(), "editions kept in issued/ are never written over"));
  fs::create_symlink(bench.folder() / "out.pdf", bench.folder() / "link.pdf");
  bench.request.final = false;
  bench.request.output = bench.folder() / "link.pdf";
  CHECK(says(bench.refused(), "it is a link to another file"));
}

TEST_CASE("a lost list of editions does not give a number twice") {
  Bench bench;
  bench.request.final = true;
  CHECK(bench.issued().edition == 1);
  fs::remove(bench.reel() / "editions.xml");
  CHECK(bench.issued().edition == 2);
  CHECK(fs::exists(bench.reel() / "issued/keepsake-1.pdf"));
}

TEST_CASE("what nobody knows is told by its name") {
  Bench bench;
  bench.request.document = "poster";
  CHECK(says(bench.refused(), "there is no document \"poster\" [command-document]"));
  bench.request.document = "keepsake";
  bench.request.paper = "foolscap";
  CHECK(says(bench.refused(), "there is no paper \"foolscap\" [command-paper]"));
  bench.request.paper = "letter";
  CHECK(bench.issued().pages > 0);
}

TEST_CASE("a template of one's own in another folder takes the style beside it") {
  Bench bench;
  bench.request.design = bench.folder() / "designs/keepsake.xml";
  bench.request.dump = IssueRequest::Dump::pages;
  const std::string before = bench.issued().text;
  change(bench.folder() / "designs/house-style.xml", "role=\"reading\" family=\"read\" size=\"11\"",
         "role=\"reading\" family=\"read\" size=\"9\"");
  CHECK(bench.issued().text != before);
  fs::remove(bench.folder() / "designs/house-style.xml");
  CHECK(says(bench.refused(), "house-style.xml"));
}

TEST_CASE("other words for a message that is not there, or that cannot be read, are refused") {
  Bench bench;
  const fs::path own = bench.folder() / "designs/own.xml";
  const std::string shipped = bytes_of(bench.folder() / "designs/keepsake.xml");
  const auto reworded = [&](const std::string& words) {
    std::string bytes = shipped;
    put(own, bytes.replace(bytes.find("</template>"), 11, words + "</template>"));
    bench.request.design = own;
    return bench.refused();
  };
  CHECK(says(reworded("<words key=\"story.titel\">Its tale</words>"),
             "there is no message \"story.titel\" to reword [template-words]"));
  const std::string told = reworded("<words key=\"cover.edition\">Edition {number</words>");
  CHECK(says(told, "own.xml: error: the message \"cover.edition\" cannot be read near character"));
  CHECK(says(told, "[message-pattern]"));
}

TEST_CASE("a face that is not in the list is told by its name") {
  Bench bench;
  bench.request.design = bench.folder() / "designs/keepsake.xml";
  change(bench.folder() / "designs/house-style.xml", "regular=\"vollkorn-regular\"",
         "regular=\"vellum-regular\"");
  const std::string told = bench.refused();
  CHECK(says(told, "designs/house-style.xml:"));
  CHECK(says(told, ": error: there is no face \"vellum-regular\" [template-face]"));
}

// U+13000 is the first of the Egyptian hieroglyphs (Unicode 15, chart U13000); no face has them.
TEST_CASE("a character that no face has is told by its number") {
  Bench bench;
  change(bench.reel() / "record.xml", "<place>Ternwick</place>",
         "<place>Ternwick \xF0\x93\x80\x80</place>");
  const std::string told = bench.refused();
  CHECK(says(told, "U+13000"));
  // The place where the record holds it.
  CHECK(says(told, "record.xml:"));
}

}  // namespace winchbook::app
