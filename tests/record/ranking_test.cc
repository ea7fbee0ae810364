#include "record/ranking.h"

#include <doctest/doctest.h>

namespace winchbook::record {
namespace {

Ranking ranking_of(std::string_view typed) {
  Ranking ranking;
  CHECK(read_typed(typed, ranking).empty());
  return ranking;
}

std::string refused(std::string_view typed) {
  Ranking ranking{{Matter::cost}};
  const auto faults = read_typed(typed, ranking);
  REQUIRE(faults.size() == 1);
  CHECK(ranking.matters == std::vector{Matter::cost});
  return faults.front().message;
}

}  // namespace

TEST_CASE("a ranking is read with the most important first, its hyphens written or not") {
  CHECK(ranking_of("memory, way back,use").matters ==
        std::vector{Matter::memory, Matter::way_back, Matter::use});
  CHECK(ranking_of("way-back").matters == std::vector{Matter::way_back});
  CHECK(ranking_of("").matters.empty());
}

TEST_CASE("a ranking names matters only, and each once") {
  CHECK(refused("use, glory") == "\"glory\" is none of the six matters");
  CHECK(refused("use,memory,use") == "\"use\" stands twice");
}

}  // namespace winchbook::record
