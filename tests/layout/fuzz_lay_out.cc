#include "layout/fuzz_lay_out.h"

#include <algorithm>
#include <cstdio>
#include <map>
#include <set>
#include <utility>

#include "document/document.h"
#include "layout/frame.h"
#include "layout/lay_out.h"
#include "support/fake_font.h"

using namespace winchbook;  // NOLINT

namespace {

using document::Block;
using document::Width;
using layout::Pages;
using layout::TagType;

constexpr int kMostBlocks = 60;
constexpr int kMostWords = 6000;

/// The bytes, one a choice; when they are used up every choice is the first.
class Choices {
 public:
  explicit Choices(std::span<const std::uint8_t> bytes) : bytes_(bytes) {}
  /// 0 to `sides` - 1, `sides` at most 256.
  int of(int sides) {
    if (at_ == bytes_.size()) return 0;
    return bytes_[at_++] % sides;
  }
  bool one_in(int many) { return of(many) == many - 1; }
  /// Mostly small, seldom up to 65,535.
  int size() {
    const int kind = of(4);
    return kind < 2 ? of(24) : kind == 2 ? of(256) : of(256) * 256 + of(256);
  }
  [[nodiscard]] bool used_up() const { return at_ == bytes_.size(); }

 private:
  std::span<const std::uint8_t> bytes_;
  std::size_t at_ = 0;
};

/// The words numbered from `first` up to `end`.
struct Stretch {
  int first = 0;
  int end = 0;
};

/// Makes a document of numbered words: "w0", "w1", … so that each can be looked for.
class Author {
 public:
  explicit Author(std::span<const std::uint8_t> bytes) : choose_(bytes) {}

  document::Document write() {
    document::Document document;
    document.title = "Made up";
    document.language = "en-GB";
    document.folio = {"{page} of {pages}", "Made up", "CODE"};
    has_cover_ = choose_.one_in(3);
    if (has_cover_) document.cover = cover();
    const int chapters = 1 + choose_.of(5);
    for (int i = 0; i < chapters && !full(); ++i)
      document.chapters.push_back(chapter(i));
    return document;
  }

  [[nodiscard]] int words() const { return next_; }
  [[nodiscard]] bool has_cover() const { return has_cover_; }
  [[nodiscard]] int blocks() const { return blocks_; }
  [[nodiscard]] const std::vector<Stretch>& undivided() const { return undivided_; }

 private:
  [[nodiscard]] bool full() const {
    return blocks_ >= kMostBlocks || next_ >= kMostWords || choose_.used_up();
  }

  std::string words(int count) {
    std::string text;
    count = std::min(count, std::max(1, kMostWords - next_));
    for (int i = 0; i < count; ++i) {
      if (i > 0) text += ' ';
      text += "w" + std::to_string(next_++);
      // A run of letters without a place to break it, seldom wider than any column.
      if (i % 16 == 0) text += std::string(static_cast<std::size_t>(tail()), 'z');
      if (i % 16 == 8 && choose_.one_in(8)) text += "渡し場の釣り車";
    }
    return text;
  }
  int tail() { return choose_.one_in(12) ? choose_.size() % 3000 : choose_.of(12); }
  std::string maybe(int count) { return choose_.of(2) == 0 ? std::string() : words(count); }

  document::Text text(int most) {
    document::Text made = document::plain(words(1 + choose_.size() % most));
    switch (choose_.of(8)) {
      case 0:
        made.parts.emplace_back(document::LineEnd{});
        made.parts.emplace_back(document::Run{.text = words(2), .italic = true});
        break;
      case 1:
        made.parts.emplace_back(document::SignRun{document::Sign::missing});
        made.parts.emplace_back(document::Run{.text = words(2), .bold = true, .link = "#c0"});
        break;
      case 2:
        made.parts.emplace_back(document::NoteMark{1});
        break;
      default:
        break;
    }
    return made;
  }

  document::Photograph photograph() {
    return {"photo", 1 + choose_.size(), 1 + choose_.size(), "A picture", choose_.one_in(2)};
  }
  document::Figure figure() {
    document::Figure made{photograph()};
    made.caption = {document::Sign::found, choose_.of(3), text(40)};
    made.width = static_cast<Width>(choose_.of(3));
    made.caption_in_side = choose_.one_in(3);
    return made;
  }

