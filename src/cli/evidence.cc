#include "cli/evidence.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

namespace winchbook::cli {

void add_evidence_options(CLI::App& app, daybook::Evidence& evidence) {
  app.add_option("--because", evidence.because, "because of what, in a sentence");
  app.add_option("--mark", evidence.marks, "a mark that bears it out; as often as needed");
  app.add_option("--photo", evidence.photos, "a photograph that shows it; as often as needed");
  app.add_option("--told-by", evidence.told_by, "somebody who said so; as often as needed");
}

}  // namespace winchbook::cli
