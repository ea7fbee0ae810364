#include <doctest/doctest.h>
#include <fmt/format.h>

#include <array>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <string>
#include <utility>

#include "answers/advise.h"
#include "answers/date.h"
#include "answers/grade.h"
#include "app/design.h"
#include "app/weigh.h"
#include "assess/fitting/recorded.h"
#include "assess/reel_on_bench.h"
#include "record/enum_words.h"
#include "report/write.h"

namespace winchbook::app {
namespace {

using Json = nlohmann::json;
using Facts = std::map<std::string, std::string>;

constexpr std::array<const char*, 8> kDocuments{
    "keepsake",          "collector-statement", "value-statement", "intake-receipt",
    "hand-back-receipt", "bench-sheet",         "care-card",       "labels"};

library::Library& library_of_tests() {
  static base::RealFiles files;
  static library::Library library({files, WINCHBOOK_SOURCE_DIR, "test"});
  return library;
}

const base::Day kToday{2026, 12, 1};

// ---- what the answers in JSON say, in the form in which pages carry their facts

std::string text_of(const Json& json) {
  return json.is_null() ? "" : json.get<std::string>();
}

std::string range_of(const Json& range) {
  if (range.is_null()) return "none";
  return fmt::format("{:.2f}-{:.2f}", range[0].get<double>(), range[1].get<double>());
}

void add_identity(const Json& reel, Facts& facts) {
  const std::string how = reel["maker_is"];
  facts["identity:name"] = reel["name"];
  facts["identity:maker"] = how == "not-known" ? how : how + " " + text_of(reel["maker"]);
  facts["identity:model"] = text_of(reel["model"]);
  facts["identity:serial"] = text_of(reel["serial"]);
  facts["identity:reels"] = std::to_string(reel["at_least_reels"].get<int>());
}

void add_condition(const Json& condition, const std::string& when, Facts& facts) {
  for (const char* axis : {"finish_left", "structure", "working", "completeness"}) {
    const Json& word = condition[when][axis]["word"];
    const std::string worst = word[0];
    const std::string best = word[1];
    facts[fmt::format("{}.{}", axis, when)] =
        worst == best ? best : fmt::format("{}-{}", worst, best);
  }
}

void add_grade(const Json& grade, Facts& facts) {
  add_identity(grade["reel"], facts);
  const Json& visit = grade["visits"].back();
  const Json& whose = visit["originality"];
  for (const std::string when : {"found", "left"}) {
    for (const std::string index : {"original", "untouched_surface", "right_for_model"})
      facts[fmt::format("{}.{}", index, when)] = range_of(whose[index][when]);
    const Json& counts = whose["counts"][when];
    facts["counts." + when] =
        fmt::format("{} of {}", counts["original"].get<int>(), counts["seats"].get<int>());
    for (const Json& row : whose["rows"])
      facts[fmt::format("standing.{}.{}", row["number"].get<int>(), when)] = row[when]["standing"];
    add_condition(visit["condition"], when, facts);
  }
  facts["original.restored"] = range_of(whose["way_back"]["original_restored"]);
}

void add_date(const Json& date, Facts& facts) {
  add_identity(date["reel"], facts);
  const auto years = [](const Json& range) {
    if (range.is_null()) return std::string("none");
    return fmt::format("{}/{}", range[0].get<int>(), range[1].get<int>());
  };
  facts["date:window"] = text_of(date["not_before"]) + "/" + text_of(date["not_after"]);
  facts["date:half"] = years(date["range50"]);
  facts["date:nine-tenths"] = years(date["range90"]);
  const Json& made = date["made"];
  if (made.is_null()) return;
  if (!made["settled"].get<bool>()) {
    facts["date:made"] = "none-fits";
  } else if (made["by"] == "bench") {
    facts["date:made"] = "bench " + text_of(made["written"]);
  } else {
    facts["date:made"] = "marks " + text_of(made["not_before"]) + "/" + text_of(made["not_after"]);
  }
}

std::string estimate_of(const Json& estimate, const std::string& currency) {
  if (estimate["range"].is_null()) return "none";
  const auto amount = [](const Json& money) {
    return std::llround(std::stod(money["amount"].get<std::string>()));
  };
  return fmt::format("{}-{} {} {}", amount(estimate["range"][0]), amount(estimate["range"][1]),
                     amount(estimate["middle"]), currency);
}

void add_value(const Json& value, Facts& facts) {
  const std::string currency = value["currency"];
  for (const char* when : {"found", "left"}) {
    if (!value[when].is_null())
      facts[std::string("value:") + when] = estimate_of(value[when], currency);
  }
  for (const Json& one : value["courses"])
    facts["value." + one["course"].get<std::string>()] = estimate_of(one["estimate"], currency);
}

void add_advice(const Json& advice, Facts& facts) {
  const auto course = [](const Json& of) { return of.is_null() ? "none" : of.get<std::string>(); };
  facts["advice:answer"] = course(advice["answer"]);
  facts["advice.runner-up"] = course(advice["runner_up"]);
  facts["advice:chosen"] = course(advice["chosen"]);
}

// ---- the same record, told by every document

/// What only the bench's own words say: no answer reckons it.
bool only_on_pages(const std::string& id) {
  return id == "advice:advised";
}

struct Told {
  answers::Graded graded;
  Weighed weighed;
  Facts answers;
  std::size_t documents = 0;
  std::size_t compared = 0;
};

Told asked(const record::Record& record) {
  library::Library& library = library_of_tests();
  Told told;
  told.graded.loaded.record = record;
  const auto known = library.knowledge(record::word_of(record.reel.kind));
  REQUIRE(known);
  told.graded.knowledge = *known;
  told.graded.assessment = assess::assess(record, **known);
  answers::ValueRequest request;
  request.today = kToday;
  request.terms.currency.code = "GBP";
  auto weighed = weigh(library, request, true, told.graded.loaded, told.graded.assessment);
  REQUIRE(weighed);
  told.weighed = std::move(weighed).value();
  add_grade(Json::parse(answers::grade_as_json(told.graded)), told.answers);
  Facts of_date;
  add_date(Json::parse(answers::date_as_json(told.graded)), of_date);
  for (const auto& [id, value] : of_date) {
    CHECK(told.answers.try_emplace(id, value).first->second == value);
  }
  auto valued = answers::value(library, request, told.graded.loaded, told.graded.assessment);
  REQUIRE(valued);
  add_value(Json::parse(answers::value_as_json(*valued)), told.answers);
  const auto advised = answers::advise(std::move(valued).value(), told.graded.assessment, {});
  REQUIRE(advised);
  add_advice(Json::parse(answers::advice_as_json(*advised)), told.answers);
  return told;
}

const Design& design_of(const std::string& document) {
  static std::map<std::string, Design> designs;
  const auto known = designs.find(document);
  if (known != designs.end()) return known->second;
  auto design = read_design(library_of_tests(), {document, {}, "a4", "en-GB"});
  REQUIRE(design);
  return designs.emplace(document, std::move(design).value()).first->second;
}

/// Writes every document, and holds each fact to what was told of it before and to the answers.
void compare(Told& told) {
  const record::Record& record = told.graded.loaded.record;
  const record::Visit* visit = record::last_visit(record);
  REQUIRE(visit != nullptr);
  const auto drag = library_of_tests().drag();
  REQUIRE(drag);
  const auto recorded = assess::fitting::recorded(record, *visit, **drag);
  Facts on_pages;
  for (const std::string document : kDocuments) {
    CAPTURE(document);
    const Design& design = design_of(document);
    const report::Edition edition{document, 1, kToday, "7777 7777 7777", std::string(64, 'a')};
    const auto written = report::write({record,
                                        told.graded.assessment,
                                        design.chapters,
                                        design.words,
                                        edition,
                                        {},
                                        told.weighed.worth ? &*told.weighed.worth : nullptr,
                                        told.weighed.courses ? &*told.weighed.courses : nullptr,
                                        &recorded});
    REQUIRE(written);
    ++told.documents;
    for (const document::Fact& fact : document::facts(*written)) {
      CAPTURE(fact.id);
      CHECK(on_pages.try_emplace(fact.id, fact.value).first->second == fact.value);
      if (only_on_pages(fact.id)) continue;
      const auto answer = told.answers.find(fact.id);
      REQUIRE(answer != told.answers.end());
      CHECK(answer->second == fact.value);
      ++told.compared;
    }
    // A reel put together from several is nowhere told as one: not in a title, not at a foot.
    const bool says_so = written->title.find("assembled from ") != std::string::npos &&
                         written->folio.name.find("assembled from ") != std::string::npos;
    CHECK(says_so == told.graded.assessment.identity.assembled());
  }
}

record::Record demo(const std::string& reel) {
  const auto loaded = library_of_tests().record(WINCHBOOK_SOURCE_DIR "/demo/reels/" + reel);
  CAPTURE(reel);
  REQUIRE(loaded);
  return loaded->record;
}

// ---- made-up reels

/// Anything that can befall a reel, and a bench that knows more or less of it.
record::Record any_record(unsigned seed) {
  bench_test::Dice dice(seed + 5000);
  record::Record record = bench_test::any_reel(seed).record;
  record.language = "en-GB";
  record.bench.name = "The Lantern Bench";
  record::Reel& reel = record.reel;
  reel.kind = static_cast<record::ReelKind>(dice.below(9));
  reel.name = "The reel of " + std::to_string(seed);
  if (dice.one_in(2)) reel.model = "No. " + std::to_string(dice.below(90));
  if (dice.one_in(3)) reel.serial = "H " + std::to_string(dice.below(9000));
  reel.maker.kind = static_cast<record::MakerStatement::Kind>(dice.below(3));
  if (!dice.one_in(4)) reel.maker.name = "Harroway Reel Co.";
  if (dice.one_in(2)) reel.maker.place = "Port Ellery";
  for (int i = 0; i < 3; ++i)
    record.donors.emplace_back().id = {"d" + std::to_string(i)};
  if (dice.one_in(2)) {
    reel.made.emplace();
    reel.made->date = bench_test::date(dice.one_in(2) ? "1947/1948" : "1936~");
    reel.made->certainty = static_cast<record::Certainty>(dice.below(3));
  }
  const int marks = dice.below(4);
  for (int i = 0; i < marks && !record.pieces.empty(); ++i) {
    record::Marking mark;
    mark.id = {"mk-" + std::to_string(i)};
    mark.piece =
        record.pieces[static_cast<std::size_t>(dice.below(static_cast<int>(record.pieces.size())))]
            .id;
    mark.text = std::string("No. ") + std::to_string(i);
    record::MarkSays says;
    const int year = 1930 + dice.below(30);
    if (!dice.one_in(3))
      says.not_before = record::MarkEnd{bench_test::date(std::to_string(year).c_str()),
                                        static_cast<record::EndFirmness>(dice.below(2))};
    if (!dice.one_in(3))
      says.not_after =
          record::MarkEnd{bench_test::date(std::to_string(year + dice.below(12)).c_str()),
                          static_cast<record::EndFirmness>(dice.below(2))};
    mark.says = says;
    record.markings.push_back(std::move(mark));
  }
  record::Visit& visit = record.visits.back();
  const int faults = dice.below(3);
  for (int i = 0; i < faults; ++i) {
    record::Fault fault;
    fault.id = {"fault-" + std::to_string(i)};
    fault.name = "a crack";
    fault.found = static_cast<record::Severity>(dice.below(3));
    if (dice.one_in(2)) fault.as_left = record::FaultLeft::put_right;
    visit.findings.faults.push_back(std::move(fault));
  }
  if (dice.one_in(3)) visit.hand_back.reset();
  if (dice.one_in(3)) {
    record::Visit later = visit;
    later.id = {"later"};
    later.taken_in = bench_test::date("2026-09-03");
    later.hand_back.reset();
    record.visits.push_back(std::move(later));
  }
  return record;
}

}  // namespace

TEST_CASE("every document and every answer of a demo reel tell each fact alike") {
  for (const char* reel : {"skerry-40", "dunlin-2", "sandling-tern", "wharfinger-5"}) {
    CAPTURE(reel);
    Told told = asked(demo(reel));
    compare(told);
    CHECK(told.documents == kDocuments.size());
    CHECK(told.compared > 40);  // a page that forgets its facts would compare nothing
  }
}

TEST_CASE("a reel made of two is so in every title, and one with a donor's screw is not") {
  CHECK(asked(demo("sandling-tern")).graded.assessment.identity.reels == 2);
  CHECK(asked(demo("skerry-40")).graded.assessment.identity.reels == 1);
}

TEST_CASE("every document and every answer of a made-up reel tell each fact alike") {
  std::size_t assembled = 0;
  std::size_t dated = 0;
  std::size_t undated = 0;
  for (unsigned seed = 0; seed < 100; ++seed) {
    CAPTURE(seed);
    Told told = asked(any_record(seed));
    compare(told);
    const assess::Identity& reel = told.graded.assessment.identity;
    assembled += reel.assembled() ? 1 : 0;
    (reel.made.by == assess::Made::By::nobody ? undated : dated) += 1;
  }
  // The dice reach each kind.
  CHECK(assembled > 5);
  CHECK(dated > 20);
  CHECK(undated > 10);
}

}  // namespace winchbook::app
