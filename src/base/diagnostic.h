#pragma once

#include <string>
#include <vector>

namespace winchbook::base {

/// A place in one of the user's files. Lines and columns count from 1; 0 means not known.
/// Columns count characters (Unicode scalar values), not bytes.
struct Location {
  std::string file;
  int line = 0;
  int column = 0;

  friend bool operator==(const Location&, const Location&) = default;
};

enum class Severity { error, warning };

/// Whose fault it is; the exit code follows from it.
enum class FaultOf {
  record,   ///< what stands in a file of the bench's
  command,  ///< what was asked, and how
  machine,  ///< files and the machine
};

/// One thing wrong in the user's files or machine, as data.
/// `message` is lower case without a full stop and says what was found and what was expected;
/// `hint` says the cure; `rule` is the stable name printed in brackets ("date-order").
struct Diagnostic {
  Severity severity = Severity::error;
  Location where;
  std::string message;
  std::string hint;
  std::string rule;
  FaultOf of = FaultOf::record;

  friend bool operator==(const Diagnostic&, const Diagnostic&) = default;
};

using Diagnostics = std::vector<Diagnostic>;

/// "record.xml:41:7: error: … [date-order]\n  hint: …\n", as a compiler prints it.
[[nodiscard]] std::string to_string(const Diagnostic& diagnostic);

/// True when one of them is an error; warnings do not block.
[[nodiscard]] bool has_error(const Diagnostics& diagnostics);

/// An error without a place in a file.
[[nodiscard]] Diagnostic error(std::string message, std::string hint = {}, std::string rule = {});

/// The same fault, as one of what was asked, or of files and the machine.
[[nodiscard]] Diagnostic of_command(Diagnostic diagnostic);
[[nodiscard]] Diagnostic of_machine(Diagnostic diagnostic);

/// An error at a place.
[[nodiscard]] Diagnostic error_at(Location where, std::string message, std::string hint = {},
                                  std::string rule = {});

/// A doubt at a place; it is told and blocks nothing.
[[nodiscard]] Diagnostic warning_at(Location where, std::string message, std::string hint = {},
                                    std::string rule = {});

}  // namespace winchbook::base
