#include "answers/grade.h"

#include <doctest/doctest.h>

#include <nlohmann/json.hpp>
#include <set>
#include <string>

#include "answers/grade_words.h"
#include "answers/told.h"

namespace winchbook::answers {
namespace {

Graded small() {
  static base::RealFiles files;
  static library::Library library({files, WINCHBOOK_SOURCE_DIR, "test"});
  auto graded = grade(library, WINCHBOOK_SOURCE_DIR "/tests/recordfile/records/small.xml");
  REQUIRE(bool(graded));
  return std::move(graded).value();
}

/// Every value of an enumeration up to `last` has a word and a saying of its own.
template <class Enum> void walk(Enum last, const std::string& stem) {
  const words::Catalogue catalogue = shared_words("en-GB");
  std::set<std::string_view> words;
  for (int i = 0; i <= static_cast<int>(last); ++i) {
    const Term one = term(static_cast<Enum>(i));
    CHECK_FALSE(one.word.empty());
    CHECK(catalogue.has(stem + "." + std::string(one.word)));
    CHECK(words.insert(one.word).second);
  }
}

}  // namespace

TEST_CASE("every answer has its word, and the tables stand in the order of their enumerations") {
  using assess::condition::AreaBasis;
  using assess::originality::Reason;
  using assess::originality::Return;
  using assess::originality::Standing;
  walk(Standing::not_determined, "answer.grade.standing");
  walk(Reason::found_at_least_as_left, "answer.grade.reason");
  walk(Return::Outcome::nothing_there, "answer.grade.outcome");
  walk(Return::Because::was_missing, "answer.grade.because");
  walk(AreaBasis::none, "answer.grade.area");
  walk(record::SurfaceState::darkened_on_purpose, "answer.grade.state");
  walk(record::Severity::unsafe, "answer.grade.severity");
  CHECK(term(Standing::not_determined).word == "not-determined");
  CHECK(term(Standing::bench).word == "bench");
  CHECK(term(Reason::made_at_bench).word == "made-at-bench");
  CHECK(term(Reason::brought_by_bench).word == "brought-by-bench");
  CHECK(term(Reason::from_donor).word == "from-donor");
  CHECK(term(Reason::consumable).word == "consumable");
  CHECK(term(Reason::finished_later).word == "finished-later");
  CHECK(term(Reason::found_at_least_as_left).word == "found-at-least-as-left");
  CHECK(term(Return::Outcome::nothing_there).word == "nothing-there");
  CHECK(term(Return::Because::was_missing).word == "was-missing");
  CHECK(term(AreaBasis::none).word == "none");
  CHECK(term(record::SurfaceState::darkened_on_purpose).word == "darkened-on-purpose");
  CHECK(term(record::Severity::unsafe).word == "unsafe");
}

TEST_CASE("points are told without binary fractions") {
  CHECK(points(base::Ratio(1, 3), 1) == "33.3");
  CHECK(points(base::Ratio(2, 3), 2) == "66.67");
  CHECK(points(base::Ratio(-1, 200), 1) == "-0.5");
  CHECK(points(base::Ratio(1, 1), 0) == "100");
  CHECK(points(base::RatioRange{base::Ratio(1, 2), base::Ratio(3, 4)}, 1) == "50.0 to 75.0");
  CHECK(points(base::RatioRange{base::Ratio(1, 2), base::Ratio(1, 2)}, 1) == "50.0");
}

TEST_CASE("the words and the JSON of a grading tell the same figures") {
  const Graded graded = small();
  const std::string words =
      told([&](const words::Catalogue& catalogue) { return grade_told(graded, catalogue); });
  const auto json = nlohmann::json::parse(grade_as_json(graded));
  const auto& originality = graded.assessment.last()->originality;
  CHECK(words.find(graded.loaded.record.reel.name) != std::string::npos);
  CHECK(words.find(points(*originality.original.left, 1)) != std::string::npos);
  const auto& told = json.at("visits").back().at("originality");
  CHECK(told.at("original").at("left").at(0).get<double>() ==
        doctest::Approx(static_cast<double>(originality.original.left->low.rounded(10000)) / 100));
  CHECK(told.at("rows").size() == originality.rows.size());
  CHECK(json.at("reel").at("kind") == "multiplier");
}

TEST_CASE("a record that is not there is told, and nothing is reckoned") {
  base::RealFiles files;
  library::Library library({files, WINCHBOOK_SOURCE_DIR, "test"});
  const auto graded = grade(library, "/nowhere");
  REQUIRE_FALSE(bool(graded));
  CHECK(graded.faults().front().rule == "file-read");
}

}  // namespace winchbook::answers