  document::Cover cover() {
    document::Cover made;
    made.eyebrow = choose_.of(2) == 0 ? "" : "A label";
    made.name = words(1 + choose_.of(60));
    for (int i = choose_.of(4); i > 0; --i)
      made.stand_first.push_back(words(1 + choose_.of(20)));
    if (choose_.of(2) == 0) made.picture = document::Figure{photograph()};
    // Words of marks may give way to the name, so that they are not looked for.
    for (int i = made.picture ? 0 : choose_.of(9); i > 0; --i)
      made.marks_as_read.emplace_back(choose_.of(2) == 0 ? "MARK" : "MARK\nOF THE MAKER");
    if (!made.picture) made.no_picture_note = "As read";
    made.foot_left = {words(1 + choose_.of(12))};
    made.foot_right = {words(1 + choose_.of(30)), words(3)};
    made.compact = choose_.one_in(3);
    return made;
  }

  document::Chapter chapter(int number) {
    document::Chapter made;
    made.id = "c" + std::to_string(number);
    made.title = words(1 + choose_.of(30));
    made.eyebrow = choose_.of(2) == 0 ? "" : "A label for the chapter that takes a line more";
    made.stand_first = maybe(1 + choose_.of(40));
    made.ledger = static_cast<document::Ledger>(choose_.of(3));
    made.starts_page = choose_.one_in(4);
    made.keeps_together = choose_.one_in(4);
    for (int i = 1 + choose_.of(24); i > 0 && !full(); --i) {
      made.blocks.push_back(block());
      ++blocks_;
    }
    // A heading with nothing under it would say nothing.
    made.blocks.emplace_back(document::Paragraph{text(60)});
    return made;
  }

  Block block() {
    switch (choose_.of(16)) {
      case 0:
        return document::Subhead{words(1 + choose_.of(30)), beside()};
      case 1:
        return figure();
      case 2:
        return document::ChartFigure{chart(), "A chart", static_cast<Width>(1 + choose_.of(2))};
      case 3:
        return figures();
      case 4:
        return pair();
      case 5:
      case 6:
        return table();
      case 7:
      case 8:
        return entry();
      case 9:
        return document::Facts{facts(), 20.0 + choose_.of(120),
                               static_cast<Width>(1 + choose_.of(2))};
      case 10:
        return list();
      case 11:
        return document::Notes{{text(30), text(90)}};
      case 12:
        return document::RuledLines{{words(1), words(1 + choose_.of(8))}, 1 + choose_.of(5)};
      case 13:
        return document::Seal{words(1 + choose_.of(4)), std::string(1 + choose_.size() % 200, 'A'),
                              "Code"};
      default:
        return paragraph();
    }
  }

  std::vector<document::Beside> beside() {
    std::vector<document::Beside> made;
    for (int i = choose_.of(4); i > 1; --i) {
      switch (choose_.of(5)) {
        case 0:
          made.emplace_back(
              document::Caution{words(1 + choose_.of(6)), text(1 + choose_.size() % 500)});
          break;
        case 1:
          made.emplace_back(figure());
          break;
        case 2:
          made.emplace_back(document::ChartFigure{chart(), "A chart", Width::side});
          break;
        default:
          made.emplace_back(document::SideNote{text(1 + choose_.size() % 900)});
      }
    }
    return made;
  }

  document::Paragraph paragraph() {
    document::Paragraph made{text(1 + choose_.size() % 900)};
    // Words of an initial stand in two pieces: `opening` is tried elsewhere.
    constexpr std::array kManners = {
        document::ParagraphManner::reading, document::ParagraphManner::unindented,
        document::ParagraphManner::small, document::ParagraphManner::note};
    made.manner = kManners[static_cast<std::size_t>(choose_.of(4))];
    made.width = choose_.one_in(6) ? Width::full : Width::main;
    made.beside = beside();
    return made;
  }

  document::FigureRow figures() {
    document::FigureRow made;
    for (int i = choose_.of(4); i > 0; --i)
      made.figures.push_back(figure());
    return made;
  }

  document::Pair pair() {
    document::Pair made;
    if (choose_.of(3) > 0) made.found = figure();
    if (choose_.of(3) > 0) made.left = figure();
    made.not_photographed = made.found && made.left ? "" : "none";
    return made;
  }

  document::List list() {
    document::List made;
    made.numbered = choose_.one_in(2);
    for (int i = choose_.of(12); i >= 0; --i)
      made.items.push_back(text(60));
    return made;
  }

  std::vector<document::Entry::Fact> facts() {
    std::vector<document::Entry::Fact> made;
    for (int i = choose_.of(8); i >= 0; --i) {
      const int kind = choose_.of(8);
      std::string label = words(1 + choose_.of(4));
      made.push_back({std::move(label), text(kind == 0 ? 400 : 30)});
    }
    return made;
  }

