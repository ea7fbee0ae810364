#pragma once

#include <optional>
#include <string>

#include "daybook/entry.h"
#include "daybook/reading.h"

namespace winchbook::daybook {

/// One half of a test: as the reel came, or as it left.
struct TestRequest : Entry {
  std::string what;  ///< a usual test by its short word, a test of this visit, or its own name
  std::optional<Reading> before;
  std::optional<Reading> after;
  std::string unit;   ///< when the reading names none
  std::string words;  ///< beside figures: "slips"
  std::optional<record::Verdict> verdict;
  bool left = false;      ///< as left, also without a reading
  bool not_safe = false;  ///< not safe to test; a load limit says how far it may be loaded
  bool not_tested = false;
  std::optional<Force> load_limit;
  std::string note;
};

/// Enters the half of a test. Figures are kept in s, mm, N or the unit given; lb, kg and inches are
/// reckoned into newtons and millimetres (base/measure.h). A note takes the place of the test's
/// own.
[[nodiscard]] base::Result<Said> test(const TestRequest& request, Draft& draft);

[[nodiscard]] forms::Job test_job();

}  // namespace winchbook::daybook
