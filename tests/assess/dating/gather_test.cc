#include "assess/dating/gather.h"

#include <doctest/doctest.h>

#include "assess/reel_on_bench.h"
#include "base/files.h"
#include "evidence_on_bench.h"
#include "recordfile/record_file.h"

using namespace winchbook::dating_test;  // NOLINT: the words of these tests
using winchbook::bench_test::shipped;
using winchbook::record::Legibility;
using winchbook::record::Marking;
using winchbook::record::MarkOf;
using winchbook::record::MarkSays;

namespace {

struct Marked : Case {
  Marking& mark(const std::string& text, MarkOf whose = MarkOf::maker) {
    if (record.pieces.empty()) piece("plate");
    Marking one;
    one.id = {"mark-" + std::to_string(record.markings.size() + 1)};
    one.piece = {"plate"};
    one.text = text;
    one.whose = whose;
    record.markings.push_back(one);
    return record.markings.back();
  }

  [[nodiscard]] Finding found() const { return assess(record, shipped()); }
};

MarkSays says(const char* first, const char* last, EndFirmness firmness) {
  MarkSays out;
  if (first != nullptr) out.not_before = winchbook::record::MarkEnd{date(first), firmness};
  if (last != nullptr) out.not_after = winchbook::record::MarkEnd{date(last), firmness};
  return out;
}

winchbook::record::Record demo(const std::string& name) {
  const winchbook::base::RealFiles files;
  const std::filesystem::path root = WINCHBOOK_SOURCE_DIR;
  auto loaded = winchbook::recordfile::read(files, root / "demo/reels" / name, root / "schemas");
  REQUIRE(bool(loaded));
  return loaded->record;
}

}  // namespace

// US utility patents: 2,142,080 is the first of 1939 and 2,185,170 the first of 1940 (table of the
// patent office; the Official Gazette's ranges for December 1939 and January 1940 end and begin
// there).
TEST_CASE("a number that the bench has not read is read by the tables") {
  Marked last_of_1939;
  last_of_1939.mark("PAT. 2,185,169");
  CHECK(last_of_1939.found().window.not_before->day == Day{1939, 1, 1});
  Marked first_of_1940;
  first_of_1940.mark("PAT. 2,185,170");
  const Finding finding = first_of_1940.found();
  CHECK(finding.window.not_before->day.year == 1940);
  CHECK(finding.window.not_before->firmness == EndFirmness::hard);
  CHECK(finding.evidence[0].not_before->basis == Basis::table);
}

TEST_CASE("the bench overrules the tables, and a firm end that it passes is a doubt") {
  Marked agreeing;
  agreeing.mark("PAT. 2,185,170").says = says("1946", nullptr, EndFirmness::soft);
  CHECK(agreeing.found().window.not_before->day.year == 1946);
  CHECK_FALSE(warns(agreeing.found(), Warning::Kind::bench_against_table));
  Marked against;
  against.mark("PAT. 2,185,170").says = says("1935", "1938", EndFirmness::soft);
  const Finding finding = against.found();
  CHECK(text(finding.window.days()) == "1935-01-01/1938-12-31");
  CHECK(finding.evidence[0].not_before->basis == Basis::bench);
  CHECK(warns(finding, Warning::Kind::bench_against_table));
}

TEST_CASE("a hard end that is read in part, or not dated to the day, is soft") {
  Marked worn;
  worn.mark("PAT. 2,185,170").legibility = Legibility::in_part;
  CHECK(worn.found().window.not_before->firmness == EndFirmness::soft);
  CHECK(warns(worn.found(), Warning::Kind::made_soft_in_part));
  for (const char* unsure : {"1940~", "1940?", "1940-21"}) {
    Marked one;
    one.mark("X").says = says(unsure, nullptr, EndFirmness::hard);
    CHECK(one.found().window.not_before->firmness == EndFirmness::soft);
    CHECK(warns(one.found(), Warning::Kind::made_soft_uncertain));
  }
}

TEST_CASE("what cannot be is told and gives no year") {
  for (const char* impossible :
       {"PATENTED FEB. 30, 1912", "PAT. 99,999,999", "PATENTED JULY 4, 1711"}) {
    CAPTURE(impossible);
    Marked one;
    one.mark(impossible);
    const Finding finding = one.found();
    CHECK(warns(finding, Warning::Kind::table));
    CHECK_FALSE(finding.window.not_before.has_value());
  }
}

TEST_CASE("an end without a day on its side binds nothing, unknown and open alike") {
  for (const char* without : {"../1940", "/1940"}) {
    Marked one;
    one.mark("X").says = says(without, nullptr, EndFirmness::hard);
    CHECK_FALSE(one.found().window.not_before.has_value());
    CHECK(warns(one.found(), Warning::Kind::end_without_day));
  }
}

TEST_CASE("an engraved date is soft until its cutting is recorded as certain") {
  Marked one;
  one.mark("A. B. 1948", MarkOf::owner).claims = date("1948");
  CHECK(one.found().window.not_after->firmness == EndFirmness::soft);
  winchbook::record::LifeEvent event;
  event.kind = winchbook::record::LifeEventKind::engraving;
  event.pieces = {{"plate"}};
  event.date = date("1948");
  event.certainty = winchbook::record::Certainty::certain;
  event.source = "the engraver's day book";
  one.record.life.push_back(event);
  CHECK(one.found().window.not_after->firmness == EndFirmness::hard);
}

TEST_CASE("whoever had it first, had it by then") {
  Marked one;
  winchbook::record::CustodyStep step;
  step.from = date("1948");
  one.record.custody.emplace_back(step);
  const Finding finding = one.found();
  CHECK(text(finding.window.days()) == "../1948-12-31");
  CHECK(finding.attributed);
}

TEST_CASE("materials speak of their piece") {
  Marked one;
  one.piece("spool").material = "acetal";
  const Finding finding = one.found();
  REQUIRE(finding.window.not_before);
  CHECK(finding.window.not_before->day.year == 1960);
  CHECK(finding.attributed);
}

TEST_CASE("the demo's reels date as their stories say") {
  const Finding ferry = assess(demo("skerry-40"), shipped());
  CHECK(text(ferry.window.days()) == "1947-01-01/1948-12-31");
  CHECK(ferry.conflicts.empty());
  CHECK(ferry.range50 == YearRange{1947, 1948});

  const Finding waterman = assess(demo("wharfinger-5"), shipped());
  CHECK(text(waterman.window.days()) == "1895-01-01/1903-12-31");
  CHECK(waterman.window.not_before->firmness == EndFirmness::hard);
  CHECK(warns(waterman, Warning::Kind::soft_gives_way));  // the engraved 1871

  const Finding pier = assess(demo("sandling-tern"), shipped());
  REQUIRE(pier.suspects.size() == 1);
  CHECK(pier.suspects[0].piece.text == "side-cover");
  CHECK(pier.suspects[0].tier == Tier::hard);
  CHECK(pier.range90 == YearRange{1958, 1958});
}
