#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>

#include "base/result.h"
#include "document/document.h"
#include "forms/form.h"
#include "library/library.h"

namespace winchbook::forms {

/// What came of a job.
struct Outcome {
  std::string text;          ///< the answer, or what was written, in lines
  base::Diagnostics doubts;  ///< told beside it; an error among them is the job's own finding
  std::string note;          ///< said beside it, last: what was written, and where
  std::optional<document::Document> told = {};  ///< the answer as a document, behind `text`
};

/// In which surroundings a job runs.
struct Setting {
  library::Library& library;
  std::string command;                       ///< as it can be typed again; kept in the history
  bool somebody_there = false;               ///< who can be asked, and stop what is objected to
  std::function<void(const Outcome&)> tell;  ///< of a job that goes on: what came of each turn
};

/// A job while it is filled in: what it asks, and what does it. A fault whose rule a field
/// `answers` is an objection: the field is asked for, and the job runs again.
struct Job {
  Form form;
  std::function<base::Result<Outcome>(Setting&)> run;
  std::string more_help;  ///< below the fields
};

/// A row of the catalogue: "clean", or "photo add" for one of several jobs of a name.
struct Row {
  std::string_view name;
  std::string_view summary;  ///< one line of --help
  Job (*begin)() = nullptr;  ///< a fresh one; null: the name only gathers others
};

/// A job that fills a request of this type.
template <class Request>
Job job_of(Form (*form)(Request&), base::Result<Outcome> (*run)(const Request&, Setting&)) {
  auto request = std::make_shared<Request>();
  return {form(*request), [request, run](Setting& setting) { return run(*request, setting); }, {}};
}

}  // namespace winchbook::forms
