#include "knowledge/marks.h"

#include <doctest/doctest.h>

#include <fstream>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "base/files.h"
#include "knowledge/makers.h"
#include "knowledge/patched_files.h"
#include "knowledge/stamp_text.h"

using namespace winchbook;             // NOLINT
using namespace winchbook::knowledge;  // NOLINT

namespace {

const Marks& marks() {
  static const Marks kMarks = [] {
    auto loaded = load_marks({base::RealFiles(), WINCHBOOK_SOURCE_DIR});
    REQUIRE(loaded);
    return std::move(loaded).value();
  }();
  return kMarks;
}

const NumberSeries& series(std::string_view word) {
  const NumberSeries* found = find_series(marks(), word);
  REQUIRE(found != nullptr);
  return *found;
}

/// "1940", "1986 or later", "1908 to 1909", or the fault.
std::string year(std::string_view word, std::int64_t number) {
  const auto years = years_of(series(word), number);
  if (!years) return years.faults().front().message;
  std::string told = std::to_string(years->first_year);
  if (!years->last_year) return told + " or later";
  if (*years->last_year != years->first_year) told += " to " + std::to_string(*years->last_year);
  return told;
}

std::string fault_with(const std::string& name, const std::string& from, const std::string& to) {
  const auto loaded = load_marks({PatchedFiles(name, from, to), WINCHBOOK_SOURCE_DIR});
  return loaded ? std::string() : base::to_string(loaded.faults().front());
}

}  // namespace

// The ranges of numbers that the shelfmarks of bound volumes of the Official Gazette of the United
// States Patent Office print, with their year: a library catalogue's, so no copy of any table.
TEST_CASE("the table of US patents agrees with all 739 ranges of the Official Gazette") {
  std::ifstream in(std::string(WINCHBOOK_SOURCE_DIR) + "/tests/knowledge/data/gazette_ranges.csv");
  REQUIRE(in);
  std::string line;
  std::getline(in, line);
  int ranges = 0;
  int within_one_year = 0;
  while (std::getline(in, line)) {
    std::istringstream fields(line);
    std::int64_t first = 0;
    std::int64_t last = 0;
    std::int64_t year_first = 0;
    std::int64_t year_last = 0;
    char comma = ',';
    fields >> first >> comma >> last >> comma >> year_first >> comma >> year_last;
    REQUIRE(fields);
    ++ranges;
    CAPTURE(line);
    const auto begins = years_of(series("us-patent"), first);
    const auto ends = years_of(series("us-patent"), last);
    REQUIRE(begins);
    REQUIRE(ends);
    // A volume that straddles New Year names two years.
    CHECK(begins->first_year >= year_first);
    CHECK(ends->first_year <= year_last);
    CHECK(begins->first_year <= year_last);
    CHECK(ends->first_year >= year_first);
    within_one_year += year_first == year_last ? 1 : 0;
  }
  CHECK(ranges == 739);
  CHECK(within_one_year > 700);
}

