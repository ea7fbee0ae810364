#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <string>

#include "base/files.h"
#include "knowledge/knowledge.h"

namespace winchbook::knowledge {

TEST_CASE("what holds a spring down is a place of the same list, and only springs are held") {
  const std::filesystem::path project = WINCHBOOK_SOURCE_DIR;
  const base::RealFiles files;
  int held = 0;
  for (const char* kind : {"multiplier", "baitcaster", "fixed-spool", "closed-face", "centrepin",
                           "sidecast", "fly-reel", "plain-winch", "wooden-reel"}) {
    CAPTURE(kind);
    const auto knowledge = load({files, project}, kind);
    REQUIRE(knowledge);
    const PartsList* list = parts_list(*knowledge, kind);
    REQUIRE(list != nullptr);
    for (const PartsEntry& one : list->places) {
      CAPTURE(one.word);
      CHECK(one.loose_pieces >= 1);
      if (one.freed_by.empty()) continue;
      ++held;
      CHECK(one.captive_spring);
      CHECK(find(*list, one.freed_by) != nullptr);
      CHECK(one.freed_by != one.word);
    }
  }
  CHECK(held >= 10);
}

TEST_CASE("a dog spring and its loose tip are two pieces, and fly when the bridge comes away") {
  // Common practice, of reels whose dog sits below the bridge.
  const std::filesystem::path project = WINCHBOOK_SOURCE_DIR;
  const base::RealFiles files;
  for (const char* kind : {"multiplier", "baitcaster"}) {
    const auto knowledge = load({files, project}, kind);
    REQUIRE(knowledge);
    const PartsEntry* spring = find(*parts_list(*knowledge, kind), "dog-spring");
    REQUIRE(spring != nullptr);
    CHECK(spring->freed_by == "bridge");
    CHECK(spring->loose_pieces == 2);
  }
}

}  // namespace winchbook::knowledge
