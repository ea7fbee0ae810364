#pragma once

#include <optional>
#include <string>
#include <vector>

#include "daybook/entry.h"
#include "daybook/reading.h"

namespace winchbook::daybook {

/// How the reel goes back.
struct HandbackRequest : Entry {
  std::string to;  ///< empty: not written
  std::vector<std::string> bags;
  bool all_bags = false;  ///< every bag that holds a piece
  std::string note;
  std::string summary;
  std::optional<base::EdtfDate> next_service;
  std::optional<base::EdtfDate> review_by;
  std::vector<std::string> not_put_right;  ///< or "none"
  std::string kept;                        ///< "none": nothing was kept, scrapped or lost
  std::optional<Forces> drag;              ///< how hard it may be set, at the line
  std::string line;                        ///< which line, and how much
  std::vector<std::string> fish;           ///< counsels for fishing it
  std::vector<std::string> keep;           ///< counsels for keeping it
  std::vector<forms::Labelled> cautions;   ///< of use: "The crack: …"
};

/// Ends the visit. Warns when the tray is not empty.
[[nodiscard]] base::Result<Said> hand_back(const HandbackRequest& request, Draft& draft);

[[nodiscard]] forms::Job handback_job();

}  // namespace winchbook::daybook
