#pragma once

#include <string>

#include "pdf/sample.h"

namespace winchbook::pdf::sample {

/// Two pages with one of everything: headings, a paragraph around a link, a note, a table with a
/// spanning cell and a row head, lists, a drawn and a photographed figure, small capitals, an
/// initial, other scripts, nested composite glyphs, furniture, bookmarks.
inline layout::Pages whole_sample(const text::FontBook& fonts) {
  layout::Pages pages;
  Book book(pages, fonts);
  book.add_page();
  const TagId document = book.add_tag(TagType::document, layout::kArtifact);
  const TagId title = book.add_tag(TagType::h1, document);
  book.write("Skerry No. 40 — a star-drag multiplier", 62, 120, title, "vollkorn-regular", 25);

  const TagId paragraph = book.add_tag(TagType::paragraph, document);
  layout::TextItem initial =
      book.text("B", {points(62), points(180)}, paragraph, "vollkorn-regular", 59);
  initial.colour = {123, 45, 34};
  book.add(initial);
  layout::TextItem capitals = book.text("ought new, ", {points(110), points(160)}, paragraph,
                                        "vollkorn-regular", 11, {"smcp"});
  capitals.actual_text = "ought new, ";
  book.add(capitals);
  book.write("by Augusta Merrow on 3 March 1948; official affine fluff. ", 175, 160, paragraph);
  const TagId link = book.add_tag(TagType::link, paragraph);
  book.write("page two", 110, 175, link);
  book.add(layout::LinkItem{
      {points(110), points(165), points(45), points(13)}, "#ledger", "go to the ledger", link});
  const TagId call = book.add_tag(TagType::reference, paragraph);
  book.write("1", 156, 171, call, "vollkorn-regular", 7);
  book.write(" tells the rest: ÄÖÜ ½ Ångström, co\u00ADoperate.", 162, 175, paragraph);
  const TagId greek = book.add_tag(TagType::paragraph, document);
  book.tag(greek).language = "el";
  book.write("Ελληνικά, ᾠδή", 62, 205, greek, "gentium-regular");
  const TagId japanese = book.add_tag(TagType::paragraph, document);
  book.tag(japanese).language = "ja";
  book.write("両軸リール 修理", 62, 225, japanese, "ipaex-mincho");
  const TagId note = book.add_tag(TagType::note, document);
  book.tag(note).id = "note-1";
  const TagId mark = book.add_tag(TagType::label, note);
  book.write("1", 62, 250, mark, "lato-regular", 8.25);
  book.write(" Told by her nephew.", 70, 250, note, "lato-regular", 8.25);

  const TagId list = book.add_tag(TagType::list, document);
  book.tag(list).numbered = true;
  for (int i = 0; i < 2; ++i) {
    const TagId item = book.add_tag(TagType::list_item, list);
    const TagId label = book.add_tag(TagType::label, item);
    const TagId body = book.add_tag(TagType::list_body, item);
    book.write(std::to_string(i + 1) + ".", 62, 280 + 15 * i, label);
    book.write("the knob stays", 80, 280 + 15 * i, body);
  }
  book.write("1 of 2", 62, 790, layout::kArtifact, "lato-regular", 7.5);

  book.add_page();
  const TagId chapter = book.add_tag(TagType::h2, document);
  book.add(rectangle(62, 84, 471, 0.75, layout::kArtifact));
  book.write("The second ledger", 62, 110, chapter, "vollkorn-italic", 25);
  const TagId table = book.add_tag(TagType::table, document);
  const TagId head = book.add_tag(TagType::table_head, table);
  const TagId head_row = book.add_tag(TagType::row, head);
  const TagId body = book.add_tag(TagType::table_body, table);
  const char* heads[] = {"part", "found", "left"};
  for (int i = 0; i < 3; ++i) {
    book.write(heads[i], 62 + 100 * i, 140, book.add_tag(TagType::header_cell, head_row),
               "lato-bold", 7.5);
  }
  const TagId row = book.add_tag(TagType::row, body);
  const TagId name = book.add_tag(TagType::header_cell, row);
  book.tag(name).row_scope = true;
  book.write("pinion", 62, 155, name, "lato-regular", 8.25, {"lnum", "tnum"});
  const TagId wide = book.add_tag(TagType::cell, row);
  book.tag(wide).column_span = 2;
  book.write("17 teeth, 12.50 mm", 162, 155, wide, "lato-regular", 8.25, {"lnum", "tnum"});

  const TagId drawn = book.add_tag(TagType::figure, document);
  book.tag(drawn).alternative = "A bar: 60 of 100.";
  book.tag(drawn).page = 1;
  book.tag(drawn).box = {points(62), points(200), points(100), points(9)};
  book.add(rectangle(62, 200, 60, 9, drawn));
  layout::PathItem outline = rectangle(62, 200, 100, 9, drawn);
  outline.filled = false;
  outline.stroked = true;
  outline.stroke = {points(0.5), {26, 26, 26}, {points(3), points(2)}};
  book.add(outline);
  const TagId photograph = book.add_tag(TagType::figure, document);
  book.tag(photograph).alternative = "The reel as it came, “as found”.";
  book.tag(photograph).page = 1;
  book.tag(photograph).box = {points(62), points(230), points(240), points(180)};
  book.add(layout::ImageItem{"hero-found", book.tag(photograph).box, photograph});
  const TagId caption = book.add_tag(TagType::caption, photograph);
  book.write("1 As found, 3 March 2026.", 62, 425, caption, "lato-regular", 7.75);
  const TagId web = book.add_tag(TagType::paragraph, document);
  const TagId away = book.add_tag(TagType::link, web);
  book.write("example.org", 62, 450, away);
  book.add(layout::LinkItem{{points(62), points(440), points(60), points(13)},
                            "https://example.org/reels?id=(40)",
                            "look it up",
                            away});

  pages.anchors["ledger"] = {1, points(84)};
  pages.bookmarks = {{"Skerry No. 40 — its story", {0, points(84)}, 0},
                     {"Bought new", {0, points(150)}, 1},
                     {"The second ledger", {1, points(84)}, 0}};
  return pages;
}

inline Contents whole_contents() {
  Contents out = contents();
  out.photographs.push_back(
      {"hero-found", bytes_of(WINCHBOOK_SOURCE_DIR "/demo/reels/skerry-40/photos/hero-found.jpg"),
       1200, 900});
  return out;
}

}  // namespace winchbook::pdf::sample
