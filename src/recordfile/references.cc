#include "recordfile/references.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <functional>
#include <string_view>
#include <vector>

#include "recordfile/sections.h"
#include "xml/schema_words.h"

namespace winchbook::recordfile {
namespace {

using base::error_at;

/// A referring element and the kind of thing it points at: the name of the element that bears the
/// id.
struct Reference {
  std::string_view element;
  std::string_view kind;
};

// The same pairs stand in the schema as key and keyref; a test compares them.
constexpr auto kReferences = std::to_array<Reference>({
    {"brought-by", "person"},     {"by", "person"},
    {"chosen-by", "person"},      {"holder", "person"},
    {"judged-by", "person"},      {"owner", "person"},
    {"person", "person"},         {"restorer", "person"},
    {"shows", "person"},          {"to", "person"},
    {"told-by", "person"},        {"with", "person"},
    {"place", "place"},           {"fragment-of", "piece"},
    {"instead-of", "piece"},      {"must-stay", "piece"},
    {"piece", "piece"},           {"piece-may-leave", "piece"},
    {"piece-must-stay", "piece"}, {"donor", "donor"},
    {"marking", "marking"},       {"removed-in", "visit"},
    {"visit", "visit"},           {"leave", "agreement"},
    {"cover", "photo"},           {"old-photo", "photo"},
    {"pair-of", "photo"},         {"photo", "photo"},
});

std::string_view kind_of(std::string_view element) {
  const auto found = std::find_if(kReferences.begin(), kReferences.end(),
                                  [&](const Reference& one) { return one.element == element; });
  return found == kReferences.end() ? std::string_view{} : found->kind;
}

/// Visits every element of the record's namespace, in document order.
template <class Visit> void walk(pugi::xml_node element, const Visit& visit) {
  for (const pugi::xml_node child : element.children()) {
    if (child.type() != pugi::node_element || !is_ours(child)) continue;
    visit(child);
    walk(child, visit);
  }
}

using Nodes = std::map<std::string, pugi::xml_node, std::less<>>;

Nodes nodes_of_ids(pugi::xml_node root) {
  Nodes nodes;
  walk(root, [&](pugi::xml_node node) {
    if (const auto id = node.attribute("id")) nodes.try_emplace(id.value(), node);
  });
  return nodes;
}

/// Elements below an id are numbered by name, the same name running on until the next id.
void add_places(const xml::Document& document, pugi::xml_node element, const std::string& above,
                std::map<std::string, base::Location, std::less<>>& places) {
  std::map<std::string_view, int> numbers;
  const std::function<void(pugi::xml_node)> add = [&](pugi::xml_node parent) {
    for (const pugi::xml_node child : parent.children()) {
      if (child.type() != pugi::node_element || !is_ours(child)) continue;
      if (const auto id = child.attribute("id")) {
        places.try_emplace(id.value(), document.where(child));
        add_places(document, child, id.value(), places);
        continue;
      }
      places.try_emplace(fmt::format("{}/{}/{}", above, child.name(), numbers[child.name()]++),
                         document.where(child));
      add(child);
    }
  };
  add(element);
}

std::string hint_for(std::string_view ref, std::string_view kind, const Nodes& nodes) {
  std::vector<std::string> known;
  for (const auto& [id, node] : nodes) {
    if (kind == node.name()) known.push_back(id);
  }
  const std::string like = xml::nearest(ref, known);
  if (!like.empty()) return fmt::format("did you mean \"{}\"?", like);
  return fmt::format("give a {} the id \"{}\", or correct the reference", kind, ref);
}

}  // namespace

const base::Location* Places::find(std::string_view name) const {
  if (known_.empty() && document_) add_places(*document_, document_->root(), "", known_);
  const auto found = known_.find(name);
  return found == known_.end() ? nullptr : &found->second;
}

base::Diagnostics faults_of_references(const xml::Document& document) {
  const Nodes nodes = nodes_of_ids(document.root());
  base::Diagnostics faults;
  walk(document.root(), [&](pugi::xml_node node) {
    if (const auto id = node.attribute("id")) {
      const pugi::xml_node first = nodes.find(std::string_view(id.value()))->second;
      if (first != node) {
        faults.push_back(error_at(document.where(node),
                                  fmt::format("id \"{}\" stands twice, first in line {}",
                                              id.value(), document.where(first).line),
                                  "give one of them another id", "id-twice"));
      }
    }
    const auto ref = node.attribute("ref");
    const std::string_view kind = kind_of(node.name());
    if (!ref || kind.empty()) return;
    const auto found = nodes.find(std::string_view(ref.value()));
    if (found == nodes.end()) {
      faults.push_back(error_at(document.where(node),
                                fmt::format("\"{}\" points at \"{}\", and there is no such {}",
                                            node.name(), ref.value(), kind),
                                hint_for(ref.value(), kind, nodes), "reference"));
    } else if (kind != found->second.name()) {
      faults.push_back(error_at(document.where(node),
                                fmt::format("\"{}\" points at \"{}\", which is a {}, expected a {}",
                                            node.name(), ref.value(), found->second.name(), kind),
                                hint_for(ref.value(), kind, nodes), "reference"));
    }
  });
  return faults;
}

}  // namespace winchbook::recordfile
