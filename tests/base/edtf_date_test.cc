#include "base/edtf_date.h"

#include <doctest/doctest.h>

#include <string>

using namespace winchbook::base;  // NOLINT

namespace {

EdtfDate date(const std::string& text) {
  auto read = EdtfDate::parse(text);
  CAPTURE(text);
  REQUIRE(read);
  return *read;
}

std::string bounds(const std::string& text) {
  const EdtfDate read = date(text);
  const auto end = [](const std::optional<Day>& day) {
    return day ? iso_text(*day) : std::string("none");
  };
  return end(read.earliest()) + " " + end(read.latest());
}

std::string refusal(const std::string& text) {
  const auto read = EdtfDate::parse(text);
  return read ? std::string() : read.faults().front().message;
}

}  // namespace

// The examples are those of the Extended Date/Time Format specification (Library of Congress,
// 2019), which became ISO 8601-2:2019, annex A.
TEST_CASE("level 0: dates, date and time, intervals") {
  CHECK(bounds("1985-04-12") == "1985-04-12 1985-04-12");
  CHECK(bounds("1985-04") == "1985-04-01 1985-04-30");
  CHECK(bounds("1985") == "1985-01-01 1985-12-31");
  CHECK(bounds("1985-04-12T23:20:30") == "1985-04-12 1985-04-12");
  CHECK(bounds("1985-04-12T23:20:30Z") == "1985-04-12 1985-04-12");
  CHECK(bounds("1985-04-12T23:20:30-04") == "1985-04-12 1985-04-12");
  CHECK(bounds("1985-04-12T23:20:30+04:30") == "1985-04-12 1985-04-12");
  CHECK(bounds("1964/2008") == "1964-01-01 2008-12-31");
  CHECK(bounds("2004-06/2006-08") == "2004-06-01 2006-08-31");
  CHECK(bounds("2004-02-01/2005-02-08") == "2004-02-01 2005-02-08");
  CHECK(bounds("2004-02-01/2005-02") == "2004-02-01 2005-02-28");
  CHECK(bounds("2005/2006-02") == "2005-01-01 2006-02-28");
}

TEST_CASE("level 1: long years, seasons, qualification, digits not known, ends not known") {
  CHECK(bounds("Y170000002") == "170000002-01-01 170000002-12-31");
  CHECK(bounds("Y-170000002") == "-170000002-01-01 -170000002-12-31");
  CHECK(bounds("-1985") == "-1985-01-01 -1985-12-31");
  CHECK(bounds("2001-21") == "2001-03-01 2001-05-31");
  CHECK(bounds("2001-24") == "2001-01-01 2002-02-28");
  CHECK(date("1984?").uncertain());
  CHECK_FALSE(date("1984?").approximate());
  CHECK(date("2004-06~").approximate());
  CHECK(date("2004-06-11%").uncertain());
  CHECK(date("2004-06-11%").approximate());
  CHECK(date("1984~/2004-06").approximate());
  CHECK(bounds("201X") == "2010-01-01 2019-12-31");
  CHECK(bounds("20XX") == "2000-01-01 2099-12-31");
  CHECK(bounds("2004-XX") == "2004-01-01 2004-12-31");
  CHECK(bounds("1985-04-XX") == "1985-04-01 1985-04-30");
  CHECK(bounds("1985-XX-XX") == "1985-01-01 1985-12-31");
  CHECK(bounds("1985-04-12/..") == "1985-04-12 none");
  CHECK(bounds("1985/") == "1985-01-01 none");
  CHECK(bounds("../1985-04") == "none 1985-04-30");
  CHECK(bounds("/1985") == "none 1985-12-31");
}

TEST_CASE("an open end and an end not known are told apart") {
  CHECK(date("1985/..").members().front().to.kind == EdtfEnd::Kind::open);
  CHECK(date("1985/").members().front().to.kind == EdtfEnd::Kind::unknown);
  CHECK(date("1985/1986").members().front().to.kind == EdtfEnd::Kind::told);
}

TEST_CASE("level 2: one of a set, all of a set") {
  CHECK(bounds("[1667,1668,1670..1672]") == "1667-01-01 1672-12-31");
  CHECK(date("[1667,1668,1670..1672]").members().size() == 3);
  CHECK(date("[1667,1668]").form() == EdtfDate::Form::one_of);
  CHECK(bounds("[..1760-12-03]") == "none 1760-12-03");
  CHECK(bounds("[1760-12..]") == "1760-12-01 none");
  CHECK(bounds("[1760-01,1760-02,1760-12..]") == "1760-01-01 none");
  CHECK(bounds("{1960,1961-12}") == "1960-01-01 1961-12-31");
  CHECK(date("{1960,1961-12}").form() == EdtfDate::Form::all_of);
  CHECK(bounds("{..1984}") == "none 1984-12-31");
}

