#include "daybook/entries/story.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <string>
#include <utility>

#include "cli/writing.h"
#include "daybook/entries/life.h"

namespace winchbook::cli {
namespace {

constexpr std::uintmax_t kMostBytes = std::uintmax_t{1} << 20U;

struct Options {
  WritingOptions writing;
  daybook::StoryRequest request;
  daybook::LifeRequest event;
  std::string file;
  bool approved = false;
};

/// Something that happened, of which the story tells or not.
Exit tell_event(Options options, Surroundings& surroundings) {
  daybook::LifeRequest& event = options.event;
  event.title = options.request.title;
  event.what = options.request.text;
  Questions questions(surroundings);
  questions.need("--title", "What is it called, in short?", event.title);
  questions.need("TEXT", "What happened?", event.what);
  questions.need("--source", "How is that known?", event.source);
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  return write(options.writing, daybook::life_event(std::move(event)), surroundings);
}

Exit tell_story(Options options, Surroundings& surroundings) {
  if (!options.file.empty()) {
    auto text = surroundings.files.read(options.file, kMostBytes);
    if (!text) return tell(text.faults(), surroundings.err);
    options.request.text = std::move(text).value();
  }
  if (!options.event.kind.empty()) return tell_event(std::move(options), surroundings);
  if (options.approved) {
    const auto day = day_of(options.writing, surroundings);
    if (!day) return tell(day.faults(), surroundings.err);
    options.request.approved_on = base::iso_text(*day);
  }
  return write(options.writing, daybook::story(std::move(options.request)), surroundings);
}

void add_event_options(CLI::App& app, daybook::LifeRequest& event) {
  app.add_option(
      "--event", event.kind,
      "not the story but something that happened in its life: engraving, repair, damage, "
      "loss, storage, …; TEXT tells it, --title names it");
  app.add_option("--id", event.id, "the event's id in the record; left out, made from its title");
  app.add_option("--date", event.date, "when, EDTF: 1962-08");
  app.add_option("--as-told", event.as_told, "when, in the teller's words");
  app.add_option("--by", event.by, "who did it");
  app.add_option("--part", event.parts, "a part it left on the reel; as often as needed");
  app.add_option("--source", event.source, "how it is known");
  app.add_option("--certainty", event.certainty, "certain, likely or possible");
  app.add_option("--keep-because", event.keep_because, "why it must stay");
  app.add_option("--must-stay", event.must_stay, "a part that must stay because of it");
  app.add_option("--photo", event.photos, "a photograph of it");
}

}  // namespace

Action add_story(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_option("TEXT", options->request.text, "paragraphs, parted by empty lines");
  app.add_option("--file", options->file, "a text file with them");
  app.add_option("--title", options->request.title, "a title; left out, the document's own");
  app.add_option("--answer", options->request.answer,
                 "one sentence that answers: what is its story?");
  app.add_option("--told-by", options->request.told_by, "who told it");
  app.add_flag("--approved", options->approved, "the teller read and approved it, on the day");
  add_event_options(app, options->event);
  return [options](Surroundings& surroundings) { return tell_story(*options, surroundings); };
}

}  // namespace winchbook::cli
