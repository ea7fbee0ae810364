#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/decimal.h"
#include "base/diagnostic.h"

namespace winchbook::daybook {

/// What somebody read off an instrument, or says of a test: "9 s", "3 to 22 N", "silent".
struct Reading {
  std::string typed;
  std::optional<base::Decimal> low;  ///< empty: it is words
  std::optional<base::Decimal> high;
  std::string unit;  ///< empty: it names none
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, Reading& into);

/// Forces and lengths reckoned into N and mm (base/measure.h), to hundredths; figures that name no
/// unit are in this one. Words have none.
[[nodiscard]] Reading reckoned(Reading reading, const std::string& unit);

/// A force: "20 N", "2 kg", "20".
struct Force {
  base::Newtons newtons;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, Force& into);

/// One force, or from one to another: "8 to 14 N".
struct Forces {
  base::Newtons low;
  std::optional<base::Newtons> high;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, Forces& into);

}  // namespace winchbook::daybook
