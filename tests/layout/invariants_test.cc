#include <doctest/doctest.h>

#include <set>

#include "laid_out.h"

/// What holds for any document, tried on made-up ones.
namespace winchbook::layout {
namespace {

using document::Block;
using laid::Seen;

/// Numbers that are the same on every machine.
class Dice {
 public:
  explicit Dice(unsigned seed) : state_(seed * 2654435761U + 1U) {}
  /// 0 to `sides` - 1.
  int roll(int sides) {
    state_ = state_ * 1664525U + 1013904223U;
    return static_cast<int>((state_ >> 8U) % static_cast<unsigned>(sides));
  }

 private:
  unsigned state_;
};

/// Makes documents in which every word is another, so that each can be looked for.
class Author {
 public:
  explicit Author(unsigned seed) : dice_(seed) {}

  document::Document write() {
    document::Document document;
    document.title = "Made up";
    document.language = "en-GB";
    document.folio = {"{page} of {pages}", "Made up", "CODE"};
    const int chapters = 1 + dice_.roll(4);
    for (int i = 0; i < chapters; ++i)
      document.chapters.push_back(chapter(i));
    return document;
  }

  [[nodiscard]] int words() const { return next_; }

 private:
  std::string words(int count) {
    std::string text;
    for (int i = 0; i < count; ++i) {
      if (i > 0) text += ' ';
      text += "w" + std::to_string(next_++);
      // Some words are wider than any column.
      if (dice_.roll(150) == 0) text += std::string(120, 'z');
    }
    return text;
  }

  document::Text text(int most) { return document::plain(words(1 + dice_.roll(most))); }

  document::Chapter chapter(int number) {
    document::Chapter chapter;
    chapter.id = "c" + std::to_string(number);
    chapter.title = words(1 + dice_.roll(6));
    if (dice_.roll(2) == 0) chapter.eyebrow = words(2);
    if (dice_.roll(2) == 0) chapter.stand_first = words(1 + dice_.roll(20));
    chapter.ledger = static_cast<document::Ledger>(dice_.roll(3));
    const int blocks = dice_.roll(14);
    for (int i = 0; i < blocks; ++i)
      chapter.blocks.push_back(block());
    // A heading with nothing under it would say nothing.
    chapter.blocks.emplace_back(paragraph());
    return chapter;
  }

  Block block() {
    switch (dice_.roll(10)) {
      case 0:
        return subhead();
      case 1:
        return table();
      case 2:
        return figure();
      case 3:
        return list();
      case 4:
        return facts();
      case 5:
        return document::Notes{{text(20), text(20)}};
      case 6:
        return pair();
      default:
        return paragraph();
    }
  }

  document::Paragraph paragraph() {
    document::Paragraph made;
    made.words = text(dice_.roll(10) == 0 ? 700 : 120);
    made.manner = static_cast<document::ParagraphManner>(dice_.roll(5));
    made.width = dice_.roll(8) == 0 ? document::Width::full : document::Width::main;
    if (dice_.roll(3) == 0) made.beside.emplace_back(document::SideNote{text(90)});
    if (dice_.roll(4) == 0) made.beside.emplace_back(document::Caution{words(1), text(40)});
    if (dice_.roll(40) == 0) made.beside.emplace_back(document::SideNote{text(900)});
    return made;
  }

  document::Subhead subhead() {
    document::Subhead made;
    made.words = words(1 + dice_.roll(15));
    if (dice_.roll(4) == 0) made.beside.emplace_back(document::SideNote{text(30)});
    return made;
  }

  document::Figure figure() {
    document::Figure made;
    made.photograph = {"photo", 400 + dice_.roll(2000), 400 + dice_.roll(2000), "A picture"};
    made.caption.words = text(25);
    made.width = dice_.roll(2) == 0 ? document::Width::full : document::Width::main;
    made.caption_in_side = dice_.roll(2) == 0;
    return made;
  }

  document::Pair pair() {
    document::Pair made;
    made.found = figure();
    if (dice_.roll(2) == 0) made.left = figure();
    return made;
  }

  document::List list() {
    document::List made;
    made.numbered = dice_.roll(2) == 0;
    for (int i = dice_.roll(6); i >= 0; --i)
      made.items.push_back(text(40));
    return made;
  }

  document::Facts facts() {
    document::Facts made;
    for (int i = dice_.roll(6); i >= 0; --i)
      made.facts.push_back({words(1 + dice_.roll(2)), text(30)});
    return made;
  }

