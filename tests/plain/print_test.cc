#include "plain/print.h"

#include <doctest/doctest.h>

#include <string>
#include <utility>

namespace winchbook::plain {
namespace {

using document::plain;

document::Document of(std::vector<document::Block> blocks) {
  document::Document document;
  document::Chapter chapter;
  chapter.title = "The Heron, No. 3";
  chapter.blocks = std::move(blocks);
  document.chapters.push_back(std::move(chapter));
  return document;
}

document::Table prices() {
  document::Table table;
  table.columns = {{}, {document::Column::Align::numbers}};
  table.head = {{{{plain("sale")}, {plain("paid")}}}};
  table.rows = {{{{plain("Ternwick")}, {plain("9.50")}}}, {{{plain("é")}, {plain("112.00")}}}};
  return table;
}

}  // namespace

TEST_CASE("without a width a paragraph is one line, however long") {
  const std::string words(300, 'x');
  CHECK(print(of({document::Paragraph{plain(words + " end")}})) ==
        "The Heron, No. 3\n\n" + words + " end\n");
}

TEST_CASE("a width breaks between words, and a word that is wider stands alone") {
  CHECK(print(of({document::Paragraph{plain("one two extraordinarily three")}}), 9) ==
        "The\nHeron,\nNo. 3\n\none two\nextraordinarily\nthree\n");
}

TEST_CASE("letters of two bytes count as one column") {
  CHECK(print(of({document::Paragraph{plain("éé éé éé")}}), 5).ends_with("éé éé\néé\n"));
}

TEST_CASE("subheads are ruled, items hang, and a table's numbers stand at the right") {
  document::List list;
  list.items = {plain("first of them")};
  CHECK(print(of({document::Subhead{"Sales"}, list, prices()}), 20) ==
        "The Heron, No. 3\n\nSales\n-----\n  first of them\n\n"
        "  sale        paid\n  Ternwick    9.50\n  é         112.00\n");
  CHECK(print(of({list}), 11).ends_with("  first of\n    them\n"));
}

TEST_CASE("a row that is wider than the terminal is broken between its words") {
  CHECK(print(of({prices()}), 14).ends_with("  sale paid\n  Ternwick\n    9.50\n  é 112.00\n"));
}

TEST_CASE("what follows a subhead stands right under its rule") {
  CHECK(print(of({document::Subhead{"Why"}, document::Paragraph{plain("Nothing.")}, prices()}))
            .ends_with("Why\n---\nNothing.\n\n  sale        paid\n  Ternwick    9.50\n"
                       "  é         112.00\n"));
}

TEST_CASE("what cannot be seen on a terminal is told by the words that stand for it") {
  document::ChartFigure chart;
  chart.alternative = "Rising from 2 to 5 newtons.";
  document::Paragraph said{plain("The drag.")};
  said.beside.emplace_back(document::Caution{"Springs", plain("cover it")});
  CHECK(print(of({said, chart})) ==
        "The Heron, No. 3\n\nThe drag.\n    Springs: cover it\n    Rising from 2 to 5 newtons.\n");
}

}  // namespace winchbook::plain