  document::Entry entry() {
    const int first = next_;
    document::Entry made;
    made.letter = choose_.one_in(3) ? "AB" : "A";
    made.name = words(1 + choose_.of(20));
    if (choose_.of(2) == 0) made.old_part = photograph();
    if (choose_.of(2) == 0) made.new_part = photograph();
    if (!made.old_part) made.old_part_absent = maybe(2);
    made.facts = facts();
    undivided_.push_back({first, next_});
    return made;
  }

  document::Row row(int columns, int most, bool spans) {
    document::Row made;
    for (int at = 0; at < columns;) {
      document::Cell cell{text(most)};
      cell.columns = spans && choose_.one_in(5) ? 1 + choose_.of(columns - at) : 1;
      at += cell.columns;
      made.cells.push_back(std::move(cell));
    }
    return made;
  }

  document::Table table() {
    document::Table made;
    const int columns = 1 + choose_.of(7);
    made.columns.resize(static_cast<std::size_t>(columns));
    for (document::Column& column : made.columns) {
      column.align = static_cast<document::Column::Align>(choose_.of(2));
      column.width = choose_.one_in(3) ? 20 + choose_.of(20) : 0;
      column.row_name = choose_.one_in(4);
    }
    made.width = static_cast<Width>(1 + choose_.of(2));
    made.dashed = choose_.one_in(2);
    made.title = maybe(1 + choose_.of(12));
    for (int i = choose_.of(3); i > 0; --i)
      made.head.push_back(row(columns, 3, true));
    const int most = choose_.one_in(5) ? 120 : 6;
    for (int i = choose_.one_in(6) ? choose_.of(90) : choose_.of(9); i >= 0; --i) {
      const int first = next_;
      made.rows.push_back(row(columns, most, true));
      if (choose_.one_in(8)) {
        made.rows.push_back({{{text(3), columns}}, "", true});
      }
      undivided_.push_back({first, made.rows.back().names_group ? first : next_});
    }
    if (choose_.one_in(3)) made.below = text(40);
    made.beside = beside();
    return made;
  }

  double year() { return 1850.0 + choose_.of(180); }
  document::Share share() {
    const double low = choose_.of(101);
    return {low, std::min(100.0, low + choose_.of(60))};
  }

  document::Chart chart() {
    switch (choose_.of(5)) {
      case 0: {
        document::BarChart made;
        for (int i = choose_.of(8); i >= 0; --i)
          made.bars.push_back({"label", share().low, "figures", choose_.one_in(3)});
        return made;
      }
      case 1: {
        document::OriginalityChart made;
        for (int i = choose_.of(5); i >= 0; --i)
          made.questions.push_back({"label", {{"found", share(), "1"}, {"left", share(), "2"}}});
        return made;
      }
      case 2: {
        document::ConditionChart made;
        for (int i = choose_.of(6); i >= 0; --i) {
          made.axes.push_back({"label", "of it", {"a", "b", "c", "d"}, {}});
          made.axes.back().marks = {{document::Sign::found, share(), "fact"},
                                    {document::Sign::left, share(), "fact"}};
        }
        return made;
      }
      default: {
        document::DatingChart made;
        for (int i = choose_.size() % 120; i >= 0; --i) {
          document::DatingChart::Mark mark;
          mark.name = choose_.one_in(4) ? "a label so long that it has to take more lines than one"
                                        : "label";
          mark.first = year();
          mark.last = mark.first + choose_.of(60);
          mark.first_end = static_cast<document::DatingChart::End>(choose_.of(3));
          mark.last_end = static_cast<document::DatingChart::End>(choose_.of(3));
          if (choose_.one_in(6)) mark.left_out = "left out";
          made.marks.push_back(std::move(mark));
        }
        if (choose_.of(2) == 0) made.window = {1930, 1930 + choose_.of(30), "from here to there"};
        return made;
      }
    }
  }

  Choices choose_;
  int next_ = 0;
  int blocks_ = 0;
  bool has_cover_ = false;
  std::vector<Stretch> undivided_;
};

// ---- what must hold -----------------------------------------------------------------------------

struct Seen {
  int page = 0;
  int x = 0;
  int y = 0;
  int right = 0;
  int size = 0;
  layout::TagId tag = layout::kArtifact;
  bool in_figure = false;
  std::string text;
};

class Reader {
 public:
  Reader(const Pages& pages, const document::Style& style) : pages_(pages), paper_(style.paper) {
    const fake::Font fonts;
    for (std::size_t i = 0; i < pages.pages.size(); ++i) {
      for (const layout::Item& item : pages.pages[i].items) {
        const auto* text = std::get_if<layout::TextItem>(&item);
        if (text == nullptr) continue;
        const int x = text->origin.x.thousandths;
        seen_.push_back({static_cast<int>(i), x, text->origin.y.thousandths,
                         x + layout::seen_width_of(*text, fonts).thousandths,
                         text->size.thousandths, text->tag, in_figure(text->tag), text->text});
      }
    }
  }

