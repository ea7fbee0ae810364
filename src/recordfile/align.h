#pragma once

#include <cstddef>
#include <optional>
#include <pugixml.hpp>
#include <vector>

namespace winchbook::recordfile {

/// Whether two elements of written trees hold the same.
[[nodiscard]] bool same(pugi::xml_node one, pugi::xml_node other);

/// What stood at one place before and after; one of the two may be missing.
struct Pair {
  std::optional<std::size_t> before;
  std::optional<std::size_t> after;
  bool same = false;  ///< known to hold the same
};

/// Which elements of `before` became which of `after`, in order: those with an id by their id;
/// others first those that are alike in all, then those that begin alike, then those of one name.
/// What points at something is the same only when it points at the same.
[[nodiscard]] std::vector<Pair> aligned(const std::vector<pugi::xml_node>& before,
                                        const std::vector<pugi::xml_node>& after);

}  // namespace winchbook::recordfile
