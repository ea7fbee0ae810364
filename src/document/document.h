#pragma once

#include <array>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/enum_words.h"
#include "document/chart.h"
#include "document/text.h"

/// A document as its reader would tell it, before anything has a position: chapters of blocks.
namespace winchbook::document {

/// A photograph of the record, already checked. Sizes are pixels after turning it upright.
struct Photograph {
  std::string id;  ///< the record's id; the drawing room asks for the bytes by it
  int width = 0;
  int height = 0;
  std::string alternative = {};  ///< words for a reader who cannot see it
  bool light_border = false;     ///< its border is over 92 % luminance: it needs a rule round it
};

/// "● 5  Tail side, 5 March. …"; number 0 prints none.
struct Caption {
  std::optional<Sign> sign = {};
  int number = 0;
  Text words = {};
};

/// Stands in the margin, its first line level with the block it belongs to.
struct SideNote {
  Text words;
  bool warns = false;  ///< a caution without a bar of its own
};

/// A warning level with the work it warns about: a bar, a label, the words.
struct Caution {
  std::string label;
  Text words;
};

enum class Width { side, main, full };

[[nodiscard]] constexpr auto enum_words(Width /*list*/) {
  return std::to_array<base::EnumWord<Width>>({
      {Width::side, "side"},
      {Width::main, "main"},
      {Width::full, "full"},
  });
}

/// A fact that words or a chart tell: its id and its value, free of any language. What tells the
/// same fact elsewhere carries the same id and, of one record, the same value. It draws nothing.
/// Example: {"date:made", "1934-01-01/1958-12-31"}.
struct Fact {
  std::string id;
  std::string value;
  friend bool operator==(const Fact&, const Fact&) = default;
};

struct Figure {
  Photograph photograph;
  Caption caption = {};
  Width width = Width::main;
  bool caption_in_side = false;  ///< for a picture in main: its caption stands in the margin
};

/// A chart with the words that replace it for a reader who cannot see it.
struct ChartFigure {
  Chart chart;
  std::string alternative;
  Width width = Width::full;
};

using Beside = std::variant<SideNote, Caution, Figure, ChartFigure>;

enum class ParagraphManner {
  reading,  ///< indented unless it is the first after something else
  opening,  ///< with the three-line initial and a few words in small capitals (the story only)
  unindented,
  small,  ///< ledger entries
  note,   ///< side-note type over the width of `width`
};

[[nodiscard]] constexpr auto enum_words(ParagraphManner /*list*/) {
  return std::to_array<base::EnumWord<ParagraphManner>>({
      {ParagraphManner::reading, "reading"},
      {ParagraphManner::opening, "opening"},
      {ParagraphManner::unindented, "unindented"},
      {ParagraphManner::small, "small"},
      {ParagraphManner::note, "note"},
  });
}

struct Paragraph {
  Text words;
  ParagraphManner manner = ParagraphManner::reading;
  std::vector<Beside> beside = {};
  Width width = Width::main;  ///< main or full
  std::string anchor = {};    ///< other places link here as "#anchor"
};

struct Subhead {
  std::string words;
  std::vector<Beside> beside = {};
  std::string anchor = {};
  Width width = Width::main;  ///< full: from the frame's left edge, under a rule of its own
  bool dashed = false;        ///< the rule: the bench's own
};

/// Figures in one row: two (side and main width) or three of equal width.
struct FigureRow {
  std::vector<Figure> figures;
};

/// As found at the left, as left at the right, at equal height; a missing half says so.
struct Pair {
  std::optional<Figure> found;
  std::optional<Figure> left;
  std::string not_photographed = {};
};

struct Cell {
  Text words;
  int columns = 1;  ///< how many columns it spans
};

struct Row {
  std::vector<Cell> cells;
  std::string anchor = {};
  bool names_group = false;  ///< one cell across, naming the rows under it: no page ends after it
};

struct Column {
  enum class Align { words, numbers };
  Align align = Align::words;
  double width = 0;       ///< points; 0 sizes the column from what it holds
  bool row_name = false;  ///< its cells are the names of their rows
};

struct Table {
  std::vector<Column> columns;
  std::vector<Row> head;
  std::vector<Row> rows;
  Width width = Width::full;  ///< main or full
  bool dashed = false;        ///< the bench's own
  std::string title = {};     ///< stands over it, in the subhead's type, kept with the first rows
  Text below = {};            ///< key or note under the closing rule
  std::vector<Beside> beside = {};
  std::string summary = {};  ///< for a reader who cannot see its shape
  double least_row = 0;      ///< points; rows at least this high leave room for a pencil
};

/// A lettered entry of the second ledger: old and new part, and the labelled facts.
struct Entry {
  std::string letter;
  std::string name;
  std::optional<Photograph> old_part = {};
  std::optional<Photograph> new_part = {};
  std::string old_part_absent = {};  ///< "none came": why there is no picture of the old part
  std::string new_part_absent = {};
  struct Fact {
    std::string label;
    Text words;
  };
  std::vector<Fact> facts = {};
  std::string anchor = {};
};

/// A step of work at the bench: its number large, what is done, the facts in small, and boxes to
/// tick at the right. What stands beside it is level with its first line.
struct Step {
  std::string number;  ///< empty: a line to write it on
  Text what;
  std::vector<Entry::Fact> facts = {};
  std::vector<std::string> boxes = {};  ///< what each is ticked for: "off", "back"
  std::vector<Beside> beside = {};
  std::string anchor = {};
};

/// Where a sheet is folded across its middle. What follows stands below the fold; what is above it
/// stays clear of it as long as there is room.
struct Fold {};

/// Labels and what they stand for, in two columns.
struct Facts {
  std::vector<Entry::Fact> facts;
  double label_width = 57;  ///< points
  Width width = Width::main;
  std::vector<Beside> beside = {};  ///< level with the first; for those in main
  bool warns = false;               ///< each is a caution
};

/// Figures that answer different questions, side by side under rules of their own, as found and as
/// left: nothing adds them up.
struct Tally {
  struct Figure {
    std::string name;   ///< "Parts, of 100"
    std::string found;  ///< "90 to 93"
    std::string left;
    std::string note = {};  ///< what it counts, in a few words
  };
  std::vector<Figure> figures;
  std::string found_spoken = {};  ///< what a reader who cannot see ring and disc hears
  std::string left_spoken = {};
  Text below = {};
  Width width = Width::main;  ///< main or full
};

struct List {
  bool numbered = false;
  std::vector<Text> items;
};

/// The notes of a chapter, numbered as their marks.
struct Notes {
  std::vector<Text> notes;
};

/// Ruled lines for those who come after; each line's label stands before it.
struct RuledLines {
  std::vector<std::string> labels;
  int lines_each = 1;
};

/// The short code large, the QR code beside it in the margin.
struct Seal {
  std::string code;        ///< "K7QM 4XT2 9DHW"
  std::string qr_payload;  ///< bytes of the QR code
  std::string qr_alternative;
  bool small = false;  ///< the QR code as small as it can be read, the code in a subhead's type
};

/// Where people sign, side by side at the foot of their page.
struct Signatures {
  struct Place {
    std::string whose;  ///< "For the bench"
    std::string name;   ///< stands under the line
    std::string date;   ///< names the line for the day
  };
  std::vector<Place> places;  ///< one or two
  Text above = {};            ///< what they sign, kept with the lines
};

/// A label to cut out: a tag, what lies in a bag, a card that is photographed.
struct Label {
  std::string number = {};  ///< as large as a photograph wants it; empty: none
  std::string name = {};    ///< "Bag 1"
  std::vector<Text> words = {};
  std::string foot = {};        ///< which reel it belongs to
  std::string qr_payload = {};  ///< empty: no square code
  std::string qr_alternative = {};
  bool hole = false;    ///< where the string goes
  int ruled_lines = 0;  ///< to write on, under the words
};

/// Two across, with marks to cut along; each row is as high as its fuller label.
struct Labels {
  std::vector<Label> labels;
  double least_height = 90;  ///< of a row, points
};

/// What can stand in half the frame's width. Whatever its own width says, it fills the half.
using HalfBlock = std::variant<Paragraph, Subhead, ChartFigure, Table, Facts, List, Notes, Caution>;

/// Two columns, each read to its end: the left one first. With nothing in `right` the left one goes
/// on there, as far as makes both alike.
struct Halves {
  std::vector<HalfBlock> left;
  std::vector<HalfBlock> right = {};
  bool above_fold = false;  ///< stays above the middle of the sheet; what is too much goes on below
};

/// What stands in a chapter, and the facts that it tells.
struct Block
    : std::variant<Paragraph, Subhead, Figure, ChartFigure, FigureRow, Pair, Table, Entry, Facts,
                   List, Notes, RuledLines, Seal, Tally, Halves, Signatures, Labels, Step, Fold> {
  using variant::variant;
  std::vector<Fact> tells = {};
};

enum class Ledger { none, first, second };

struct Chapter {
  std::string id;  ///< the template's section id; also its anchor
  Ledger ledger = Ledger::none;
  std::string eyebrow;
  std::string eyebrow_continued = {};
  std::string title;
  std::string stand_first = {};
  bool starts_page = false;     ///< ledgers do, but in a thin record
  bool keeps_together = false;  ///< begins a page where the rest of one cannot hold all of it
  bool counted_apart = false;   ///< its pages are counted by themselves: a copy of its own
  std::vector<Block> blocks = {};
  std::vector<Fact> tells = {};  ///< by title and stand-first
};

struct Cover {
  std::string eyebrow;
  std::string name;
  std::vector<std::string> stand_first;  ///< three short lines
  std::optional<Figure> picture;         ///< without one the marks are set in its place
  std::vector<std::string> marks_as_read = {};
  std::string no_picture_note = {};
  std::vector<std::string> foot_left = {};
  std::vector<std::string> foot_right = {};
  bool compact = false;  ///< a thin record: picture at main width, chapters follow on the same page
  std::vector<Fact> tells = {};
};

/// What stands at the foot of each page but the cover.
struct Folio {
  std::string page_of = {};  ///< "{page} of {pages}"
  std::string name = {};     ///< "Hester's Larrick · Keepsake, edition 1"
  std::string code = {};     ///< the seal's short code
  std::string defer = {};    ///< said once on each page that bears a caution
};

struct Document {
  std::string title;
  std::string subject = {};
  std::string author = {};
  std::string language;  ///< BCP 47
  std::optional<Cover> cover;
  std::vector<Chapter> chapters;
  Folio folio;
  std::vector<Fact> tells = {};  ///< by its title and what stands at the foot
};

/// Every fact that the document tells, in reading order; one told twice stands twice.
[[nodiscard]] std::vector<Fact> facts(const Document& document);

/// The words of the document, indented by nesting: the lowest golden that can fail.
[[nodiscard]] std::string dump(const Document& document);

}  // namespace winchbook::document
