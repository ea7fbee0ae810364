#include "base/enum_words.h"

#include <doctest/doctest.h>

#include <array>

namespace a_room {

enum class Metal { brass, nickel_silver, not_listed };

constexpr auto enum_words(Metal /*list*/) {
  return std::to_array<winchbook::base::EnumWord<Metal>>({
      {Metal::brass, "brass"},
      {Metal::nickel_silver, "nickel-silver"},
  });
}

}  // namespace a_room

using a_room::Metal;
using namespace winchbook::base;  // NOLINT

TEST_CASE("a list's table is found beside the list, both ways") {
  CHECK(word_of(Metal::nickel_silver) == "nickel-silver");
  CHECK(value_of<Metal>("brass") == Metal::brass);
}

TEST_CASE("a word or a value that the table does not have is nothing") {
  CHECK(word_of(Metal::not_listed).empty());
  CHECK_FALSE(value_of<Metal>("tin"));
}
