#include "daybook/reading.h"

#include <doctest/doctest.h>

#include <string>

namespace winchbook::daybook {
namespace {

Reading read(const char* typed, const std::string& unit = {}) {
  Reading reading;
  REQUIRE(read_typed(typed, reading).empty());
  return reckoned(reading, unit);
}

/// "3 to 22 N"; words in quotes.
std::string told(const Reading& reading) {
  if (!reading.low) return "\"" + reading.typed + "\"" + reading.unit;
  std::string text = reading.low->text();
  if (reading.high) text += " to " + reading.high->text();
  return text + " " + reading.unit;
}

std::string told(const char* typed) {
  Forces forces;
  const base::Diagnostics faults = read_typed(typed, forces);
  if (!faults.empty()) return faults.front().message;
  std::string text = forces.low.value.text();
  if (forces.high) text += " to " + forces.high->value.text();
  return text;
}

}  // namespace

TEST_CASE("a reading is figures in a unit, or words") {
  CHECK(told(read("9 s")) == "9 s");
  CHECK(told(read("3 to 22 N")) == "3 to 22 N");
  CHECK(told(read("0.20", "mm")) == "0.20 mm");
  CHECK(told(read("slips at half a turn")) == "\"slips at half a turn\"");
  CHECK(told(read("about 9 s", "s")) == "\"about 9 s\"");
  CHECK(told(read("3 to many, say 22", "N")) == "\"3 to many, say 22\"");
}

TEST_CASE("forces and lengths of other units are kept in newtons and millimetres") {
  CHECK(told(read("2 kg")) == "19.61 N");
  CHECK(told(read("3 to 5", "lb")) == "13.34 to 22.24 N");
  CHECK(told(read("0.25 in")) == "6.35 mm");
  CHECK(told(read("31 s", "N")) == "31 s");
}

TEST_CASE("a force is one or two figures of newtons, or of what can be reckoned into them") {
  CHECK(told("8 to 14 N") == "8 to 14");
  CHECK(told("20") == "20");
  CHECK(told("2 kg") == "19.61");
  CHECK(told("heavy") == "\"heavy\" is no force");
  CHECK(told("9 s") == "\"9 s\" is no force");
  Force limit;
  CHECK(read_typed("10 N", limit).empty());
  CHECK(limit.newtons.value.text() == "10");
  CHECK(read_typed("8 to 14 N", limit).front().message == "\"8 to 14 N\" is more than one force");
  CHECK(limit.newtons.value.text() == "10");
}

}  // namespace winchbook::daybook
