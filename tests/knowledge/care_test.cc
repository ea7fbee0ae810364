#include "knowledge/care.h"

#include <doctest/doctest.h>

#include <array>
#include <fstream>
#include <iterator>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "knowledge/marks.h"
#include "knowledge/patched_files.h"
#include "tabular/rows.h"

namespace {

using namespace winchbook::knowledge;

const CareTable& table() {
  static const auto kLoaded = load_care({winchbook::base::RealFiles(), WINCHBOOK_SOURCE_DIR});
  REQUIRE(kLoaded);
  return *kLoaded;
}

CareVerdict verdict(const char* substance, const char* method) {
  const Substance* on = find_substance(table(), substance);
  const CareMethod* with = find_method(table(), method);
  REQUIRE_MESSAGE(on != nullptr, substance);
  REQUIRE_MESSAGE(with != nullptr, method);
  const CareRow* row = find_row(table(), *on, *with);
  return row == nullptr ? CareVerdict::not_known : row->verdict;
}

struct Cell {
  const char* substance;
  const char* method;
  CareVerdict verdict;
};

std::string all_words(const std::vector<const Substance*>& all) {
  std::string words;
  for (const Substance* one : all)
    words += (words.empty() ? "" : " ") + one->word;
  return words;
}

std::string all_words(const std::vector<const CareMethod*>& all) {
  std::string words;
  for (const CareMethod* one : all)
    words += (words.empty() ? "" : " ") + one->word;
  return words;
}

constexpr auto kUsual = CareVerdict::usual;
constexpr auto kWithCare = CareVerdict::with_care;
constexpr auto kHarms = CareVerdict::harms;
constexpr auto kNever = CareVerdict::never;

}  // namespace

// What the sources say, copied: OSHA 29 CFR 1910.1001(f)(3) and appendix F, and the EPA brochure on
// brakes and clutches of 2007 ("do not sand, file, blow or brush dry; wet-wipe method or leave in
// place"); OSHA 29 CFR 1910.1027 ("no heating, grinding, abrasive blasting or acid strip" of
// cadmium); CCI Notes 15/3 ("no heat, flame, solvents or sealed box" for celluloid); the manual of
// an ultrasonic cleaner ("not for celluloid, hard rubber, shell, pearl, ivory, glued or lacquered
// or painted parts"); a conservators' list of 1998 (ammonia on brass: season cracking); a maker of
// laboratory detergents (above about pH 10 aluminium is attacked; caustic gives hydrogen). All
// read.
TEST_CASE("verdicts are those of the sources that were read") {
  constexpr std::array kCells{Cell{"asbestos", "abrasive", kNever},
                              Cell{"asbestos", "compressed-air", kNever},
                              Cell{"asbestos", "dry-brush", kNever},
                              Cell{"asbestos", "ultrasonic", kNever},
                              Cell{"asbestos", "damp-cloth", kWithCare},
                              Cell{"cadmium-plate", "heat", kNever},
                              Cell{"cadmium-plate", "abrasive", kNever},
                              Cell{"cadmium-plate", "blasting", kNever},
                              Cell{"cadmium-plate", "acid", kNever},
                              Cell{"cadmium-plate", "dry-brush", kWithCare},
                              Cell{"celluloid", "heat", kNever},
                              Cell{"celluloid", "acetone", kNever},
                              Cell{"celluloid", "alcohol", kNever},
                              Cell{"celluloid", "white-spirit", kHarms},
                              Cell{"celluloid", "wax", kHarms},
                              Cell{"celluloid", "ultrasonic", kNever},
                              Cell{"hard-rubber", "ultrasonic", kNever},
                              Cell{"shell", "ultrasonic", kNever},
                              Cell{"ivory", "ultrasonic", kNever},
                              Cell{"lacquer", "ultrasonic", kNever},
                              Cell{"japan-black", "ultrasonic", kNever},
                              Cell{"cyanoacrylate", "ultrasonic", kHarms},
                              Cell{"hard-rubber", "hot-water", kNever},
                              Cell{"hard-rubber", "soak", kHarms},
                              Cell{"hard-rubber", "metal-polish", kHarms},
                              Cell{"brass", "ammonia", kNever},
                              Cell{"nickel-silver", "ammonia", kNever},
                              Cell{"aluminium", "degreaser", kNever},
                              Cell{"aluminium", "alkali", kNever}};
  for (const Cell& cell : kCells) {
    CAPTURE(cell.substance);
    CAPTURE(cell.method);
    CHECK(verdict(cell.substance, cell.method) == cell.verdict);
    const CareRow* row = find_row(table(), *find_substance(table(), cell.substance),
                                  *find_method(table(), cell.method));
    REQUIRE(row != nullptr);
    if (std::string_view(cell.method) != "soak" && std::string_view(cell.method) != "blasting")
      CHECK(row->grounds == CareGrounds::read);
  }
}

