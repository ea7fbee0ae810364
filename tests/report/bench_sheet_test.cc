#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "assess/fitting/recorded.h"
#include "base/files.h"
#include "knowledge/drag.h"
#include "told_reel.h"

using namespace winchbook;

namespace {

document::Document sheet(const record::Record& record) {
  return report_test::told(record, report_test::bytes_of("report-templates/bench-sheet.xml"));
}

document::Document card(const record::Record& record) {
  return report_test::told(record, report_test::bytes_of("report-templates/care-card.xml"));
}

std::string words_of(const document::Document& document, const std::string& chapter) {
  const document::Chapter* found = report_test::chapter(document, chapter);
  return found == nullptr ? "" : report_test::words_of(*found);
}

bool has(const std::string& text, const std::string& words) {
  return report_test::times(text, words) > 0;
}

std::vector<document::Step> steps_in(const document::Document& document) {
  std::vector<document::Step> steps;
  for (const document::Block& block : report_test::chapter(document, "bench-sheet")->blocks) {
    if (const auto* step = std::get_if<document::Step>(&block)) steps.push_back(*step);
  }
  return steps;
}

const document::CurveChart* curve_in(const document::Document& document) {
  const document::Chapter* chapter = report_test::chapter(document, "bench-drag");
  if (chapter == nullptr) return nullptr;
  for (const document::Block& block : chapter->blocks) {
    const auto* figure = std::get_if<document::ChartFigure>(&block);
    if (figure != nullptr) return std::get_if<document::CurveChart>(&figure->chart);
  }
  return nullptr;
}

}  // namespace

TEST_CASE("every step has its boxes, and every spring a warning level with it") {
  const auto document = sheet(report_test::demo("skerry-40"));
  const auto steps = steps_in(document);
  REQUIRE(steps.size() == 23);
  for (const document::Step& step : steps) {
    REQUIRE(step.boxes.size() >= 2);
    CHECK(step.boxes[step.boxes.size() - 2] == "off");
    CHECK(step.boxes.back() == "back");
  }
  // The bridge holds the dog spring down, and the step does not say so.
  const document::Step& bridge = steps[9];
  const document::Caution* caution = nullptr;
  for (const auto& beside : bridge.beside) {
    const auto* one = std::get_if<document::Caution>(&beside);
    if (one != nullptr && one->label == "Spring under load") caution = one;
  }
  REQUIRE(caution != nullptr);
  const std::string warned = document::spoken(caution->words);
  CHECK(has(warned, "Dog spring"));
  CHECK(has(warned, "flies when this comes away: Bridge"));
  CHECK(has(warned, "two loose pieces"));
  CHECK(bridge.boxes.front() == "photo");
  // Step 7 frees nothing, and has a picture.
  CHECK(steps[6].boxes.front() == "off");
  CHECK(std::any_of(steps[6].beside.begin(), steps[6].beside.end(),
                    [](const auto& one) { return std::holds_alternative<document::Figure>(one); }));
}

TEST_CASE("the sheet gives the trade's answers") {
  const auto document = sheet(report_test::demo("skerry-40"));
  const std::string strip = words_of(document, "bench-sheet");
  CHECK(has(strip, "Screws and posts that need not come out stay in."));
  CHECK(has(strip, "one at every critical joint"));
  CHECK(has(strip, "Dried grease comes off first"));
  const std::string back = words_of(document, "bench-assembly");
  CHECK(has(back, "The side plate goes on in free spool"));
  CHECK(has(back, "Stays out"));
  CHECK(has(back, "Click tongue"));
  CHECK(has(back, "Lock screw") + has(back, "lock screw") > 0);
  // A centrepin has no free spool to put a plate on in.
  CHECK_FALSE(
      has(words_of(sheet(report_test::demo("wharfinger-5")), "bench-assembly"), "free spool"));
}

TEST_CASE("nobody is named in sheet or card, not even those whom anyone may see") {
  for (const char* reel : {"skerry-40", "dunlin-2", "wharfinger-5", "sandling-tern"}) {
    record::Record record = report_test::demo(reel);
    // Whoever speaks by reference is told by what stands in.
    if (!record.visits.back().strip_down.empty()) {
      record.visits.back().strip_down.front().what.runs.emplace_back(
          record::PersonMention{record.people.front().id, ""});
    }
    for (const auto& document : {sheet(record), card(record)}) {
      std::string all;
      for (const auto& chapter : document.chapters)
        all += report_test::words_of(chapter);
      for (const record::Person& person : record.people) {
        const std::string* name = record::told(person.name);
        if (name == nullptr) continue;
        CAPTURE(reel);
        CAPTURE(*name);
        CHECK_FALSE(has(all, *name));
      }
    }
  }
}

