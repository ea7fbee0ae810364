#include "record/named_people.h"

#include <doctest/doctest.h>

using namespace winchbook::record;  // NOLINT

namespace {

Person person(const char* id, const char* name, const char* short_name) {
  Person one;
  one.id.text = id;
  one.name = std::string(name);
  one.short_name = short_name;
  one.stand_in = "somebody";
  return one;
}

/// "[gus:Gus] and Augustus".
std::string named(const Record& record, std::string_view text) {
  std::string told;
  for (const NamedStretch& one : name_people(record, text))
    told += one.person.empty() ? one.words : "[" + one.person.text + ":" + one.words + "]";
  return told;
}

}  // namespace

TEST_CASE("people are named by whole words, the longest name first") {
  Record record;
  record.people = {person("gus", "Augusta Merrow", "Gus"), person("nell", "Nell Merrow", "Nell")};
  CHECK(named(record, "Gus and Augustus, Nell Merrow’s") ==
        "[gus:Gus] and Augustus, [nell:Nell Merrow]’s");
  CHECK(named(record, "") == "");
}

TEST_CASE("a short name that two share names nobody") {
  Record record;
  record.people = {person("gus", "Augusta Merrow", "Gus"), person("gustav", "Gustav Ott", "Gus")};
  CHECK(named(record, "Gus") == "Gus");
}

TEST_CASE("a text without names has stand-ins, and nothing of a family's name") {
  Record record;
  record.people = {person("gus", "Augusta Merrow", "Gus")};
  record.reel.maker.name = "Merrow Works";
  CHECK(without_names(record, "Gus of the Merrow Works, Augusta") ==
        "somebody of the Merrow Works, …");
}
