#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/result.h"
#include "document/style.h"
#include "record/people.h"
#include "words/catalogue.h"
#include "xml/document.h"
#include "xml/schema.h"

namespace winchbook::report {

/// One chapter as a template asks for it.
struct SectionChoice {
  std::string id;
  std::optional<bool> starts_page;  ///< empty: as the section itself would
  bool keeps_together = false;      ///< begins a page where the rest of one cannot hold it
  std::string part = {};            ///< printed alone where it is asked for; empty: of no part
};

/// The chapters of a small job, and how small: most jobs are a clean and grease, which is told on
/// two pages. A record over the limits gets the whole book by itself.
struct ThinChoice {
  std::size_t places = 0;
  std::size_t photographs = 0;
  std::vector<SectionChoice> sections;
};

/// What must hold before a document is printed, since one with gaps would be signed and kept.
struct Needs {
  bool tray_closed = false;  ///< every part that came off is accounted for, or it is said why not
  bool hand_back = false;    ///< the reel has been handed back
  bool value = false;        ///< a value is told, whether sales are given or not
};

/// Other words in the place of a message, and what has to be entered before they are said, besides
/// what the message needs anyway.
struct Rewording {
  std::string key;
  std::string words;
  std::vector<std::string> needs;
};

/// A document as its template has it; which style file it names is read apart.
struct Template {
  std::string document;
  std::string style_file;
  std::string paper;      ///< empty: the record's region decides
  bool cover = true;      ///< false: its first chapter says what it is
  bool dense = false;     ///< set in the style's dense types: no block carries a size of its own
  bool tightens = false;  ///< set dense where a chapter would take more than a page
  bool nameless = false;  ///< nobody is named, whoever may be: it is pinned up, and lent
  Needs needs;
  record::Reader reader = record::Reader::owner;  ///< for whom, unless the command line says
  std::vector<SectionChoice> sections;
  std::optional<ThinChoice> thin;
  std::vector<Rewording> rewordings;
};

/// Whether a file is a template, and no style.
[[nodiscard]] bool is_template(const xml::Document& file);

/// Reads a template file that has been parsed. Errors: what the schema refuses; a section the
/// program does not know (the hint lists those it does).
[[nodiscard]] base::Result<Template> read_template(const xml::Document& file,
                                                   const xml::Schema& schema);

/// Reads a style file for one paper; `dense` takes its dense types where it has any. Errors: what
/// the schema refuses; a paper, family or role that is not there; a frame that is not as wide as
/// the columns: lines break alike on every paper, only pages differ.
[[nodiscard]] base::Result<document::Style> read_style(const xml::Document& file,
                                                       const xml::Schema& schema,
                                                       std::string_view paper, bool dense = false);

/// Where a style file names each face, so that one nobody knows is told where it stands.
[[nodiscard]] std::map<std::string, base::Location> faces_of(const xml::Document& file);

}  // namespace winchbook::report
