#include "daybook/looks.h"

#include <fmt/format.h>

#include <algorithm>

#include "daybook/open_visit.h"
#include "record/enum_words.h"

namespace winchbook::daybook {

base::Diagnostics look_for_none(Draft& draft, record::Visit& visit, record::LookedFor what,
                                base::Day on, const std::string& by) {
  const std::string there = record::entered(draft.record(), visit, what);
  if (!there.empty()) {
    return {base::of_command(base::error_at(
        draft.loaded().where(visit.id.text),
        fmt::format("\"{}\" is entered, and none of {} cannot be", there, record::word_of(what)),
        "winchbook undo takes back what was entered by mistake", "looked-for"))};
  }
  const auto person = person_of(draft.record(), by);
  if (!person) return person.faults();
  record::Look look{what, date_of(on), *person, record::Looked::none};
  auto& all = visit.findings.looked_for;
  const auto before =
      std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.what == what; });
  if (before == all.end()) {
    all.push_back(std::move(look));
  } else {
    *before = std::move(look);
  }
  return {};
}

base::Result<Said> found_none(Draft& draft, record::LookedFor what, base::Day on,
                              const std::string& by) {
  const auto open = open_visit(draft, on);
  if (!open) return open.faults();
  if (auto faults = look_for_none(draft, **open, what, on, by); !faults.empty()) return faults;
  return Said{fmt::format("looked for {}, and found none", record::word_of(what)), {}};
}

void tell_some(record::Record& record) {
  if (record.visits.empty()) return;
  record::Visit& visit = record.visits.back();
  for (record::Look& one : visit.findings.looked_for) {
    if (!record::entered(record, visit, one.what).empty()) one.found = record::Looked::some;
  }
}

}  // namespace winchbook::daybook
