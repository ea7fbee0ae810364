#include <doctest/doctest.h>
#include <unicode/gregocal.h>

#include <memory>

#include "base/edtf_date.h"

using namespace winchbook;  // NOLINT

// Another calendar that shares no code with ours: ICU's Gregorian one (which changes to the Julian
// before 15 October 1582, long before these years).
TEST_CASE("days of the week agree with another calendar from 1790 to 2100") {
  UErrorCode status = U_ZERO_ERROR;
  icu::GregorianCalendar calendar(*icu::TimeZone::getGMT(), status);
  REQUIRE(U_SUCCESS(status));
  std::int64_t odd = 0;
  std::int64_t days = 0;
  std::int64_t tuesdays = 0;
  for (int year = 1790; year <= 2100; ++year) {
    for (int month = 1; month <= 12; ++month) {
      for (int day = 1; day <= base::days_in_month(year, month); ++day) {
        const int ours = base::weekday({year, month, day});
        calendar.set(year, month - 1, day);
        const int sunday_first = calendar.get(UCAL_DAY_OF_WEEK, status);
        const int icu_iso = (sunday_first + 5) % 7 + 1;
        odd += icu_iso == ours ? 0 : 1;
        ++days;
        tuesdays += ours == 2 ? 1 : 0;
      }
    }
  }
  REQUIRE(U_SUCCESS(status));
  CHECK(odd == 0);
  CHECK(days == 113'590);
  CHECK(tuesdays == days / 7);
}

// Printed dates of issue of US patents, all Tuesdays: 4 July 1911, 2 January 1940, 22 August 1939.
TEST_CASE("known days of issue are Tuesdays") {
  for (const base::Day day : {base::Day{1911, 7, 4}, {1940, 1, 2}, {1939, 8, 22}, {1848, 1, 4}})
    CHECK(base::weekday(day) == 2);
}
