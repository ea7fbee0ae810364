#pragma once

#include <string>
#include <string_view>

#include "photo/print_answer.h"

namespace winchbook::picture {

/// The JPEG to print, and what there is to say of it.
struct Prepared {
  std::string jpeg;
  photo::PrintAnswer answer;
};

/// Makes a camera's file ready for printing: upright, in sRGB, no larger than it is ever printed, a
/// baseline JPEG that says nothing but its picture. A JPEG that is so already keeps its bytes; one
/// that only says more keeps its samples, its coefficients written anew, since each compression
/// loses. What hides behind the end marker (a film, a second picture) goes. Errors: of the
/// decoders, in a sentence.
[[nodiscard]] base::Result<Prepared> prepare(std::string_view bytes);

}  // namespace winchbook::picture
