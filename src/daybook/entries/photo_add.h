#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "daybook/entry.h"
#include "daybook/picture_program.h"
#include "record/photos.h"

namespace winchbook::daybook {

/// A stage of the work; also as it is said, "found" for "as-found".
struct TypedStage {
  record::Stage stage = record::Stage::as_found;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, TypedStage& into);

/// A camera's file that was made ready for printing.
struct CameraPicture {
  std::filesystem::path file;  ///< where the camera's own file is
  std::string sha256;          ///< of its bytes
  PrintedPicture printed;
};

/// Photographs that come in together, and what is to be said of them.
struct PhotoAddRequest : Entry {
  std::vector<std::filesystem::path> files;  ///< the camera's
  std::vector<CameraPicture> pictures;       ///< the same, read (read_pictures)
  std::string name;                          ///< of the files; empty: that of the camera's file
  std::optional<TypedStage> stage;           ///< empty with a step: of taking apart
  std::string step;  ///< a step of taking apart, by number or id; "last" for the one entered last
  std::string caption;             ///< empty with a step: its own words
  std::vector<std::string> parts;  ///< empty with a step: its own
  std::string alternative;
  std::string scale;
  std::string rights;
  std::string by;
  std::vector<std::string> shows;       ///< people who can be recognised
  std::optional<base::EdtfDate> taken;  ///< empty: by the camera's clock
  std::string pair_of;
  bool none = false;  ///< none was taken in this stay
};

/// Reads the camera's files and has them made ready for printing. All faults of the files together,
/// each at its file.
[[nodiscard]] base::Diagnostics read_pictures(PhotoAddRequest& request, library::Library& library);

/// Adds the photographs: photos/NAME.jpg to print, and the camera's own file, unless it is the very
/// same, in originals/. Names that are taken get a number, with a warning. Errors: a photograph
/// that is in the record already ("photo-twice"), names nobody has.
[[nodiscard]] base::Result<Said> photo_add(const PhotoAddRequest& request, Draft& draft);

[[nodiscard]] forms::Job photo_add_job();

}  // namespace winchbook::daybook
