#include <string>
#include <string_view>
#include <utility>

#include "document/document.h"

namespace winchbook::document {
namespace {

template <class Value> std::string name_of(Value value) {
  return std::string(base::word_of(value));
}

/// Words with their manner: *italic*, **bold**, {sign}, [3] for a note, (-> target) after a link.
struct InlineWords {
  std::string operator()(const Run& run) const {
    std::string words = run.text;
    if (run.small_capitals) words = "^" + words + "^";
    if (run.italic) words = "*" + words + "*";
    if (run.bold) words = "**" + words + "**";
    if (!run.link.empty()) words += "(-> " + run.link + ")";
    return words;
  }
  std::string operator()(const SignRun& run) const {
    return std::string("{") + name_of(run.sign) + (run.spoken.empty() ? "" : ": " + run.spoken) +
           "}";
  }
  std::string operator()(const NoteMark& mark) const {
    return "[" + std::to_string(mark.number) + "]";
  }
  std::string operator()(const LineEnd& /*end*/) const { return " / "; }
};

std::string words_of(const Text& text) {
  std::string words;
  for (const Inline& part : text.parts)
    words += std::visit(InlineWords{}, part);
  return words;
}

/// Writes lines, deeper for what stands inside something.
class Writer {
 public:
  void line(std::string_view words) {
    out_.append(static_cast<std::size_t>(depth_) * 2, ' ');
    out_ += words;
    out_ += '\n';
  }
  void line(std::string_view name, std::string_view words) {
    if (!words.empty()) line(std::string(name) + ": " + std::string(words));
  }
  void deeper() { ++depth_; }
  void back() { --depth_; }
  std::string take() { return std::move(out_); }

 private:
  std::string out_;
  int depth_ = 0;
};

class BlockWriter {
 public:
  explicit BlockWriter(Writer& writer) : out_(writer) {}

  void operator()(const SideNote& note) { out_.line("beside", words_of(note.words)); }
  void operator()(const Caution& caution) {
    out_.line("caution", caution.label + ": " + words_of(caution.words));
  }
  void operator()(const Paragraph& block) {
    out_.line(std::string(name_of(block.manner)) + " " + name_of(block.width),
              words_of(block.words));
    inside(block.beside, block.anchor);
  }
  void operator()(const Subhead& block) {
    out_.line("subhead", block.words);
    inside(block.beside, block.anchor);
  }
  void operator()(const Figure& block) {
    out_.line(std::string("figure ") + name_of(block.width), block.photograph.id);
    out_.deeper();
    out_.line("instead", block.photograph.alternative);
    caption(block.caption);
    out_.back();
  }
  void operator()(const Step& block) {
    out_.line("step " + block.number, words_of(block.what));
    out_.deeper();
    for (const Entry::Fact& fact : block.facts)
      out_.line(fact.label, words_of(fact.words));
    for (const std::string& box : block.boxes)
      out_.line("box", box);
    out_.back();
    inside(block.beside, block.anchor);
  }
  void operator()(const Fold& /*block*/) { out_.line("fold"); }
  void operator()(const ChartFigure& block) {
    out_.line(std::string("chart ") + name_of(block.width), block.alternative);
  }
  void operator()(const FigureRow& block) {
    out_.line("row");
    out_.deeper();
    for (const Figure& figure : block.figures)
      (*this)(figure);
    out_.back();
  }
  void operator()(const Pair& block) {
    out_.line("pair");
    out_.deeper();
    for (const auto* one : {&block.found, &block.left}) {
      if (*one) {
        (*this)(**one);
      } else {
        out_.line("none", block.not_photographed);
      }
    }
    out_.back();
  }
  void operator()(const Table& block) {
    out_.line(std::string("table ") + name_of(block.width) + (block.dashed ? " dashed" : ""));
    out_.deeper();
    out_.line("title", block.title);
    out_.line("instead", block.summary);
    for (const Row& row : block.head)
      cells("head", row);
    for (const Row& row : block.rows)
      cells("row", row);
    out_.line("below", words_of(block.below));
    for (const Beside& one : block.beside)
      std::visit(*this, one);
    out_.back();
  }
  void operator()(const Entry& block) {
    out_.line("entry " + block.letter, block.name);
    out_.deeper();
    part("old", block.old_part, block.old_part_absent);
    part("new", block.new_part, block.new_part_absent);
    for (const Entry::Fact& fact : block.facts)
      out_.line(fact.label, words_of(fact.words));
    out_.line("anchor", block.anchor);
    out_.back();
  }
  void operator()(const Facts& block) {
    out_.line("facts");
    out_.deeper();
    for (const Entry::Fact& fact : block.facts)
      out_.line(fact.label, words_of(fact.words));
    for (const Beside& one : block.beside)
      std::visit(*this, one);
    out_.back();
  }
  void operator()(const Tally& block) {
    out_.line(std::string("tally ") + name_of(block.width));
    out_.deeper();
    for (const Tally::Figure& figure : block.figures) {
      out_.line(figure.name, "{found} " + figure.found + " {left} " + figure.left +
                                 (figure.note.empty() ? "" : " (" + figure.note + ")"));
    }
    out_.line("below", words_of(block.below));
    out_.back();
  }
  void operator()(const Halves& block) {
    half("left half", block.left);
    half("right half", block.right);
  }
  void operator()(const List& block) {
    out_.line(block.numbered ? "numbered list" : "list");
    out_.deeper();
    for (const Text& item : block.items)
      out_.line("- " + words_of(item));
    out_.back();
  }
  void operator()(const Notes& block) {
    out_.line("notes");
    out_.deeper();
    for (std::size_t i = 0; i < block.notes.size(); ++i)
      out_.line(std::to_string(i + 1), words_of(block.notes[i]));
    out_.back();
  }
  void operator()(const RuledLines& block) {
    out_.line("ruled lines, " + std::to_string(block.lines_each) + " each");
    out_.deeper();
    for (const std::string& label : block.labels)
      out_.line("- " + label);
    out_.back();
  }
  void operator()(const Seal& block) { out_.line("seal", block.code); }
  void operator()(const Signatures& block) {
    out_.line("signatures", words_of(block.above));
    out_.deeper();
    for (const Signatures::Place& place : block.places)
      out_.line("- " + place.whose + ": " + place.name + "; " + place.date);
    out_.back();
  }
  void operator()(const Labels& block) {
    for (const Label& label : block.labels) {
      const std::string number = label.number.empty() ? "" : " " + label.number;
      out_.line("label" + number + (label.hole ? ", with a hole" : ""));
      out_.deeper();
      out_.line("name", label.name);
      for (const Text& words : label.words)
        out_.line("words", words_of(words));
      if (label.ruled_lines > 0) out_.line("ruled lines", std::to_string(label.ruled_lines));
      out_.line("square code", label.qr_payload);
      out_.line("foot", label.foot);
      out_.back();
    }
  }

