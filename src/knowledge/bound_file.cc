#include "knowledge/bound_file.h"

#include <fmt/format.h>

#include <string_view>

#include "knowledge/valid_file.h"

namespace winchbook::knowledge {
namespace {

std::optional<BoundEnd> end_from(const xml::Document& document, pugi::xml_node node, bool begins,
                                 base::Diagnostics& faults) {
  if (!node) return std::nullopt;
  const auto date = base::EdtfDate::parse(node.attribute("date").value());
  if (!date) {
    base::Diagnostic fault = date.faults().front();
    fault.where = document.where(node);
    faults.push_back(std::move(fault));
    return std::nullopt;
  }
  // The schema lets only years, months and days through: both ends are there.
  return BoundEnd{begins ? *date->earliest() : *date->latest(),
                  std::string_view(node.attribute("kind").value()) == "hard",
                  listed(node.attribute("known"), Known::recalled)};
}

}  // namespace

MarkBound bound_from(const xml::Document& document, pugi::xml_node node,
                     base::Diagnostics& faults) {
  MarkBound bound;
  bound.not_before = end_from(document, node.child("not-before"), true, faults);
  bound.not_after = end_from(document, node.child("not-after"), false, faults);
  bound.basis = folded(node.child("basis"));
  bound.source = folded(node.child("source"));
  if (bound.not_before && bound.not_after && bound.not_after->day < bound.not_before->day) {
    faults.push_back(base::error_at(
        document.where(node),
        fmt::format("\"{}\" ends ({}) before it begins ({})", folded(node.child("name")),
                    base::iso_text(bound.not_after->day), base::iso_text(bound.not_before->day)),
        "give not-before the earlier date, or leave one end out", "bound-order"));
  }
  return bound;
}

std::vector<std::string> forms_from(pugi::xml_node node) {
  std::vector<std::string> forms;
  for (const pugi::xml_node form : node.children("form"))
    forms.push_back(folded(form));
  return forms;
}

}  // namespace winchbook::knowledge
