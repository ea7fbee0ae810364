// Reads the tables of shared/grading/WORKED-EXAMPLE.md, builds the reel they describe and reckons
// every figure of the page again.

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cstdlib>
#include <fstream>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "assess/assessment.h"
#include "assess/reel_on_bench.h"

namespace winchbook::assess {
namespace {

using bench_test::ReelOnBench;
using record::SurfaceState;
using Row = std::vector<std::string>;
using Table = std::vector<Row>;  ///< without head and rule

std::string page() {
  std::ifstream file(WINCHBOOK_SOURCE_DIR "/shared/grading/WORKED-EXAMPLE.md");
  std::ostringstream text;
  text << file.rdbuf();
  REQUIRE_FALSE(text.str().empty());
  return text.str();
}

std::vector<std::string> split(const std::string& text, const std::string& at) {
  std::vector<std::string> parts;
  std::size_t from = 0;
  for (std::size_t to = text.find(at); to != std::string::npos; to = text.find(at, from)) {
    parts.push_back(text.substr(from, to - from));
    from = to + at.size();
  }
  parts.push_back(text.substr(from));
  return parts;
}

/// The page's table whose head begins with these columns.
Table table(const std::string& text, const std::string& head) {
  const std::size_t at = text.find("\n| " + head);
  REQUIRE_MESSAGE(at != std::string::npos, head);
  Table rows;
  std::istringstream lines(text.substr(at + 1));
  std::string line;
  for (int number = 0; std::getline(lines, line); ++number) {
    if (number < 2) continue;  // head and rule
    if (!line.starts_with("| ")) break;
    rows.push_back(split(line.substr(2, line.size() - 4), " | "));
  }
  REQUIRE_FALSE(rows.empty());
  return rows;
}

bench_test::Surface surface(const std::string& cell) {
  static const std::map<std::string, SurfaceState> kStates{
      {"untouched", SurfaceState::untouched},
      {"cleaned", SurfaceState::cleaned},
      {"worn-through", SurfaceState::worn_through},
      {"polished", SurfaceState::polished}};
  bench_test::Surface shares;
  if (cell == "-") return shares;
  for (const std::string& part : split(cell, ", ")) {
    const auto words = split(part, " ");
    shares.emplace_back(kStates.at(words[0]), std::atoi(words[1].c_str()));
  }
  return shares;
}

void sit_down(ReelOnBench& reel, const Row& row) {
  const std::string& id = row[0];
  const int count = std::atoi(row[1].c_str());
  record::Place& place = reel.place(id, row[2] == "consumable" ? "0" : row[2].c_str(), count);
  place.consumable = row[2] == "consumable";
  if (row[3] != "0") place.exposed_area = {bench_test::decimal(row[3].c_str())};
  if (row[4] == "missing") {
    reel.visit().findings.places.push_back(
        {{id}, {}, record::Filled::empty, record::Filled::yes, {}});
  } else {
    record::Piece& piece = reel.piece(id, count);
    if (row[4] == "not determined") {
      piece.of_this_reel.answer = record::OfThisReel::not_determined;
      piece.made_by.answer = record::MadeBy::not_determined;
    }
    if (row[4] == "of its life") {
      piece.of_this_reel.answer = record::OfThisReel::no;
      piece.made_by.answer = record::MadeBy::owner;
      piece.pattern.answer = record::Pattern::wrong;
    }
    reel.sits(id, id);
    reel.seen(id, surface(row[6]), surface(row[7]));
  }
  const std::string instead = row[4] == "missing" ? "" : id;
  if (row[5] == "off a donor") {
    reel.donor_piece("new " + id, "donor", count);
    reel.fit("new " + id, id, instead);
  } else if (row[5] == "made at the bench") {
    reel.bench_piece("new " + id, count);
    reel.fit("new " + id, id, instead);
  } else {
    REQUIRE(row[5] == "the same");
  }
}

ReelOnBench reel_of(const std::string& text) {
  ReelOnBench reel;
  for (const Row& row : table(text, "place | pieces")) {
    REQUIRE(row.size() == 8);
    sit_down(reel, row);
  }
  record::Fault dent;
  dent.id = {"dent"};
  dent.found = record::Severity::blemish;
  dent.as_left = record::FaultLeft::put_right;
  reel.visit().findings.faults.push_back(dent);
  using record::Verdict;
  const auto test = [&](Verdict before, Verdict after) {
    record::Test one;
    one.before.kind = one.after.kind = record::TestResult::Kind::done;
    one.before.verdict = before;
    one.after.verdict = after;
    reel.visit().findings.tests.push_back(one);
  };
  test(Verdict::as_made, Verdict::as_made);
  test(Verdict::as_made, Verdict::as_made);
  test(Verdict::in_part, Verdict::as_made);
  test(Verdict::not_working, Verdict::with_care);
  for (record::PieceFinding& finding : reel.visit().findings.pieces) {
    if (finding.piece.text != "Pillars") continue;
    finding.found->corroded = {bench_test::decimal("0.5")};
    finding.found->appearance_defects = {bench_test::decimal("0.2")};
  }
  return reel;
}

std::string tenths(std::int64_t steps) {
  return fmt::format("{}{}.{}", steps < 0 ? "-" : "", std::abs(steps) / 10, std::abs(steps) % 10);
}

std::string told(const base::RatioRange& range) {
  const std::string low = tenths(range.low.rounded(1000));
  const std::string high = tenths(range.high.rounded(1000));
  return low == high ? low : low + " to " + high;
}

/// In units of weight, with two decimals: "14.64 to 15.64".
std::string weight(const base::RatioRange& range, int whole) {
  const auto one = [&](base::Ratio share) {
    const std::int64_t hundredths = (share * base::Ratio(whole, 1)).rounded(100);
    return fmt::format("{}.{:02}", hundredths / 100, hundredths % 100);
  };
  return range.exact() ? one(range.low) : one(range.low) + " to " + one(range.high);
}

const std::string& text() {
  static const std::string all = page();
  return all;
}

const VisitAssessment& answer() {
  static const Assessment all = assess(reel_of(text()).record, bench_test::shipped());
  return all.visits.at(0);
}

}  // namespace

TEST_CASE("the worked example: its credits are the program's") {
  std::size_t rows = 0;
  for (const Row& row : table(text(), "state | credit")) {
    CHECK(knowledge::credit(bench_test::shipped().originality.surface, row[0]) ==
          std::atoi(row[1].c_str()));
    ++rows;
  }
  CHECK(rows == bench_test::shipped().originality.surface.size());
}

TEST_CASE("the worked example: its indices come out as printed") {
  const originality::Finding& finding = answer().originality;
  const auto stands = [&](const std::string& figure) {
    CHECK_MESSAGE(text().find("**" + figure + "**") != std::string::npos, figure);
  };
  CHECK(told(*finding.original.found) == "80.0 to 85.0");
  for (const originality::Index* index :
       {&finding.original, &finding.untouched_surface, &finding.right_for_model}) {
    stands(told(*index->found));
    stands(told(*index->left));
  }
  const Table sums = table(text(), "place | as found | as left |\n|---|---|---|\n| Plate");
  CHECK(sums.back()[1] == weight(*finding.untouched_surface.found, 17));
  CHECK(sums.back()[2] == weight(*finding.untouched_surface.left, 17));
  for (const originality::PieceRow& row : finding.rows) {
    for (const Row& sum : sums) {
      if (sum[0] != row.place.text || !row.found.surface_weighed) continue;
      CHECK(sum[1].ends_with(row.found.surface_points.exact() ? weight(row.found.surface_points, 17)
                                                              : "0 to 1.00"));
    }
  }
}

TEST_CASE("the worked example: the change is split as printed") {
  const originality::Finding& finding = answer().originality;
  std::size_t rows = 0;
  const auto check = [&](const std::string& name, const originality::Index& index,
                         const originality::Change& change) {
    std::map<std::string, std::pair<std::string, std::string>> expected;
    for (const auto& share : originality::printed(index, change, 1000)) {
      expected[finding.rows[static_cast<std::size_t>(share.row) - 1].place.text] = {
          tenths(share.low), tenths(share.high)};
    }
    expected["together"] = {
        tenths(index.left->low.rounded(1000) - index.found->low.rounded(1000)),
        tenths(index.left->high.rounded(1000) - index.found->high.rounded(1000))};
    for (const Row& row : table(text(), "index | piece")) {
      if (row[0] != name) continue;
      REQUIRE(expected.count(row[1]) == 1);
      CHECK(expected[row[1]] == std::pair(row[2], row[3]));
      expected.erase(row[1]);
      ++rows;
    }
    CHECK(expected.empty());
  };
  check("original", finding.original, finding.original_change);
  check("surface", finding.untouched_surface, finding.untouched_surface_change);
  check("right for the model", finding.right_for_model, finding.right_for_model_change);
  CHECK(rows == 7);
}

TEST_CASE("the worked example: the way back comes out as printed") {
  const originality::WayBack& way = answer().originality.way_back;
  const Table rows = table(text(), "index | restored");
  CHECK(rows[0][1] == told(*way.original_restored));
  CHECK(rows[1][1] == told(*way.untouched_surface_restored));
  REQUIRE(way.surface_losses.size() == 1);
  const std::string stays =
      told({way.surface_losses[0].lost.at_low, way.surface_losses[0].lost.at_low});
  CHECK(stays == "4.9");
  CHECK(text().find("**" + stays + "**") != std::string::npos);
}

TEST_CASE("the worked example: the axes come out as printed") {
  const knowledge::ConditionRules& rules = bench_test::shipped().condition;
  const condition::Finding& finding = answer().condition;
  const auto words = [](const condition::WordRange& range, const auto& names) {
    const auto one = [&](int number) {
      std::string word = names.at(static_cast<std::size_t>(number)).word;
      std::replace(word.begin(), word.end(), '-', ' ');
      return word;
    };
    return range.best == range.worst ? one(range.best)
                                     : one(range.worst) + " to " + one(range.best);
  };
  const auto check = [&](const Row& row, const auto& found, const auto& left, const auto& names) {
    CHECK(row[1] == words(found.word, names));
    CHECK(row[2] == told(found.position));
    CHECK(row[3] == words(left.word, names));
    CHECK(row[4] == told(left.position));
  };
  const Table rows = table(text(), "axis | as found");
  REQUIRE(rows.size() == 4);
  check(rows[0], finding.found.finish_left, finding.left.finish_left, rules.surface.words);
  check(rows[1], finding.found.structure, finding.left.structure, rules.structure);
  check(rows[2], finding.found.working, finding.left.working, rules.working);
  check(rows[3], finding.found.completeness, finding.left.completeness, rules.completeness.words);
  CHECK(told(*finding.found.finish_left.share) == "86.0 to 89.0");
  CHECK(told(*finding.left.finish_left.share) == "78.5 to 81.5");
  CHECK(finding.found.completeness.filled == 10);
  CHECK(finding.found.completeness.seats == 11);
  REQUIRE(finding.corrosion.size() == 1);
  CHECK(finding.corrosion[0].protection_found == 7);
  CHECK(finding.corrosion[0].appearance_found == 7);
}

}  // namespace winchbook::assess
