#include "daybook/entries/story.h"

#include <fmt/format.h>

#include <cstdint>
#include <iterator>
#include <utility>

#include "daybook/looks.h"
#include "daybook/open_visit.h"
#include "recordfile/typed_words.h"

namespace winchbook::daybook {
namespace {

forms::Form form(StoryRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  const auto is_event = [&request] { return request.event.kind.has_value(); };
  Form fields = {
      field("--file", "a text file with them", request.file),
      field("--title", "a title; left out, the document's own", request.title)
          .asks("What is it called, in short?", is_event),
      field("TEXT", "paragraphs, parted by empty lines", request.text)
          .asks("What happened?",
                [&request, is_event] { return is_event() && request.file.empty(); }),
      field("--answer", "one sentence that answers: what is its story?", request.answer),
      field("--told-by", "who told it", request.told_by),
      flag("--approved", "the teller read and approved it, on the day", request.approved),
  };
  append(fields, life_form(request.event));
  return fields;
}

base::Diagnostics read_file(StoryRequest& request, forms::Setting& setting) {
  if (request.file.empty()) return {};
  constexpr std::uintmax_t kMostBytes = std::uintmax_t{1} << 20U;
  auto text = setting.library.files().read(request.file, kMostBytes);
  if (!text) return text.faults();
  request.text = std::move(text).value();
  return {};
}

base::Diagnostics objections(const StoryRequest& request, const Draft& draft) {
  const auto refused = [](std::string message, std::string hint) {
    return base::Diagnostics{
        base::of_command(base::error(std::move(message), std::move(hint), "command-story"))};
  };
  const auto& there = draft.record().story;
  if (!there) {
    if (!request.text.empty()) return {};
    return refused("there is no story yet to say this of", "give its text first");
  }
  if (there->approved_on && !request.text.empty() && !request.approved) {
    return refused(fmt::format("the story was approved {}, and new paragraphs are not",
                               there->approved_on->text()),
                   "let the teller read it again and say --approved");
  }
  if (!request.answer.empty() && !there->answer.empty()) {
    return refused("the story has its one sentence already", "change it in the record by hand");
  }
  return {};
}

}  // namespace

base::Result<Said> story(const StoryRequest& request, Draft& draft) {
  if (request.event.none)
    return found_none(draft, record::LookedFor::life, request.on, request.event.by);
  if (request.event.kind) {
    LifeRequest event = request.event;
    event.title = request.title;
    event.what = request.text;
    return life_event(event, draft);
  }
  if (auto faults = objections(request, draft); !faults.empty()) return faults;
  record::Story story = draft.record().story.value_or(record::Story{});
  set_if(story.title, request.title);
  draft.put(story.answer, request.answer);
  record::Prose more = recordfile::prose_of(draft.record(), request.text);
  std::move(more.begin(), more.end(), std::back_inserter(story.paragraphs));
  const auto told_by = person_of(draft.record(), request.told_by);
  if (!told_by) return told_by.faults();
  if (!story.told_by) story.told_by = *told_by;
  if (request.approved) story.approved_on = date_of(request.on);
  draft.record().story = std::move(story);
  return Said{request.approved
                  ? fmt::format("the story is approved, {}", base::iso_text(request.on))
                  : "the story was written on",
              {}};
}

forms::Job story_job() {
  return entry_job<StoryRequest>(form, story, read_file);
}

}  // namespace winchbook::daybook
