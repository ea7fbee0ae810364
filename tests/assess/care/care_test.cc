#include "assess/care/care.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "base/files.h"

namespace {

using namespace winchbook;
using assess::care::Because;
using assess::care::Finding;
using assess::care::Flag;
using assess::care::Intent;
using assess::care::Judged;
using assess::care::Made;
using knowledge::CareVerdict;
using Says = knowledge::FlagTrigger::Says;

const knowledge::CareTable& table() {
  static const auto kLoaded = knowledge::load_care({base::RealFiles(), WINCHBOOK_SOURCE_DIR});
  REQUIRE(kLoaded);
  return *kLoaded;
}

base::EdtfDate date(const char* text) {
  return base::EdtfDate::parse(text).value();
}

record::Words words(const char* text) {
  return {{record::Plain{text}}};
}

/// A multiplier of 1948 on the bench, of which a test says what it needs.
struct Reel {
  record::Record record;

  Reel() {
    record.reel.kind = record::ReelKind::multiplier;
    record.reel.brake = record::Brake::click;
    record::Visit visit;
    visit.id = {"visit"};
    visit.taken_in = date("2026-03-03");
    record.visits.push_back(visit);
    place("dog", "dog");
  }

  record::Visit& visit() { return record.visits.back(); }

  record::Piece& piece(const char* id, const char* material, const char* finish = "") {
    record::Piece one;
    one.id = {id};
    one.name = id;
    one.material = material;
    one.now.kind = record::Whereabouts::Kind::fitted;
    one.of_this_reel.answer = record::OfThisReel::yes;
    if (*finish != '\0') one.finish.push_back({finish, record::FinishBy::maker, {}, {}});
    record.pieces.push_back(one);
    return record.pieces.back();
  }

  record::Place& place(const char* id, const char* kind) {
    record::Place one;
    one.id = {id};
    one.kind = kind;
    record.places.push_back(one);
    return record.places.back();
  }

  void fit(const char* piece, const char* place) {
    record::Fitting one;
    one.id = {std::string(piece) + "-in-" + place};
    one.piece = {piece};
    one.place = {place};
    record.fittings.push_back(one);
  }

  std::vector<Judged> judge(const char* id, const char* method,
                            const Intent& more = blank()) const {
    return assess::care::judge(
        table(), record, record.visits.back(),
        {*find(record, record::PieceId{id}), method, more.minutes, more.joined_to, more.beside});
  }
  static Intent blank() {
    static const record::Piece kNone;
    return {kNone, "", {}, {}, {}};
  }
  CareVerdict verdict(const char* id, const char* method) const {
    return assess::care::worst(judge(id, method));
  }

  Finding finding(Made made = {base::Day{1947, 1, 1}, base::Day{1948, 12, 31}}) const {
    return assess::care::assess(record, record.visits.back(), table(), made);
  }
};

const Flag* find_flag(const Finding& finding, std::string_view word) {
  const auto found = std::find_if(finding.flags.begin(), finding.flags.end(),
                                  [&](const Flag& one) { return one.rule->word == word; });
  return found == finding.flags.end() ? nullptr : &*found;
}

bool has(const std::vector<Judged>& judged, Because because, CareVerdict verdict) {
  return std::any_of(judged.begin(), judged.end(), [&](const Judged& one) {
    return one.because == because && one.verdict == verdict;
  });
}

}  // namespace

TEST_CASE("the material turns the verdict, and so does the method") {
  Reel reel;
  reel.piece("plate", "hard rubber");
  reel.piece("gear", "brass");
  reel.piece("shaft", "steel");
  CHECK(reel.verdict("gear", "ultrasonic bath") == CareVerdict::with_care);
  CHECK(reel.verdict("plate", "ultrasonic bath") == CareVerdict::never);
  CHECK(reel.verdict("plate", "damp cloth, dried at once") == CareVerdict::with_care);
  CHECK(reel.verdict("plate", "heat gun") == CareVerdict::never);
  CHECK(reel.verdict("shaft", "fine steel wool") == CareVerdict::with_care);
  CHECK(reel.verdict("gear", "fine steel wool") == CareVerdict::harms);
}

