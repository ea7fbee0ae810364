#include <doctest/doctest.h>
#include <fmt/format.h>

#include <filesystem>
#include <map>
#include <regex>
#include <set>
#include <string>
#include <vector>

#include "record/enum_words.h"
#include "report/sections.h"
#include "told_reel.h"

using namespace winchbook;

namespace {

namespace fs = std::filesystem;

const words::Messages& messages() {
  static const words::Messages kMessages = report_test::british().messages;
  return kMessages;
}

void must_have(const std::string& key) {
  CHECK_MESSAGE(messages().contains(key), "no message ", key);
}

/// One message for each word of a closed list.
template <class Enum>
void family(const std::string& prefix, const std::set<std::string>& left_out = {}) {
  for (const auto& one : enum_words(Enum{})) {
    const std::string word(one.word);
    if (!left_out.contains(word)) must_have(fmt::format("{}.{}", prefix, word));
  }
}

/// Every string in the sources of the report that looks like a dotted key of a known first half.
std::set<std::string> keys_in_sources() {
  std::set<std::string> families;
  for (const auto& [key, pattern] : messages())
    families.insert(key.substr(0, key.find('.')));
  std::set<std::string> keys;
  const std::regex dotted("\"([a-z]+[a-z-]*)((?:\\.[a-z0-9-]+)+)\"");
  const std::regex said("(?:say|counted)\\(\\s*\"([^\"]+)\"");
  for (const auto& file :
       fs::recursive_directory_iterator(fs::path(WINCHBOOK_SOURCE_DIR) / "src/report")) {
    if (file.path().extension() != ".cc") continue;
    const std::string source =
        report_test::bytes_of(fs::relative(file.path(), WINCHBOOK_SOURCE_DIR).string());
    using Walk = std::sregex_iterator;
    for (Walk at(source.begin(), source.end(), said), end; at != end; ++at)
      keys.insert((*at)[1].str());
    for (Walk at(source.begin(), source.end(), dotted), end; at != end; ++at) {
      if (families.contains((*at)[1].str())) keys.insert((*at)[1].str() + (*at)[2].str());
    }
  }
  return keys;
}

std::vector<std::string> section_ids() {
  std::vector<std::string> ids;
  std::string names = report::section_names() + ", ";
  for (std::size_t at = names.find(", "); at != std::string::npos; at = names.find(", ")) {
    ids.push_back(names.substr(0, at));
    names.erase(0, at + 2);
  }
  return ids;
}

}  // namespace

TEST_CASE("every message that a chapter says is there to be said") {
  std::set<std::string> keys = keys_in_sources();
  CHECK(keys.size() > 150);
  for (const std::string& key : keys) {
    if (key.ends_with('.')) continue;  // the first half of a composed key; see the families
    must_have(key);
  }
}

TEST_CASE("every word of the record's closed lists that is printed has a message") {
  family<record::Severity>("severity");
  family<record::SurfaceState>("surface");
  family<record::Course>("course");
  family<record::Matter>("matter");
  family<record::Whereabouts::Kind>("where");
  family<record::Held>("held", {"both"});  // said of nobody: it is the usual
  family<record::Certainty>("custody", {"certain"});
  family<record::ReelKind>("reel-kind");
  family<record::ReelKind>("ratchet");
  for (const char* season : {"21", "22", "23", "24"})
    must_have(std::string("season.") + season);
}

TEST_CASE("every word of an assessment's closed lists that is printed has a message") {
  family<assess::dating::LeftOut>("dating.left-out", {"no"});
  family<assess::originality::Standing>("standing");
  family<assess::fitting::Lacking>("drag.lacks");
  family<assess::fitting::Turns>("bench-drag.turns");
  family<assess::fitting::Use>("care-card");
}

// The words of each axis as the grading has them; the demo charts show only some.
TEST_CASE("every axis of condition has its name, its question and its four words") {
  const std::vector<std::pair<std::string, std::vector<std::string>>> axes{
      {"surface", {"over-three-quarters", "over-half", "over-a-quarter", "a-quarter-or-less"}},
      {"structure", {"sound", "marked", "weakened", "unsafe"}},
      {"working", {"as-made", "with-care", "in-part", "not"}},
      {"completeness", {"whole", "nearly", "part", "little"}}};
  for (const auto& [axis, words] : axes) {
    must_have("condition." + axis);
    must_have("condition." + axis + ".what");
    for (const std::string& word : words)
      must_have(fmt::format("condition.{}.{}", axis, word));
  }
}

TEST_CASE("every section has a title and an eyebrow, and a template that uses it") {
  std::set<std::string> used;
  for (const char* file : {"keepsake", "collector-statement", "value-statement", "intake-receipt",
                           "hand-back-receipt", "labels", "bench-sheet", "care-card"}) {
    const auto design = report_test::read_design(
        report_test::bytes_of("report-templates/" + std::string(file) + ".xml"));
    REQUIRE(design);
    for (const auto& choice : design->sections)
      used.insert(choice.id);
    if (!design->thin) continue;
    for (const auto& choice : design->thin->sections)
      used.insert(choice.id);
  }
  const auto ids = section_ids();
  CHECK(ids.size() >= 40);
  // A small job's parts are the first ledger, and say so; the statement's ledgers and life open as
  // the keepsake's do.
  const std::map<std::string, std::string> as{{"parts", "first-ledger"},
                                              {"statement-first-ledger", "first-ledger"},
                                              {"statement-second-ledger", "second-ledger"},
                                              {"statement-life", "life"}};
  // A receipt bears the reel's name, and says whose copy it is.
  const std::set<std::string> receipts{"intake-owner", "intake-bench", "hand-back-owner",
                                       "hand-back-bench"};
  must_have("receipt.eyebrow");
  for (const std::string& id : ids) {
    CHECK_MESSAGE(used.contains(id), "no template uses ", id);
    CHECK(report::knows_section(id));
    if (receipts.contains(id)) continue;
    const std::string said = as.contains(id) ? as.at(id) : id;
    must_have(said + ".title");
    must_have(said + ".eyebrow");
  }
  CHECK_FALSE(report::knows_section("lief"));
}
