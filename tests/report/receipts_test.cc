#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "told_reel.h"

using namespace winchbook;

namespace {

document::Document issued(const record::Record& record, const std::string& document,
                          base::Day date) {
  report::Edition edition;
  edition.document = document;
  edition.date = date;
  edition.reel_code = "RK4E 179G";
  return report_test::told(record, report_test::bytes_of("report-templates/" + document + ".xml"),
                           edition);
}

std::string told_in(const record::Record& record, const std::string& document, base::Day date,
                    const std::string& chapter) {
  const auto told = issued(record, document, date);
  const document::Chapter* found = report_test::chapter(told, chapter);
  REQUIRE(found != nullptr);
  return report_test::words_of(*found);
}

std::string intake(const record::Record& record, base::Day date) {
  return told_in(record, "intake-receipt", date, "intake-owner");
}

std::string hand_back(const record::Record& record) {
  return told_in(record, "hand-back-receipt", {2026, 6, 19}, "hand-back-owner");
}

bool says(const std::string& text, const std::string& sentence) {
  return text.find(sentence) != std::string::npos;
}

std::string replaced(std::string text, const std::string& before, const std::string& after) {
  for (std::size_t at = text.find(before); at != std::string::npos; at = text.find(before))
    text.replace(at, before.size(), after);
  return text;
}

record::Visit& visit_of(record::Record& record) {
  return record.visits.back();
}

record::Piece& piece(record::Record& record, const std::string& id) {
  const auto found = std::find_if(record.pieces.begin(), record.pieces.end(),
                                  [&](const record::Piece& one) { return one.id.text == id; });
  REQUIRE(found != record.pieces.end());
  return *found;
}

constexpr base::Day kIntake{2026, 3, 3};
constexpr base::Day kHandBack{2026, 6, 19};

}  // namespace

TEST_CASE("both copies of a receipt say the same, but whose they are") {
  const record::Record record = report_test::demo("skerry-40");
  for (const std::string name : {"intake", "hand-back"}) {
    const auto told = issued(record, name + "-receipt", kHandBack);
    CHECK(report_test::chapters(told) ==
          std::vector<std::string>{name + "-owner", name + "-bench"});
    const std::string owner = report_test::words_of(told.chapters[0]);
    const std::string bench = report_test::words_of(told.chapters[1]);
    CHECK(owner != bench);
    CHECK(replaced(replaced(owner, name + "-owner", name + "-bench"), "owner’s\u00A0copy",
                   "bench’s\u00A0copy") == bench);
    CHECK(told.chapters[0].counted_apart);
    CHECK(told.chapters[1].counted_apart);
  }
}

TEST_CASE("an intake receipt tells what was known on its day, and nothing later") {
  const record::Record record = report_test::demo("skerry-40");
  const std::string then = intake(record, kIntake);
  CHECK(says(then, "Taken in from Nell Merrow, 3\u00A0March 2026."));
  CHECK(says(then, "The teak knob."));
  CHECK(says(then, "No more than £120.00 without asking."));
  CHECK(says(then, "At a glance: Not entered: ____"));
  CHECK_FALSE(says(then, "£340.00"));
  CHECK_FALSE(says(then, "hairline crack"));
  CHECK_FALSE(says(then, "figure"));
  const std::string later = intake(record, kHandBack);
  CHECK(says(later, "Estimated at £260.00 to £340.00."));
  CHECK(says(later, "No more than £355.00 without asking."));
  CHECK(says(later, "weakening"));
  CHECK_FALSE(says(later, "At a glance: Not entered"));
}

TEST_CASE("what came with the reel is listed with whether it is original to the reel") {
  const std::string text = intake(report_test::demo("skerry-40"), kIntake);
  CHECK(says(text, "Biscuit tin: joined it later."));
  CHECK(says(text, "Ferry ticket, return half: not known whether it is original to the reel."));
  CHECK(says(text, "Line, linen, about 95 m"));
  // the bench wound that on itself
  CHECK_FALSE(says(text, "braided polyester"));
  CHECK(says(text, "Loose in it: "));
  CHECK(says(text, "Drag washers of leather, three."));
  // found in the grease only when it was taken apart
  CHECK_FALSE(says(text, "spring"));
}

