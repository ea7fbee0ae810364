#pragma once

#include <string>

#include "assess/value/value.h"
#include "words/catalogue.h"

namespace winchbook::answers {

/// What a course makes of a trait: "working with care", "originality 78 of 100".
[[nodiscard]] std::string becomes(const words::Catalogue& words, assess::value::Trait trait,
                                  const assess::value::State& state);
/// The same in the words of the record's lists.
[[nodiscard]] std::string changed_words(assess::value::Trait trait,
                                        const assess::value::State& state);

}  // namespace winchbook::answers
