#include "answers/check.h"

#include <fmt/format.h>

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <algorithm>
#include <memory>
#include <ostream>
#include <string>

#include "cli/command.h"

namespace winchbook::cli {
namespace {

constexpr std::size_t kMostFaults = 100;

std::string counted(std::size_t number, const char* one) {
  return fmt::format("{} {}{}", number, one, number == 1 ? "" : "s");
}

Exit check(const std::string& path, Surroundings& surroundings) {
  const answers::CheckReport report =
      answers::check(surroundings.files, path, surroundings.data / "schemas");
  const base::Diagnostics& found = report.found;
  const std::size_t shown = std::min(found.size(), kMostFaults);
  const auto first_hidden = found.begin() + static_cast<std::ptrdiff_t>(shown);
  const Exit exit = tell(base::Diagnostics(found.begin(), first_hidden), surroundings.err);
  if (found.size() > shown) surroundings.err << "and " << found.size() - shown << " more\n";

  const auto errors = static_cast<std::size_t>(std::count_if(
      found.begin(), found.end(),
      [](const base::Diagnostic& one) { return one.severity == base::Severity::error; }));
  const std::string warnings = counted(found.size() - errors, "warning");
  if (errors > 0) {
    surroundings.err << report.record.string() << ": " << counted(errors, "error") << ", "
                     << warnings << "\n";
    return exit == kFine ? kRecordWrong : exit;
  }
  surroundings.out << report.record.string() << ": in order, "
                   << counted(report.photographs, "photograph") << " seen, " << warnings << "\n";
  return exit;
}

}  // namespace

Action add_check(CLI::App& app) {
  auto path = std::make_shared<std::string>();
  app.add_option("PATH", *path, "the reel's folder, or its record.xml")->required();
  return [path](Surroundings& surroundings) { return check(*path, surroundings); };
}

}  // namespace winchbook::cli
