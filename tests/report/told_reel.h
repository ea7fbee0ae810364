#pragma once

#include <string>
#include <vector>

#include "document/document.h"
#include "record/record.h"
#include "report/telling.h"
#include "report/template.h"
#include "words/catalogue_file.h"

/// What the tests of the report share: the shipped words, templates and schemas, and a record told
/// by them.
namespace report_test {

/// A demo reel's record: "skerry-40", "dunlin-2".
[[nodiscard]] winchbook::record::Record demo(const std::string& reel);

/// A record told by a template: the shipped keepsake, or another template's bytes.
[[nodiscard]] winchbook::document::Document told(const winchbook::record::Record& record);
[[nodiscard]] winchbook::document::Document told(const winchbook::record::Record& record,
                                                 const std::string& design);
/// The same as an edition of its own: another document, another day.
[[nodiscard]] winchbook::document::Document told(const winchbook::record::Record& record,
                                                 const std::string& design,
                                                 const winchbook::report::Edition& edition);
/// The error of a record that cannot be told.
[[nodiscard]] std::string refusal(const winchbook::record::Record& record);

/// Bytes of a file below the project's folder.
[[nodiscard]] std::string bytes_of(const std::string& path);
/// A template, or all its faults as they are printed.
[[nodiscard]] winchbook::base::Result<winchbook::report::Template> read_design(
    const std::string& bytes);
[[nodiscard]] winchbook::base::Result<winchbook::document::Style> read_look(
    const std::string& bytes, const std::string& paper);
/// The shipped file with the first `before` replaced.
[[nodiscard]] std::string changed(const std::string& path, const std::string& before,
                                  const std::string& after);
[[nodiscard]] std::string printed(const winchbook::base::Diagnostics& faults);
[[nodiscard]] winchbook::words::CatalogueFile british();

/// The ids of the chapters, in order.
[[nodiscard]] std::vector<std::string> chapters(const winchbook::document::Document& document);
/// Null when the document has no such chapter.
[[nodiscard]] const winchbook::document::Chapter* chapter(
    const winchbook::document::Document& document, const std::string& id);
/// Everything said in one chapter, as its dump has it.
[[nodiscard]] std::string words_of(const winchbook::document::Chapter& chapter);
/// Every figure of a chapter in reading order, in blocks and beside them.
[[nodiscard]] std::vector<const winchbook::document::Figure*> figures(
    const winchbook::document::Chapter& chapter);
[[nodiscard]] std::size_t times(const std::string& text, const std::string& words);

}  // namespace report_test
