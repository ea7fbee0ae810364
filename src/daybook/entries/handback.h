#pragma once

#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/edit.h"

namespace winchbook::daybook {

/// How the reel goes back.
struct HandbackRequest {
  base::Day on;
  std::string to;                 ///< empty: who brought it
  std::vector<std::string> bags;  ///< empty: every bag that holds a piece
  std::string note;
  std::string summary;
  std::string next_service;
  std::string review_by;
  std::vector<std::string> not_put_right;
  std::string drag;                   ///< how hard it may be set: "8 to 14 N" at the line
  std::string line;                   ///< which line, and how much
  std::vector<std::string> fish;      ///< counsels for fishing it
  std::vector<std::string> keep;      ///< counsels for keeping it
  std::vector<std::string> cautions;  ///< of use: "The crack: …"
};

/// Ends the visit. A part that was examined as found and not as left counts as it was found.
/// Warns when the tray is not empty.
[[nodiscard]] Change hand_back(HandbackRequest request);

}  // namespace winchbook::daybook
