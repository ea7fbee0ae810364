#include <doctest/doctest.h>

#include <string>

#include "base/files.h"
#include "knowledge/care.h"
#include "told_reel.h"

using namespace winchbook;
using document::Document;
using record::Record;
using report_test::bytes_of;
using report_test::chapter;
using report_test::told;
using report_test::words_of;

namespace {

const knowledge::CareTable& table() {
  static const auto kLoaded = knowledge::load_care({base::RealFiles(), WINCHBOOK_SOURCE_DIR});
  REQUIRE(kLoaded);
  return *kLoaded;
}

record::Words said(const char* text) {
  return {{record::Plain{text}}};
}

/// The chapter of the keepsake, in words.
std::string keepsake(const Record& record, const char* id) {
  const Document document = told(record);
  const document::Chapter* one = chapter(document, id);
  return one == nullptr ? "" : words_of(*one);
}

/// The whole collector statement, in words.
std::string statement(const Record& record) {
  const Document document =
      told(record, bytes_of("report-templates/collector-statement.xml"),
           {"collector-statement", 1, {2026, 6, 19}, "7777 7777 7777", std::string(64, 'a')});
  std::string all;
  for (const document::Chapter& one : document.chapters)
    all += words_of(one);
  return all;
}

bool says(const std::string& text, const char* words) {
  return text.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("every flag and every caution of the table has its words") {
  const auto messages = report_test::british().messages;
  const auto must_have = [&](const std::string& key) {
    CHECK_MESSAGE(messages.contains(key), "no message ", key);
  };
  using Says = knowledge::FlagTrigger::Says;
  for (const knowledge::FlagRule& rule : table().flags) {
    const std::string flag = "flag." + rule.word + ".";
    for (const char* part : {"name", "do", "short"})
      must_have(flag + part);
    if (rule.law_date) must_have(flag + "law");
    for (const knowledge::FlagTrigger& trigger : rule.triggers) {
      must_have(flag + (trigger.says == Says::is       ? "is"
                        : trigger.says == Says::may_be ? "may-be"
                                                       : "not-looked-for"));
    }
  }
  for (const char* word : {"springs"})
    must_have("caution." + std::string(word) + ".words");
  for (const knowledge::Act& act : table().acts) {
    if (act.caution.empty()) continue;
    must_have("caution." + act.caution + ".label");
    must_have("caution." + act.caution + ".words");
  }
  must_have("caution.defer");
  must_have("flag.excluded");
  for (const knowledge::CareMethod& method : table().methods) {
    if (method.caution.empty()) continue;
    must_have("caution." + method.caution + ".label");
    must_have("caution." + method.caution + ".words");
  }
}

TEST_CASE("the chapter on care follows from what was decided") {
  Record record = report_test::demo("skerry-40");
  const std::string fished = keepsake(record, "care");
  CHECK(says(fished, "After every use"));
  CHECK(says(fished, "the handle feels gritty, the drag snatches or slips or the click stops"));
  record.reel.kind = record::ReelKind::fly_reel;
  CHECK(says(keepsake(record, "care"), "the drag snatches or slips or the check stops"));
  record.visits.back().advice->chosen = record::Course::keep_as_found;
  const std::string kept = keepsake(record, "care");
  CHECK(says(kept, "On its shelf"));
  CHECK(says(kept, "A bench should look at it by"));
  CHECK(says(kept, "the rubber smells of sulphur"));
  CHECK_FALSE(says(kept, "gritty"));
}

TEST_CASE("a cleaning against the table tells its reason; that there is none is no page's matter") {
  Record record = report_test::demo("dunlin-2");
  record::Cleaning& cleaning = record.visits.back().cleaning.back();
  CHECK_FALSE(says(keepsake(record, "account"), "speaks against this"));
  cleaning.method = "hot water";
  CHECK_FALSE(says(keepsake(record, "account"), "speaks against this"));
  CHECK_FALSE(says(statement(record), "speaks against this"));
  cleaning.against_warning = said("The owner wrote that it must shine.");
  for (const std::string& text : {keepsake(record, "account"), statement(record)}) {
    CHECK_FALSE(says(text, "speaks against this"));
    CHECK(says(text, "because: The owner wrote that it must shine."));
  }
}

TEST_CASE("a cleaning without a caution gets the one that its method asks for") {
  Record record = report_test::demo("dunlin-2");
  record::Cleaning& cleaning = record.visits.back().cleaning.front();
  cleaning.caution.reset();
  cleaning.method = "white spirit by brush";
  CHECK(says(keepsake(record, "account"), "Flammable: fresh air"));
  CHECK(says(statement(record), "Flammable: fresh air"));
  cleaning.caution = record::Caution{"Own", said("The bench's words.")};
  CHECK_FALSE(says(keepsake(record, "account"), "Flammable: fresh air"));
}

TEST_CASE("asbestos is never said not to be there, whatever the bench writes") {
  Record record = report_test::demo("skerry-40");
  CHECK(says(statement(record), "The old cork washers are not tested"));
  record.visits.back().findings.flags.front().what = said("None.");
  CHECK(says(statement(record), "No laboratory report is entered."));
  CHECK(says(keepsake(record, "second-ledger"), "No laboratory report is entered."));
  record.visits.back().findings.flags.clear();
  CHECK(says(statement(record), "Not tested: "));
  record.places.clear();
  record.fittings.clear();
  for (record::Piece& piece : record.pieces)
    piece.name = "Part";
  CHECK(says(statement(record), "Nothing is entered of the washers"));
}

TEST_CASE("a load limit stands beside what was not tested") {
  Record record = report_test::demo("dunlin-2");
  REQUIRE_FALSE(record.visits.back().findings.tests.empty());
  record::TestResult& after = record.visits.back().findings.tests.front().after;
  after = {};
  after.kind = record::TestResult::Kind::not_safe_to_test;
  CHECK(says(keepsake(record, "account"), "not safe to test"));
  CHECK_FALSE(says(keepsake(record, "account"), "never over"));
  after.load_limit = base::Newtons{base::Decimal(20, 0)};
  CHECK(says(keepsake(record, "account"), "not safe to test; never over 20"));
  CHECK(says(statement(record), "not safe to test; never over 20"));
}
