#include "daybook/entries/custody.h"

#include <fmt/format.h>

#include <utility>

#include "daybook/open_visit.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

/// The first step that surely began later; nothing when there is none.
pugi::xml_node first_later(const Draft& draft, const std::string& from) {
  const auto date = base::EdtfDate::parse(from);
  if (!date) return {};
  for (const auto& one : draft.record().custody) {
    const auto [id, begun] =
        std::visit([](const auto& step) { return std::pair(step.id.text, step.from); }, one);
    if (begun && base::surely_before(*date, *begun)) return draft.by_id(id);
  }
  return {};
}

pugi::xml_node new_step(Draft& draft, const CustodyRequest& request, const char* name,
                        const std::string& id) {
  const pugi::xml_node custody = draft.section("custody");
  if (pugi::xml_node later = first_later(draft, request.from)) {
    pugi::xml_node step = Draft::add_before(later, name);
    step.append_attribute("id") = id.c_str();
    return step;
  }
  return draft.add_with_id(custody, name, id);
}

}  // namespace

Change custody(CustodyRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const std::string when =
        fmt::format("{} to {}", request.from.empty() ? "not known" : request.from,
                    request.until.empty() ? "now" : request.until);
    if (request.holder.empty()) {
      const auto id = draft.id_for(request.id, "cu-gap");
      if (!id) return id.faults();
      const pugi::xml_node gap = new_step(draft, request, "gap", *id);
      draft.add_if(gap, "from", request.from);
      draft.add_if(gap, "until", request.until);
      draft.add_words(gap, "what", request.how);
      return Said{fmt::format("custody: nobody knows who had it, {}", when), {}};
    }
    const auto person = record::find_person(draft.record(), request.holder);
    if (!person) return person.faults();
    const auto id = draft.id_for(request.id, "cu-" + person.value()->id.text);
    if (!id) return id.faults();
    const pugi::xml_node step = new_step(draft, request, "held-by", *id);
    draft.add(step, "held", request.held);
    draft.add_ref(step, "holder", person.value()->id.text);
    draft.add_if(step, "from", request.from);
    draft.add_if(step, "until", request.until);
    draft.add_words(step, "how", request.how);
    draft.add(step, "source", request.source);
    draft.add(step, "certainty", request.certainty);
    if (auto faults = add_photos(draft, step, request.photos); !faults.empty()) return faults;
    return Said{fmt::format("custody: {}, {} ({})", person.value()->id.text, when, request.held),
                {}};
  };
}

}  // namespace winchbook::daybook
