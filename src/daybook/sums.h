#pragma once

#include <string>
#include <string_view>

namespace winchbook::daybook {

/// One sum or two, each with its currency, as the record writes them: "40.00 GBP".
struct Sums {
  std::string low;
  std::string high;  ///< empty: one sum
};

/// "40 GBP", "30 to 40 GBP", "30 GBP to 40 GBP". What is no sum stays as it was typed, for the
/// schema to refuse.
[[nodiscard]] Sums read_sums(std::string_view text);

}  // namespace winchbook::daybook
