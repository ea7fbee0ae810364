#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "assess/assessment.h"
#include "base/result.h"
#include "document/document.h"
#include "record/record.h"
#include "report/telling.h"
#include "report/template.h"
#include "words/catalogue.h"

namespace winchbook::report {

/// What a document is written from.
struct Source {
  const record::Record& record;
  const assess::Assessment& assessment;
  const Template& design;
  const words::Catalogue& words;  ///< with the template's rewordings, telling only what was entered
  const Edition& edition;
  const PhotographFactsById& photograph_facts;
  const Worth* worth = nullptr;                         ///< null: no value was asked for
  const assess::advice::Finding* courses = nullptr;     ///< null: the courses were not weighed
  const assess::fitting::Recorded* recorded = nullptr;  ///< null: drag and line were not asked for
};

/// From now on the words say only what was entered in the record.
void tell_only_what_was_entered(const record::Record& record, words::Catalogue& words);

/// Tells the record as the template asks: a document without positions.
/// Error: a record without a visit has nothing to tell.
[[nodiscard]] base::Result<document::Document> write(const Source& source);

/// The messages by which a document of its name is told: "document.keepsake", "subject.keepsake",
/// and "cover.eyebrow.keepsake" where it has a cover.
[[nodiscard]] std::vector<std::string> name_messages(const Template& design);

/// Whether one of its chapters, in the short list too, tells of drag and line.
[[nodiscard]] bool tells_drag_and_line(const Template& design);

/// The paper of a record's region when neither template nor command line names one: "letter" for
/// North America and a few other countries that use it, "a4" everywhere else.
/// Source: CLDR 42, supplemental measurementData, paperSize US-Letter.
[[nodiscard]] std::string paper_of(std::string_view language);

}  // namespace winchbook::report