TEST_CASE("a part that must stay is named once") {
  record::Record record = report_test::demo("dunlin-2");
  auto& agreement = visit_of(record).agreements.front();
  CHECK(says(intake(record, kHandBack), "Must stay: Not entered: ____"));
  agreement.pieces_must_stay = {{"spool"}, {"foot"}};
  agreement.must_stay = {{{record::Plain{"The foot, filed ends and all."}}}};
  CHECK(says(intake(record, kHandBack), "Must stay: The foot, filed ends and all. / Spool."));
}

TEST_CASE("an estimate that was agreed stands before that of the course") {
  const std::string text = intake(report_test::demo("dunlin-2"), {2026, 6, 8});
  CHECK(says(text, "Estimated at £25.00 to £35.00. No more than £40.00 without asking."));
  CHECK(says(text, "Promised for 13\u00A0June 2026."));
  CHECK(says(text, "written about twice"));
  CHECK(says(text, "26-031"));
}

TEST_CASE("a bench that gives no number has the reel's code on its receipts") {
  record::Record record = report_test::demo("dunlin-2");
  visit_of(record).number.clear();
  CHECK(says(intake(record, kHandBack), "RK4E 179G"));
}

TEST_CASE("a hand-back receipt lists every bag with what lies in it") {
  const record::Record record = report_test::demo("skerry-40");
  const std::string text = hand_back(record);
  CHECK(says(text, "Handed back to Nell Merrow, 19\u00A0June 2026, with six bags."));
  for (const record::Piece& one : record.pieces) {
    if (one.now.kind != record::Whereabouts::Kind::bagged) continue;
    CAPTURE(one.name);
    CHECK(says(text, one.name));
  }
  for (int i = 1; i <= 6; ++i)
    CHECK(says(text, "Bag " + std::to_string(i) + ": "));
  CHECK_FALSE(says(text, "The record does not say."));
  CHECK(says(text, "Not returned: Not entered: ____"));
}

TEST_CASE("hours and money are added up from the record") {
  // 2.5 + 1.5 + 1 + 2 + 2 + 3 + 0.5 hours; 2.40 + 1.80 + 14.50 and 45.00 + 22.50 pounds
  record::Record record = report_test::demo("skerry-40");
  const std::string text = hand_back(record);
  CHECK(says(text, "Up to £355.00 was agreed, 9\u00A0June 2026."));
  CHECK(says(text, "The work took 12.5 hours."));
  CHECK(says(text, "Material cost £18.70."));
  CHECK(says(text, "What was bought for its parts cost £67.50."));
  // currencies are never added to each other
  visit_of(record).work.back().parts_cost = base::Money{{1450, 2}, "USD"};
  CHECK(says(hand_back(record), "Material cost £4.20 and US$14.50."));
}

TEST_CASE("what does not go back is named, with the leave for it") {
  record::Record record = report_test::demo("skerry-40");
  record::Piece& washers = piece(record, "cork-washers");
  washers.now = {};
  washers.now.kind = record::Whereabouts::Kind::scrapped;
  washers.now.leave = record::AgreementId{"ag-list"};
  record::Piece& screw = piece(record, "wood-screw");
  screw.now = {};
  screw.now.kind = record::Whereabouts::Kind::lost;
  for (record::TrayLine& line : visit_of(record).tray) {
    if (line.piece == washers.id || line.piece == screw.id) line.bagged = 0;
    if (line.piece == washers.id) line.scrapped = 3;
    if (line.piece == screw.id) line.lost = 1;
  }
  const std::string text = hand_back(record);
  CHECK(says(text, "three: scrapped. With leave of 11\u00A0March 2026."));
  CHECK(says(text, ": lost."));
  CHECK_FALSE(says(text, "Nothing was kept"));
  // the bags they would have lain in went back, and hold nothing that is known
  CHECK(says(text, "The record does not say."));
}

