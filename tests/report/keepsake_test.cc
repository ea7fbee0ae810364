#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>
#include <variant>

#include "told_reel.h"

using namespace winchbook;
using document::Chapter;
using document::Document;
using record::Record;
using report_test::chapter;
using report_test::chapters;
using report_test::times;
using report_test::told;
using report_test::words_of;

namespace {

const Record& skerry() {
  static const Record kRecord = report_test::demo("skerry-40");
  return kRecord;
}

const Record& dunlin() {
  static const Record kRecord = report_test::demo("dunlin-2");
  return kRecord;
}

std::string id_of(const record::PieceId& id) {
  return find(skerry(), id)->name;
}

/// The letters of the second ledger, each with the name of its entry.
std::map<std::string, std::string> entries(const Document& document) {
  std::map<std::string, std::string> out;
  for (const document::Block& block : chapter(document, "second-ledger")->blocks) {
    if (const auto* entry = std::get_if<document::Entry>(&block)) {
      CHECK(out.emplace(entry->letter, entry->name).second);
    }
  }
  return out;
}

/// How often each letter stands in the first ledger's table.
std::map<std::string, int> letters_of_rows(const Document& document) {
  std::map<std::string, int> out;
  for (const document::Block& block : chapter(document, "first-ledger")->blocks) {
    const auto* table = std::get_if<document::Table>(&block);
    if (table == nullptr) continue;
    for (const document::Row& row : table->rows) {
      const std::string letter = document::spoken(row.cells.back().words);
      if (!letter.empty()) ++out[letter];
    }
  }
  return out;
}

/// What stands in the margin of a chapter's paragraphs.
std::multiset<std::string> side_notes(const Chapter& chapter) {
  std::multiset<std::string> out;
  for (const document::Block& block : chapter.blocks) {
    const auto* paragraph = std::get_if<document::Paragraph>(&block);
    if (paragraph == nullptr) continue;
    for (const document::Beside& one : paragraph->beside) {
      if (const auto* note = std::get_if<document::SideNote>(&one)) {
        out.insert(document::spoken(note->words));
      }
    }
  }
  return out;
}

/// The numbered photographs in reading order.
std::vector<const document::Figure*> numbered(const Document& document) {
  std::vector<const document::Figure*> out;
  for (const Chapter& one : document.chapters) {
    for (const document::Figure* figure : report_test::figures(one)) {
      if (figure->caption.number > 0) out.push_back(figure);
    }
  }
  return out;
}

void numbers_run_without_gaps(const Document& document) {
  int expected = 1;
  std::set<std::string> seen;
  for (const document::Figure* figure : numbered(document)) {
    CHECK(figure->caption.number == expected++);
    CHECK_MESSAGE(seen.insert(figure->photograph.id).second, figure->photograph.id);
  }
}

void no_chapter_is_empty(const Document& document) {
  for (const Chapter& one : document.chapters) {
    CAPTURE(one.id);
    CHECK_FALSE(one.title.empty());
    CHECK_FALSE(one.eyebrow.empty());
    CHECK_FALSE((one.blocks.empty() && one.stand_first.empty()));
  }
}

record::Words plain(const std::string& words) {
  return {{record::Plain{words}}};
}

}  // namespace

TEST_CASE("what is the maker's and what the bench did never stand in one chapter") {
  const Document document = told(skerry());
  std::size_t first = 0;
  std::size_t second = 0;
  for (const Chapter& one : document.chapters) {
    first += one.ledger == document::Ledger::first ? 1U : 0U;
    second += one.ledger == document::Ledger::second ? 1U : 0U;
    const bool bench =
        std::any_of(one.blocks.begin(), one.blocks.end(), [](const document::Block& block) {
          return std::holds_alternative<document::Entry>(block);
        });
    CHECK(bench == (one.id == "second-ledger"));
  }
  CHECK(first == 1);
  CHECK(second == 1);
  // Neither tells the other's: no donor in the first, no chart of originality in the second.
  const std::string makers = words_of(*chapter(document, "first-ledger"));
  for (const record::Donor& donor : skerry().donors)
    CHECK(makers.find(donor.name) == std::string::npos);
  for (const document::Block& block : chapter(document, "second-ledger")->blocks)
    CHECK_FALSE(std::holds_alternative<document::ChartFigure>(block));
}

