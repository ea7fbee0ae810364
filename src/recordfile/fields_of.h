#pragma once

#include <concepts>
#include <type_traits>

namespace winchbook::recordfile {

/// A value that is filled, or one that is written.
template <class Value, class Kind>
concept Of = std::same_as<std::remove_const_t<Value>, Kind>;

}  // namespace winchbook::recordfile