  document::Table table() {
    document::Table made;
    const int columns = 1 + dice_.roll(5);
    made.columns.resize(static_cast<std::size_t>(columns));
    made.width = dice_.roll(2) == 0 ? document::Width::full : document::Width::main;
    for (int i = 0; i < columns; ++i) {
      if (dice_.roll(3) == 0) {
        made.columns[static_cast<std::size_t>(i)].align = document::Column::Align::numbers;
      }
    }
    made.head.push_back(row(columns, 2));
    const int rows = dice_.roll(10) == 0 ? 120 : dice_.roll(25);
    for (int i = 0; i < rows; ++i)
      made.rows.push_back(row(columns, dice_.roll(30) == 0 ? 400 : 8));
    if (dice_.roll(2) == 0) made.below = text(30);
    if (dice_.roll(3) == 0) made.title = words(3);
    if (dice_.roll(3) == 0) made.beside.emplace_back(document::SideNote{text(30)});
    return made;
  }

  document::Row row(int columns, int most) {
    document::Row made;
    for (int i = 0; i < columns; ++i)
      made.cells.push_back({text(most)});
    return made;
  }

  Dice dice_;
  int next_ = 0;
};

/// Every word that a reader aloud would hear, with what stands twice.
std::multiset<std::string> heard(const Pages& pages) {
  std::map<TagId, std::string> by_tag;
  for (const Page& page : pages.pages) {
    for (const Item& item : page.items) {
      const auto* text = std::get_if<TextItem>(&item);
      if (text == nullptr || text->tag == kArtifact) continue;
      by_tag[text->tag] += text->text;
    }
  }
  std::multiset<std::string> words;
  for (const auto& [tag, text] : by_tag) {
    std::size_t at = 0;
    while ((at = text.find('w', at)) != std::string::npos) {
      std::size_t end = at + 1;
      while (end < text.size() && text[end] >= '0' && text[end] <= '9')
        ++end;
      words.insert(text.substr(at, end - at));
      at = end;
    }
  }
  return words;
}

/// The initial of an opening paragraph stands apart from the rest of its word.
bool has_opening(const document::Document& document) {
  for (const document::Chapter& chapter : document.chapters) {
    for (const Block& block : chapter.blocks) {
      const auto* paragraph = std::get_if<document::Paragraph>(&block);
      if (paragraph != nullptr && paragraph->manner == document::ParagraphManner::opening) {
        return true;
      }
    }
  }
  return false;
}

struct Columns {
  double left = 0;
  double side_right = 0;
  double right = 0;
  double top = 0;
  double foot = 0;
};

Columns columns_of(const document::Style& style) {
  const double left = laid::to_points(style.paper.left);
  return {left, left + 147, left + 471, laid::to_points(style.paper.top),
          laid::to_points(style.paper.height - style.paper.foot)};
}

void check_inside(const std::vector<Seen>& all, const Columns& columns) {
  for (const Seen& one : all) {
    const bool folio = one.y > columns.foot + 30;
    INFO(one.text << " on page " << one.page << " at " << one.x << ", " << one.y);
    CHECK(one.x >= columns.left - 0.002);
    CHECK(one.right <= columns.right + 0.002);
    CHECK(one.y > columns.top);
    if (!folio) CHECK(one.y <= columns.foot + 0.002);
  }
}

/// No two lines of words run into each other.
void check_apart(const std::vector<Seen>& all) {
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t j = i + 1; j < all.size() && all[j].page == all[i].page; ++j) {
      const Seen& a = all[i];
      const Seen& b = all[j];
      const double size = std::min({a.size, b.size, 11.0});
      const bool level = std::abs(a.y - b.y) < 0.75 * size;
      const bool across = a.x < b.right - 0.01 && b.x < a.right - 0.01;
      if (a.size > 50 || b.size > 50) continue;  // an initial stands among its lines
      INFO("page " << a.page << ": " << a.text << " meets " << b.text);
      CHECK_FALSE((level && across));
    }
  }
}

/// Under each subhead its page holds something more.
void check_headings(const Pages& pages, const std::vector<Seen>& all, double foot) {
  for (const Seen& head : all) {
    if (head.tag == kArtifact) continue;
    const TagType type = pages.tags[static_cast<std::size_t>(head.tag)].type;
    if (type != TagType::h1 && type != TagType::h2) continue;
    bool followed = false;
    bool last_of_all = true;
    for (const Seen& other : all) {
      if (other.tag == kArtifact || other.tag <= head.tag) continue;
      last_of_all = false;
      followed = followed || (other.page == head.page && other.y >= head.y - 1);
    }
    for (const Item& item : pages.pages[static_cast<std::size_t>(head.page)].items) {
      const auto* image = std::get_if<ImageItem>(&item);
      followed = followed || (image != nullptr && laid::to_points(image->box.y) > head.y);
    }
    INFO(head.text << " on page " << head.page << " at " << head.y << " of " << foot);
    CHECK((followed || last_of_all));
  }
}

}  // namespace