TEST_CASE("every fitting of the last visit has one letter, the same in both ledgers") {
  const Document document = told(skerry());
  std::map<std::string, int> fitted;
  for (const record::Fitting& one : skerry().fittings) {
    if (one.visit == skerry().visits.back().id) ++fitted[id_of(one.piece)];
  }
  REQUIRE(fitted.size() == 6);
  std::set<std::string> told_names;
  const auto second = entries(document);
  const auto rows = letters_of_rows(document);
  char expected = 'A';
  for (const auto& entry : second) {
    const auto& letter = entry.first;
    const auto& name = entry.second;
    CHECK(letter == std::string(1, expected++));
    CHECK_MESSAGE(fitted.contains(name), name);
    told_names.insert(name);
    REQUIRE_MESSAGE(rows.contains(letter), letter);
    CHECK(rows.at(letter) == 1);
  }
  CHECK(told_names.size() == fitted.size());
  CHECK(rows.size() == second.size());
}

TEST_CASE("one fitting less is one letter less") {
  Record fewer = skerry();
  std::erase_if(fewer.fittings, [](const auto& one) { return one.id.text == "fi-lock-screw-new"; });
  CHECK(entries(told(fewer)).size() == 5);
}

TEST_CASE("what its life added is in neither ledger") {
  const Document document = told(skerry());
  const Chapter* life = chapter(document, "life");
  REQUIRE(life != nullptr);
  CHECK(life->ledger == document::Ledger::none);
  const std::string ledgers =
      words_of(*chapter(document, "first-ledger")) + words_of(*chapter(document, "second-ledger"));
  const std::string said = words_of(*life);
  for (const record::LifeEvent& event : skerry().life) {
    for (const record::Paragraph& one : event.what) {
      const std::string words = record::plain_text(skerry(), one.words);
      CHECK(times(said, words) == 1);
      CHECK(times(ledgers, words) == 0);
    }
    if (!event.keep_because.empty()) {
      CHECK(times(said, record::plain_text(skerry(), event.keep_because)) == 1);
    }
  }
}

TEST_CASE("each caution stands beside the very words of its work") {
  const Document document = told(skerry());
  std::map<std::string, std::string> beside;  // the caution's words, the work's
  for (const document::Block& block : chapter(document, "second-ledger")->blocks) {
    const auto* paragraph = std::get_if<document::Paragraph>(&block);
    if (paragraph == nullptr) continue;
    for (const document::Beside& one : paragraph->beside) {
      if (const auto* caution = std::get_if<document::Caution>(&one)) {
        beside[document::spoken(caution->words)] = document::spoken(paragraph->words);
      }
    }
  }
  const record::Visit& visit = skerry().visits.back();
  std::size_t expected = 0;
  const auto check = [&](const std::optional<record::Caution>& caution, const record::Words& work) {
    if (!caution) return;
    ++expected;
    const std::string words = record::plain_text(skerry(), caution->words);
    REQUIRE_MESSAGE(beside.contains(words), words);
    CHECK(times(beside[words], record::plain_text(skerry(), work)) == 1);
  };
  for (const auto& step : visit.strip_down)
    check(step.caution, step.what);
  for (const auto& cleaning : visit.cleaning)
    check(cleaning.caution, cleaning.what);
  for (const auto& work : visit.work)
    check(work.caution, work.what);
  CHECK(expected >= 3);
  for (const record::Caution& caution : visit.care->cautions) {
    const std::string care = words_of(*chapter(document, "care"));
    CHECK(times(care, record::plain_text(skerry(), caution.words)) == 1);
  }
}

TEST_CASE("every sentence of the story is told, once and in its order") {
  for (const Record* reel : {&skerry(), &dunlin()}) {
    const Document document = told(*reel);
    const std::string said = words_of(*chapter(document, "story"));
    const auto notes = side_notes(*chapter(document, "story"));
    std::size_t at = 0;
    for (const record::Paragraph& one : reel->story->paragraphs) {
      const std::string words = record::plain_text(*reel, one.words);
      CHECK(times(said, words) == 1);
      CHECK(said.find(words) >= at);
      at = said.find(words);
      if (one.note) CHECK(notes.count(record::plain_text(*reel, *one.note)) == 1);
    }
  }
}