TEST_CASE("what is not EDTF is refused with found and expected") {
  CHECK(refusal("1948-13") ==
        "\"1948-13\" is not a date: it has month 13, expected 01 to 12 or a season 21 to 24");
  CHECK(refusal("2026-02-29") == "\"2026-02-29\" is not a date: the month has 28 days");
  CHECK(refusal("1979/1948") ==
        "\"1979/1948\" is not a date: it ends (1948) before it begins (1979)");
  CHECK(refusal("48") == "\"48\" is not a date: a year has four digits");
  for (const char* text : {"",
                           "/",
                           "../..",
                           "1948-",
                           "1948-1",
                           "1948-08-1",
                           "12/03/2026",
                           "about 1948",
                           "1948?~",
                           "19X8",
                           "XXXX",
                           "194X-08",
                           "Y1948",
                           "[1948",
                           "[]",
                           "{1948,}",
                           "1948/1950/1952",
                           "2026-03-03T25:00:00",
                           "2026-03-03x",
                           "1948-25"}) {
    CAPTURE(text);
    CHECK_FALSE(refusal(text).empty());
  }
}

TEST_CASE("days are counted and named as the calendar does") {
  // 1 January 1970 was a Thursday; 22 August 1939, the printed date of a US patent, a Tuesday.
  CHECK(weekday({1970, 1, 1}) == 4);
  CHECK(weekday({1939, 8, 22}) == 2);
  CHECK(weekday({2000, 2, 29}) == 2);
  CHECK(day_number({2000, 3, 1}) - day_number({2000, 2, 28}) == 2);
  CHECK(day_number({1900, 3, 1}) - day_number({1900, 2, 28}) == 1);
  CHECK(day_number({2026, 6, 19}) - day_number({2026, 3, 3}) == 108);
  CHECK(day_number({1970, 1, 1}) == 0);
  CHECK_FALSE(is_real({1900, 2, 29}));
  CHECK(is_real({2000, 2, 29}));
  CHECK(parse_day("2026-03-03"));
  CHECK_FALSE(parse_day("2026-03"));
  CHECK_FALSE(parse_day("2026-03-XX"));
  CHECK_FALSE(parse_day("2026-03-03~"));
}

TEST_CASE("a day so many days on or back crosses months, years and leap days") {
  CHECK(iso_text(days_on({1911, 7, 4}, 7)) == "1911-07-11");
  CHECK(iso_text(days_on({1939, 12, 29}, 4)) == "1940-01-02");
  CHECK(iso_text(days_on({1940, 1, 2}, -4)) == "1939-12-29");
  CHECK(iso_text(days_on({2000, 2, 28}, 1)) == "2000-02-29");
  CHECK(iso_text(days_on({1900, 3, 1}, -1)) == "1900-02-28");
  CHECK(iso_text(days_on({1, 1, 1}, -366)) == "0000-01-01");
  CHECK(iso_text(days_on({0, 1, 1}, -1)) == "-0001-12-31");
}

TEST_CASE("days are counted in years of twelve digits, too") {
  const std::int64_t far = 170'000'000'000;
  CHECK(weekday({far, 1, 1}) == weekday({2000, 1, 1}));
  CHECK(weekday({-far, 3, 1}) == weekday({2000, 3, 1}));
  CHECK(days_in_month(far, 2) == 29);
  CHECK(days_in_month(-far + 100, 2) == 28);
  CHECK(day_number({far + 400, 1, 1}) - day_number({far, 1, 1}) == 146'097);
  CHECK(day_number({-far, 1, 1}) - day_number({-far - 1, 1, 1}) == 365);
  CHECK(days_on({-far, 12, 31}, 1) == Day{-far + 1, 1, 1});
}

TEST_CASE("one date is surely before another only when no reading says otherwise") {
  CHECK(surely_before(date("1948"), date("1949-01")));
  CHECK_FALSE(surely_before(date("1948"), date("1948-12-31")));
  CHECK_FALSE(surely_before(date("1948/"), date("1990")));
  CHECK_FALSE(surely_before(date("1948"), date("../1990")));
}