TEST_CASE("a test that was not safe warns in the margin with its limit") {
  record::Record record = report_test::demo("dunlin-2");
  record::TestResult& after = visit_of(record).findings.tests.front().after;
  after = {};
  after.kind = record::TestResult::Kind::not_safe_to_test;
  after.load_limit = base::Newtons{{5, 0}};
  const std::string text = hand_back(record);
  CHECK(says(text,
             "caution: not safe to test: Free spool, one measured flick: never beyond 5\u00A0N."));
}

TEST_CASE("before the hand-back there is no hand-back receipt to tell") {
  record::Record record = report_test::demo("dunlin-2");
  visit_of(record).hand_back.reset();
  CHECK(report_test::chapters(issued(record, "hand-back-receipt", kHandBack)).empty());
}

TEST_CASE("a bare record leaves the receipt's lines to the pen") {
  record::Record record = report_test::demo("dunlin-2");
  record::Visit bare;
  bare.id = visit_of(record).id;
  bare.taken_in = visit_of(record).taken_in;
  record.visits = {bare};
  record.bench.terms = {};
  record.reel.box_and_papers = {};
  std::erase_if(record.pieces, [](const auto& one) { return one.role != record::PieceRole::part; });
  const std::string text = intake(record, kHandBack);
  for (const char* sentence : {"At a glance: Not entered: ____", "With it: Not entered: ____",
                               "Loose in it: Not entered: ____", "Wanted: Not entered: ____",
                               "Agreed: Not entered: ____", "Cost: Not entered: ____",
                               "Ready: Not entered: ____", "Not collected: Not entered: ____"}) {
    CAPTURE(sentence);
    CHECK(says(text, sentence));
  }
}

TEST_CASE("a card for each step begins with its words and is scanned by its number") {
  const record::Record record = report_test::demo("skerry-40");
  const auto told = issued(record, "labels", kIntake);
  const document::Chapter* cards = report_test::chapter(told, "step-cards");
  REQUIRE(cards != nullptr);
  const auto& labels = std::get<document::Labels>(cards->blocks.front()).labels;
  REQUIRE(labels.size() == record.visits.back().strip_down.size());
  CHECK(labels[3].number == "4");
  CHECK(labels[3].qr_payload == "WB1S RK4E179G 2 04");
  CHECK(document::spoken(labels[3].words.front()) == "Unscrew the star.");
  // cut after a word
  const std::string first = document::spoken(labels[0].words.front());
  CHECK(first == "Photograph the reel from six sides. Turn the star back until it…");
}

TEST_CASE("cards and bag labels are blank while nothing is written") {
  record::Record record = report_test::demo("dunlin-2");
  visit_of(record).strip_down.clear();
  const auto told = issued(record, "labels", kIntake);
  const auto& cards =
      std::get<document::Labels>(report_test::chapter(told, "step-cards")->blocks.front()).labels;
  REQUIRE(cards.size() == 12);
  CHECK(cards.back().number == "12");
  CHECK(cards.back().ruled_lines == 1);
  const auto& bags =
      std::get<document::Labels>(report_test::chapter(told, "bag-labels")->blocks.front()).labels;
  REQUIRE(bags.size() == 6);
  CHECK(bags.front().qr_payload == "WB1B RK4E179G 1 BAG1");
}

TEST_CASE("a label a bag holds every piece in it; the tags go by what came apart") {
  const record::Record record = report_test::demo("skerry-40");
  const std::string bags = told_in(record, "labels", kIntake, "bag-labels");
  CHECK(report_test::times(bags, "name: Bag ") == 6);
  for (const record::Piece& one : record.pieces) {
    if (one.now.kind == record::Whereabouts::Kind::bagged) CHECK(says(bags, one.name));
  }
  const std::string tags = told_in(record, "labels", kIntake, "reel-tags");
  CHECK(says(tags, "name: The reel"));
  CHECK(says(tags, "name: Its tray"));
  CHECK(says(tags, "name: Biscuit tin"));
  CHECK_FALSE(says(tags, "Merrow"));
  CHECK(says(tags, "foot: Skerry No. 40, serial H 4417 · 26-011"));
}