// Common practice, without a source.
TEST_CASE("verdicts are those of the trade") {
  constexpr std::array kCells{
      Cell{"brass", "ultrasonic", kWithCare},
      Cell{"steel", "ultrasonic", kWithCare},  // flash rust after the bath
      Cell{"steel", "hand-wash", kWithCare},
      Cell{"steel", "steel-wool", kWithCare},  // dried grease, on steel only
      Cell{"nickel-plate", "steel-wool", kNever},
      Cell{"chromium-plate", "steel-wool", kNever},
      Cell{"aluminium", "steel-wool", kNever},
      Cell{"brass", "steel-wool", kHarms},
      Cell{"brass", "penetrating-oil", kUsual},
      Cell{"leather", "penetrating-oil", kHarms},
      Cell{"hard-rubber", "buffing", kNever},
      Cell{"brass", "petrol", kNever},
      Cell{"steel", "compressed-air", kWithCare},
      Cell{"wood", "hand-wash", kHarms}};
  for (const Cell& cell : kCells) {
    CAPTURE(cell.substance);
    CAPTURE(cell.method);
    CHECK(verdict(cell.substance, cell.method) == cell.verdict);
  }
  CHECK(find_method(table(), "ultrasonic")->most_minutes == 3);  // a proposal: see the table's head
  CHECK(find_method(table(), "grease")->advice.find("glues leather washers") != std::string::npos);
}

TEST_CASE("every material and every finish of the marks has its row, by each of its names") {
  const auto marks = load_marks({winchbook::base::RealFiles(), WINCHBOOK_SOURCE_DIR});
  REQUIRE(marks);
  std::size_t seen = 0;
  for (const Mark& mark : marks->marks) {
    if (mark.sort != MarkSort::material && mark.sort != MarkSort::finish) continue;
    if (mark.word == "wood" || mark.word == "paper") continue;
    for (const std::string& form : mark.forms) {
      CAPTURE(form);
      const auto named = substances_in(table(), form);
      REQUIRE(named.size() == 1);
      // The table tells some of them more narrowly than the marks do.
      static const std::set<std::string> kNarrower{
          "SILICONE GREASE", "SPRING STEEL", "BONE", "BLUED", "BROWNED", "LEADED", "LEAD FINISH"};
      if (!kNarrower.contains(form)) CHECK(named.front()->word == mark.word);
      ++seen;
    }
  }
  CHECK(seen > 150);
}

// "Not known: try it on a hidden place" is an answer; a table full of it is none.
TEST_CASE("three cells of four are known, and every row bites somewhere") {
  std::set<const CareRow*> used;
  std::size_t known = 0;
  for (const Substance& substance : table().substances) {
    for (const CareMethod& method : table().methods) {
      const CareRow* row = find_row(table(), substance, method);
      if (row == nullptr) continue;
      ++known;
      used.insert(row);
    }
  }
  const std::size_t cells = table().substances.size() * table().methods.size();
  CAPTURE(known);
  CAPTURE(cells);
  CHECK(known * 4 >= cells * 3);
  for (const CareRow& row : table().rows) {
    CAPTURE(row.reason);
    CHECK(row.reason.ends_with('.'));
    CHECK_FALSE(row.source.empty());
    // What is usual is read or practised, never only remembered.
    if (row.verdict == CareVerdict::usual) CHECK(row.grounds != CareGrounds::recalled);
    if (row.with.empty() && row.beside.empty()) CHECK(used.count(&row) == 1);
  }
}

TEST_CASE("a method without a row is not known, whatever its neighbours are") {
  const auto words = care_words(table(), "brass with moon dust");
  CHECK(all_words(words.substances) == "brass");
  CHECK(words.methods.empty());
  CHECK(words.left_over == "moon dust");
  CHECK(care_words(table(), "brass").left_over.empty());
  CHECK(verdict("titanium", "tannic-acid") == CareVerdict::not_known);
}

TEST_CASE("the narrowest row counts, and of two the worse") {
  CHECK(verdict("steel", "acid") == kHarms);
  CHECK(verdict("zinc-plate", "acid") == kNever);  // by its word, over "any"
  CHECK(verdict("magnesium", "chlorinated") == kNever);
  CHECK(verdict("silicone", "oil") == kWithCare);  // by its word, over its family's harm
  CHECK(verdict("synthetic-rubber", "oil") == kHarms);
}

