#include "daybook/entries/decide.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <utility>

#include "daybook/open_visit.h"
#include "daybook/sums.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

std::string trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(' ') - first + 1));
}

struct CourseCost {
  std::string course;
  std::string low;
  std::string high;
  std::string effect;
};

/// "make-it-fish: 260 to 340 GBP: what it does"; the sum and the effect may be left out.
CourseCost read_cost(std::string_view text) {
  CourseCost cost;
  const std::size_t colon = std::min(text.find(':'), text.size());
  cost.course = trimmed(text.substr(0, colon));
  text.remove_prefix(std::min(colon + 1, text.size()));
  const std::size_t second = std::min(text.find(':'), text.size());
  const Sums sums = read_sums(text.substr(0, second));
  cost.low = sums.low;
  cost.high = sums.high;
  cost.effect = trimmed(text.substr(std::min(second + 1, text.size())));
  return cost;
}

base::Diagnostics unknown_course(const std::string& course) {
  if (course.empty() || record::value_of<record::Course>(course)) return {};
  return {base::of_command(
      base::of_command(base::error(fmt::format("\"{}\" is no course", course),
                  "the courses are keep-as-found, clean-for-show, make-it-fish and "
                  "rebuild-to-fish",
                  "command-course")))};
}

base::Diagnostics set_cost(Draft& draft, pugi::xml_node advice, const std::string& text) {
  const CourseCost cost = read_cost(text);
  if (auto faults = unknown_course(cost.course); !faults.empty()) return faults;
  pugi::xml_node element;
  for (const pugi::xml_node one : advice.children("course-cost")) {
    if (cost.course == one.child("course").text().get()) element = one;
  }
  if (!element) element = draft.add(advice, "course-cost");
  draft.set(element, "course", cost.course);
  if (!cost.low.empty()) draft.set(element, "low", cost.low);
  if (!cost.high.empty()) draft.set(element, "high", cost.high);
  draft.set_words(element, "effect", cost.effect);
  return {};
}

/// Who chose: as named, or who brought the reel; empty when neither is known.
base::Result<std::string> chooser(const Draft& draft, const record::Visit& visit,
                                  const std::string& said) {
  if (said.empty()) return visit.brought_by ? visit.brought_by->text : std::string();
  const auto person = record::find_person(draft.record(), said);
  if (!person) return person.faults();
  return person.value()->id.text;
}

}  // namespace

Change decide(DecideRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, request.on);
    if (!open) return open.faults();
    for (const std::string& course : {request.advised, request.chosen}) {
      if (auto faults = unknown_course(course); !faults.empty()) return faults;
    }
    const pugi::xml_node advice = draft.need(open->element, "advice");
    if (!request.advised.empty()) draft.set(advice, "advised", request.advised);
    draft.set_words(advice, "because", request.because);
    for (const std::string& cost : request.costs) {
      if (auto faults = set_cost(draft, advice, cost); !faults.empty()) return faults;
    }
    std::string sentence = request.advised.empty() ? "" : "advised: " + request.advised;
    if (!request.chosen.empty()) {
      const auto by = chooser(draft, *open->visit, request.chosen_by);
      if (!by) return by.faults();
      draft.set(advice, "chosen", request.chosen);
      const std::string before = advice.child("chosen-by").attribute("ref").value();
      if (!before.empty() && !by->empty() && before != *by) {
        return base::of_command(
            base::of_command(base::error(fmt::format("the choice in the record is that of {}", before),
                        "take it back with winchbook undo first", "command-name")));
      }
      if (!by->empty() && before.empty()) draft.add_ref(advice, "chosen-by", *by);
      draft.set(advice, "chosen-on", base::iso_text(request.on));
      draft.set_words(advice, "chosen-because", request.chosen_because);
      sentence += fmt::format("{}{} chosen {}", sentence.empty() ? "" : "; ", request.chosen,
                              base::iso_text(request.on));
      if (!by->empty()) sentence += " by " + *by;
    }
    return Said{sentence.empty() ? "the cost of the courses was written down" : sentence, {}};
  };
}

}  // namespace winchbook::daybook
