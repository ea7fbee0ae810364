#include "app/story.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <string>
#include <utility>

#include "cli/writing.h"

namespace winchbook::cli {
namespace {

constexpr std::uintmax_t kMostBytes = std::uintmax_t{1} << 20U;

struct Options {
  WritingOptions writing;
  app::StoryRequest request;
  std::string file;
  bool approved = false;
};

Exit tell_story(Options options, Surroundings& surroundings) {
  if (!options.file.empty()) {
    auto text = surroundings.files.read(options.file, kMostBytes);
    if (!text) return tell(text.faults(), surroundings.err);
    options.request.text = std::move(text).value();
  }
  if (options.approved) {
    const auto day = day_of(options.writing, surroundings);
    if (!day) return tell(day.faults(), surroundings.err);
    options.request.approved_on = base::iso_text(*day);
  }
  return write(options.writing, app::story(std::move(options.request)), surroundings);
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
  return [options](Surroundings& surroundings) { return tell_story(*options, surroundings); };
}

}  // namespace winchbook::cli
