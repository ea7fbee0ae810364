#pragma once

#include <cstddef>
#include <optional>
#include <pugixml.hpp>
#include <string>
#include <vector>

namespace winchbook::recordfile {

/// An element and what it is known by.
struct Aligned {
  explicit Aligned(pugi::xml_node of);

  pugi::xml_node node;
  std::string id;
  std::string ref;
  std::string text;   ///< all of it
  std::string first;  ///< its first child: the piece of a finding, the name of a test
};

/// What stood at one place before and after; one of the two may be missing.
struct Pair {
  std::optional<std::size_t> before;
  std::optional<std::size_t> after;
};

/// Which elements of `before` became which of `after`, in order: those with an id by their id;
/// others first those that are alike in all, then those that begin alike, then those of one name.
/// What points at something is the same only when it points at the same.
[[nodiscard]] std::vector<Pair> aligned(const std::vector<Aligned>& before,
                                        const std::vector<Aligned>& after);

}  // namespace winchbook::recordfile
