#pragma once

#include <string>
#include <string_view>

#include "assess/value/value.h"
#include "record/visit.h"

/// What `winchbook value` and `winchbook advise` say; the words of JSON stand beside each list.
namespace winchbook::answers {

/// Why a sale does not count.
[[nodiscard]] std::string_view spoken(assess::value::Excluded value);
/// What is noted beside an estimate.
[[nodiscard]] std::string_view spoken(assess::value::Note value);
/// "make it fish".
[[nodiscard]] std::string_view spoken(record::Course value);
/// "surface", or what a course makes of it: "working with care", "originality 78 of 100".
[[nodiscard]] std::string changed_words(assess::value::Trait trait,
                                        const assess::value::State& state);

}  // namespace winchbook::answers