TEST_CASE("a layer turns the verdict, and an outside method stops at a coat that is whole") {
  Reel reel;
  reel.piece("screw", "steel", "nickel plate");
  reel.piece("cap", "brass", "lacquer");
  reel.piece("arm", "brass", "chromium plate");
  CHECK(reel.verdict("screw", "fine steel wool") == CareVerdict::never);
  CHECK(reel.verdict("cap", "ultrasonic bath") == CareVerdict::never);
  // Brass alone is harmed by polish; sound chrome over it keeps it off.
  CHECK(reel.verdict("arm", "chrome polish") == CareVerdict::with_care);
  // Ammonia gets through to the brass.
  CHECK(reel.verdict("arm", "ammonia") == CareVerdict::never);
  // Lacquer may lie on a part only.
  CHECK(reel.verdict("cap", "metal polish") == CareVerdict::never);
}

TEST_CASE("what is worn through cannot be put right by polish") {
  Reel reel;
  reel.piece("arm", "brass", "chromium plate");
  record::PieceFinding worn{{"arm"}, record::PieceState{}, {}};
  worn.found->surface = {{record::SurfaceState::untouched, {base::Decimal(90, 0)}},
                         {record::SurfaceState::worn_through, {base::Decimal(10, 0)}}};
  CHECK_FALSE(has(reel.judge("arm", "chrome polish"), Because::worn, CareVerdict::harms));
  reel.visit().findings.pieces.push_back(worn);
  CHECK(has(reel.judge("arm", "chrome polish"), Because::worn, CareVerdict::harms));
  CHECK(reel.verdict("arm", "soft dry brush") == CareVerdict::usual);
}

TEST_CASE("what is not known is said, and is never fine") {
  Reel reel;
  reel.piece("thing", "");
  reel.piece("odd", "brass", "moon dust");
  reel.piece("gear", "brass");
  CHECK(has(reel.judge("thing", "ultrasonic bath"), Because::substance_unknown,
            CareVerdict::not_known));
  CHECK(has(reel.judge("odd", "ultrasonic bath"), Because::substance_unknown,
            CareVerdict::not_known));
  CHECK(has(reel.judge("gear", "sung to"), Because::method_unknown, CareVerdict::not_known));
}

// Manual of an ultrasonic cleaner (read): never a flammable liquid in the bath, its mist ignites.
TEST_CASE("no flammable liquid goes into an ultrasonic bath, whatever is in it") {
  Reel reel;
  reel.piece("gear", "brass");
  CHECK(reel.verdict("gear", "white spirit by brush") == CareVerdict::usual);
  CHECK(has(reel.judge("gear", "ultrasonic bath of white spirit"), Because::together,
            CareVerdict::never));
  CHECK(
      has(reel.judge("gear", "ultrasonic bath of alcohol"), Because::together, CareVerdict::never));
  CHECK(reel.verdict("gear", "ultrasonic bath, no white spirit") == CareVerdict::with_care);
}

// A maker of laboratory detergents (read): mixed metals in one cleaning bath attack the aluminium.
TEST_CASE("brass in the same bath eats aluminium") {
  Reel reel;
  reel.piece("body", "aluminium alloy");
  reel.piece("gear", "brass");
  reel.piece("spool", "aluminium");
  Intent with = Reel::blank();
  with.beside = {{"body"}, {"spool"}};
  CHECK(assess::care::worst(reel.judge("body", "ultrasonic bath", with)) == CareVerdict::with_care);
  with.beside.push_back({"gear"});
  const auto judged = reel.judge("body", "ultrasonic bath", with);
  CHECK(has(judged, Because::together, CareVerdict::harms));
  CHECK(judged.front().other == record::PieceId{"gear"});
}

