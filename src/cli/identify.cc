#include "daybook/entries/identify.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <string>
#include <utility>

#include "cli/evidence.h"
#include "cli/writing.h"

namespace winchbook::cli {
namespace {

struct Options {
  WritingOptions writing;
  daybook::IdentifyRequest request;
};

Exit tell_identify(Options options, Surroundings& surroundings) {
  const daybook::IdentifyRequest& request = options.request;
  const bool rests = !request.evidence.empty() || !request.certainty.empty();
  if (rests && request.maker.empty() == request.made.empty()) {
    return tell({base::error("what it rests on is of the maker or of the date",
                             "give --maker and --made one after the other, each with its own",
                             "command-evidence")},
                surroundings.err);
  }
  return write(options.writing, daybook::identify(std::move(options.request)), surroundings);
}

}  // namespace

Action add_identify(CLI::App& app) {
  auto options = std::make_shared<Options>();
  daybook::IdentifyRequest& request = options->request;
  add_writing_options(app, options->writing);
  app.add_option("--name", request.name, "what the documents call it");
  app.add_option("--model", request.model, "the maker's name for the model");
  app.add_option("--brake", request.brake, "star, lever, click or none");
  app.add_option("--maker", request.maker, "who made it");
  app.add_option("--maker-kind", request.maker_kind, "made-by, attributed or not-determined");
  app.add_option("--maker-place", request.maker_place, "where the works stood");
  app.add_option("--still-trading", request.still_trading, "yes or no");
  app.add_option("--sold-by", request.sold_by, "a retailer whose name it bears");
  app.add_option("--hand", request.hand,
                 "the hand that winds: right; or as made, found and left: \"right, left, left\"");
  app.add_option("--how-converted", request.how_converted, "how the hand was changed");
  app.add_option("--made", request.made, "when it was made, EDTF: 1947/1948");
  app.add_option("--certainty", request.certainty, "certain, likely or possible");
  add_evidence_options(app, request.evidence);
  app.add_option("--box-and-papers", request.box_and_papers, "what came with it");
  app.add_option("--cover", request.cover, "the photograph for the cover");
  app.add_option("--own-interest", request.own_interest, "the bench's own interest in the reel");
  app.add_option("--terms", request.terms, "the bench's terms for goods that nobody collects");
  return [options](Surroundings& surroundings) { return tell_identify(*options, surroundings); };
}

}  // namespace winchbook::cli
