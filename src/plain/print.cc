#include "plain/print.h"

#include <algorithm>
#include <string_view>
#include <variant>
#include <vector>

#include "base/words_of_text.h"

namespace winchbook::plain {
namespace {

using document::Column;
using document::Text;

constexpr std::size_t kItem = 2;
constexpr std::size_t kNote = 4;

std::size_t columns_of(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
  }));
}

/// The lines of a text, each as it would be heard.
std::vector<std::string> lines_of(const Text& text) {
  std::vector<std::string> lines;
  Text line;
  for (const document::Inline& part : text.parts) {
    if (!std::holds_alternative<document::LineEnd>(part)) {
      line.parts.push_back(part);
      continue;
    }
    lines.push_back(document::spoken(line));
    line.parts.clear();
  }
  lines.push_back(document::spoken(line));
  return lines;
}

class Printer {
 public:
  explicit Printer(std::optional<std::size_t> width) : width_(width) {}

  void chapter(const document::Chapter& chapter) {
    apart();
    if (!chapter.title.empty()) line(chapter.title, 0, 0);
    if (!chapter.stand_first.empty()) line(chapter.stand_first, 0, 0);
    for (const document::Block& block : chapter.blocks)
      std::visit([&](const auto& one) { print(one); }, block);
  }

  [[nodiscard]] std::string done() && { return base::with_plain_spaces(std::move(out_)); }

 private:
  /// A blank line, but at the beginning and under a heading.
  void apart() {
    if (!headed_ && !out_.empty() && !out_.ends_with("\n\n")) out_ += '\n';
  }

  /// Words in lines, the first indented by `first`, the others by `rest`.
  void line(std::string_view words, std::size_t first, std::size_t rest) {
    headed_ = false;
    if (!width_) {
      out_.append(first, ' ').append(words).push_back('\n');
      return;
    }
    out_.append(first, ' ');
    std::size_t column = first;
    bool begun = false;
    for (const std::string_view word : base::words_of(words)) {
      const std::size_t length = columns_of(word);
      if (begun && column + 1 + length > *width_) {
        out_ += '\n';
        out_.append(rest, ' ');
        column = rest;
      } else if (begun) {
        out_ += ' ';
        ++column;
      }
      out_ += word;
      column += length;
      begun = true;
    }
    out_ += '\n';
  }

  void text(const Text& words, std::size_t first, std::size_t rest) {
    std::size_t indent = first;
    for (const std::string& one : lines_of(words)) {
      line(one, indent, rest);
      indent = rest;
    }
  }

  void beside(const std::vector<document::Beside>& all) {
    for (const document::Beside& one : all) {
      if (const auto* note = std::get_if<document::SideNote>(&one)) text(note->words, kNote, kNote);
      if (const auto* caution = std::get_if<document::Caution>(&one)) print(*caution);
      if (const auto* figure = std::get_if<document::Figure>(&one)) print(*figure);
      if (const auto* chart = std::get_if<document::ChartFigure>(&one)) print(*chart);
    }
  }

  void print(const document::Paragraph& paragraph) {
    using Manner = document::ParagraphManner;
    const bool goes_on = paragraph.manner == Manner::small || paragraph.manner == Manner::note;
    if (!goes_on) apart();
    const std::size_t indent = paragraph.manner == Manner::note ? kNote : 0;
    text(paragraph.words, indent, indent);
    beside(paragraph.beside);
  }

  void print(const document::Subhead& subhead) {
    apart();
    line(subhead.words, 0, 0);
    out_.append(columns_of(subhead.words), '-').push_back('\n');
    headed_ = true;
    beside(subhead.beside);
  }

  void print(const document::List& list) {
    int number = 0;
    for (const Text& item : list.items) {
      ++number;
      if (!list.numbered) {
        text(item, kItem, 2 * kItem);
        continue;
      }
      const std::string lead = std::to_string(number) + "  ";
      Text led = document::plain(lead);
      document::append(led, item);
      text(led, kItem, kItem + lead.size());
    }
  }

  void print(const document::Notes& notes) { print(document::List{true, notes.notes}); }

  void print(const document::Facts& facts) {
    fact_lines(facts.facts);
    beside(facts.beside);
  }

  void fact_lines(const std::vector<document::Entry::Fact>& facts) {
    for (const document::Entry::Fact& fact : facts) {
      Text words = document::plain(fact.label.empty() ? "" : fact.label + ": ");
      document::append(words, fact.words);
      text(words, 0, kItem);
    }
  }