TEST_CASE("in any document every word is placed once, inside its page, clear of every other") {
  for (const document::Style& style : {fake::style(), laid::letter()}) {
    for (unsigned seed = 1; seed <= 60; ++seed) {
      CAPTURE(seed);
      Author author(seed);
      const document::Document document = author.write();
      const Pages set = laid::pages(document, style);
      const Columns columns = columns_of(style);
      const std::vector<Seen> all = laid::seen(set);
      check_inside(all, columns);
      check_apart(all);
      check_headings(set, all, columns.foot);
      if (has_opening(document)) continue;
      const std::multiset<std::string> words = heard(set);
      for (int i = 0; i < author.words(); ++i)
        CHECK_MESSAGE(words.count("w" + std::to_string(i)) == 1, "w" << i);
    }
  }
}

TEST_CASE("the same document gives the same pages") {
  const document::Document document = Author(7).write();
  CHECK(dump(laid::pages(document)) == dump(laid::pages(document)));
}

TEST_CASE("a document without chapters has no pages, and one without words has one") {
  document::Document document;
  document.language = "en-GB";
  CHECK(laid::pages(document).pages.empty());
  CHECK(laid::pages(laid::one_chapter({})).pages.size() == 1);
}

TEST_CASE("headings step down without leaving one out") {
  auto document = laid::one_chapter({document::Subhead{"Head"}, laid::lines(5)});
  const auto types = [](const Pages& set) {
    std::set<TagType> found;
    for (const Tag& tag : set.tags)
      found.insert(tag.type);
    return found;
  };
  std::set<TagType> found = types(laid::pages(document));
  CHECK(found.contains(TagType::h1));
  CHECK(found.contains(TagType::h2));
  CHECK_FALSE(found.contains(TagType::h3));
  document.cover.emplace();
  document.cover->name = "Cover";
  found = types(laid::pages(document));
  CHECK(found.contains(TagType::h1));
  CHECK(found.contains(TagType::h2));
  CHECK(found.contains(TagType::h3));
}

TEST_CASE("chapters and subheads are bookmarked at their places") {
  const Pages set = laid::pages(laid::one_chapter({document::Subhead{"Head"}, laid::lines(5)}));
  REQUIRE(set.bookmarks.size() == 2);
  CHECK(set.bookmarks[0].words == "Title");
  CHECK(set.bookmarks[0].level == 0);
  CHECK(set.bookmarks[1].words == "Head");
  CHECK(set.bookmarks[1].level == 1);
  CHECK(laid::to_points(set.bookmarks[0].to.y) == doctest::Approx(84));
}

TEST_CASE("links lead to anchors that stand somewhere; others become plain words") {
  document::Run here{"here"};
  here.link = "#there";
  document::Run gone{"gone"};
  gone.link = "#nowhere";
  document::Paragraph paragraph;
  paragraph.words.parts = {here, document::Run{" and "}, gone};
  document::Paragraph there = laid::lines(1);
  there.anchor = "there";
  const Pages set = laid::pages(laid::one_chapter({paragraph, there}));
  std::vector<std::string> targets;
  for (const Item& item : set.pages[0].items) {
    if (const auto* link = std::get_if<LinkItem>(&item)) targets.push_back(link->target);
  }
  CHECK(targets == std::vector<std::string>{"#there"});
  CHECK(set.anchors.contains("there"));
  CHECK(std::count_if(set.tags.begin(), set.tags.end(),
                      [](const Tag& tag) { return tag.type == TagType::link; }) == 1);
}

TEST_CASE("a note mark leads to its note in the chapter's notes") {
  document::Paragraph paragraph;
  paragraph.words.parts = {document::Run{"words"}, document::NoteMark{1}};
  document::Notes notes{{document::plain("The note.")}};
  const Pages set = laid::pages(laid::one_chapter({paragraph, notes}));
  CHECK(set.anchors.contains("chapter-note-1"));
  int links = 0;
  for (const Item& item : set.pages[0].items)
    links += std::holds_alternative<LinkItem>(item) ? 1 : 0;
  CHECK(links == 1);
}

}  // namespace winchbook::layout
