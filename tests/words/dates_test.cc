#include <doctest/doctest.h>
#include <unicode/datefmt.h>
#include <unicode/gregocal.h>
#include <unicode/timezone.h>

#include <memory>
#include <string>

#include "shared_words.h"

using winchbook::base::Day;
using winchbook::base::EdtfDate;
using winchbook::words::Catalogue;
using winchbook::words::DateForm;

namespace {

std::string told(const Catalogue& words, const char* date) {
  const auto read = EdtfDate::parse(date);
  CAPTURE(date);
  REQUIRE(read);
  return spaced(words.date(*read));
}

/// The day as ICU's own long date of the locale has it (Unicode CLDR), not by our patterns.
std::string as_icu_tells(const char* language, Day day) {
  const icu::Locale locale(language);
  const std::unique_ptr<icu::DateFormat> format(
      icu::DateFormat::createDateInstance(icu::DateFormat::kLong, locale));
  REQUIRE(format != nullptr);
  format->setTimeZone(*icu::TimeZone::getGMT());
  UErrorCode code = U_ZERO_ERROR;
  icu::GregorianCalendar calendar(*icu::TimeZone::getGMT(), locale, code);
  calendar.clear();
  calendar.set(static_cast<std::int32_t>(day.year), day.month - 1, day.day);
  icu::UnicodeString out;
  std::string text;
  format->format(calendar.getTime(code), out).toUTF8String(text);
  REQUIRE(U_SUCCESS(code));
  return text;
}

}  // namespace

// Outside source: ICU's DateFormat, style long, of each locale (Unicode CLDR, Gregorian calendar).
TEST_CASE("days stand in the order of their language") {
  for (const char* language : {"en-GB", "en-US"}) {
    const Catalogue words = shared_words(language);
    for (const Day day : {Day{2026, 3, 4}, Day{1948, 12, 31}, Day{2000, 2, 29}, Day{1901, 7, 1}}) {
      CAPTURE(language);
      CHECK(spaced(words.day(day)) == as_icu_tells(language, day));
    }
  }
}

TEST_CASE("a day never parts from its month") {
  const Day day{2026, 3, 4};
  CHECK(shared_words("en-GB").day(day) == "4\u00a0March 2026");
  CHECK(shared_words("en-US").day(day) == "March\u00a04, 2026");
  CHECK(shared_words("en-GB").day(day, DateForm::without_year) == "4\u00a0March");
  CHECK(shared_words("en-US").day(day, DateForm::without_year) == "March\u00a04");
}

// The forms are those of ISO 8601-2:2019 (EDTF): level 0, level 1, and the sets of level 2.
TEST_CASE("a date is told as exactly as it is known, and no more") {
  const Catalogue words = shared_words("en-GB");
  CHECK(told(words, "2026-03-04") == "4 March 2026");
  CHECK(told(words, "2026-03-04T09:30:00Z") == "4 March 2026");
  CHECK(told(words, "1962-08") == "August 1962");
  CHECK(told(words, "1948") == "1948");
  CHECK(told(words, "196X") == "the 1960s");
  CHECK(told(words, "19XX") == "between 1900 and 1999");
  CHECK(told(words, "1962-XX") == "1962");
  CHECK(told(words, "1962-XX-XX") == "1962");
  CHECK(told(words, "1962-08-XX") == "August 1962");
  CHECK(told(words, "1962-21") == "spring 1962");
  CHECK(told(words, "1962-22") == "summer 1962");
  CHECK(told(words, "1962-23") == "autumn 1962");
  CHECK(told(words, "1962-24") == "winter 1962");
  CHECK(told(shared_words("en-US"), "1962-23") == "fall 1962");
}

TEST_CASE("a doubtful date says how it is doubtful") {
  const Catalogue words = shared_words("en-GB");
  CHECK(told(words, "1994~") == "about 1994");
  CHECK(told(words, "1994?") == "perhaps 1994");
  CHECK(told(words, "1994%") == "perhaps about 1994");
  CHECK(told(words, "196X~") == "about the 1960s");
  CHECK(told(words, "1962-08~") == "about August 1962");
}

TEST_CASE("an interval tells both ends, or which of them nobody knows") {
  const Catalogue words = shared_words("en-GB");
  CHECK(told(words, "1948/1979") == "1948 to 1979");
  CHECK(told(words, "1962-08/1994~") == "August 1962 to about 1994");
  CHECK(told(words, "2025/..") == "since 2025");
  CHECK(told(words, "1979/") == "from 1979");
  CHECK(told(words, "../1979") == "until 1979");
  CHECK(told(words, "/1979") == "until 1979");
}

TEST_CASE("a set tells one of its members or all of them") {
  CHECK(told(shared_words("en-GB"), "[1938,1939,1940]") == "one of 1938 to 1940");
  CHECK(told(shared_words("en-GB"), "[1938..1940]") == "1938 to 1940");
  CHECK(told(shared_words("en-GB"), "[1938]") == "1938");
  CHECK(told(shared_words("en-GB"), "{1938,1940,1951}") == "1938, 1940 and 1951");
  CHECK(told(shared_words("en-US"), "{1938,1940,1951}") == "1938, 1940, and 1951");
}
