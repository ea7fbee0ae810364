#include <doctest/doctest.h>

#include <filesystem>
#include <nlohmann/json.hpp>
#include <string>

#include "answers/grade.h"
#include "recordfile/withhold.h"

namespace winchbook::app {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

const fs::path kProject = WINCHBOOK_SOURCE_DIR;

/// A folder that goes when the test ends.
class Folder {
 public:
  Folder() { fs::create_directories(path); }
  ~Folder() {
    std::error_code ignored;
    fs::remove_all(path, ignored);
  }
  Folder(const Folder&) = delete;
  Folder& operator=(const Folder&) = delete;

  const fs::path path = fs::temp_directory_path() / "winchbook-withheld-figures-test";
};

/// Counts the figures; ids are the only words that may differ.
int same_figures(const Json& full, const Json& withheld, const std::string& at) {
  CAPTURE(at);
  REQUIRE(full.type() == withheld.type());
  int figures = 0;
  if (full.is_object()) {
    REQUIRE(full.size() == withheld.size());
    for (const auto& [key, value] : full.items()) {
      REQUIRE(withheld.contains(key));
      figures += same_figures(value, withheld[key], key);
    }
  } else if (full.is_array()) {
    REQUIRE(full.size() == withheld.size());
    for (std::size_t i = 0; i < full.size(); ++i)
      figures += same_figures(full[i], withheld[i], at);
  } else if (!full.is_string()) {
    REQUIRE(full == withheld);
    figures += full.is_number() ? 1 : 0;
  }
  return figures;
}

}  // namespace

TEST_CASE("what is withheld changes no figure") {
  base::RealFiles written;
  library::Library library({written, kProject, "test"});
  const Folder folder;
  for (const auto& reel : fs::directory_iterator(kProject / "demo/reels")) {
    if (!fs::exists(reel.path() / "record.xml")) continue;
    CAPTURE(reel.path().string());
    const auto full = answers::grade(library, reel.path());
    REQUIRE(full);
    const Json figures = Json::parse(answers::grade_as_json(*full));
    for (const record::Reader reader : {record::Reader::insurer, record::Reader::stranger}) {
      const auto withheld = recordfile::withhold(full->loaded, reader);
      REQUIRE(withheld);
      REQUIRE(written.write_aside(folder.path / "record.xml", withheld->bytes).empty());
      const auto shown = answers::grade(library, folder.path);
      REQUIRE(shown);
      CHECK(same_figures(figures, Json::parse(answers::grade_as_json(*shown)), "") > 10);
    }
  }
}

}  // namespace winchbook::app
