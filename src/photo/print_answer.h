#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/edtf_date.h"
#include "base/result.h"
#include "photo/print_size.h"

/// What the picture program (src/picture/) answers when it was given a camera's file: the JPEG to
/// print on its standard output, and beside it, on its standard error, lines of a name and a value.
/// Both programs read this one description.
namespace winchbook::photo {

/// How the JPEG to print came of the camera's file.
enum class Made {
  as_it_was,        ///< the very bytes: a plain JPEG of the right size that says nothing else
  without_remarks,  ///< the same picture, sample by sample; what it said besides is gone
  anew,             ///< turned, recoloured, made smaller, or of another kind of file
};

struct PrintAnswer {
  Size size;  ///< of the JPEG to print, upright
  Made made = Made::anew;
  std::string ending;             ///< of the camera's file, by what it is: "jpg", "heic", "tif"
  Size camera_size;               ///< as stored, before turning
  bool recoloured = false;        ///< its colours were told in another space than sRGB
  bool profile_unusable = false;  ///< it had a colour profile that makes no sense; taken as sRGB
  std::optional<base::Day> taken = {};  ///< by the camera's clock
};

/// "width 1963\nheight 1472\n…".
[[nodiscard]] std::string written(const PrintAnswer& answer);
/// The same for a picture that is refused: message, hint and rule of its first fault.
[[nodiscard]] std::string written(const base::Diagnostics& refused);

/// Reads either; nothing when the lines make no sense. What is told in words is cut to a sentence
/// of printable characters: the program that said it had read a stranger's file.
[[nodiscard]] std::optional<PrintAnswer> read_print_answer(std::string_view lines);
[[nodiscard]] std::optional<base::Diagnostic> read_refusal(std::string_view lines);

}  // namespace winchbook::photo
