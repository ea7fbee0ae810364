#include "answers/lookup_care.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "answers/lines.h"
#include "json/json.h"

namespace winchbook::answers {
namespace {

using json::Json;
using knowledge::CareGrounds;
using knowledge::CareVerdict;

constexpr std::string_view kHidden = "Nobody wrote it down: try it on a hidden place first.";

CareVerdict verdict_of(const CareCell& cell) {
  return cell.row == nullptr ? CareVerdict::not_known : cell.row->verdict;
}

std::string spoken(CareVerdict verdict) {
  switch (verdict) {
    case CareVerdict::fine:
      return "Do it";
    case CareVerdict::with_care:
      return "With care";
    case CareVerdict::harm:
      return "It harms";
    case CareVerdict::never:
      return "Never";
    case CareVerdict::not_known:
      break;
  }
  return "Not known";
}

std::string grounds_of(const CareCell& cell) {
  if (cell.row == nullptr) return "";
  const std::string& source = cell.row->source;
  const bool said = source.find("recalled") != std::string::npos;
  return fmt::format(" [{}{}]", source,
                     cell.row->grounds == CareGrounds::recalled && !said ? "; recalled" : "");
}

Json known_word(const CareCell& cell) {
  if (cell.row == nullptr) return nullptr;
  if (cell.row->grounds == CareGrounds::read) return "read";
  return cell.row->grounds == CareGrounds::recalled ? "recalled" : "practice";
}

/// Methods of one row stand together.
struct Group {
  CareCell cell;
  std::string methods;
};

std::vector<Group> grouped(const CareAnswer& answer) {
  std::vector<Group> groups;
  for (const CareCell& cell : answer.cells) {
    const auto known = std::find_if(groups.begin(), groups.end(), [&](const Group& one) {
      return one.cell.row == cell.row && one.cell.substance == cell.substance;
    });
    if (known == groups.end()) {
      groups.push_back({cell, cell.method->name});
    } else {
      known->methods += ", " + cell.method->name;
    }
  }
  std::stable_sort(groups.begin(), groups.end(), [](const Group& a, const Group& b) {
    return verdict_of(a.cell) < verdict_of(b.cell);
  });
  return groups;
}

}  // namespace

base::Result<CareAnswer> look_up_care(library::Library& library, const std::string& text) {
  const auto loaded = library.care();
  if (!loaded) return loaded.faults();
  const knowledge::CareTable& table = **loaded;
  CareAnswer answer;
  const knowledge::CareWords words = knowledge::care_words(table, text);
  if (words.substances.empty()) {
    return base::error(fmt::format("the care table knows no material in \"{}\"", text),
                       "name a material or a finish, and how it would be cleaned: \"hard rubber\" "
                       "\"hot water\"",
                       "lookup-care");
  }
  answer.whole_row = words.methods.empty();
  for (const knowledge::Substance* substance : words.substances) {
    const auto add = [&](const knowledge::CareMethod& method) {
      answer.cells.push_back({substance, &method, knowledge::find_row(table, *substance, method)});
    };
    if (answer.whole_row) {
      for (const knowledge::CareMethod& method : table.methods)
        add(method);
    } else {
      for (const knowledge::CareMethod* method : words.methods)
        add(*method);
    }
  }
  return answer;
}

std::string care_in_words(const CareAnswer& answer) {
  std::string out;
  for (const Group& group : grouped(answer)) {
    const CareCell& cell = group.cell;
    const std::string reason(cell.row == nullptr ? kHidden : std::string_view(cell.row->reason));
    out += with_hanging_lead(
        "  -  ", fmt::format("{}: {} on {}. {}{}", spoken(verdict_of(cell)), group.methods,
                             cell.substance->name, reason, grounds_of(cell)));
    if (answer.whole_row || cell.method->advice.empty()) continue;
    out += with_hanging_lead(
        "  -  ", fmt::format("In any case: {}. [common practice]", cell.method->advice));
  }
  out += broken_into_lines(
             "The table warns and does not forbid. What is painted, glued, cracked or "
             "worn stands less. Local rules and licensed practice come first.") +
         "\n";
  return out;
}

std::string care_as_json(const CareAnswer& answer) {
  const auto told = [](const CareCell& cell) {
    const bool known = cell.row != nullptr;
    return Json{{"substance", cell.substance->name},
                {"method", cell.method->name},
                {"verdict", knowledge::word_of(verdict_of(cell))},
                {"because", known ? std::string_view(cell.row->reason) : kHidden},
                {"source", known ? Json(cell.row->source) : Json(nullptr)},
                {"known", known_word(cell)}};
  };
  return json::answer("care", {{"kind", "care"}, {"cells", json::list(answer.cells, told)}});
}

}  // namespace winchbook::answers
