#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/measure.h"
#include "base/result.h"
#include "cli/command.h"

namespace winchbook::cli {

/// Reads the figures of a command's options, and keeps what was wrong with each by its name.
class Measures {
 public:
  /// The figure of an option that must be there and above zero; 0 when it is not.
  double needed(std::string_view option, const std::string& text, base::Dimension dimension);
  /// The same with its tolerance.
  base::Measure needed_measure(std::string_view option, const std::string& text,
                               base::Dimension dimension);
  /// The figure of an option that may be left out; empty text gives nothing. `may_be_below` lets it
  /// be zero or less.
  std::optional<base::Measure> given(std::string_view option, const std::string& text,
                                     base::Dimension dimension, bool may_be_below = false);
  /// "3 : 1", "3:1" or "48:12" as a number; 1 when left out.
  double ratio(std::string_view option, const std::string& text);
  /// "0.2", or from low to high: "0.15..0.25".
  std::optional<std::pair<double, double>> range(std::string_view option, const std::string& text);

  [[nodiscard]] const base::Diagnostics& faults() const { return faults_; }
  /// What was taken for what, one sentence each.
  [[nodiscard]] const std::vector<std::string>& assumed() const { return assumed_; }

 private:
  void tell(std::string_view option, std::string message, std::string hint);

  base::Diagnostics faults_;
  std::vector<std::string> assumed_;
};

/// Prints the faults of a command line and gives its exit code.
[[nodiscard]] Exit wrong_command(const base::Diagnostics& faults, std::ostream& err);

}  // namespace winchbook::cli
