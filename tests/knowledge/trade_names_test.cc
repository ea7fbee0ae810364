#include <doctest/doctest.h>

#include <array>
#include <cstdint>
#include <filesystem>
#include <regex>
#include <string>
#include <vector>

#include "base/files.h"
#include "base/words_of_text.h"

namespace winchbook::knowledge {
namespace {

constexpr std::uintmax_t kMostBytes = 16'000'000;

/// Names that somebody owned or owns. A bench types them, so they stand among the phrases by which
/// a thing is recognised; a page and an answer print the plain word instead.
constexpr std::array kTradeNames{
    "allen",     "araldite",  "bakelite",  "catalin",    "delrin",     "dural",     "duralumin",
    "fibreglas", "galalith",  "hammerite", "ivorine",    "kevlar",     "loctite",   "mazak",
    "neoprene",  "nyloc",     "oilite",    "parkerised", "parkerized", "perspex",   "philips",
    "phillips",  "plexiglas", "pop rivet", "pozi",       "pozidriv",   "pozidrive", "robertson",
    "seeger",    "teflon",    "torx",      "xylonite",   "zamak"};

/// The file without the phrases that are only recognised.
std::string printable(const std::string& text) {
  static const std::regex kPhrases(R"(<form>[^<]*</form>|\balso="[^"]*")");
  return base::in_small_letters(std::regex_replace(text, kPhrases, ""));
}

bool is_letter(char one) {
  return one >= 'a' && one <= 'z';
}

bool has_word(const std::string& text, const std::string& word) {
  for (auto at = text.find(word); at != std::string::npos; at = text.find(word, at + 1)) {
    const std::size_t end = at + word.size();
    if ((at == 0 || !is_letter(text[at - 1])) && (end == text.size() || !is_letter(text[end])))
      return true;
  }
  return false;
}

std::vector<std::string> trade_names_in(const std::string& text) {
  std::vector<std::string> found;
  const std::string words = printable(text);
  for (const char* name : kTradeNames) {
    if (has_word(words, name)) found.emplace_back(name);
  }
  return found;
}

}  // namespace

TEST_CASE("trade names are phrases that a bench may type, and nothing that is printed has one") {
  const base::RealFiles files;
  std::size_t read = 0;
  const std::filesystem::path project = WINCHBOOK_SOURCE_DIR;
  for (const char* room : {"shared", "report-templates"}) {
    for (const auto& entry : std::filesystem::recursive_directory_iterator(project / room)) {
      if (entry.path().extension() != ".xml") continue;
      const auto text = files.read(entry.path(), kMostBytes);
      REQUIRE(text);
      CAPTURE(entry.path().string());
      CHECK(trade_names_in(*text) == std::vector<std::string>{});
      ++read;
    }
  }
  CHECK(read > 20);
}

TEST_CASE("a trade name is seen where it would be printed, and passed over among the phrases") {
  CHECK(trade_names_in("<name>Bakelite knob</name>") == std::vector<std::string>{"bakelite"});
  CHECK(trade_names_in("<substance also=\"bakelite, x\">phenolic</substance>").empty());
  CHECK(trade_names_in("<form>BAKELITE</form>").empty());
}

}  // namespace winchbook::knowledge
