#include <doctest/doctest.h>

#include <cstdlib>
#include <fstream>
#include <sstream>

#include "laid_out.h"

/// One of everything, at its place. After looking at what changed, WINCHBOOK_APPROVE=1 writes the
/// golden file anew.
namespace winchbook::layout {
namespace {

using document::Run;

document::Figure figure(const char* id, int number, document::Sign sign) {
  document::Figure made;
  made.photograph = {id, 1600, 1200, "The reel on the bench"};
  made.caption = {sign, number, document::plain("Tail side, 5 March.")};
  return made;
}

document::Chapter story() {
  document::Chapter chapter;
  chapter.id = "story";
  chapter.eyebrow = "The reel";
  chapter.title = "Its story";
  chapter.stand_first = "It fished from one landing for forty-six years.";
  document::Paragraph first;
  first.manner = document::ParagraphManner::opening;
  first.words = document::plain(
      "Augusta Merrow sold tickets on the ferry and fished from its landing in the evenings, as "
      "long "
      "as there was light enough to see the float, and longer in August.");
  first.beside.emplace_back(
      document::SideNote{document::with_lead("Who told it.", "Nell Merrow.")});
  document::Paragraph second;
  Run link{"the second ledger"};
  link.link = "#second-ledger";
  Run italic{"Skerry"};
  italic.italic = true;
  second.words.parts = {
      Run{"The "}, italic,  Run{" fell in 1962;"}, document::NoteMark{1}, Run{" see "},
      link,        Run{"."}};
  second.beside.emplace_back(document::Caution{"Caution", document::plain("Springs leap.")});
  document::Notes notes{{document::plain("Told by Tobias Vane.")}};
  chapter.blocks = {first, second, notes};
  return chapter;
}

document::Chapter ledger() {
  document::Chapter chapter;
  chapter.id = "second-ledger";
  chapter.ledger = document::Ledger::second;
  chapter.starts_page = true;
  chapter.eyebrow = "Second ledger";
  chapter.title = "What was done";
  document::Table table;
  table.dashed = true;
  table.width = document::Width::main;
  table.columns = {{document::Column::Align::words, 0, true},
                   {document::Column::Align::numbers},
                   {document::Column::Align::numbers}};
  table.head = {{{{document::plain("Proved")}, {document::plain("as found and as left"), 2}}}};
  table.rows = {{{{document::plain("Drag at the line")},
                  {document::plain("0–6")},
                  {document::plain("4–38")}}}};
  table.below = document::plain("The same tests, before and after.");
  document::Pair pair;
  pair.found = figure("found", 1, document::Sign::found);
  pair.left = figure("left", 2, document::Sign::left);
  document::List list{true, {document::plain("Unhook the spring."), document::plain("Lift it.")}};
  document::Facts facts{{{"Bag 1", document::plain("Three washers of leather")}}};
  chapter.blocks = {document::Subhead{"Taken apart"}, list, table, pair, facts};
  return chapter;
}

document::Document sample() {
  document::Document document;
  document.title = "Gus's Skerry";
  document.language = "en-GB";
  document.folio = {"{page} of {pages}", "Gus's Skerry · Keepsake", "K7QM"};
  document.chapters = {story(), ledger()};
  return document;
}

}  // namespace

TEST_CASE("a sample of everything stands where it stood") {
  const std::string path = std::string(WINCHBOOK_SOURCE_DIR) + "/tests/layout/goldens/sample.txt";
  const std::string now = dump(laid::pages(sample()));
  if (std::getenv("WINCHBOOK_APPROVE") != nullptr && std::getenv("CI") == nullptr) {
    std::ofstream(path, std::ios::binary) << now;
  }
  std::ifstream file(path, std::ios::binary);
  std::ostringstream kept;
  kept << file.rdbuf();
  const std::string golden = kept.str();
  REQUIRE_FALSE(golden.empty());
  CHECK(now == golden);
}

}  // namespace winchbook::layout
