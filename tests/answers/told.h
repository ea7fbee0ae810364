#pragma once

#include <string>

#include "answers/telling.h"
#include "words/shared_words.h"

namespace winchbook::answers {

/// An answer in British English, block by block.
template <class Tell> std::string told(const Tell& tell) {
  document::Document answer;
  answer.chapters.emplace_back().blocks = tell(shared_words("en-GB"));
  return document::dump(answer);
}

}  // namespace winchbook::answers
