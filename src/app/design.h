#pragma once

#include <filesystem>
#include <map>
#include <string>

#include "base/result.h"
#include "document/style.h"
#include "library/library.h"
#include "report/template.h"
#include "text/font_book.h"
#include "words/catalogue.h"

namespace winchbook::app {

/// Which document is asked for, and how it should look.
struct DesignRequest {
  std::string document = "keepsake";  ///< what a template file is of, where one is named
  std::filesystem::path file;         ///< a template file; empty: the program's own of that name
  std::string paper;                  ///< empty: the template's, or that of the language's region
  std::string language;               ///< of the record
};

/// A document's template, its style and its words, with the template's own words in them.
struct Design {
  report::Template chapters;
  document::Style style;
  document::Style tight = {};  ///< its dense types, where the template tightens; else the same
  words::Catalogue words;
  std::filesystem::path file;                        ///< the template
  std::map<std::string, base::Location> faces = {};  ///< where the style names each face
};

/// Errors: no such document or paper, or a template of another document ("command-…"); what the
/// schemas refuse; a message that is not there to be reworded; a name of a document without words.
[[nodiscard]] base::Result<Design> read_design(library::Library& library,
                                               const DesignRequest& request);

/// Opens the faces a design names. Errors: a face that shared/fonts.txt does not list, told with
/// its place in the style.
[[nodiscard]] base::Result<text::FontBook> open_fonts(library::Library& library,
                                                      const Design& design);

}  // namespace winchbook::app
