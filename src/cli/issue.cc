#include "app/issue.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>

#include "cli/command.h"
#include "cli/valuing.h"
#include "record/enum_words.h"

namespace winchbook::cli {
namespace {

struct Options {
  std::string record;
  std::string document = "keepsake";
  std::string design;
  std::string paper;
  std::string reader;
  std::string date;
  std::string output;
  std::string dump;
  std::string unaccounted;
  std::string only;
  ValuingOptions valuing;
  bool with_value = false;
  bool final = false;
};

Exit wrong(std::ostream& err, const base::Diagnostics& faults) {
  for (const base::Diagnostic& fault : faults)
    err << base::to_string(fault);
  return kCommandLineWrong;
}

/// Names of documents and papers, however they are typed.
std::string in_small_letters(std::string text) {
  for (char& letter : text) {
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  }
  return text;
}

Exit issue(const Options& options, Surroundings& surroundings) {
  app::IssueRequest request;
  request.record = options.record;
  request.document = in_small_letters(options.document);
  request.design = options.design;
  request.paper = in_small_letters(options.paper);
  if (!options.reader.empty()) request.reader = record::value_of<record::Reader>(options.reader);
  request.output = options.output;
  request.final = options.final;
  request.unaccounted = options.unaccounted;
  request.only = options.only;
  request.command = surroundings.command_line;
  request.date = surroundings.today;
  if (!options.date.empty()) {
    const auto day = base::parse_day(options.date);
    if (!day) return wrong(surroundings.err, day.faults());
    request.date = *day;
  }
  const auto terms = terms_of(options.valuing);
  if (!terms) return wrong(surroundings.err, terms.faults());
  request.value = *terms;
  request.with_value = options.with_value;
  if (options.dump == "words") request.give = app::IssueRequest::Give::words;
  if (options.dump == "pages") request.give = app::IssueRequest::Give::pages;
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto issued = app::issue(world, request);
  if (!issued) return tell(issued.faults(), surroundings.err);
  for (const base::Diagnostic& doubt : issued->warnings) {
    surroundings.err << base::to_string(doubt);
  }
  surroundings.out << issued->text;
  if (!issued->file.empty()) {
    surroundings.err << "wrote " << issued->file.string() << ": " << issued->pages
                     << (issued->pages == 1 ? " page" : " pages") << ", edition " << issued->edition
                     << ", " << issued->code << "\n";
  }
  return kFine;
}

}  // namespace

Action add_issue(CLI::App& app) {
  auto options = std::make_shared<Options>();
  app.add_option("PATH", options->record, "the reel's folder, or its record.xml")->required();
  app.add_option("--document", options->document,
                 "which document: keepsake, or another of report-templates/");
  app.add_option("-o,--output", options->output,
                 "the PDF to write; left out, it stands beside the record");
  app.add_option("--date", options->date, "the day of issue, as 2026-06-19; left out, today");
  app.add_option("--for", options->reader,
                 "who will read it: owner, insurer or stranger; what they may not see is withheld. "
                 "Left out, the document's usual reader")
      ->check(CLI::IsMember({"owner", "insurer", "stranger"}));
  app.add_option("--paper", options->paper, "a4 or letter; left out, the region's own");
  app.add_option("--template", options->design, "a template file of your own");
  app.add_flag("--final", options->final,
               "for good: list it in editions.xml and keep it in issued/");
  app.add_option(
      "--unaccounted", options->unaccounted,
      "the reason, to be printed, for a keepsake or a hand-back receipt with a part that "
      "is unaccounted for");
  app.add_option("--only", options->only, "of the labels only these: tags, bags or steps")
      ->check(CLI::IsMember({"tags", "bags", "steps"}));
  add_valuing_options(app, options->valuing,
                      "a value statement tells by those in the record, and no other document tells "
                      "a value",
                      "that of issue");
  app.add_flag("--with-value", options->with_value,
               "tell the value that the record's own sales give, in whichever document");
  app.add_option("--dump", options->dump,
                 "print what would stand in it instead: words, or pages with every position")
      ->check(CLI::IsMember({"words", "pages"}));
  return [options](Surroundings& surroundings) { return issue(*options, surroundings); };
}

}  // namespace winchbook::cli
