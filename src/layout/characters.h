#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace winchbook::layout {

/// The character at `offset`, which is moved past it; U+FFFD for a byte that begins none.
[[nodiscard]] char32_t next_character(std::string_view utf8, std::size_t& offset);

/// A character that leaves no mark on paper by itself: a space of any width, or one that only
/// steers joining and breaking. Shaping finds it in every face.
[[nodiscard]] bool leaves_no_mark(char32_t character);

/// A space at which a line may end and that then takes no room.
[[nodiscard]] bool vanishes_at_line_end(char32_t character);

}  // namespace winchbook::layout