TEST_CASE("misprints of published tables do not move a year") {
  // 1,061 and not 1,106: 1,465 less 1,061 is the 404 patents of 1839.
  CHECK(year("us-patent", 1'060) == "1838");
  CHECK(year("us-patent", 1'061) == "1839");
  CHECK(year("us-patent", 1'105) == "1839");
  // 291,016 and not 291,916: the same copy ends 1883 with 291,015.
  CHECK(year("us-patent", 291'015) == "1883");
  CHECK(year("us-patent", 291'016) == "1884");
  CHECK(year("us-patent", 291'915) == "1884");
  // 1,612,790 and not 1,612,700: the Gazette of 28 December 1926 ends with 1,612,789.
  CHECK(year("us-patent", 1'612'700) == "1926");
  CHECK(year("us-patent", 1'612'789) == "1926");
  CHECK(year("us-patent", 1'612'790) == "1927");
  // 1,787,424, printed once with a letter l.
  CHECK(year("us-patent", 1'787'423) == "1930");
  CHECK(year("us-patent", 1'787'424) == "1931");
  for (const std::int64_t number : {1'100, 291'500, 1'612'750}) {
    const auto years = years_of(series("us-patent"), number);
    REQUIRE(years);
    CHECK_FALSE(years->doubt.empty());
  }
  CHECK(years_of(series("us-patent"), 2'185'170)->doubt.empty());
}

TEST_CASE("where nothing decides between two lists, both years are told") {
  CHECK(year("gb-design", 534'962) == "1908");
  CHECK(year("gb-design", 535'000) == "1908 to 1909");
  CHECK(year("gb-design", 535'170) == "1909");
  CHECK(year("gb-design", 550'000) == "1909 to 1910");
  CHECK(year("gb-design", 552'000) == "1910");
  CHECK(year("gb-design", 895'000) == "1960");
}

TEST_CASE("numbers find their years, first and last") {
  CHECK(year("us-patent", 1) == "1836");
  CHECK(year("us-patent", 2'185'169) == "1939");
  CHECK(year("us-patent", 2'185'170) == "1940");
  CHECK(year("us-patent", 2'227'417) == "1940");
  CHECK(year("gb-design", 723'511) == "1926");
  // Dates on drawings of the patents themselves: D11,023 of 1879, D101,090 of 1 September 1936,
  // D219,813 of 1971.
  CHECK(year("us-design", 11'023) == "1879");
  CHECK(year("us-design", 101'090) == "1936");
  CHECK(year("us-design", 219'813) == "1971");
  CHECK(year("us-design", 14) == "1842 to 1843");
}

TEST_CASE("a number beyond the table has no year") {
  CHECK(year("us-patent", 4'562'595) == "1985");
  CHECK(year("us-patent", 4'600'000) == "1986 or later");
  CHECK(year("us-patent", 99'999'999).find("beyond the table") != std::string::npos);
  CHECK(year("us-patent", 0).find("begin with 1") != std::string::npos);
  CHECK(year("gb-design", 9'999'999).find("beyond the table") != std::string::npos);
}

TEST_CASE("every table rises, and a row that does not is refused with its place") {
  for (const NumberSeries& one : marks().series) {
    CAPTURE(one.word);
    REQUIRE(one.rows.size() > 100);
    for (std::size_t i = 1; i < one.rows.size(); ++i) {
      CHECK(one.rows[i].year > one.rows[i - 1].year);
      CHECK(one.rows[i].first > one.rows[i - 1].first);
    }
  }
  CHECK(fault_with("us-patents.csv", "1840,1465", "1840,1061")
            .starts_with("us-patents.csv:6:1: error: 1840 begins with 1061 where 1839 began with "
                         "1061 [row-order]"));
  CHECK(fault_with("us-patents.csv", "1931,1787424", "1931,l787424").find("[row-order]") !=
        std::string::npos);
}

TEST_CASE("an end before its beginning is refused with its place") {
  const std::string fault = fault_with("marks.xml", "date=\"1952-04-28\"", "date=\"1946-04-28\"");
  CHECK(fault.starts_with("marks.xml:"));
  CHECK(fault.find("ends (1946-04-28) before it begins (1947-02-20) [bound-order]") !=
        std::string::npos);
  CHECK(fault_with("marks.xml", "date=\"1952-04-28\"", "date=\"1952-02-30\"").find("[date]") !=
        std::string::npos);
}

TEST_CASE("every mark says why and where that was read, and its phrases are folded") {
  std::set<std::string> words;
  for (const Mark& mark : marks().marks) {
    CAPTURE(mark.word);
    CHECK(words.insert(mark.word).second);
    CHECK_FALSE(mark.bound.basis.empty());
    CHECK_FALSE(mark.bound.source.empty());
    const auto read = [](const std::optional<BoundEnd>& end) {
      return end && end->known == Known::read;
    };
    if (read(mark.bound.not_before) || read(mark.bound.not_after)) {
      CHECK(mark.bound.source != "recalled");
    }
    for (const std::string& form : mark.forms)
      CHECK(folded_phrase(form) == form);
  }
  CHECK(words.size() > 150);
}

TEST_CASE("materials, finishes and fasteners are found in the words of a record") {
  const auto found = [](MarkSort sort, const char* text) {
    const Mark* mark = best_mark(marks(), sort, text);
    return mark == nullptr ? std::string() : mark->word;
  };
  CHECK(found(MarkSort::material, "acetal, dark grey") == "acetal");
  CHECK(found(MarkSort::material, "Hard rubber") == "hard-rubber");
  CHECK(found(MarkSort::material, "zinc alloy") == "zinc-die-casting");
  CHECK(found(MarkSort::material, "cast phenolic") == "cast-phenolic");
  CHECK(found(MarkSort::material, "unobtainium").empty());
  CHECK(found(MarkSort::finish, "hammered grey enamel, stoved") == "hammered-enamel");
  CHECK(found(MarkSort::finish, "chromium plate") == "chromium-plate");
  CHECK(found(MarkSort::fastener, "Phillips screw") == "cross-recess");
  CHECK(found(MarkSort::fastener, "acetal").empty());
}

TEST_CASE("the makers of the demo have their files, and serial numbers lie between seen ones") {
  const auto makers = load_makers({base::RealFiles(), WINCHBOOK_SOURCE_DIR});
  REQUIRE(makers);
  for (const char* name : {"Harroway Reel Works", "Ockley & Sons", "Lemuel Thackway & Daughter",
                           "Vellacott Instruments"}) {
    CAPTURE(name);
    CHECK(find_maker(*makers, name) != nullptr);
  }
  CHECK(find_maker(*makers, "Nobody at all") == nullptr);
  const SerialRun& run = find_maker(*makers, "HARROWAY REEL WORKS")->serials.front();
  const MarkBound between = bound_of(run, 4417);
  CHECK(between.not_before->day == base::Day{1947, 5, 1});
  CHECK(between.not_after->day == base::Day{1949, 12, 31});
  CHECK_FALSE(between.not_before->hard);
  CHECK(bound_of(run, 3902).not_before->day == base::Day{1947, 5, 1});
  CHECK(bound_of(run, 3902).not_after->day == base::Day{1947, 5, 31});
  CHECK_FALSE(bound_of(run, 1).not_before);
  CHECK_FALSE(bound_of(run, 99'999).not_after);
}

TEST_CASE("serial numbers that do not rise with their dates are refused") {
  const PatchedFiles files("harroway.xml", "date=\"1949-12\"", "date=\"1931-12\"");
  const auto makers = load_makers({files, WINCHBOOK_SOURCE_DIR});
  REQUIRE_FALSE(makers);
  CHECK(base::to_string(makers.faults().front())
            .find("serial 5120 of 1931-12 stands behind 3902 of 1947-05 [row-order]") !=
        std::string::npos);
}
