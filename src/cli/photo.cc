#include <fmt/format.h>
#include <poll.h>

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <csignal>
#include <memory>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

#include "cli/place.h"
#include "cli/writing.h"
#include "daybook/entries/photo_add.h"
#include "daybook/entries/photo_pair.h"
#include "daybook/entries/photo_watch.h"
#include "recordfile/record_file.h"

namespace winchbook::cli {
namespace {

struct AddOptions {
  WritingOptions writing;
  daybook::PhotoAddRequest request;
  std::vector<std::string> files;
};

struct PairOptions {
  WritingOptions writing;
  std::string found;
  std::string left;
};

struct WatchOptions {
  WritingOptions writing;
  std::string folder;
  bool once = false;
};

library::World world_of(Surroundings& surroundings) {
  return {surroundings.files, surroundings.data, surroundings.version};
}

Exit tell_add(AddOptions options, Surroundings& surroundings) {
  daybook::PhotoAddRequest& request = options.request;
  if (request.step.empty()) {
    Questions questions(surroundings);
    questions.need("--stage", "When was it taken: found, left, or while at work?", request.stage);
    questions.need("--caption", "What is seen?", request.caption);
    if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  }
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  request.on = *day;
  const library::World world = world_of(surroundings);
  const daybook::EditRequest edit{options.writing.path, surroundings.command_line,
                                  options.writing.dry_run};
  return tell_edited(
      daybook::add_photographs(world, picture_program(), edit, request, options.files),
      options.writing.dry_run, surroundings);
}

Exit tell_pair(PairOptions options, Surroundings& surroundings) {
  return write(options.writing,
               daybook::photo_pair(std::move(options.found), std::move(options.left)),
               surroundings);
}

/// What pictures show that come before any step, in the record's language.
base::Result<std::string> caption_as_found(const std::string& path, const library::World& world) {
  const auto record = library::read_xml(world, recordfile::record_path(world.files, path));
  if (!record) return record.faults();
  const auto templates = library::read_schema(world, "template-1.xsd");
  if (!templates) return templates.faults();
  const auto words =
      library::read_words(world, record->root().attribute("lang").value(), *templates);
  if (!words) return words.faults();
  return words->say("photo.before-any-step");
}

volatile std::sig_atomic_t asked_to_stop = 0;  // NOLINT: a signal can reach nothing else

void on_signal(int /*signal*/) {
  asked_to_stop = 1;
}

/// Ctrl-C ends the watch once what is being done is done.
class StopOnSignal {
 public:
  StopOnSignal() {
    asked_to_stop = 0;
    struct sigaction action {};
    action.sa_handler = on_signal;
    ::sigaction(SIGINT, &action, &interrupt_);
    ::sigaction(SIGTERM, &action, &terminate_);
  }
  StopOnSignal(const StopOnSignal&) = delete;
  StopOnSignal& operator=(const StopOnSignal&) = delete;
  ~StopOnSignal() {
    ::sigaction(SIGINT, &interrupt_, nullptr);
    ::sigaction(SIGTERM, &terminate_, nullptr);
  }
  [[nodiscard]] static bool asked() { return asked_to_stop != 0; }

