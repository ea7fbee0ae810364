#pragma once

#include <array>
#include <filesystem>
#include <optional>
#include <string>

#include "answers/value_terms.h"
#include "base/edtf_date.h"
#include "base/enum_words.h"
#include "forms/job.h"
#include "library/library.h"
#include "record/people.h"

namespace winchbook::app {

/// What is asked of one issue.
struct IssueRequest {
  enum class Dump { words, pages };

  std::filesystem::path record;          ///< a reel's folder or its record.xml
  std::string document = "keepsake";     ///< of a template file, the one that it names
  std::filesystem::path design;          ///< a template file; empty: the program's own of that name
  std::string paper;                     ///< "a4" or "letter"; empty: template, then region
  std::optional<record::Reader> reader;  ///< for whom; empty: the template's usual reader
  std::optional<base::Day> date;         ///< of issue; empty: that of the record's last entry
  answers::ValueTerms value;             ///< by the day of issue, where no other is given
  bool with_value = false;       ///< the value is told, whether its template needs it or not
  std::filesystem::path output;  ///< the PDF; empty: beside the record
  std::string only = {};         ///< of the labels: tags, bags or steps; empty: all
  bool final = false;            ///< listed in editions.xml and kept in issued/
  std::string unaccounted;       ///< why a keepsake is issued with a tray that is not closed
  std::string command;           ///< as it was typed; told to whoever waits for the lock
  std::optional<Dump> dump;      ///< what would be printed, as text; empty: the PDF is written
};

[[nodiscard]] constexpr auto enum_words(IssueRequest::Dump /*list*/) {
  return std::to_array<base::EnumWord<IssueRequest::Dump>>({
      {IssueRequest::Dump::words, "words"},
      {IssueRequest::Dump::pages, "pages"},
  });
}

struct Issued {
  std::filesystem::path file;  ///< the PDF written; empty when text was asked for
  std::string text;            ///< the words or the pages, when they were asked for
  std::size_t pages = 0;
  int edition = 1;
  base::Day date;  ///< of issue
  std::string code;
  base::Diagnostics warnings;
  std::string withheld =
      {};  ///< lines: what was taken out and where, what was looked for; or empty
};

/// Reads, withholds, assesses, writes, lays out and draws one document. Errors: everything wrong
/// with the record; something withheld that has no salt, or that survives elsewhere; a photograph
/// that is not what the record says; a character no face has; a folder that cannot be written to.
/// Nothing is left half written. What its template needs must hold; where that is a closed tray,
/// a reason may be given instead, which is printed. For good, it holds the lock of the reel's
/// folder, so that two at once do not take one edition.
[[nodiscard]] base::Result<Issued> issue(library::Library& library, const IssueRequest& request);

[[nodiscard]] forms::Job issue_job();

}  // namespace winchbook::app
