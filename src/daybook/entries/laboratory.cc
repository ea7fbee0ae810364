#include "daybook/entries/laboratory.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/words_of_text.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

forms::Form form(LaboratoryRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("PARTS", "the parts that were tested: ids, beginnings of ids, or names", request.parts)
          .must(),
      field("--for", "what was looked for", request.hazard)
          .asks("What did the laboratory look for?"),
      field("--found", "what came of it", request.found).asks("What did it find: none, or some?"),
      field("--laboratory", "its name", request.laboratory).asks("Which laboratory?"),
      field("--number", "the number of its report", request.number)
          .asks("Which number has its report?"),
      field("--reported", "the day of its report; left out, the day of the entry",
            request.reported),
  };
}

base::Diagnostics faults_of(const LaboratoryRequest& request) {
  const bool numbered = request.number.find_first_of("0123456789") != std::string::npos;
  if (base::says_something(request.laboratory) && numbered) {
    const auto day = request.reported ? request.reported->earliest() : std::nullopt;
    if (!day || *day <= request.on) return {};
    return {base::of_command(
        base::error(fmt::format("the report is of {}, and {} is before that", base::iso_text(*day),
                                base::iso_text(request.on)),
                    "correct --reported, or the day given with --on", "command-day"))};
  }
  return {base::of_command(
      base::error("a report without its laboratory or its number proves nothing",
                  "give --laboratory and --number as the report has them; a number has a figure",
                  "command-report"))};
}

}  // namespace

base::Result<Said> laboratory(const LaboratoryRequest& request, Draft& draft) {
  if (auto faults = faults_of(request); !faults.empty()) return faults;
  const auto pieces = pieces_named(draft, request.parts);
  if (!pieces) return pieces.faults();
  record::LaboratoryReport report;
  report.hazard = request.hazard.value_or(report.hazard);
  report.found = request.found.value_or(report.found);
  report.laboratory = request.laboratory;
  report.on = request.reported.value_or(date_of(request.on));
  report.number = request.number;
  for (const record::Piece* piece : *pieces) {
    auto& tested = to_change(draft.record().pieces, piece).tested;
    std::erase_if(tested, [&](const record::LaboratoryReport& one) {
      return one.number == report.number && one.hazard == report.hazard;
    });
    tested.push_back(report);
  }
  return Said{fmt::format("{}: tested for {} by {}, report {}: {}", record::listed(*pieces),
                          record::word_of(report.hazard), report.laboratory, report.number,
                          record::word_of(report.found)),
              {}};
}

forms::Job laboratory_job() {
  return entry_job<LaboratoryRequest>(form, laboratory);
}

}  // namespace winchbook::daybook
