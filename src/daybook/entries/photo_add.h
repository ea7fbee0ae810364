#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/edit.h"
#include "daybook/picture_program.h"

namespace winchbook::daybook {

/// A camera's file that was made ready for printing.
struct CameraPicture {
  std::filesystem::path file;  ///< where the camera's own file is
  std::string sha256;          ///< of its bytes
  PrintedPicture printed;
};

/// What is to be said of the photographs that come in together.
struct PhotoAddRequest {
  base::Day on;
  std::string name;   ///< of the files; empty: that of the camera's file
  std::string stage;  ///< "found", "left", or a word of the schema; empty with a step
  std::string step;   ///< a step of taking apart, by number or id; "last" for the one entered last
  std::string caption;  ///< empty with a step: its own words
  std::string alternative;
  std::string scale;
  std::string rights;
  std::string by;
  std::string taken;  ///< EDTF; empty: by the camera's clock
  std::string pair_of;
  std::vector<std::string> parts;  ///< empty with a step: its own
  std::vector<std::string> shows;  ///< people who can be recognised
};

/// Reads a camera's file and has it made ready for printing. Errors stand at the file.
[[nodiscard]] base::Result<CameraPicture> read_camera_picture(const library::World& world,
                                                              const std::filesystem::path& program,
                                                              const std::filesystem::path& file);

/// Adds the photographs: photos/NAME.jpg to print, and the camera's own file, unless it is the very
/// same, in originals/. Names that are taken get a number, with a warning. Errors: a photograph
/// that is in the record already ("photo-twice"), names nobody has.
[[nodiscard]] Change photo_add(const library::World& world, PhotoAddRequest request,
                               std::vector<CameraPicture> pictures);

/// The whole job: reads every file, then edits. All faults of the files together; with one fault
/// nothing comes in.
[[nodiscard]] base::Result<Edited> add_photographs(const library::World& world,
                                                   const std::filesystem::path& program,
                                                   const EditRequest& edit_request,
                                                   const PhotoAddRequest& request,
                                                   const std::vector<std::string>& files);

}  // namespace winchbook::daybook