// Common practice: what has captive or moving pieces is taken apart before the bath.
TEST_CASE("what is still joined goes into the bath too") {
  Reel reel;
  reel.piece("cap", "brass");
  reel.piece("spring", "steel");
  reel.piece("plate", "hard rubber");
  reel.place("seat", "click-spring").captive_spring = true;
  reel.fit("spring", "seat");
  Intent with = Reel::blank();
  CHECK(reel.verdict("cap", "ultrasonic bath") == CareVerdict::with_care);
  with.joined_to = {{"cap"}, {"spring"}};
  CHECK(has(reel.judge("cap", "ultrasonic bath", with), Because::captive, CareVerdict::with_care));
  CHECK(reel.judge("cap", "soft dry brush", with).empty());
  with.joined_to = {{"cap"}, {"plate"}};
  CHECK(has(reel.judge("cap", "ultrasonic bath", with), Because::joined, CareVerdict::never));
}

// Makers of ultrasonic baths: seconds to a few minutes is usual, and longer erodes (read); the
// table's own greatest figures are proposals, marked so.
TEST_CASE("an ultrasonic bath has a longest time and no shortest") {
  Reel reel;
  reel.piece("gear", "brass");
  Intent with = Reel::blank();
  const auto over = [&](int minutes) {
    with.minutes = base::Minutes{base::Decimal(minutes, 0)};
    return has(reel.judge("gear", "ultrasonic bath", with), Because::time, CareVerdict::with_care);
  };
  CHECK_FALSE(over(1));
  CHECK_FALSE(over(3));
  CHECK(over(4));
  CHECK(over(20));
}

TEST_CASE("no eye says that there is no asbestos") {
  Reel reel;
  CHECK(find_flag(reel.finding(), "asbestos") == nullptr);  // a click, and no drag
  reel.record.reel.brake = record::Brake::star;
  REQUIRE(find_flag(reel.finding(), "asbestos") != nullptr);
  CHECK(find_flag(reel.finding(), "asbestos")->says == Says::not_looked_for);

  reel.place("stack", "drag-washer");
  reel.piece("plates", "steel");
  reel.fit("plates", "stack");
  CHECK(find_flag(reel.finding(), "asbestos") == nullptr);  // metal washers are metal
  for (const char* material : {"leather", "red fibre", "not determined", "asbestos-free lining",
                               "brass with a fibre face"}) {
    CAPTURE(material);
    record::Piece& washers = reel.piece("washers", material);
    reel.fit("washers", "stack");
    CHECK(find_flag(reel.finding(), "asbestos")->says == Says::may_be);
    washers.supplier = "not known";  // nobody can be asked
    CHECK(find_flag(reel.finding(), "asbestos")->says == Says::may_be);
    washers.supplier = "Tarn Friction, Oldbeck";
    washers.of_this_reel.answer = record::OfThisReel::yes;  // it left the works on this reel
    CHECK(find_flag(reel.finding(), "asbestos")->says == Says::may_be);
    washers.of_this_reel.answer = record::OfThisReel::no;
    CHECK(find_flag(reel.finding(), "asbestos")->says == Says::excluded);
    CHECK(find_flag(reel.finding(), "asbestos")->excluded ==
          std::vector<record::PieceId>{{"washers"}});
    reel.record.pieces.pop_back();
    reel.record.fittings.pop_back();
  }
}

TEST_CASE("a laboratory's report decides, for what it looked for and for the piece it had") {
  Reel reel;
  reel.place("stack", "drag-washer");
  reel.piece("washers", "leather");
  reel.fit("washers", "stack");
  reel.piece("others", "leather");
  reel.fit("others", "stack");
  const auto report = [&](record::Hazard hazard, record::Looked found) {
    reel.record.pieces.front().tested = {
        {hazard, found, "Fell Laboratory", date("2026-05-02"), "4471"}};
  };
  report(record::Hazard::lead, record::Looked::none);
  CHECK(find_flag(reel.finding(), "asbestos")->pieces.size() == 2);
  report(record::Hazard::asbestos, record::Looked::none);
  CHECK(find_flag(reel.finding(), "asbestos")->pieces == std::vector<record::PieceId>{{"others"}});
  report(record::Hazard::asbestos, record::Looked::some);
  const Finding finding = reel.finding();
  const Flag* flag = find_flag(finding, "asbestos");
  CHECK(flag->says == Says::is);
  CHECK(flag->pieces == std::vector<record::PieceId>{{"washers"}});
  CHECK(flag->may_be == std::vector<record::PieceId>{{"others"}});  // still not known
}

