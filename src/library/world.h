#pragma once

#include <filesystem>
#include <functional>
#include <string>
#include <string_view>

#include "base/edtf_date.h"
#include "base/files.h"
#include "base/result.h"
#include "words/catalogue.h"
#include "xml/document.h"
#include "xml/schema.h"

namespace winchbook::library {

/// Everything outside a record that the jobs touch.
struct World {
  base::Files& files;
  std::filesystem::path data;                   ///< holds schemas/, report-templates/ and shared/
  std::string version;                          ///< of this program
  std::function<base::Day()> today = {};        ///< asks this machine's clock
  std::function<std::string()> draw_salt = {};  ///< 32 hexadecimal digits from a source of chance
  std::filesystem::path picture_program = {};   ///< that makes photographs ready for printing
};

/// Reads and parses one of the program's own XML files, below `World::data` or elsewhere.
[[nodiscard]] base::Result<xml::Document> read_xml(const World& world,
                                                   const std::filesystem::path& path);

/// Compiles a schema of `schemas/`.
[[nodiscard]] base::Result<xml::Schema> read_schema(const World& world, std::string_view name);

/// The words of a language (`templates` is the compiled template-1.xsd), with those of the language
/// it falls back to. A language that has no file of its own speaks that of its first half ("en-IE":
/// "en-GB"), or else British English.
[[nodiscard]] base::Result<words::Catalogue> read_words(const World& world,
                                                        std::string_view language,
                                                        const xml::Schema& templates);

}  // namespace winchbook::library
