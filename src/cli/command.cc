#include "cli/command.h"

#include <algorithm>
#include <istream>
#include <optional>
#include <ostream>
#include <string>
#include <string_view>

#include "catalogue/catalogue.h"
#include "cli/read_command_line.h"
#include "forms/fill_and_run.h"
#include "json/faults.h"
#include "plain/print.h"

namespace winchbook::cli {
namespace {

constexpr std::size_t kMostFaults = 100;

/// The command line as it can be typed again, on one line.
std::string as_typed(int argc, const char* const* argv) {
  std::string line = "winchbook";
  for (int i = 1; i < argc; ++i) {
    const std::string word = argv[i];
    constexpr const char* kPlain =
        "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_./=:,+@%";
    line += ' ';
    if (!word.empty() && word.find_first_not_of(kPlain) == std::string::npos) {
      line += word;
      continue;
    }
    line += '\'';
    for (const char c : word) {
      if (c == '\'') {
        line += "'\\''";
      } else {
        line += c == '\n' || c == '\r' ? ' ' : c;
      }
    }
    line += '\'';
  }
  return line;
}

void print(const base::Diagnostics& faults, std::ostream& err) {
  // One more is as long as the words that there is one more.
  const std::size_t shown =
      faults.size() == kMostFaults + 1 ? faults.size() : std::min(faults.size(), kMostFaults);
  for (std::size_t i = 0; i < shown; ++i) {
    const bool of_the_line = faults[i].rule == kNotUnderstood;
    err << (of_the_line ? "winchbook: " + faults[i].message + "\n  hint: " + faults[i].hint + "\n"
                        : base::to_string(faults[i]));
  }
  if (faults.size() > shown) err << "and " << faults.size() - shown << " more\n";
}

/// Tells what came of a job; the exit code that its doubts deserve.
Exit tell(const forms::Outcome& outcome, Surroundings& surroundings) {
  print(outcome.doubts, surroundings.err);
  surroundings.out << outcome.text;
  if (outcome.told) surroundings.out << plain::print(*outcome.told, surroundings.columns);
  surroundings.err << outcome.note;
  return exit_code(outcome.doubts);
}

/// Tells why there is no answer: where the answer would stand, when that is read by a program.
Exit refuse(const base::Diagnostics& faults, bool json, Surroundings& surroundings) {
  if (json) {
    surroundings.out << json::faults_as_json(faults);
  } else {
    print(faults, surroundings.err);
  }
  return exit_code(faults);
}

/// Asks whoever sits at the terminal.
forms::Ask ask_at(Surroundings& surroundings) {
  if (surroundings.terminal == nullptr) return nullptr;
  return [&](const base::Diagnostics& objections,
             const std::string& question) -> std::optional<std::string> {
    print(objections, surroundings.err);
    surroundings.err << question << " ";
    surroundings.err.flush();
    std::string answer;
    if (!std::getline(*surroundings.terminal, answer)) return std::nullopt;
    return answer;
  };
}

}  // namespace

Exit exit_code(const base::Diagnostics& faults) {
  const auto any = [&](base::FaultOf of) {
    return std::any_of(faults.begin(), faults.end(), [&](const base::Diagnostic& one) {
      return one.severity == base::Severity::error && one.of == of;
    });
  };
  if (any(base::FaultOf::machine)) return kMachineWrong;
  if (any(base::FaultOf::command)) return kCommandLineWrong;
  return base::has_error(faults) ? kRecordWrong : kFine;
}

int run(int argc, const char* const* argv, Surroundings& surroundings) {
  Asked asked =
      read_command_line(argc, argv, catalogue::rows(), surroundings.library.world().version);
  if (!asked.faults.empty()) return refuse(asked.faults, asked.json, surroundings);
  surroundings.out << asked.text;
  if (!asked.job.run) return kFine;
  Exit worst = kFine;
  forms::Setting setting{surroundings.library, as_typed(argc, argv), false,
                         [&](const forms::Outcome& turn) {
                           worst = std::max(worst, tell(turn, surroundings));
                           surroundings.out.flush();
                         }};
  const auto done = forms::fill_and_run(asked.job, setting, ask_at(surroundings));
  if (!done) return refuse(done.faults(), asked.json, surroundings);
  if (!done->refused.empty()) {
    // At a terminal they were told when they were asked about.
    if (asked.json) surroundings.out << json::faults_as_json(done->refused);
    return exit_code(done->refused);
  }
  if (done->left) surroundings.out << "nothing was written\n";
  return std::max(worst, tell(done->outcome, surroundings));
}

}  // namespace winchbook::cli