  std::vector<std::string> faults(const Author& author) {
    look_inside();
    look_apart();
    look_at_headings(author.has_cover());
    look_for_words(author);
    const int most = 12 + 4 * author.blocks() + author.words() / 4 + 60;
    if (static_cast<int>(pages_.pages.size()) > most) {
      tell(std::to_string(pages_.pages.size()) + " pages for " + std::to_string(author.words()) +
           " words");
    }
    return std::move(faults_);
  }

 private:
  void tell(std::string fault) {
    if (faults_.size() < 20) faults_.push_back(std::move(fault));
  }
  static std::string place_of(const Seen& one) {
    return "page " + std::to_string(one.page + 1) + " at " + std::to_string(one.x / 1000) + ", " +
           std::to_string(one.y / 1000) + ": '" + one.text.substr(0, 30) + "'";
  }

  [[nodiscard]] bool in_figure(layout::TagId tag) const {
    return tag >= 0 && pages_.tags[static_cast<std::size_t>(tag)].type == TagType::figure;
  }
  [[nodiscard]] bool is_heading(const Seen& one) const {
    if (one.tag < 0) return false;
    const TagType type = pages_.tags[static_cast<std::size_t>(one.tag)].type;
    return type == TagType::h1 || type == TagType::h2;
  }

  void look_inside() {
    const int left = paper_.left.thousandths;
    const int right = (paper_.width - paper_.right).thousandths;
    const int top = paper_.top.thousandths;
    const int foot = (paper_.height - paper_.foot).thousandths;
    for (const Seen& one : seen_) {
      const bool folio = one.tag == layout::kArtifact && one.y > foot + 30000;
      const int slack = one.in_figure || one.tag == layout::kArtifact ? 100 : 2;
      const bool inside = one.x >= left - slack && one.right <= right + slack && one.y > top &&
                          (folio || one.y <= foot + 2);
      if (!inside) tell("outside, " + place_of(one));
    }
    for (std::size_t i = 0; i < pages_.pages.size(); ++i) {
      for (const layout::Item& item : pages_.pages[i].items) {
        const auto* image = std::get_if<layout::ImageItem>(&item);
        if (image == nullptr) continue;
        const base::Rect& box = image->box;
        if (box.x.thousandths < left - 2 || (box.x + box.width).thousandths > right + 2 ||
            box.y.thousandths < top - 2 || (box.y + box.height).thousandths > foot + 2) {
          tell("a picture leaves the frame of page " + std::to_string(i + 1));
        }
      }
    }
  }

  void look_apart() {
    for (std::size_t i = 0; i < seen_.size(); ++i) {
      for (std::size_t j = i + 1; j < seen_.size() && seen_[j].page == seen_[i].page; ++j) {
        const Seen& a = seen_[i];
        const Seen& b = seen_[j];
        if (a.in_figure || b.in_figure || a.text.empty() || b.text.empty()) continue;
        const int size = std::min({a.size, b.size, 11000});
        const bool level = std::abs(a.y - b.y) * 4 < size * 3;
        if (level && a.x < b.right - 10 && b.x < a.right - 10) {
          tell(place_of(a) + " meets " + place_of(b));
        }
      }
    }
  }

  void look_at_headings(bool has_cover) {
    layout::TagId cover_name = layout::kArtifact;
    for (const Seen& head : seen_) {
      if (!is_heading(head)) continue;
      // Under the name on a cover there may be nothing.
      if (has_cover && cover_name < 0) cover_name = head.tag;
      if (has_cover && head.tag == cover_name) continue;
      bool followed = false;
      bool last_of_all = true;
      int first_line = head.y;
      int last_line = head.y;
      for (const Seen& line : seen_) {
        if (line.tag != head.tag) continue;
        // A heading of more than a page is followed where it ends.
        followed = followed || line.page > head.page;
        if (line.page != head.page) continue;
        first_line = std::min(first_line, line.y);
        last_line = std::max(last_line, line.y);
      }
      // One of half a page leaves too little room for some of what may follow.
      const int half = (paper_.height - paper_.top - paper_.foot).thousandths / 2;
      followed = followed || last_line - first_line > half * 4 / 5;
      for (const Seen& other : seen_) {
        if (other.tag <= head.tag) continue;
        last_of_all = false;
        followed = followed || (other.page == head.page && other.y >= first_line - 1000);
      }
      for (const layout::Item& item : pages_.pages[static_cast<std::size_t>(head.page)].items) {
        const auto* image = std::get_if<layout::ImageItem>(&item);
        followed = followed || (image != nullptr && image->box.y.thousandths > head.y);
        const auto* path = std::get_if<layout::PathItem>(&item);
        followed = followed || (path != nullptr && path->tag > head.tag);
      }
      if (!followed && !last_of_all) tell("alone, " + place_of(head));
    }
  }

