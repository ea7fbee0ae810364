#include "base/diagnostic.h"

#include <algorithm>
#include <utility>

namespace winchbook::base {

std::string to_string(const Diagnostic& diagnostic) {
  std::string out;
  const Location& where = diagnostic.where;
  if (!where.file.empty()) {
    out += where.file;
    if (where.line > 0) out += ":" + std::to_string(where.line);
    if (where.line > 0 && where.column > 0) out += ":" + std::to_string(where.column);
    out += ": ";
  }
  out += diagnostic.severity == Severity::error ? "error: " : "warning: ";
  out += diagnostic.message;
  if (!diagnostic.rule.empty()) out += " [" + diagnostic.rule + "]";
  out += "\n";
  if (!diagnostic.hint.empty()) out += "  hint: " + diagnostic.hint + "\n";
  return out;
}

bool has_error(const Diagnostics& diagnostics) {
  return std::any_of(diagnostics.begin(), diagnostics.end(),
                     [](const Diagnostic& one) { return one.severity == Severity::error; });
}

Diagnostic of_command(Diagnostic diagnostic) {
  diagnostic.of = FaultOf::command;
  return diagnostic;
}

Diagnostic of_machine(Diagnostic diagnostic) {
  diagnostic.of = FaultOf::machine;
  return diagnostic;
}

Diagnostic error(std::string message, std::string hint, std::string rule) {
  return error_at({}, std::move(message), std::move(hint), std::move(rule));
}

Diagnostic error_at(Location where, std::string message, std::string hint, std::string rule) {
  return {Severity::error, std::move(where), std::move(message),
          std::move(hint), std::move(rule),  FaultOf::record};
}

Diagnostic warning_at(Location where, std::string message, std::string hint, std::string rule) {
  return {Severity::warning, std::move(where), std::move(message),
          std::move(hint),   std::move(rule),  FaultOf::record};
}

}  // namespace winchbook::base
