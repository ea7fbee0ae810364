#include "assess/dating/dating.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <chrono>

#include "evidence_on_bench.h"

using namespace winchbook::dating_test;  // NOLINT: the words of these tests
using winchbook::record::Legibility;
using winchbook::record::OfThisReel;
using winchbook::record::PieceId;

namespace {

std::vector<std::string> names(const std::vector<PieceId>& pieces) {
  std::vector<std::string> out;
  for (const PieceId& piece : pieces)
    out.push_back(piece.text);
  return out;
}

using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("hard and soft ends meet, and each end says what it is") {
  Case one;
  one.piece("plate");
  one.piece("foot");
  one.says("plate", "1940-01-02/1957-01-02", EndFirmness::hard, EndFirmness::soft);
  one.softly("foot", "1947/1949");
  const Finding finding = one.weighed();
  CHECK(text(finding.window.days()) == "1947-01-01/1949-12-31");
  CHECK(finding.window.not_before->firmness == EndFirmness::soft);
  CHECK(finding.window.not_before->evidence == 1);
  CHECK(finding.conflicts.empty());
  CHECK_FALSE(finding.attributed);
  REQUIRE(finding.steps.size() == 4);
  CHECK(finding.steps[0].evidence == 0);
  CHECK(finding.steps[0].tier == Tier::hard);
  CHECK(text(finding.steps[0].after) == "1940-01-02/..");
  CHECK(text(finding.steps.back().after) == "1947-01-01/1949-12-31");
  CHECK(finding.range50.has_value());
}

TEST_CASE("no evidence, no year") {
  Case one;
  one.piece("plate");
  const Finding finding = one.weighed();
  CHECK_FALSE(finding.window.not_before.has_value());
  CHECK_FALSE(finding.window.not_after.has_value());
  CHECK(finding.attributed);
  CHECK(finding.profile.empty());
  CHECK_FALSE(finding.range50.has_value());
}

TEST_CASE("what is not original says nothing of the reel, and the reason is kept") {
  Case one;
  one.piece("plate");
  one.piece("spool", OfThisReel::no);
  one.piece("screw").made_by.answer = winchbook::record::MadeBy::bench;
  one.piece("knob").donor = winchbook::record::DonorId{"another"};
  one.piece("box").role = winchbook::record::PieceRole::content;
  one.says("plate", "1930/1940");
  for (const char* other : {"spool", "screw", "knob", "box"})
    one.says(other, "1962/1970");
  const Finding finding = one.weighed();
  CHECK(text(finding.window.days()) == "1930-01-01/1940-12-31");
  CHECK(finding.conflicts.empty());
  CHECK(finding.uses[1].left_out == LeftOut::not_of_this_reel);
  CHECK(finding.uses[2].left_out == LeftOut::made_at_bench);
  CHECK(finding.uses[3].left_out == LeftOut::from_donor);
  CHECK(finding.uses[4].left_out == LeftOut::content);
  CHECK(text(finding.pieces[1].all) == "1962-01-01/1970-12-31");
}

TEST_CASE("a piece about which the record is not sure counts") {
  Case one;
  one.piece("plate", OfThisReel::not_determined);
  one.says("plate", "1930/1940");
  CHECK(text(one.weighed().window.days()) == "1930-01-01/1940-12-31");
}

TEST_CASE("five marks on a side plate do not outvote two pieces with one mark each") {
  Case one;
  one.piece("frame");
  one.piece("foot");
  one.piece("side-plate");
  one.says("frame", "1930/1940");
  one.says("foot", "1935/1938");
  for (int i = 0; i < 5; ++i)
    one.says("side-plate", "1950/1955");
  const Finding finding = one.weighed();
  REQUIRE(finding.conflicts.size() == 1);
  CHECK(finding.conflicts[0].tier == Tier::hard);
  CHECK(finding.conflicts[0].pieces == 1);
  REQUIRE(finding.conflicts[0].alternatives.size() == 1);
  CHECK(names(finding.conflicts[0].alternatives[0].must_go) == Names{"side-plate"});
  CHECK(text(finding.window.days()) == "1935-01-01/1938-12-31");
  REQUIRE(finding.suspects.size() == 1);
  CHECK(finding.suspects[0].piece.text == "side-plate");
  CHECK(finding.suspects[0].evidence.size() == 5);
  CHECK_FALSE(finding.suspects[0].one_of_several);
  CHECK_FALSE(finding.suspects[0].already_open);
  CHECK(finding.suspect({"side-plate"}) != nullptr);
  CHECK(finding.suspect({"foot"}) == nullptr);
  CHECK(finding.uses[2].left_out == LeftOut::suspect);
  CHECK(finding.range90 == YearRange{1935, 1938});
}

TEST_CASE("one against one: both are told, no year is, and the window holds both") {
  Case one;
  one.piece("body");
  one.piece("cover");
  one.says("body", "1930/1940");
  one.says("cover", "1950/1955");
  one.softly("body", "1932/1934");
  const Finding finding = one.weighed();
  REQUIRE(finding.conflicts.size() == 1);
  REQUIRE(finding.conflicts[0].alternatives.size() == 2);
  CHECK(names(finding.conflicts[0].alternatives[0].must_go) == Names{"cover"});
  CHECK(names(finding.conflicts[0].alternatives[1].must_go) == Names{"body"});
  CHECK(text(finding.window.days()) == "1930-01-01/1955-12-31");
  CHECK(finding.suspects.size() == 2);
  CHECK(finding.suspects[0].one_of_several);
  CHECK(warns(finding, Warning::Kind::nothing_settles));
  CHECK(finding.profile.empty());
  CHECK_FALSE(finding.range50.has_value());
  CHECK(finding.uses[2].not_before == EndUse::undecided);
}

TEST_CASE("a soft end gives way to a hard one: an engraving can lie") {
  Case one;
  one.piece("plate");
  one.says("plate", "1934-06-01/..");
  one.claims("plate", "../1931");
  one.softly("plate", "../1950");
  const Finding finding = one.weighed();
  CHECK(text(finding.window.days()) == "1934-06-01/1950-12-31");
  CHECK(finding.uses[1].not_after == EndUse::gives_way);
  CHECK(warns(finding, Warning::Kind::soft_gives_way));
  CHECK(finding.suspects.empty());
  CHECK(finding.conflicts.empty());
}

TEST_CASE("a claim gives way to custom on the same piece, and its marks still count") {
  Case one;
  one.piece("foot");
  one.softly("foot", "1947/1949");
  one.claims("foot", "../1930");
  const Finding finding = one.weighed();
  CHECK(text(finding.window.days()) == "1947-01-01/1949-12-31");
  CHECK(finding.uses[1].not_after == EndUse::gives_way);
}

TEST_CASE("soft ends that disagree set the fewest pieces aside; far apart they raise a suspicion") {
  Case one;
  for (const char* piece : {"frame", "foot", "cover"})
    one.piece(piece);
  one.softly("frame", "1930/1940");
  one.softly("foot", "1932/1939");
  Case near = one;
  one.softly("cover", "1962/1970");
  near.softly("cover", "1945/..");
  const Finding far_apart = one.weighed();
  CHECK(text(far_apart.window.days()) == "1932-01-01/1939-12-31");
  CHECK(far_apart.uses[2].not_before == EndUse::set_aside);
  REQUIRE(far_apart.suspects.size() == 1);
  CHECK(far_apart.suspects[0].tier == Tier::custom);
  const Finding old_stock = near.weighed();
  CHECK(old_stock.uses[2].not_before == EndUse::set_aside);
  CHECK(old_stock.suspects.empty());
  REQUIRE(old_stock.conflicts.size() == 1);
  CHECK(old_stock.conflicts[0].tier == Tier::custom);
}

TEST_CASE("marks that cannot be read, or whose ends cross, are named and left out") {
  Case one;
  one.piece("plate");
  one.says("plate", "1930/1940");
  one.says("plate", "1960/1970").legibility = Legibility::not_legible;
  Evidence& crossed = one.says("plate", "1950/1960");
  std::swap(crossed.not_before, crossed.not_after);
  const Finding finding = one.weighed();
  CHECK(text(finding.window.days()) == "1930-01-01/1940-12-31");
  CHECK(finding.uses[1].left_out == LeftOut::not_legible);
  CHECK(finding.uses[2].left_out == LeftOut::crossed);
  CHECK(warns(finding, Warning::Kind::crossed_ends));
}

TEST_CASE("a mark younger than the reel's stay on the bench is named and left out") {
  Case one;
  one.piece("plate");
  winchbook::record::Visit visit;
  visit.taken_in = date("2014-05-12");
  one.record.visits.push_back(visit);
  one.says("plate", "1930/..");
  one.says("plate", "2031/..");
  const Finding finding = one.weighed();
  CHECK(text(finding.window.days()) == "1930-01-01/..");
  CHECK(finding.uses[1].left_out == LeftOut::after_arrival);
  CHECK(warns(finding, Warning::Kind::after_arrival));
}

TEST_CASE("a piece whose own marks exclude each other must go") {
  Case one;
  one.piece("plate");
  one.piece("foot");
  one.says("plate", "../1940");
  one.says("plate", "1960/..");
  one.says("foot", "1930/1950");
  const Finding finding = one.weighed();
  REQUIRE(finding.conflicts.size() == 1);
  CHECK(names(finding.conflicts[0].alternatives[0].must_go) == Names{"plate"});
  CHECK(text(finding.window.days()) == "1930-01-01/1950-12-31");
  CHECK(finding.pieces[0].all.empty());
}

TEST_CASE("materials alone attribute a window, and a mark settles it") {
  Case one;
  one.piece("spool");
  Evidence& acetal = one.says("spool", "1960/..", EndFirmness::hard);
  acetal.marking.reset();
  acetal.grounds = Grounds::material;
  CHECK(one.weighed().attributed);
  CHECK(text(one.weighed().window.days()) == "1960-01-01/..");
  CHECK(one.weighed().profile.empty());
  one.softly("spool", "../1970");
  CHECK_FALSE(one.weighed().attributed);
}

TEST_CASE("the year the bench wrote is doubted where no day of it is within") {
  Case one;
  one.piece("plate");
  one.says("plate", "1934/1940");
  one.record.reel.made = winchbook::record::WrittenDate{date("1928/1933"), {}, {}};
  CHECK(warns(one.weighed(), Warning::Kind::written_outside));
  one.record.reel.made = winchbook::record::WrittenDate{date("1928/1934"), {}, {}};
  CHECK_FALSE(warns(one.weighed(), Warning::Kind::written_outside));
}

TEST_CASE("years beyond all reason are carried, never wrapped") {
  Case one;
  one.piece("plate");
  one.says("plate", "Y-100000000000/Y100000000000");
  const Finding finding = one.weighed();
  CHECK(finding.window.not_before->day.year == -100000000000);
  CHECK(finding.profile.empty());
  CHECK(warns(finding, Warning::Kind::too_wide));
}

TEST_CASE("five thousand marks on as many pieces are weighed at once") {
  Case one;
  Dice dice(5);
  for (int i = 0; i < 5000; ++i) {
    const std::string id = "piece-" + std::to_string(i);
    one.piece(id);
    const int first = 1900 + dice.below(60);
    const std::string interval =
        std::to_string(first) + "/" + std::to_string(first + dice.below(30));
    if (i % 2 == 0) {
      one.says(id, interval);
    } else {
      one.softly(id, interval);
    }
  }
  const auto start = std::chrono::steady_clock::now();
  const Finding finding = one.weighed();
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
  CHECK(took.count() < 2.0);
  CHECK(finding.conflicts.size() >= 1);
  CHECK(finding.uses.size() == 5000);
}

TEST_CASE("the order of the evidence changes no answer") {
  Dice dice(23);
  for (int round = 0; round < 300; ++round) {
    Case one;
    const int pieces = 1 + dice.below(5);
    for (int i = 0; i < pieces; ++i)
      one.piece("p" + std::to_string(i));
    const int marks = 1 + dice.below(9);
    for (int i = 0; i < marks; ++i) {
      const DaySpan any = any_span(dice);
      const std::string id = "p" + std::to_string(dice.below(pieces));
      Evidence& mark = dice.below(2) == 0 ? one.says(id, "1900") : one.softly(id, "1900");
      mark.not_before.reset();
      const EndFirmness firmness = mark.not_after->firmness;
      mark.not_after.reset();
      if (any.first) mark.not_before = End{*any.first, firmness, Basis::bench};
      if (any.last) mark.not_after = End{*any.last, firmness, Basis::bench};
    }
    const Finding a = one.weighed();
    std::reverse(one.evidence.begin(), one.evidence.end());
    const Finding b = one.weighed();
    CHECK(text(a.window.days()) == text(b.window.days()));
    CHECK(a.range50 == b.range50);
    CHECK(a.range90 == b.range90);
    REQUIRE(a.conflicts.size() == b.conflicts.size());
    for (std::size_t i = 0; i < a.conflicts.size(); ++i)
      CHECK(a.conflicts[i].pieces == b.conflicts[i].pieces);
    // A window that is told never excludes a hard end that counts.
    if (!a.window.days().empty() && a.range90) {
      for (std::size_t i = 0; i < a.evidence.size(); ++i) {
        const auto& begins = a.evidence[i].not_before;
        if (!begins || begins->firmness != EndFirmness::hard) continue;
        if (a.uses[i].not_before == EndUse::counts) CHECK(begins->day.year <= a.range90->first);
      }
    }
  }
}
