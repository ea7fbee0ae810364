#pragma once

#include <filesystem>
#include <functional>
#include <string>

#include "base/edtf_date.h"
#include "base/files.h"
#include "base/result.h"
#include "xml/document.h"

namespace winchbook::library {

/// Everything outside a record that the jobs touch.
struct World {
  base::Files& files;
  std::filesystem::path data;                   ///< holds schemas/, report-templates/ and shared/
  std::string version;                          ///< of this program
  std::function<base::Day()> today = {};        ///< asks this machine's clock
  std::function<std::string()> draw_salt = {};  ///< 32 hexadecimal digits from a source of chance
  std::filesystem::path picture_program = {};   ///< that makes photographs ready for printing
  std::filesystem::path colour_profile = {};    ///< sRGB, as an ICC file; every PDF carries it
};

/// Reads and parses one of the program's own XML files, below `World::data` or elsewhere.
[[nodiscard]] base::Result<xml::Document> read_xml(const World& world,
                                                   const std::filesystem::path& path);

}  // namespace winchbook::library
