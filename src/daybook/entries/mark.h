#pragma once

#include <string>
#include <vector>

#include "daybook/edit.h"

namespace winchbook::daybook {

/// A mark on a piece.
struct MarkRequest {
  std::string id;    ///< empty: made from the part
  std::string text;  ///< as read; lines parted by line breaks, [ ] round what is guessed
  std::string part;
  std::string where;
  std::string method = "stamped";
  std::string whose = "not-determined";
  std::string state = "as-struck";
  std::string legibility = "clear";
  std::string person;  ///< whom it names
  std::string claims;
  std::string cut;
  std::string not_before;  ///< "1940 hard", "1946 soft"; soft when it does not say
  std::string not_after;
  std::string because;
  std::string source;
  std::string note;
  std::vector<std::string> photos;
  std::string salt;     ///< 32 hexadecimal digits drawn at random
  bool serial = false;  ///< it is the reel's serial number
};

/// Adds the mark; with `serial`, the reel's serial number is set to it too.
[[nodiscard]] Change mark(MarkRequest request);

}  // namespace winchbook::daybook