  void look_for_words(const Author& author) {
    std::map<layout::TagId, std::string> by_tag;
    std::map<layout::TagId, std::vector<std::pair<std::size_t, const Seen*>>> pieces;
    for (const Seen& one : seen_) {
      if (one.tag == layout::kArtifact) continue;
      pieces[one.tag].emplace_back(by_tag[one.tag].size(), &one);
      by_tag[one.tag] += one.text;
    }
    std::vector<const Seen*> found(static_cast<std::size_t>(author.words()), nullptr);
    for (const auto& [tag, text] : by_tag) {
      int last = -1;
      for (std::size_t at = text.find('w'); at != std::string::npos; at = text.find('w', at + 1)) {
        const int number = std::atoi(text.c_str() + at + 1);
        auto piece = std::upper_bound(pieces[tag].begin(), pieces[tag].end(), at,
                                      [](std::size_t x, const auto& p) { return x < p.first; });
        const Seen* where = std::prev(piece)->second;
        if (number <= last) tell("out of order, " + place_of(*where));
        last = number;
        if (number >= author.words()) continue;
        const Seen*& here = found[static_cast<std::size_t>(number)];
        if (here != nullptr) tell("twice, " + place_of(*where));
        here = where;
      }
    }
    for (std::size_t i = 0; i < found.size(); ++i) {
      if (found[i] == nullptr) tell("lost: w" + std::to_string(i));
    }
    for (const Stretch& stretch : author.undivided())
      look_undivided(stretch, found);
  }

  /// Parted only when it is higher than half a page, or nearly.
  void look_undivided(const Stretch& stretch, const std::vector<const Seen*>& found) {
    std::set<int> on;
    std::set<layout::TagId> tags;
    for (int i = stretch.first; i < stretch.end; ++i) {
      const Seen* one = found[static_cast<std::size_t>(i)];
      if (one == nullptr) continue;
      on.insert(one->page);
      tags.insert(one->tag);
    }
    if (on.size() < 2) return;
    std::map<int, std::pair<int, int>> reach;
    for (const Seen& one : seen_) {
      if (!tags.contains(one.tag)) continue;
      auto [at, fresh] = reach.try_emplace(one.page, one.y, one.y);
      at->second.first = std::min(at->second.first, one.y);
      at->second.second = std::max(at->second.second, one.y);
    }
    int height = 0;
    for (const auto& [page, ends] : reach)
      height += ends.second - ends.first + 11250;
    const int half = (paper_.height - paper_.top - paper_.foot).thousandths / 2;
    if (height < half * 4 / 5) {
      tell("parted: w" + std::to_string(stretch.first) + " to w" + std::to_string(stretch.end - 1) +
           ", " + std::to_string(height / 1000) + " high");
    }
  }

  const Pages& pages_;
  const document::Paper& paper_;
  std::vector<Seen> seen_;
  std::vector<std::string> faults_;
};

document::Style letter() {
  using base::points;
  document::Style style = fake::style();
  style.paper = {points(612), points(792), points(78), points(99), points(70.5), points(70.5)};
  return style;
}

}  // namespace

std::vector<std::string> layout_faults(std::span<const std::uint8_t> bytes) {
  static const document::Style kA4 = fake::style();
  static const document::Style kLetter = letter();
  if (bytes.empty()) return {};
  const document::Style& style = bytes.front() % 2 == 0 ? kA4 : kLetter;
  Author author(bytes.subspan(1));
  const document::Document document = author.write();
  const auto set = layout::lay_out(document, style, fake::Font());
  if (!set) return {"not laid out: " + set.faults().front().message};
  return Reader(*set, style).faults(author);
}

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::vector<std::string> faults = layout_faults({data, size});
  for (const std::string& fault : faults)
    std::fprintf(stderr, "%s\n", fault.c_str());
  if (!faults.empty()) __builtin_trap();
  return 0;
}