TEST_CASE("photographs are numbered from one without gaps, each once") {
  CHECK(numbered(told(skerry())).size() >= 10);
  numbers_run_without_gaps(told(skerry()));
  numbers_run_without_gaps(told(dunlin()));
  Record unpaired = skerry();
  for (record::Photo& photo : unpaired.photos)
    photo.pair_of.reset();
  numbers_run_without_gaps(told(unpaired));
  // More pictures from the bench than its chapter has room for.
  Record busy = unpaired;
  for (record::Photo& photo : busy.photos) {
    if (photo.stage == record::Stage::as_found) photo.stage = record::Stage::work;
  }
  numbers_run_without_gaps(told(busy));
}

TEST_CASE("a photograph is in the book or was never in the record") {
  Record unpaired = skerry();
  for (record::Photo& photo : unpaired.photos)
    photo.pair_of.reset();
  for (const Record* reel : {&skerry(), static_cast<const Record*>(&unpaired)}) {
    const std::string said = document::dump(told(*reel));
    for (const record::Photo& photo : reel->photos) {
      CHECK_MESSAGE(said.find(photo.id.text) != std::string::npos, photo.id.text);
    }
  }
}

TEST_CASE("a record without photographs shows its marks, and points at none that is not there") {
  Record bare = skerry();
  bare.photos.clear();
  const Document document = told(bare);
  no_chapter_is_empty(document);
  CHECK(chapter(document, "before-and-after") == nullptr);
  CHECK_FALSE(document.cover->picture);
  CHECK_FALSE(document.cover->marks_as_read.empty());
  CHECK(numbered(document).empty());
  bare.markings.clear();
  CHECK(told(bare).cover->marks_as_read.empty());
  // Nobody wrote that none was looked for, or found.
  CHECK(told(bare).cover->no_picture_note.empty());
}

TEST_CASE("a record without marks says that none was found, where somebody looked") {
  Record bare = skerry();
  bare.markings.clear();
  bare.reel.made.reset();
  CHECK(times(words_of(*chapter(told(bare), "dating")), "No mark was found") == 0);
  bare.visits.back().findings.looked_for.push_back({record::LookedFor::marks, {}, {}, {}});
  const Document document = told(bare);
  no_chapter_is_empty(document);
  CHECK(times(words_of(*chapter(document, "dating")), "No mark was found on the reel") == 1);
}

TEST_CASE("a chapter without anything to tell is left out") {
  Record bare = skerry();
  bare.story.reset();
  bare.life.clear();
  bare.custody.clear();
  bare.visits.back().advice.reset();
  bare.visits.back().care.reset();
  bare.visits.back().not_put_right.clear();
  bare.visits.back().findings.faults.clear();
  const Document document = told(bare);
  no_chapter_is_empty(document);
  // The knob's picture, told by no life event now, stands among the others.
  const std::vector<std::string> left{
      "dating", "how-it-came",       "first-ledger", "second-ledger", "before-and-after",
      "care",   "other-photographs", "later",        "seal"};
  CHECK(chapters(document) == left);
}

TEST_CASE("advice that was never written makes no chapter") {
  Record bare = skerry();
  bare.visits.back().advice = record::Advice{};
  CHECK(chapter(told(bare), "advice") == nullptr);
}

TEST_CASE("a reel into which nothing was put lists what was done, and claims no absence") {
  Record bare = skerry();
  std::erase_if(bare.fittings,
                [&](const record::Fitting& one) { return one.visit == bare.visits.back().id; });
  const Document document = told(bare);
  no_chapter_is_empty(document);
  CHECK(entries(document).empty());
  CHECK(letters_of_rows(document).empty());
  CHECK(chapter(document, "second-ledger")->stand_first.empty());
}

TEST_CASE("a small job gets the short list of chapters, and a fitting or more rows the long one") {
  const std::vector<std::string> small{"story", "care", "account", "first-ledger", "seal-note"};
  const Document document = told(dunlin());
  CHECK(chapters(document) == small);
  CHECK(document.cover->compact);
  no_chapter_is_empty(document);

  // What a few words cannot tell has its chapter: how it came apart.
  CHECK(chapter(document, "work") == nullptr);
  Record apart = dunlin();
  apart.visits.back().strip_down.emplace_back().number = 1;
  CHECK(times(words_of(*chapter(told(apart), "work")), "taken apart in one step") == 1);

  Record fitted = dunlin();
  fitted.fittings.front().visit = fitted.visits.back().id;
  CHECK(chapter(told(fitted), "second-ledger") != nullptr);

  Record long_one = dunlin();
  while (long_one.places.size() <= 8)
    long_one.places.push_back(long_one.places.back());
  CHECK(chapter(told(long_one), "dating") != nullptr);
}

