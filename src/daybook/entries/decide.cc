#include "daybook/entries/decide.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/words_of_text.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"

namespace winchbook::daybook {
namespace {

using record::word_of;

forms::Form form(DecideRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("--set",
            "write down what the bench advises: keep-as-found, clean-for-show, make-it-fish or "
            "rebuild-to-fish",
            request.advised),
      field("--because", "why the bench advises it", request.because),
      field("--cost",
            "what a course costs and does: \"make-it-fish: 260 to 340 GBP: nothing is lost\"",
            request.costs),
      field("--decide", "write down the course that the owner chose", request.chosen),
      field("--decided-by", "who chose", request.chosen_by),
      field("--why", "why, in the owner's words", request.chosen_because),
  };
}

void set_cost(const CostOfCourse& typed, const Draft& draft, record::Advice& advice) {
  auto& all = advice.courses;
  const auto there = std::find_if(all.begin(), all.end(),
                                  [&](const auto& one) { return one.course == typed.course; });
  record::CourseCost& cost =
      there != all.end() ? *there : all.emplace_back(record::CourseCost{typed.course, {}, {}, {}});
  if (typed.sums) {
    cost.low = typed.sums->low;
    if (typed.sums->high) cost.high = typed.sums->high;
  }
  draft.put(cost.effect, typed.effect);
}

/// Who chose, as named; empty when nobody is.
base::Result<std::optional<record::PersonId>> chooser(const DecideRequest& request,
                                                      const Draft& draft,
                                                      const record::Visit& visit) {
  auto by = person_of(draft.record(), request.chosen_by);
  if (!by) return by;
  const auto before = visit.advice ? visit.advice->chosen_by : std::nullopt;
  if (before && *by && *before != **by) {
    return base::of_command(
        base::error(fmt::format("the choice in the record is that of {}", before->text),
                    "take it back with winchbook undo first", "command-name"));
  }
  return by;
}

}  // namespace

base::Diagnostics read_typed(std::string_view typed, CostOfCourse& into) {
  const auto part = [&typed] {
    const std::size_t colon = std::min(typed.find(':'), typed.size());
    const std::string_view front = base::trimmed(typed.substr(0, colon));
    typed.remove_prefix(std::min(colon + 1, typed.size()));
    return front;
  };
  CostOfCourse cost;
  if (auto faults = forms::read_typed(part(), cost.course); !faults.empty()) return faults;
  if (const std::string_view sums = part(); !sums.empty()) {
    if (auto faults = forms::read_typed(sums, cost.sums); !faults.empty()) return faults;
  }
  cost.effect = base::trimmed(typed);
  into = std::move(cost);
  return {};
}

base::Result<Said> decide(const DecideRequest& request, Draft& draft) {
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  record::Visit& visit = **open;
  if (!request.chosen && !(request.chosen_by.empty() && request.chosen_because.empty())) {
    return base::of_command(base::error("who chose and why belong to a choice",
                                        "give the course with --decide", "command-course"));
  }
  const auto by = chooser(request, draft, visit);
  if (request.chosen && !by) return by.faults();
  record::Advice& advice = visit.advice ? *visit.advice : visit.advice.emplace();
  if (request.advised) {
    advice.advised = request.advised;
    advice.on = date_of(request.on);
  }
  draft.put(advice.because, request.because);
  for (const CostOfCourse& cost : request.costs)
    set_cost(cost, draft, advice);
  std::string sentence;
  if (request.advised) sentence = fmt::format("advised: {}", word_of(*request.advised));
  if (request.chosen) {
    advice.chosen = request.chosen;
    if (*by) advice.chosen_by = *by;
    advice.chosen_on = date_of(request.on);
    draft.put(advice.chosen_because, request.chosen_because);
    sentence += fmt::format("{}{} chosen {}", sentence.empty() ? "" : "; ",
                            word_of(*request.chosen), base::iso_text(request.on));
    if (*by) sentence += " by " + (*by)->text;
  }
  if (sentence.empty()) {
    sentence = request.costs.empty() ? "why the bench advises it was written down"
                                     : "the cost of the courses was written down";
  }
  return Said{std::move(sentence), {}};
}

forms::Job decide_job() {
  return entry_job<DecideRequest>(form, decide);
}

}  // namespace winchbook::daybook