TEST_CASE("work that makes dust of an old washer is found, whoever names it") {
  Reel reel;
  reel.place("stack", "drag-washer");
  reel.piece("washers", "red fibre").name = "Drag washers";
  reel.fit("washers", "stack");
  const auto flags = reel.finding().flags;
  const auto dust = [&](const char* text, const std::vector<record::PieceId>& pieces = {}) {
    return assess::care::cautions(reel.record, table(), flags, pieces, text).dust;
  };
  for (const char* text : {"scraped clean and blown out", "sanded flat", "trimmed 0.5 mm",
                           "ground down on a stone", "wire brushed"}) {
    CAPTURE(text);
    CHECK(dust(text).empty());  // of nothing that may hold it
    REQUIRE(dust(text, {{"washers"}}).size() == 1);
    CHECK(dust(text, {{"washers"}}).front().rule->word == "asbestos");
  }
  CHECK(dust("The drag washers were sanded flat.").size() == 1);  // named in the sentence
  CHECK(dust("The drag washers were not sanded.").empty());
  CHECK(dust("wiped with a damp cloth", {{"washers"}}).empty());
}

TEST_CASE("what no record has is refused too, when the sentence says what it is") {
  Reel reel;  // nothing is entered, and no brake
  const auto rules = [&](const char* text) {
    std::string all;
    for (const auto& dust : assess::care::cautions(reel.record, table(), {}, {}, text).dust)
      all += dust.rule->word + " ";
    return all;
  };
  CHECK(rules("Took 0.5 mm off the drag washers with sandpaper.") == "asbestos ");
  CHECK(rules("The old brake lining was filed thinner.") == "asbestos ");
  CHECK(rules("Blew the dust off the felt.") == "pesticides ");
  CHECK(rules("Scraped the luminous paint away.") == "radium ");
  CHECK(rules("Filed the beryllium copper spring.") == "beryllium ");
  CHECK(rules("Sanded the brass washers flat.").empty());
  CHECK(rules("Sanded the boxwood knob.").empty());
  CHECK(rules("Lifted the drag washers out whole.").empty());
  reel.piece("new", "red fibre").name = "Drag washers";
  reel.record.pieces.back().supplier = "Fell Friction, Fellgate";
  CHECK(rules("Took 0.5 mm off the drag washers with sandpaper.").empty());
}

TEST_CASE("what one report clears clears nothing else, and what is entered is no shield") {
  Reel reel;
  reel.place("stack", "drag-washer");
  reel.piece("washers", "red fibre").name = "Drag washers";
  reel.fit("washers", "stack");
  const auto refuses = [&](const char* text, const std::vector<record::PieceId>& about = {}) {
    return !assess::care::cautions(reel.record, table(), reel.finding().flags, about, text)
                .dust.empty();
  };
  for (const char* text :
       {"Filed a flat on the drag washer.", "Sanded the friction washers flat.",
        "Sanded the clutch lining.", "Without a mask sanded the drag washers.",
        "Not only sanded but ground the drag washers.", "Could not avoid sanding the washers.",
        "No new washers so sanded the old washers.", "Sand the drags and blow them clean."}) {
    CAPTURE(text);
    CHECK(refuses(text));
  }
  CHECK_FALSE(refuses("Nothing was sanded on the drag washers."));
  CHECK_FALSE(refuses("Fine steel wool and oil on the bare brass."));
  record::Piece& washers = reel.record.pieces.back();
  washers.tested.push_back(
      {record::Hazard::asbestos, record::Looked::none, "Fell Laboratory", {}, "4471"});
  CHECK_FALSE(refuses("Sanded the drag washers.", {{"washers"}}));
  CHECK_FALSE(refuses("Sanded the washer flat."));
  CHECK(refuses("Sanded the old gasket and the brake pads."));
  washers.tested.back().number = "none";  // no number at all
  CHECK(refuses("Sanded the drag washers."));
}

