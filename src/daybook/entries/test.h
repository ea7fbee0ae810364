#pragma once

#include <string>

#include "base/edtf_date.h"
#include "daybook/edit.h"

namespace winchbook::daybook {

/// One half of a test: as the reel came, or as it left.
struct TestRequest {
  base::Day on;
  std::string what;       ///< a short word of test_words(), a test of this visit, or its own name
  bool after = false;     ///< as left; else as found
  std::string reading;    ///< "9 s", "3 to 22 N", or words: "slips"
  std::string unit;       ///< when the reading names none
  std::string words;      ///< beside figures: "slips"
  std::string verdict;    ///< "as-made", …
  bool not_safe = false;  ///< not safe to test; a load limit says how far it may be loaded
  bool not_tested = false;
  std::string load_limit;  ///< "10 N"
  std::string note;
};

/// Enters the half of a test. Figures are kept in s, mm, N or the unit given; lb, kg and inches are
/// reckoned into newtons and millimetres (base/measure.h).
[[nodiscard]] Change test(TestRequest request);

/// The usual tests, as a line for --help: "turns, free-spool, …".
[[nodiscard]] std::string test_words();

}  // namespace winchbook::daybook
