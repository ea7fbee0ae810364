#pragma once

#include <optional>
#include <string>
#include <vector>

#include "daybook/entry.h"
#include "record/people.h"

namespace winchbook::daybook {

/// Somebody had the reel; or, without a holder, nobody knows who had it.
struct CustodyRequest : Entry {
  std::string id;      ///< empty: made from the holder
  std::string holder;  ///< a person as named; empty: a gap
  record::Held held = record::Held::both;
  std::optional<base::EdtfDate> from;
  std::optional<base::EdtfDate> until;
  std::string how;  ///< of a gap: what little is known
  std::string source;
  std::optional<record::Certainty> certainty;
  std::vector<std::string> photos;
};

/// Adds the step or the gap, before what surely began later.
[[nodiscard]] base::Result<Said> custody(const CustodyRequest& request, Draft& draft);

[[nodiscard]] forms::Job custody_job();

}  // namespace winchbook::daybook