TEST_CASE("metal is metal only where nothing else is said of it") {
  Reel reel;
  reel.place("stack", "drag-washer");
  reel.piece("washers", "brass").name = "Drag washers";
  reel.fit("washers", "stack");
  for (const char* material : {"brass", "steel", "steel with ears", "hardened steel"}) {
    CAPTURE(material);
    reel.record.pieces.back().material = material;
    CHECK(find_flag(reel.finding(), "asbestos") == nullptr);
  }
  for (const char* material : {"brass with a lining", "woven brass", "iron filled composition",
                               "brass?", "steel-backed lining"}) {
    CAPTURE(material);
    reel.record.pieces.back().material = material;
    CHECK(find_flag(reel.finding(), "asbestos") != nullptr);
  }
}

TEST_CASE("a washer that the bench made is known when its supplier is") {
  Reel reel;
  reel.place("stack", "drag-washer");
  record::Piece& fibre = reel.piece("fibre", "red fibre");
  fibre.of_this_reel.answer = record::OfThisReel::no;
  fibre.made_by.answer = record::MadeBy::bench;
  reel.fit("fibre", "stack");
  reel.record.fittings.back().from = date("2026-04-24");
  CHECK(find_flag(reel.finding(), "asbestos")->says == Says::may_be);
  reel.record.pieces.back().supplier = "Tarn Friction, Oldbeck";
  CHECK(find_flag(reel.finding(), "asbestos")->says == Says::excluded);
}

// 16 CFR 1303: 90 ppm of lead in consumer paint from 14 August 2009, the last of the limits
// (recalled); SI 1992/31 in the United Kingdom (read).
TEST_CASE("old paint may hold lead, and new paint is not accused") {
  Reel reel;
  reel.piece("body", "aluminium alloy", "hammered grey enamel, stoved");
  CHECK(find_flag(reel.finding(), "lead") != nullptr);
  CHECK(find_flag(reel.finding({}), "lead") != nullptr);  // a date that nobody knows
  CHECK(find_flag(reel.finding({base::Day{2009, 8, 14}, {}}), "lead") == nullptr);
  CHECK(find_flag(reel.finding({base::Day{2009, 8, 13}, {}}), "lead") != nullptr);
}

TEST_CASE("the bench's own flag comes first; what it does not name is told beside it") {
  Reel reel;
  reel.piece("body", "aluminium alloy", "hammered enamel");
  reel.piece("cover", "zinc alloy", "hammered enamel");
  reel.visit().findings.flags.push_back(
      {record::Flag::Kind::hazard, {}, "lead in old enamel", words("Not tested."), {{"body"}}});
  Finding finding = reel.finding();
  const Flag* flag = find_flag(finding, "lead");
  REQUIRE(flag != nullptr);
  CHECK(flag->written == std::vector<std::size_t>{0});
  CHECK(flag->not_written == std::vector<record::PieceId>{{"cover"}});
  CHECK_FALSE(flag->needs_test);
  reel.visit().findings.flags.front().what = words("None.");
  finding = reel.finding();
  CHECK(find_flag(finding, "lead")->needs_test);
}

// Ivory Act 2018 s. 7 (read): made before 3 March 1947, and less than a tenth by volume.
TEST_CASE("the day that the law names is told beside the piece's own") {
  Reel reel;
  reel.piece("knob", "ivory, judged by eye");
  const auto age = [&](Made made) { return find_flag(reel.finding(made), "ivory")->age; };
  CHECK(find_flag(reel.finding(), "ivory")->rule->legal);
  CHECK(age({{}, base::Day{1947, 3, 2}}) == Flag::Age::before);
  CHECK(age({{}, base::Day{1947, 3, 3}}) == Flag::Age::open);
  CHECK(age({base::Day{1947, 3, 3}, {}}) == Flag::Age::after);
  CHECK(age({base::Day{1947, 3, 2}, {}}) == Flag::Age::open);
}

