#pragma once

#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/edit.h"

namespace winchbook::daybook {

/// What was agreed with the owner, and how.
struct AgreeRequest {
  std::string id;  ///< empty: made from the day
  base::Day on;
  std::string how;   ///< "in person", "by letter"
  std::string with;  ///< empty: who brought it
  std::vector<std::string> may_be_done;
  std::vector<std::string> must_stay;        ///< in words
  std::vector<std::string> parts_must_stay;  ///< parts as they were named
  std::vector<std::string> parts_may_leave;  ///< leave to keep or scrap these
  std::string limit;                         ///< "180 GBP"
  std::string estimate;                      ///< "30 to 40 GBP"
  std::string note;
  std::string promised_by;               ///< EDTF; of the visit
  std::vector<std::string> waiting_for;  ///< of the visit: what the work waits for
};

/// Adds the agreement to the visit's dated log, at its day.
[[nodiscard]] Change agree(AgreeRequest request);

/// Adds one to a visit's element; for intake.
[[nodiscard]] base::Diagnostics add_agreement(Draft& draft, pugi::xml_node agreement,
                                              const AgreeRequest& request);

}  // namespace winchbook::daybook
