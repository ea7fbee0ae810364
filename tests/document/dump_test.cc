#include <doctest/doctest.h>

#include "document/document.h"

namespace winchbook::document {
namespace {

Text mixed() {
  Text text;
  text.parts.emplace_back(Run{"The "});
  Run name{"Skerry"};
  name.italic = true;
  text.parts.emplace_back(name);
  text.parts.emplace_back(NoteMark{2});
  Run link{"page"};
  link.link = "#seal";
  text.parts.emplace_back(link);
  text.parts.emplace_back(SignRun{Sign::left, "as left"});
  return text;
}

}  // namespace

TEST_CASE("a text's spoken words give signs and note marks their words") {
  CHECK(spoken(mixed()) == "The Skerry2pageas left");
}

TEST_CASE("plain nothing is nothing, and a lead is bold with a space after it") {
  CHECK(plain("").empty());
  const Text text = with_lead("Who told it.", "Nell.");
  REQUIRE(text.parts.size() == 2);
  CHECK(std::get<Run>(text.parts[0]).bold);
  CHECK(spoken(text) == "Who told it. Nell.");
}

TEST_CASE("a document's dump tells every word, nested as it is") {
  Document document;
  document.title = "Gus's Skerry";
  document.language = "en-GB";
  document.folio = {"{page} of {pages}", "Gus's Skerry", "K7QM"};
  Chapter chapter;
  chapter.id = "second-ledger";
  chapter.ledger = Ledger::second;
  chapter.eyebrow = "Second ledger";
  chapter.title = "What was done";
  Paragraph paragraph;
  paragraph.words = mixed();
  paragraph.beside.emplace_back(Caution{"Caution", plain("Springs leap.")});
  chapter.blocks.emplace_back(paragraph);
  Table table;
  table.dashed = true;
  table.columns.resize(2);
  table.head.push_back({{{plain("as found"), 2}}, {}});
  table.rows.push_back({{{plain("Drag")}, {plain("4")}}, {}});
  chapter.blocks.emplace_back(table);
  Entry entry;
  entry.letter = "A";
  entry.name = "Pinion";
  entry.old_part_absent = "none came";
  entry.facts.push_back({"Donor", plain("A broken Skerry No. 30")});
  chapter.blocks.emplace_back(entry);
  document.chapters.push_back(chapter);
  CHECK(dump(document) ==
        "title: Gus's Skerry\n"
        "language: en-GB\n"
        "folio: {page} of {pages} | Gus's Skerry | K7QM\n"
        "chapter second-ledger, second ledger: What was done\n"
        "  eyebrow: Second ledger\n"
        "  reading main: The *Skerry*[2]page(-> #seal){left: as left}\n"
        "    caution: Caution: Springs leap.\n"
        "  table full dashed\n"
        "    head: as found <2>\n"
        "    row: Drag | 4\n"
        "  entry A: Pinion\n"
        "    old: none came\n"
        "    Donor: A broken Skerry No. 30\n");
}

}  // namespace winchbook::document
