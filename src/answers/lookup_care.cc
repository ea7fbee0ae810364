#include "answers/lookup_care.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "json/json.h"

namespace winchbook::answers {
namespace {

using json::Json;
using knowledge::CareGrounds;
using knowledge::CareVerdict;

CareVerdict verdict_of(const CareCell& cell) {
  return cell.row == nullptr ? CareVerdict::not_known : cell.row->verdict;
}

const std::string& reason_of(const CareAnswer& answer, const CareCell& cell) {
  if (cell.row != nullptr) return cell.row->reason;
  return cell.hazardous ? answer.leave_it : answer.not_known;
}

std::string grounds_of(const CareCell& cell, const words::Catalogue& words) {
  if (cell.row == nullptr) return "";
  const std::string& source = cell.row->source;
  const bool said = source.find("recalled") != std::string::npos;
  if (cell.row->grounds != CareGrounds::recalled || said)
    return words.say("answer.care.source", {{"source", source}});
  return words.say("answer.care.recalled", {{"source", source}});
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
      groups.push_back({cell, cell.method_name()});
    } else {
      known->methods += ", " + cell.method_name();
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
  const auto said = library.words(kNoRecord);
  if (!said) return said.faults();
  CareAnswer answer;
  answer.not_known = said->say("answer.care.hidden");
  answer.leave_it = said->say("answer.care.leave");
  const knowledge::CareWords words = knowledge::care_words(table, text);
  if (words.substances.empty()) {
    const knowledge::Substance* meant = knowledge::meant_in(table, text);
    return base::error(
        fmt::format("the care table knows no material in \"{}\"{}", text,
                    meant == nullptr ? "" : "; \"" + meant->name + "\" may be meant"),
        "name a material or a finish, and how it would be cleaned: \"hard rubber\" "
        "\"hot water\"",
        "lookup-care");
  }
  answer.whole_row = words.methods.empty() && words.left_over.empty();
  for (const knowledge::Substance* substance : words.substances) {
    const auto add = [&](const knowledge::CareMethod& method) {
      answer.cells.push_back({substance,
                              &method,
                              knowledge::find_row(table, *substance, method),
                              {},
                              knowledge::is_hazardous(table, *substance)});
    };
    if (answer.whole_row) {
      for (const knowledge::CareMethod& method : table.methods)
        add(method);
    } else {
      for (const knowledge::CareMethod* method : words.methods)
        add(*method);
      // What the table does not know is not known, and not the nearest that it knows.
      if (words.methods.empty())
        answer.cells.push_back({substance, nullptr, nullptr, words.left_over,
                                knowledge::is_hazardous(table, *substance)});
    }
  }
  return answer;
}

Blocks care_told(const CareAnswer& answer, const words::Catalogue& words) {
  std::vector<std::string> items;
  for (const Group& group : grouped(answer)) {
    const CareCell& cell = group.cell;
    items.push_back(words.say("answer.care.cell",
                              {{"verdict", called(words, "answer.care.verdict", verdict_of(cell))},
                               {"methods", group.methods},
                               {"substance", cell.substance->name},
                               {"reason", reason_of(answer, cell)}}));
    if (cell.row != nullptr) items.back() += " " + grounds_of(cell, words);
    if (answer.whole_row || cell.method == nullptr || cell.method->advice.empty()) continue;
    items.push_back(words.say("answer.care.in-any-case", {{"advice", cell.method->advice}}));
  }
  return {list_of(items), paragraph(words.say("answer.care.warns"))};
}

std::string care_as_json(const CareAnswer& answer) {
  const auto told = [&](const CareCell& cell) {
    const bool known = cell.row != nullptr;
    return Json{{"substance", cell.substance->name},
                {"method", cell.method_name()},
                {"verdict", knowledge::word_of(verdict_of(cell))},
                {"because", reason_of(answer, cell)},
                {"source", known ? Json(cell.row->source) : Json(nullptr)},
                {"known", known_word(cell)}};
  };
  return json::answer("care", {{"kind", "care"}, {"cells", json::list(answer.cells, told)}});
}

}  // namespace winchbook::answers
