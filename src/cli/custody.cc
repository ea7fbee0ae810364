#include "daybook/entries/custody.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <string>
#include <utility>

#include "cli/writing.h"

namespace winchbook::cli {
namespace {

struct Options {
  WritingOptions writing;
  daybook::CustodyRequest request;
};

Exit tell_custody(Options options, Surroundings& surroundings) {
  if (!options.request.holder.empty()) {
    Questions source(surroundings);
    source.need("--source", "How is that known?", options.request.source);
    if (!source.faults().empty()) return tell(source.faults(), surroundings.err);
  }
  return write(options.writing, daybook::custody(std::move(options.request)), surroundings);
}

}  // namespace

Action add_custody(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_option("HOLDER", options->request.holder, "who had it; left out, nobody knows (a gap)");
  add_id_option(app, options->request.id);
  app.add_option("--held", options->request.held, "both, possession or title");
  app.add_option("--from", options->request.from, "from when, EDTF: 1948, 1979~");
  app.add_option("--until", options->request.until, "until when; left out, they have it still");
  app.add_option("--how", options->request.how,
                 "how it came to them; of a gap, what little is known");
  app.add_option("--source", options->request.source, "how that is known");
  app.add_option("--certainty", options->request.certainty, "certain, likely or possible");
  app.add_option("--photo", options->request.photos, "a photograph of a document");
  return [options](Surroundings& surroundings) { return tell_custody(*options, surroundings); };
}

}  // namespace winchbook::cli
