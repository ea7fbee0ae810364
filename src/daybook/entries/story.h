#pragma once

#include <string>

#include "daybook/edit.h"

namespace winchbook::daybook {

/// The story, or more of it.
struct StoryRequest {
  std::string text;  ///< paragraphs, parted by empty lines
  std::string title;
  std::string answer;  ///< one sentence that answers: what is its story?
  std::string told_by;
  std::string approved_on;  ///< when the teller read and approved it
};

/// Adds paragraphs behind those that are there, and sets the rest. People of the record are named
/// by reference. New paragraphs take an earlier approval back, unless it is given again.
[[nodiscard]] Change story(StoryRequest request);

}  // namespace winchbook::daybook
