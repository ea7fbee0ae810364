#pragma once

#include <string>
#include <string_view>

#include "base/result.h"
#include "record/record.h"

namespace winchbook::daybook {

/// A step of taking the reel apart, by its number or id; "last" is the one that was entered last.
[[nodiscard]] base::Result<const record::StripStep*> find_step(const record::Visit& visit,
                                                               std::string_view said);

/// Words without references, as they are read aloud.
[[nodiscard]] std::string in_plain_words(const record::Record& record, const record::Words& words);

}  // namespace winchbook::daybook
