#pragma once

#include <string>

#include "daybook/entries/life.h"
#include "daybook/entry.h"

namespace winchbook::daybook {

/// The story, or more of it; or something that happened, of which the story tells or not.
struct StoryRequest : Entry {
  std::string text;            ///< paragraphs, parted by empty lines
  std::filesystem::path file;  ///< that holds them
  std::string title;
  std::string answer;  ///< one sentence that answers: what is its story?
  std::string told_by;
  bool approved = false;  ///< the teller read and approved it on the day
  LifeRequest event;      ///< with a kind: the text and the title are the event's
};

/// Adds paragraphs behind those that are there, and sets the rest. People of the record are named
/// by reference. New paragraphs take an earlier approval back, unless it is given again. Or adds
/// the event.
[[nodiscard]] base::Result<Said> story(const StoryRequest& request, Draft& draft);

[[nodiscard]] forms::Job story_job();

}  // namespace winchbook::daybook
