#include "daybook/entries/story.h"

#include <fmt/format.h>

#include <utility>

#include "record/find_named.h"

namespace winchbook::daybook {

Change story(StoryRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto& there = draft.record().story;
    if (!there && request.text.empty()) {
      return base::of_command(base::error("there is no story yet to say this of",
                                          "give its text first", "command-story"));
    }
    if (there && there->approved_on && !request.text.empty() && request.approved_on.empty()) {
      return base::of_command(
          base::of_command(base::error(fmt::format("the story was approved {}, and new paragraphs are not",
                                  there->approved_on->text()),
                      "let the teller read it again and say --approved", "command-story")));
    }
    const pugi::xml_node story = draft.section("story");
    if (!request.title.empty()) draft.set(story, "title", request.title);
    if (!request.answer.empty()) {
      if (story.child("answer")) {
        return base::of_command(base::error("the story has its one sentence already",
                                            "change it in the record by hand", "command-story"));
      }
      draft.add_words(story, "answer", request.answer);
    }
    draft.add_paragraphs(story, request.text);
    if (!request.told_by.empty()) {
      const auto person = record::find_person(draft.record(), request.told_by);
      if (!person) return person.faults();
      if (!there || !there->told_by) draft.add_ref(story, "told-by", person.value()->id.text);
    }
    if (!request.approved_on.empty()) draft.set(story, "approved-on", request.approved_on);
    return Said{request.approved_on.empty()
                    ? std::string("the story was written on")
                    : fmt::format("the story is approved, {}", request.approved_on),
                {}};
  };
}

}  // namespace winchbook::daybook