  void print(const document::Caution& caution) {
    line(caution.label + ": " + document::spoken(caution.words), kNote, kNote);
  }

  void print(const document::Figure& figure) {
    const std::string caption = document::spoken(figure.caption.words);
    line(caption.empty() ? figure.photograph.alternative : caption, kNote, kNote);
  }
  void print(const document::ChartFigure& chart) { line(chart.alternative, kNote, kNote); }
  void print(const document::FigureRow& row) {
    for (const document::Figure& one : row.figures)
      print(one);
  }
  void print(const document::Pair& pair) {
    for (const auto& half : {pair.found, pair.left}) {
      if (half) print(*half);
    }
  }

  void print(const document::Entry& entry) {
    apart();
    line(entry.letter + "  " + entry.name, 0, kItem);
    fact_lines(entry.facts);
  }
  void print(const document::Step& step) {
    Text words = document::plain(step.number.empty() ? "" : step.number + "  ");
    document::append(words, step.what);
    text(words, 0, kNote);
    fact_lines(step.facts);
    beside(step.beside);
  }
  void print(const document::Tally& tally) {
    for (const auto& figure : tally.figures)
      line(figure.name + ": " + tally.found_spoken + " " + figure.found + ", " + tally.left_spoken +
               " " + figure.left,
           0, kItem);
    text(tally.below, 0, 0);
  }
  void print(const document::Halves& halves) {
    for (const auto* half : {&halves.left, &halves.right}) {
      for (const document::HalfBlock& block : *half)
        std::visit([&](const auto& one) { print(one); }, block);
    }
  }
  void print(const document::RuledLines& lines) {
    for (const std::string& label : lines.labels)
      line(label, 0, 0);
  }
  void print(const document::Seal& seal) { line(seal.code, 0, 0); }
  void print(const document::Signatures& signatures) {
    text(signatures.above, 0, 0);
    for (const auto& place : signatures.places)
      line(place.whose + ": " + place.name, 0, 0);
  }
  void print(const document::Labels& labels) {
    for (const document::Label& label : labels.labels) {
      apart();
      line(label.name, 0, 0);
      for (const Text& words : label.words)
        text(words, 0, 0);
    }
  }
  void print(const document::Fold& /*fold*/) {}

  void print(const document::Table& table) {
    if (!table.title.empty()) print(document::Subhead{table.title});
    apart();
    std::vector<std::size_t> widths(table.columns.size(), 0);
    const auto measure = [&](const std::vector<document::Row>& rows) {
      for (const document::Row& row : rows) {
        if (row.cells.size() != widths.size()) continue;
        for (std::size_t i = 0; i < widths.size(); ++i)
          widths[i] = std::max(widths[i], columns_of(document::spoken(row.cells[i].words)));
      }
    };
    measure(table.head);
    measure(table.rows);
    for (const auto* rows : {&table.head, &table.rows}) {
      for (const document::Row& row : *rows)
        print_row(row, table.columns, widths);
    }
    if (!table.below.empty()) text(table.below, 0, 0);
    beside(table.beside);
  }

  void print_row(const document::Row& row, const std::vector<Column>& columns,
                 const std::vector<std::size_t>& widths) {
    std::string words;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
      const std::string cell = document::spoken(row.cells[i].words);
      const bool spans = row.cells.size() != columns.size();
      const std::size_t blank = spans ? 0 : widths[i] - columns_of(cell);
      const bool at_right = !spans && columns[i].align == Column::Align::numbers;
      if (i > 0) words.append(2, ' ');
      if (at_right) words.append(blank, ' ');
      words += cell;
      if (!at_right) words.append(blank, ' ');
    }
    words.erase(words.find_last_not_of(' ') + 1);
    if (width_ && kItem + columns_of(words) > *width_) return line(words, kItem, 2 * kItem);
    headed_ = false;
    out_.append(kItem, ' ').append(words).push_back('\n');
  }

  std::optional<std::size_t> width_;
  std::string out_;
  bool headed_ = false;  ///< a subhead was the last that was printed
};

}  // namespace

std::string print(const document::Document& document, std::optional<std::size_t> width) {
  Printer printer(width);
  for (const document::Chapter& chapter : document.chapters)
    printer.chapter(chapter);
  return std::move(printer).done();
}

}  // namespace winchbook::plain
