#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "base/files.h"
#include "knowledge/care.h"
#include "knowledge/knowledge.h"
#include "told_reel.h"

// What the care table, the parts lists, the flags, the cautions and the cards advise must not
// contradict each other: each is crossed here with the others.

using namespace winchbook;
using namespace winchbook::knowledge;

namespace {

const CareTable& table() {
  static const auto kLoaded = load_care({base::RealFiles(), WINCHBOOK_SOURCE_DIR});
  REQUIRE(kLoaded);
  return *kLoaded;
}

const words::Messages& messages() {
  static const auto kBritish = report_test::british();
  return kBritish.messages;
}

constexpr const char* kForbids[] = {
    " never ", " Never ",      " not ",     " no ",       " No ",     " nor ",
    " none ",  " None ",       " without ", " keep off ", " from ",   " away ",
    " burns ", " instead of ", " turn ",    " smell ",    " swells ", " wash your hands"};

std::vector<const Substance*> substances_of(const std::vector<std::string>& words) {
  std::vector<const Substance*> all;
  for (const Substance& one : table().substances) {
    if (names(words, one)) all.push_back(&one);
  }
  return all;
}

bool is_advised_against(const Substance& substance, const CareMethod& method) {
  const CareRow* row = find_row(table(), substance, method);
  return row != nullptr && row->verdict >= CareVerdict::harms;
}

/// The clauses of a text that advise: those that deny or forbid nothing.
std::string advising(const std::string& text) {
  std::string all;
  for (std::size_t begin = 0; begin < text.size();) {
    const std::size_t end = std::min(text.find_first_of(".;:", begin), text.size());
    const std::string clause = " " + text.substr(begin, end - begin) + " ";
    const bool forbids =
        std::any_of(std::begin(kForbids), std::end(kForbids),
                    [&](const char* word) { return clause.find(word) != std::string::npos; });
    if (!forbids) all += clause + ". ";
    begin = end + 1;
  }
  return all;
}

/// No method that a sentence advises may harm what the sentence is about.
void check_advice(const std::string& where, const std::string& text,
                  const std::vector<const Substance*>& about,
                  const std::vector<std::string>& not_these = {}) {
  for (const CareMethod* method : methods_in(table(), advising(text))) {
    if (std::find(not_these.begin(), not_these.end(), method->word) != not_these.end()) continue;
    for (const Substance* substance : about) {
      CHECK_MESSAGE(!is_advised_against(*substance, *method), where, " names ", method->word,
                    " on ", substance->word, ": ", text);
    }
  }
}

constexpr const char* kKinds[] = {"multiplier",  "baitcaster",  "fixed-spool",
                                  "closed-face", "centrepin",   "sidecast",
                                  "fly-reel",    "plain-winch", "wooden-reel"};

}  // namespace

TEST_CASE("work that makes dust of what no eye can tell is advised nowhere") {
  for (const FlagRule& rule : table().flags) {
    if (!rule.forbids_dust) continue;
    for (const FlagTrigger& trigger : rule.triggers) {
      if (trigger.says != FlagTrigger::Says::is) continue;
      for (const Substance* substance : substances_of(trigger.of)) {
        for (const CareMethod& method : table().methods) {
          if (!method.dust) continue;
          CHECK_MESSAGE(is_advised_against(*substance, method), rule.word, ": ", substance->word,
                        " and ", method.word);
        }
      }
    }
  }
}

TEST_CASE("no flag advises a method that harms what it is about") {
  for (const FlagRule& rule : table().flags) {
    std::vector<const Substance*> about;
    for (const FlagTrigger& trigger : rule.triggers) {
      for (const Substance* one : substances_of(trigger.of))
        about.push_back(one);
    }
    for (const char* part : {".do", ".short"}) {
      const auto text = messages().find("flag." + rule.word + part);
      if (text != messages().end()) check_advice(text->first, text->second, about);
    }
  }
}

TEST_CASE("no row advises another method that harms the same material") {
  for (const CareRow& row : table().rows) {
    // What it warns of may be named; what a usual or careful row names is advised.
    if (row.verdict >= CareVerdict::harms) continue;
    std::vector<const Substance*> about;
    for (const Substance* one : substances_of(row.on)) {
      const bool speaks = std::any_of(
          table().methods.begin(), table().methods.end(),
          [&](const CareMethod& method) { return find_row(table(), *one, method) == &row; });
      if (speaks) about.push_back(one);
    }
    check_advice("a row", row.reason, about, row.methods);
  }
}

TEST_CASE("a dog is light enough to fall, and a knob is not oiled, in every list") {
  const base::RealFiles files;
  int dogs = 0;
  for (const char* kind : kKinds) {
    CAPTURE(kind);
    const auto knowledge = load({files, WINCHBOOK_SOURCE_DIR}, kind);
    REQUIRE(knowledge);
    for (const PartsEntry& one : parts_list(*knowledge, kind)->places) {
      CAPTURE(one.word);
      if (one.word == "dog") {
        CHECK(one.lubricant == Lubricant::oil);
        ++dogs;
      }
      // Oil harms celluloid, casein, wood and hard rubber, of which knobs are made.
      const bool knob = one.word == "knob" || one.word.ends_with("-knob");
      if (knob) CHECK(one.lubricant == Lubricant::none);
    }
  }
  CHECK(dogs >= 4);
}

TEST_CASE("what is brushed on a card is brushed in the table") {
  for (const std::string key : {"care-card.keeping-is", "care-card.after-fishing-is"}) {
    const auto text = messages().find(key);
    REQUIRE(text != messages().end());
    for (const CareMethod* method : methods_in(table(), advising(text->second))) {
      for (const char* family :
           {"copper-alloy", "iron", "light-alloy", "plate", "hard-rubber", "nitrate", "wood"}) {
        for (const Substance* one : substances_of({family})) {
          // What is ill is not cared for by a card.
          if (one->word == "bronze-disease" || one->word == "lifting-plate") continue;
          CHECK_MESSAGE(!is_advised_against(*one, *method), key, ": ", method->word, " on ",
                        one->word);
        }
      }
    }
  }
}

TEST_CASE("a bath has a longest time and a greatest warmth, never a least") {
  const CareMethod* bath = find_method(table(), "ultrasonic");
  REQUIRE(bath != nullptr);
  CHECK(bath->most_minutes > 0);
  for (const CareRow& row : table().rows) {
    if (row.most_minutes == 0) continue;
    CAPTURE(row.reason);
    CHECK(row.most_minutes <= bath->most_minutes);
    CHECK(row.verdict < CareVerdict::harms);
  }
}

TEST_CASE("no test of a drag goes on until it is hard down") {
  for (const auto& message : messages()) {
    CAPTURE(message.first);
    CHECK(message.second.find("to hard down") == std::string::npos);
  }
}