 private:
  void inside(const std::vector<Beside>& beside, const std::string& anchor) {
    out_.deeper();
    out_.line("anchor", anchor);
    for (const Beside& one : beside)
      std::visit(*this, one);
    out_.back();
  }
  void half(std::string_view name, const std::vector<HalfBlock>& blocks) {
    out_.line(name);
    out_.deeper();
    for (const HalfBlock& block : blocks)
      std::visit(*this, block);
    out_.back();
  }
  void caption(const Caption& caption) {
    std::string words;
    if (caption.sign) words += std::string("{") + name_of(*caption.sign) + "} ";
    if (caption.number > 0) words += std::to_string(caption.number) + " ";
    out_.line("caption", words + words_of(caption.words));
  }
  void cells(std::string_view name, const Row& row) {
    std::string words;
    for (const Cell& cell : row.cells) {
      if (!words.empty()) words += " | ";
      words += words_of(cell.words);
      if (cell.columns > 1) words += " <" + std::to_string(cell.columns) + ">";
    }
    out_.line(std::string(name) + ": " + words);
  }
  void part(std::string_view name, const std::optional<Photograph>& photograph,
            const std::string& absent) {
    out_.line(name, photograph ? photograph->id + " (" + photograph->alternative + ")" : absent);
  }

  Writer& out_;
};

void write_cover(const Cover& cover, Writer& out) {
  out.line(cover.compact ? "compact cover" : "cover", cover.name);
  out.deeper();
  out.line("eyebrow", cover.eyebrow);
  for (const std::string& words : cover.stand_first)
    out.line("stand-first", words);
  if (cover.picture) BlockWriter{out}(*cover.picture);
  for (const std::string& words : cover.marks_as_read)
    out.line("mark", words);
  out.line("no picture", cover.no_picture_note);
  for (const std::string& words : cover.foot_left)
    out.line("foot left", words);
  for (const std::string& words : cover.foot_right)
    out.line("foot right", words);
  out.back();
}

}  // namespace

std::string dump(const Document& document) {
  Writer out;
  out.line("title", document.title);
  out.line("subject", document.subject);
  out.line("author", document.author);
  out.line("language", document.language);
  out.line("folio",
           document.folio.page_of + " | " + document.folio.name + " | " + document.folio.code);
  if (document.cover) write_cover(*document.cover, out);
  for (const Chapter& chapter : document.chapters) {
    static constexpr const char* kLedgers[] = {"", ", first ledger", ", second ledger"};
    out.line("chapter " + chapter.id + kLedgers[static_cast<int>(chapter.ledger)] +
                 (chapter.starts_page      ? ", starts a page"
                  : chapter.keeps_together ? ", kept together"
                                           : "") +
                 (chapter.counted_apart ? ", a copy of its own" : ""),
             chapter.title);
    out.deeper();
    out.line("eyebrow", chapter.eyebrow);
    out.line("continued", chapter.eyebrow_continued);
    out.line("stand-first", chapter.stand_first);
    for (const Block& block : chapter.blocks)
      std::visit(BlockWriter{out}, block);
    out.back();
  }
  return out.take();
}

}  // namespace winchbook::document
