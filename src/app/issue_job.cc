#include <fmt/format.h>

#include <utility>

#include "app/issue.h"
#include "base/words_of_text.h"
#include "json/json.h"
#include "record/enum_words.h"

namespace winchbook::app {
namespace {

/// What is typed of an issue.
struct IssueTyped {
  IssueRequest request;
  bool json = false;
};

forms::Form form(IssueTyped& typed) {
  using namespace forms;  // NOLINT: a form is written in its words
  IssueRequest& request = typed.request;
  Form all{
      field("PATH", "the reel's folder, or its record.xml", request.record).must(),
      field("--document", "which document: keepsake, or another of report-templates/",
            request.document),
      field("-o,--output", "the PDF to write; left out, it stands beside the record",
            request.output),
      field("--date", "the day of issue, as 2026-06-19; left out, that of the record's last entry",
            request.date),
      field("--for",
            "who will read it: owner, insurer or stranger; what they may not see is withheld. Left "
            "out, the document's usual reader",
            request.reader),
      field("--paper", "a4 or letter; left out, the region's own", request.paper),
      field("--template", "a template file of your own", request.design),
      flag("--final", "for good: list it in editions.xml and keep it in issued/", request.final),
      field("--unaccounted",
            "the reason, to be printed, for a keepsake or a hand-back receipt with a part that is "
            "unaccounted for",
            request.unaccounted),
      field("--only", "of the labels only these: tags, bags or steps", request.only)
          .of({"tags", "bags", "steps"}),
  };
  append(all, answers::valuing_form(request.value,
                                    "a value statement tells by those in the record, and no other "
                                    "document tells a value",
                                    "that of issue"));
  all.push_back(flag("--with-value",
                     "tell the value that the record's own sales give, in whichever document",
                     request.with_value));
  all.push_back(field("--dump",
                      "print what would stand in it instead: words, or pages with every position",
                      request.dump));
  all.push_back(flag("--json", "what was issued as JSON (schemas/issue.schema.json)", typed.json));
  return all;
}

std::string issued_as_json(const Issued& issued) {
  return json::answer("issue", {{"file", issued.file.string()},
                                {"pages", issued.pages},
                                {"edition", issued.edition},
                                {"code", issued.code},
                                {"doubts", json::list(issued.warnings, json::fault)}});
}

base::Result<forms::Outcome> run(const IssueTyped& typed, forms::Setting& setting) {
  if (typed.json && typed.request.dump) {
    return base::of_command(base::error("--json tells what was issued, and --dump issues nothing",
                                        "leave one of them out", "command-options"));
  }
  IssueRequest request = typed.request;
  // Names of documents and papers, however they are typed.
  request.document = base::in_small_letters(request.document);
  request.paper = base::in_small_letters(request.paper);
  request.command = setting.command;
  auto done = issue(setting.library, request);
  if (!done) return done.faults();
  Issued issued = std::move(done).value();
  if (typed.json) issued.text = issued_as_json(issued);
  forms::Outcome outcome{std::move(issued.text), std::move(issued.warnings), {}};
  if (!issued.file.empty()) {
    outcome.note =
        fmt::format("wrote {}: {} {}, edition {}, {}\n", issued.file.string(), issued.pages,
                    issued.pages == 1 ? "page" : "pages", issued.edition, issued.code);
    if (!request.date) {
      outcome.note += fmt::format("dated {}, the day of the record's last entry\n",
                                  base::iso_text(issued.date));
    }
    outcome.note += issued.withheld;
  }
  return outcome;
}

}  // namespace

forms::Job issue_job() {
  return forms::job_of(form, run);
}

}  // namespace winchbook::app
