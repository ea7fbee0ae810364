#include "knowledge/knowledge.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>

#include "knowledge/patched_files.h"

namespace winchbook::knowledge {
namespace {

const Knowledge& shipped() {
  static const Knowledge knowledge = [] {
    auto loaded = load({base::RealFiles(), WINCHBOOK_SOURCE_DIR});
    REQUIRE(bool(loaded));
    return std::move(loaded).value();
  }();
  return knowledge;
}

/// The first fault of a changed file, as it is printed.
std::string fault(const std::string& name, const std::string& from, const std::string& to) {
  const auto loaded = load({PatchedFiles(name, from, to), WINCHBOOK_SOURCE_DIR});
  return loaded ? "" : base::to_string(loaded.faults().front());
}

base::Percent percent(const char* text) {
  return {base::Decimal::parse(text).value()};
}

}  // namespace

TEST_CASE("every kind of reel has its parts list, and weights and outsides add up to a hundred") {
  for (const char* kind : {"multiplier", "baitcaster", "fixed-spool", "closed-face", "centrepin",
                           "sidecast", "fly-reel", "plain-winch", "wooden-reel"}) {
    CAPTURE(kind);
    const PartsList* list = parts_list(shipped(), kind);
    REQUIRE(list != nullptr);
    base::Decimal weight;
    base::Decimal exposed;
    for (const PartsEntry& entry : list->places) {
      weight = weight + entry.weight;
      exposed = exposed + entry.exposed;
      if (entry.consumable) CHECK(entry.weight == base::Decimal());
    }
    CHECK(weight == base::Decimal(100, 0));
    CHECK(exposed == base::Decimal(100, 0));
    CHECK_FALSE(list->source.empty());
  }
  CHECK(shipped().parts_lists.size() == 9);
  CHECK(parts_list(shipped(), "kite") == nullptr);
}

TEST_CASE("a place is read whole") {
  const PartsEntry* pillars = find(*parts_list(shipped(), "multiplier"), "pillar");
  REQUIRE(pillars != nullptr);
  CHECK(pillars->name == "Pillars");
  CHECK(pillars->assembly == "frame");
  CHECK(pillars->usual_quantity == 3);
  CHECK(pillars->weight == base::Decimal(5, 0));
  CHECK(pillars->exposed == base::Decimal(6, 0));
  CHECK_FALSE(pillars->captive_spring);
  CHECK(find(*parts_list(shipped(), "multiplier"), "dog-spring")->captive_spring);
  CHECK(find(*parts_list(shipped(), "multiplier"), "drag-washer")->consumable);
  CHECK(find(*parts_list(shipped(), "multiplier"), "mast") == nullptr);
}

TEST_CASE("the corrosion table is that of the standard, bounds included") {
  // ISO 10289:1999 and ASTM B537, rating by defective area in percent: 10 none, 9 to 0.1, 8 to
  // 0.25, 7 to 0.5, 6 to 1.0, 5 to 2.5, 4 to 5.0, 3 to 10, 2 to 25, 1 to 50, 0 over 50 (recalled).
  const std::map<std::string, int> at{{"0", 10},  {"0.1", 9}, {"0.25", 8}, {"0.5", 7},
                                      {"1.0", 6}, {"2.5", 5}, {"5.0", 4},  {"10", 3},
                                      {"25", 2},  {"50", 1},  {"100", 0}};
  for (const auto& [area, expected] : at) {
    CHECK(rating(shipped().corrosion, percent(area.c_str())) == expected);
  }
  const std::map<std::string, int> just_over{
      {"0.001", 9}, {"0.1001", 8}, {"0.251", 7},  {"0.501", 6},  {"1.001", 5},
      {"2.501", 4}, {"5.001", 3},  {"10.001", 2}, {"25.001", 1}, {"50.001", 0}};
  for (const auto& [area, expected] : just_over) {
    CHECK(rating(shipped().corrosion, percent(area.c_str())) == expected);
  }
}

TEST_CASE("seats share an amount without a rest up to twelve") {
  for (int seats = 1; seats <= 12; ++seats) {
    CHECK(units_per_seat(base::Decimal(275, 2), seats) * seats == 275 * 27720);
  }
  CHECK(units_per_seat(base::Decimal(3, 0), 1) == units_per_seat(base::Decimal(3000, 3), 1));
  CHECK(units_per_seat(base::Decimal(2, 0), 13) * 13 <= units_per_seat(base::Decimal(2, 0), 1));
  CHECK(units_per_seat(base::Decimal(999999999999999, 0), 1) ==
        units_per_seat(base::Decimal(1000000, 0), 1));
}

TEST_CASE("a fault in the knowledge is told with its place, and nothing is loaded") {
  CHECK(fault("grading.xml", R"(<credit state="polished" percent="30">)",
              R"(<credit state="polished" percent="130">)")
            .starts_with("grading.xml:13:"));
  CHECK(fault("grading.xml", R"(state="polished")", R"(state="gilded")")
            .starts_with("grading.xml:13:"));
  CHECK(fault("grading.xml",
              "<credit state=\"stripped\" percent=\"10\">The finish is gone on "
              "purpose; only the form is left.</credit>",
              "") ==
        "grading.xml:7:5: error: no credit for \"stripped\" [missing-credit]\n"
        "  hint: add a credit for it, with its reason\n");
  CHECK(fault("grading.xml", R"(<credit state="right")", R"(<credit state="cleaned")") ==
        "grading.xml:19:5: error: no credit for \"right\" [missing-credit]\n"
        "  hint: add a credit for it, with its reason\n");
  CHECK(fault("grading.xml", R"(name="over-half" percent="50")",
              R"(name="over-half" percent="85")") ==
        "grading.xml:33:7: error: this row is out of order [row-order]\n"
        "  hint: the rows go from the best to the worst\n");
  CHECK(fault("grading.xml", R"(name="a-quarter-or-less" percent="0")",
              R"(name="a-quarter-or-less" percent="3")") ==
        "grading.xml:35:7: error: the last word does not begin at 0 [row-order]\n"
        "  hint: give it percent 0, bound \"from\"\n");
  CHECK(fault("grading.xml", R"(<step percent="0.25" rating="8"/>)",
              R"(<step percent="0.25" rating="9"/>)")
            .find("[row-order]") != std::string::npos);
  CHECK(fault("fly-reel.xml", R"(<parts-list xmlns="urn:winchbook:knowledge:1")",
              R"(<parts-list xmlns="urn:winchbook:knowledge:2")") != "");
  CHECK(fault("fly-reel.xml", R"(reel-kind="fly-reel")", R"(reel-kind="multiplier")")
            .find("a second parts list for \"multiplier\" [parts-list-twice]") !=
        std::string::npos);
  CHECK(fault("sidecast.xml", R"(word="bracket")", R"(word="foot")").starts_with("sidecast.xml:"));
}

TEST_CASE("a folder without knowledge is told by name") {
  const auto loaded = load({base::RealFiles(), "/nowhere"});
  REQUIRE_FALSE(bool(loaded));
  CHECK(base::to_string(loaded.faults().front()).find("knowledge-1.xsd") != std::string::npos);
}

}  // namespace winchbook::knowledge