 private:
  struct sigaction interrupt_ {};
  struct sigaction terminate_ {};
};

/// One look; the worst that happened.
Exit tell_look(daybook::Watch& watch, bool dry_run, Surroundings& surroundings) {
  Exit worst = kFine;
  for (const auto& edited : watch.look()) {
    const bool only_warns = edited && edited->sentence.empty();
    const Exit one = only_warns ? tell(edited->warnings, surroundings.err)
                                : tell_edited(edited, dry_run, surroundings);
    surroundings.out.flush();
    worst = std::max(worst, one);
  }
  return worst;
}

Exit tell_watch(const WatchOptions& options, Surroundings& surroundings) {
  constexpr int kPauseMilliseconds = 1000;
  const library::World world = world_of(surroundings);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  const auto caption = caption_as_found(options.writing.path, world);
  if (!caption) return tell(caption.faults(), surroundings.err);
  auto watch = daybook::Watch::begin(
      world, {{options.writing.path, surroundings.command_line, options.writing.dry_run},
              picture_program(),
              options.folder,
              *day,
              *caption,
              options.once});
  if (!watch) return tell(watch.faults(), surroundings.err);
  const StopOnSignal stop;
  if (!options.once) {
    surroundings.err << fmt::format(
        "watching {}; {} pictures that are there already are left alone; Ctrl-C ends\n",
        options.folder, watch->left_alone());
  }
  Exit worst = kFine;
  while (!StopOnSignal::asked()) {
    worst = std::max(worst, tell_look(watch.value(), options.writing.dry_run, surroundings));
    if (options.once && !watch->is_waiting()) break;
    ::poll(nullptr, 0, kPauseMilliseconds);
  }
  surroundings.out << fmt::format("{} photograph{} taken in\n", watch->taken(),
                                  watch->taken() == 1 ? "" : "s");
  return worst;
}

void add_add(CLI::App& app, AddOptions& options) {
  daybook::PhotoAddRequest& request = options.request;
  add_writing_options(app, options.writing);
  app.add_option("FILE", options.files, "photographs: JPEG, PNG, HEIC, AVIF, WebP or TIFF")
      ->required();
  app.add_option("--stage", request.stage,
                 "found, left, strip-down, cleaning, work, fitting, test, history, document");
  app.add_option("--step", request.step,
                 "the step of taking apart it shows, by number or id, or \"last\"");
  app.add_option("--caption", request.caption, "what is seen; with --step, its words serve");
  app.add_option("--part", request.parts, "a part it shows; with --step, its parts serve");
  app.add_option("--name", request.name, "a name for it; left out, that of the file");
  app.add_option("--alt", request.alternative, "what somebody who cannot see it is told");
  app.add_option("--scale", request.scale, "what gives the scale: \"rule in millimetres\"");
  app.add_option("--rights", request.rights, "whose it is, if lent");
  app.add_option("--by", request.by, "who took it");
  app.add_option("--shows", request.shows, "somebody who can be recognised in it");
  app.add_option("--taken", request.taken, "when; left out, by the camera's clock");
  app.add_option("--pair-of", request.pair_of, "its fellow taken as found from the same place");
}

}  // namespace

Action add_photo(CLI::App& app) {
  auto add = std::make_shared<AddOptions>();
  auto pair = std::make_shared<PairOptions>();
  auto watch = std::make_shared<WatchOptions>();
  app.require_subcommand(1);
  CLI::App* adds = app.add_subcommand("add", "take photographs in, made ready for printing");
  add_add(*adds, *add);
  CLI::App* pairs = app.add_subcommand("pair", "pair a photograph as found with one as left");
  add_writing_options(*pairs, pair->writing);
  pairs->add_option("FOUND", pair->found, "the photograph taken as found")->required();
  pairs->add_option("LEFT", pair->left, "the one taken as left, from the same place")->required();
  CLI::App* watches = app.add_subcommand(
      "watch", "take each new picture of a camera's folder into the step entered last");
  add_writing_options(*watches, watch->writing);
  watches->add_option("FOLDER", watch->folder, "the camera's folder")->required();
  watches->add_flag("--once", watch->once,
                    "take what is there and not in the record yet, then end");
  for (CLI::App* one : {adds, pairs, watches}) {
    for (CLI::Option* option : one->get_options()) {
      if (!option->get_positional()) option->allow_extra_args(false);
    }
  }
  return [=](Surroundings& surroundings) {
    if (adds->parsed()) return tell_add(*add, surroundings);
    if (pairs->parsed()) return tell_pair(*pair, surroundings);
    return tell_watch(*watch, surroundings);
  };
}

}  // namespace winchbook::cli
