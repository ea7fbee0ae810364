#include "record/latest_day.h"

#include <doctest/doctest.h>

namespace winchbook::record {
namespace {

base::EdtfDate date(const char* text) {
  return base::EdtfDate::parse(text).value();
}

}  // namespace

TEST_CASE("the day of the last entry is the latest that a visit bears, whatever bears it") {
  Record record;
  CHECK_FALSE(latest_day(record));
  Visit visit;
  visit.taken_in = date("2026-03-03");
  record.visits.push_back(visit);
  CHECK(latest_day(record) == base::Day{2026, 3, 3});
  Cleaning cleaning;
  cleaning.on = date("2026-04-10");
  record.visits.back().cleaning.push_back(cleaning);
  CHECK(latest_day(record) == base::Day{2026, 4, 10});
  record.visits.back().hand_back = HandBack{date("2026-06-19"), {}, {}, {}};
  CHECK(latest_day(record) == base::Day{2026, 6, 19});
  // A photograph of its earlier life is of no visit.
  Photo photo;
  photo.taken = date("2027");
  record.photos.push_back(photo);
  CHECK(latest_day(record) == base::Day{2026, 6, 19});
}

}  // namespace winchbook::record