TEST_CASE("a record without steps is a sheet of places to strip, the springs among them named") {
  const auto document = sheet(report_test::demo("dunlin-2"));
  CHECK(steps_in(document).empty());
  const std::string words = words_of(document, "bench-sheet");
  CHECK(has(words, "No step of taking it apart is on record yet"));
  CHECK(has(words, "Line guide"));
  CHECK(has(words, "Spring under load"));
  CHECK(has(words, "tick box: box to tick when it is off"));
  CHECK(has(words_of(document, "bench-assembly"), "backwards"));
}

TEST_CASE("sixty steps are sixty steps") {
  record::Record record = report_test::demo("skerry-40");
  auto& steps = record.visits.back().strip_down;
  const record::StripStep like = steps[1];
  while (steps.size() < 60) {
    steps.push_back(like);
    steps.back().id = {"more-" + std::to_string(steps.size())};
    steps.back().number = static_cast<int>(steps.size());
  }
  const auto told = steps_in(sheet(record));
  REQUIRE(told.size() == 60);
  CHECK(told.back().number == "60");
}

TEST_CASE("the figures on the page are those of the drag, and move with the setting") {
  record::Record record = report_test::demo("skerry-40");
  const auto known = knowledge::load_drag({base::RealFiles(), WINCHBOOK_SOURCE_DIR});
  REQUIRE(bool(known));
  for (const int setting : {12, 18}) {
    record.visits.back().drag->setting = base::Newtons{base::Decimal(setting, 0)};
    const auto drag = assess::fitting::recorded_drag(record, record.visits.back(), *known);
    REQUIRE(drag.lacking.empty());
    const auto document = sheet(record);
    const document::CurveChart* curve = curve_in(document);
    REQUIRE(curve != nullptr);
    CHECK(curve->points.front().second == doctest::Approx(setting));
    CHECK(curve->points.back().second == doctest::Approx(setting * 2));  // 40 mm full, 20 empty
    CHECK(curve->low.back().second == doctest::Approx(drag.finding.pulls.back().wear.low));
    CHECK(curve->high.front().second == doctest::Approx(drag.finding.pulls.front().pressure.high));
    const std::string words = words_of(document, "bench-drag");
    CHECK(has(words, "Set to " + std::to_string(setting) + "\u00A0N at the line"));
    CHECK(has(words, std::to_string(setting * 2) + "\u00A0N when the spool is nearly empty"));
  }
}

TEST_CASE("without its measures no curve is drawn, and the sheet says which is missing") {
  record::Record record = report_test::demo("skerry-40");
  record.visits.back().drag->spool_empty.reset();
  const auto document = sheet(record);
  CHECK(curve_in(document) == nullptr);
  CHECK(has(words_of(document, "bench-drag"),
            "a measure is missing: what is wound on, across, full and empty"));
  CHECK(has(words_of(card(record), "care-card"), "a measure is missing"));
}

TEST_CASE("the card's words follow the decision") {
  const std::string fish = words_of(card(report_test::demo("skerry-40")), "care-card");
  CHECK(has(fish, "Fish it, with the drag at 8 to 14\u00A0N at the line."));
  CHECK(has(fish, "0.8 to 1.4\u00A0kgf, or 1.8 to 3.1\u00A0lbf"));
  CHECK(has(fish, "chart"));
  CHECK(has(fish, "Dry: no oil and no grease near them."));
  const std::string shelf = words_of(card(report_test::demo("wharfinger-5")), "care-card");
  CHECK(has(shelf, "Do not fish it. This is how it keeps."));
  CHECK(has(shelf, "Shelf card"));
  CHECK_FALSE(has(shelf, "To fish it"));
  record::Record changed = report_test::demo("skerry-40");
  changed.visits.back().advice->chosen = record::Course::keep_as_found;
  CHECK(has(words_of(card(changed), "care-card"), "Do not fish it."));
}

TEST_CASE("a test that may not be made is told with its limit") {
  record::Record record = report_test::demo("skerry-40");
  auto& test = record.visits.back().findings.tests.back();
  test.after.kind = record::TestResult::Kind::not_safe_to_test;
  test.after.load_limit = base::Newtons{base::Decimal(4, 0)};
  CHECK(has(words_of(sheet(record), "bench-tests"), "never over 4\u00A0N"));
  CHECK(has(words_of(card(record), "care-card"), "not safe to test; never over 4\u00A0N"));
}