TEST_CASE("a small job without a word of its work still shows its picture") {
  Record silent = dunlin();
  record::Visit& visit = silent.visits.back();
  visit.strip_down.clear();
  visit.cleaning.clear();
  visit.work.clear();
  const Document document = told(silent);
  CHECK(numbered(document).size() == numbered(told(dunlin())).size());
  CHECK(numbered(document).size() == 1);
  numbers_run_without_gaps(document);
}

TEST_CASE("a record without a visit is refused in a sentence") {
  Record unseen = skerry();
  unseen.visits.clear();
  CHECK(report_test::refusal(unseen) ==
        "error: the record has no visit, so there is nothing to tell yet [no-visit]\n"
        "  hint: enter the visit in which the reel came to the bench\n");
}

TEST_CASE("a withheld name is nowhere, and its stand-in is") {
  for (const record::Person& person : skerry().people) {
    Record withheld = skerry();
    const std::string name = *record::told(person.name);
    const std::string first = name.substr(0, name.find(' '));
    for (record::Person& one : withheld.people) {
      if (one.id == person.id) {
        one.name = record::Withheld{std::string(64, '0')};
        one.short_name.clear();
      }
    }
    const std::string before = document::dump(told(skerry()));
    const std::string after = document::dump(told(withheld));
    CAPTURE(name);
    CHECK(before.find(name) != std::string::npos);
    CHECK(after.find(name) == std::string::npos);
    CHECK(times(after, person.stand_in) > times(before, person.stand_in));
    CHECK(times(after, first) < times(before, first));
  }
}

TEST_CASE("a withheld mark is told as withheld and not read out") {
  Record withheld = skerry();
  for (record::Marking& mark : withheld.markings) {
    if (mark.id.text == "mk-owner") mark.text = record::Withheld{std::string(64, '0')};
  }
  const std::string said = words_of(*chapter(told(withheld), "dating"));
  CHECK(times(said, "A. MERROW") == 0);
  CHECK(times(said, "an inscription, withheld") >= 1);
  CHECK(times(words_of(*chapter(told(skerry()), "dating")), "A. MERROW") >= 1);
}

TEST_CASE("custody tells what is known of a stretch that nobody knows, and no more") {
  Record record = dunlin();
  const std::string design =
      "<template xmlns=\"urn:winchbook:template:1\" document=\"keepsake\" "
      "style=\"house-style.xml\"><section id=\"custody\"/></template>";
  const auto date = [](const char* text) { return base::EdtfDate::parse(text).value(); };
  const auto said = [&](record::CustodyGap gap) {
    record.custody = {std::move(gap)};
    const std::string words = words_of(*chapter(told(record, design), "custody"));
    const auto from = words.find("[Not known");
    return words.substr(from, words.find(']', from) + 1 - from);
  };
  CHECK(said({{"cu"}, {}, date("1988"), {}}) == "[Not known, until 1988]");
  CHECK(said({{"cu"}, date("1960"), {}, {}}) == "[Not known, from 1960]");
  CHECK(said({{"cu"}, date("1960"), date("1988"), {}}) == "[Not known, 1960 to 1988]");
  CHECK(said({{"cu"}, {}, {}, plain("in a shed")}) == "[Not known: in a shed]");
  CHECK(said({{"cu"}, date("1960"), date("1988"), plain("in a shed")}) ==
        "[Not known, 1960 to 1988: in a shed]");
  CHECK(said({{"cu"}, {}, {}, {}}) == "[Not known]");
}

TEST_CASE("a life event that nobody dated begins with how it is known") {
  Record record = skerry();
  record.life.resize(1);
  record::LifeEvent& event = record.life.front();
  event.date.reset();
  event.date_as_told.clear();
  event.by.reset();
  event.source = "Seen at the bench.";
  const std::string said = words_of(*chapter(told(record), "life"));
  CHECK(times(said, "Seen at the bench.") == 1);
  CHECK(times(said, ". Seen at the bench.") == 0);
}