TEST_CASE("kinds, brakes, lines, contents, faults and methods raise their flags") {
  Reel reel;
  reel.piece("spool", "brass");
  CHECK(find_flag(reel.finding(), "backwards") == nullptr);  // a dog holds it
  reel.record.reel.kind = record::ReelKind::centrepin;
  CHECK(find_flag(reel.finding(), "backwards")->says == Says::is);
  reel.record.reel.kind = record::ReelKind::multiplier;
  reel.record.places.clear();
  CHECK(find_flag(reel.finding(), "backwards")->says == Says::may_be);

  CHECK(find_flag(reel.finding(), "nylon-line")->says == Says::may_be);
  CHECK(find_flag(reel.finding({base::Day{1990, 1, 1}, {}}), "nylon-line") == nullptr);
  reel.visit().care = record::CareAdvice{};
  reel.visit().care->line = "braided polyester";
  CHECK(find_flag(reel.finding(), "nylon-line") == nullptr);  // the bench has said which
  reel.visit().care->line = "nylon, 0.20 mm, 150 m";
  CHECK(find_flag(reel.finding(), "nylon-line")->says == Says::is);

  CHECK(find_flag(reel.finding(), "hooks") == nullptr);
  record::Piece& tin = reel.piece("Two rusty hooks", "steel");
  tin.role = record::PieceRole::content;
  CHECK(find_flag(reel.finding(), "hooks") != nullptr);

  reel.piece("cover", "zinc alloy");
  CHECK(find_flag(reel.finding(), "zinc")->says == Says::may_be);
  record::Fault fault;
  fault.piece = record::PieceId{"cover"};
  fault.kind = record::FaultKind::crumbling_zinc;
  reel.visit().findings.faults.push_back(fault);
  CHECK(find_flag(reel.finding(), "zinc")->says == Says::is);

  reel.piece("arm", "brass", "chromium plate");
  CHECK(find_flag(reel.finding(), "chromate") == nullptr);
  record::Cleaning stripped;
  stripped.pieces = {{"arm"}};
  stripped.method = "stripped by electrolysis";
  reel.visit().cleaning.push_back(stripped);
  CHECK(find_flag(reel.finding(), "chromate") != nullptr);
  CHECK(assess::care::worst(reel.finding().cleanings.front()) == CareVerdict::never);
  CHECK(reel.finding().cleaning_cautions.front().words == std::vector<std::string>{"electrolysis"});
}

TEST_CASE("the bench's advice on care speaks of a kind in a caution or beside it") {
  Reel reel;
  reel.record.reel.kind = record::ReelKind::fly_reel;
  reel.visit().care.emplace();
  record::CareAdvice& care = *reel.visit().care;
  care.line = "nylon monofilament";
  const auto in_care = [&] {
    const Finding finding = reel.finding();
    return find_flag(finding, "nylon-line")->in_care;
  };
  CHECK_FALSE(in_care());
  care.cautions = {{"Under the tap", words("Water stays in the bearings.")}};
  CHECK_FALSE(in_care());
  care.cautions = {{"Nylon", words("It shrinks on the spool.")}};
  CHECK(in_care());
  care.cautions = {{"The line", words("No nylon monofilament.")}};
  CHECK(in_care());
  care.cautions.clear();
  care.fish = {words("Nylon is wound on lightly.")};
  CHECK(in_care());
}

TEST_CASE("a caution beside the work warns too, and so does a flag") {
  Reel reel;
  reel.record.reel.kind = record::ReelKind::fly_reel;
  const auto said = [&] {
    const Finding finding = reel.finding();
    return find_flag(finding, "backwards")->said_by_bench();
  };
  CHECK_FALSE(said());
  record::Work work;
  work.caution = record::Caution{"The handle", words("It runs back.")};
  reel.visit().work = {work};
  CHECK(said());
  reel.visit().work.clear();
  record::Flag written;
  written.name = "knuckles";
  reel.visit().findings.flags = {written};
  CHECK(said());
}

TEST_CASE("what is lost or scrapped is no danger any more") {
  Reel reel;
  reel.piece("knob", "celluloid");
  CHECK(find_flag(reel.finding(), "celluloid") != nullptr);
  reel.record.pieces.back().now.kind = record::Whereabouts::Kind::lost;
  CHECK(find_flag(reel.finding(), "celluloid") == nullptr);
}
