#include "daybook/entries/part.h"

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
  daybook::PartRequest request;
};

Exit tell_part(Options options, Surroundings& surroundings) {
  Questions questions(surroundings);
  questions.need("NAME", "What is the part called?", options.request.name);
  if (options.request.empty) {
    questions.need("--kind", "Of which kind is the place (a word of the parts list)?",
                   options.request.place.kind);
  }
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  return write(options.writing, daybook::part(std::move(options.request)), surroundings);
}

void add_place_options(CLI::App& app, Options& options) {
  daybook::PlaceRequest& place = options.request.place;
  app.add_option("--place", place.said, "where it sits: a place, or with --kind a new one's name");
  app.add_option("--place-id", place.id, "a new place's id; left out, made from its name");
  app.add_option("--kind", place.kind, "the place's word in the parts list: plate-screw");
  app.add_option("--assembly", place.assembly, "the assembly it belongs to: \"tail side\"");
  app.add_option("--quantity", place.quantity, "how many belong there");
  app.add_option("--weight", place.weight, "its weight in the index of originality");
  app.add_option("--area", place.area, "the surface open to view, in square millimetres");
  app.add_flag("--consumable", place.consumable, "worn and replaced as a matter of course");
  app.add_flag("--may-be-empty", place.may_be_empty, "the maker left it empty on some reels");
  app.add_flag("--spring", place.spring, "a spring under load sits there");
  app.add_flag("--empty", options.request.empty, "nothing sits there: NAME is the place's");
}

}  // namespace

Action add_part(CLI::App& app) {
  auto options = std::make_shared<Options>();
  daybook::PartRequest& request = options->request;
  add_writing_options(app, options->writing);
  app.add_option("NAME", request.name, "the part's name; with --known, as you call it");
  add_id_option(app, request.id);
  app.add_flag("--known", request.known, "it is in the record: set what is given");
  add_place_options(app, *options);
  app.add_option("--count", request.count, "how many like things it is");
  app.add_option("--role", request.role, "content (came with it) or spare; left out, a part");
  app.add_option("--material", request.material, "of what it is");
  app.add_option("--finish", request.finish,
                 "a layer, the lowest first: \"nickel plate (maker, 1948): worn at the ends\"");
  app.add_option("--maker-name", request.maker_name, "another maker's name");
  app.add_option("--donor", request.donor, "what it came from: a donor of the record");
  app.add_option("--fragment-of", request.fragment_of, "the part it broke off from");
  app.add_option("--made", request.made, "when it was made, if that is known apart");
  app.add_option("--note", request.note, "a note");
  app.add_option("--fitted-by", request.fitted_by,
                 "maker, bench, not-known, or somebody; left out, not-known");
  app.add_option("--from", request.from, "it sat there from when");
  app.add_option("--until", request.until, "it sat there until when");
  app.add_option("--photo", request.photos, "a photograph of it as fitted");
  app.add_option("--now", request.now,
                 "where it is: fitted, bagged, to-owner, kept-by-bench, lost, scrapped, with-reel, "
                 "not-known");
  app.add_option("--label", request.bag, "the bag's label: \"bag 3\"");
  app.add_option("--since", request.since, "since when it is there");
  app.add_option("--now-note", request.now_note, "a note on where it is");
  return [options](Surroundings& surroundings) { return tell_part(*options, surroundings); };
}

}  // namespace winchbook::cli