TEST_CASE("what the bench says names substances and methods, the longest phrase first") {
  CHECK(all_words(substances_in(table(), "bronze, brass and steel")) == "bronze brass steel");
  CHECK(all_words(substances_in(table(), "nickel silver")) == "nickel-silver");
  CHECK(all_words(substances_in(table(), "ivory, judged by eye")) == "ivory");
  CHECK(all_words(substances_in(table(), "hammered grey enamel, stoved")) == "hammered-enamel");
  CHECK(all_words(substances_in(table(), "moon dust")).empty());
  CHECK(all_words(methods_in(table(), "penetrating oil soak, then light oil")) ==
        "penetrating-oil oil");
  CHECK(all_words(methods_in(table(), "white spirit by brush, dried")) == "white-spirit");
  CHECK(all_words(methods_in(table(), "damp cloth, no ammonia, without metal polish")) ==
        "damp-cloth");
  CHECK(all_words(methods_in(table(), "no water left, then steel wool")) == "steel-wool");
  const CareWords both = care_words(table(), "steel wool on nickel plate");
  CHECK(all_words(both.substances) == "nickel-plate");
  CHECK(all_words(both.methods) == "steel-wool");
}

namespace {

/// A row of the phrases' table; "*" in a cell is not looked at.
struct Phrase {
  std::string text, substances, acts;
};

std::vector<Phrase> phrases() {
  std::vector<Phrase> all;
  std::ifstream in(std::string(WINCHBOOK_SOURCE_DIR) + "/tests/knowledge/data/phrases.csv");
  const auto tell = [](const winchbook::base::Diagnostics& faults) {
    for (const auto& fault : faults)
      FAIL_CHECK(fault.message);
  };
  winchbook::tabular::each_row(
      in, "phrases.csv", {"phrases", {"text", "substances", "acts"}, "text, substances, acts, why"},
      [&](const winchbook::tabular::Header& header, const winchbook::tabular::Row& row) {
        all.push_back({std::string(header.field(row, "text")),
                       std::string(header.field(row, "substances")),
                       std::string(header.field(row, "acts"))});
      },
      tell);
  return all;
}

std::set<std::string> set_of(const std::string& words) {
  std::istringstream in(words);
  return {std::istream_iterator<std::string>(in), {}};
}

}  // namespace

// Written by judgement, not by running the program: what a bench means by what it types.
TEST_CASE("words are matched as words, with what qualifies them") {
  const auto all = phrases();
  CHECK(all.size() >= 200);
  for (const Phrase& one : all) {
    CAPTURE(one.text);
    if (one.substances != "*") CHECK(all_words(substances_in(table(), one.text)) == one.substances);
    if (one.acts == "*") continue;
    std::set<std::string> acts;
    for (const Act* act : acts_in(table(), one.text))
      acts.insert(act->word);
    CHECK(acts == set_of(one.acts));
  }
}

TEST_CASE("a hazard that is misspelt is seen, and a short word is not guessed at") {
  const auto meant = [](const char* text) {
    const Substance* found = meant_in(table(), text);
    return found == nullptr ? std::string() : found->word;
  };
  CHECK(meant("abestos lining") == "asbestos");
  CHECK(meant("asbestus") == "asbestos");
  CHECK(meant("celuloid") == "celluloid");
  CHECK(meant("tortoiseshel") == "tortoiseshell");
  CHECK(meant("asbestos").empty());  // known: nothing else is meant
  CHECK(meant("Elfenbein").empty());
  CHECK(meant("bras").empty());  // too short to tell from another word
}

TEST_CASE("a table that points nowhere is refused with its place") {
  struct Fault {
    const char* from;
    const char* to;
    const char* says;
  };
  constexpr std::array kFaults{
      Fault{"<row on=\"paper\"", "<row on=\"papyrus\"", "the care table has no \"papyrus\""},
      Fault{"methods=\"dry-brush", "methods=\"feather", "the care table has no \"feather\""},
      Fault{"also=\"gilding metal\"", "also=\"gilding metal, copper\"",
            "\"COPPER\" is the name of another row already"}};
  for (const Fault& fault : kFaults) {
    const auto loaded =
        load_care({PatchedFiles("care.xml", fault.from, fault.to), WINCHBOOK_SOURCE_DIR});
    REQUIRE_FALSE(loaded);
    CHECK(loaded.faults().front().message == fault.says);
    CHECK(loaded.faults().front().rule == "care-word");
    CHECK(loaded.faults().front().where.line > 0);
  }
}
