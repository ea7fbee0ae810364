#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "photo/print_answer.h"

namespace winchbook::daybook {

/// A photograph made ready for printing by winchbook-picture.
struct PrintedPicture {
  std::string jpeg;
  photo::PrintAnswer answer;
};

/// Gives a camera's file to the program that reads it (src/picture/), and takes what it answers
/// only when that is a JPEG of the size it says, upright, no larger than it is printed, that says
/// nothing besides. Errors begin with "the photograph": those of the program, or that it was ended
/// by a limit or fell over the file (rule "photo-limits"); and that the program is not there.
[[nodiscard]] base::Result<PrintedPicture> make_printable(const std::filesystem::path& program,
                                                          std::string_view bytes);

}  // namespace winchbook::daybook
