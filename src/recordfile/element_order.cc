#include "recordfile/element_order.h"

#include <algorithm>
#include <utility>

namespace winchbook::recordfile {
namespace {

std::string_view without_prefix(std::string_view name) {
  const std::size_t colon = name.find(':');
  return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

bool is(pugi::xml_node node, std::string_view name) {
  return without_prefix(node.name()) == name;
}

}  // namespace

ElementOrder::ElementOrder(const xml::Document& schema, std::string root) : root_(std::move(root)) {
  for (const pugi::xml_node node : schema.root().children()) {
    if (!is(node, "element")) continue;
    global_[node.attribute("name").value()] = without_prefix(node.attribute("type").value());
  }
  for (const pugi::xml_node node : schema.root().children()) {
    const std::string name = node.attribute("name").value();
    if (is(node, "complexType")) add_slots(node, false, types_[name]);
    if (is(node, "element") && name == root_) {
      for (const pugi::xml_node part : node.children())
        if (is(part, "complexType")) add_slots(part, false, types_[root_]);
    }
  }
}

void ElementOrder::add_slots(pugi::xml_node particle, bool choice, Slots& slots) const {
  const auto next = [&] { return slots.empty() ? 0 : slots.back().rank + 1; };
  const std::size_t shared = next();
  for (const pugi::xml_node part : particle.children()) {
    if (is(part, "sequence")) add_slots(part, false, slots);
    if (is(part, "choice")) add_slots(part, true, slots);
    if (!is(part, "element")) continue;
    const std::size_t rank = choice ? shared : next();
    if (const pugi::xml_attribute ref = part.attribute("ref")) {
      const std::string name(without_prefix(ref.value()));
      const auto found = global_.find(name);
      slots.push_back({name, found == global_.end() ? "" : found->second, rank});
    } else {
      slots.push_back({part.attribute("name").value(),
                       std::string(without_prefix(part.attribute("type").value())), rank});
    }
  }
}

const ElementOrder::Slots* ElementOrder::slots_of(pugi::xml_node element) const {
  std::string type = root_;
  if (element.name() != root_ || element.parent().type() != pugi::node_document) {
    if (element.type() != pugi::node_element) return nullptr;
    const Slots* around = slots_of(element.parent());
    if (around == nullptr) return nullptr;
    const auto slot = std::find_if(around->begin(), around->end(),
                                   [&](const Slot& one) { return one.name == element.name(); });
    if (slot == around->end()) return nullptr;
    type = slot->type;
  }
  const auto found = types_.find(type);
  return found == types_.end() ? nullptr : &found->second;
}

std::optional<std::size_t> ElementOrder::rank(pugi::xml_node parent, std::string_view child) const {
  const Slots* slots = slots_of(parent);
  if (slots == nullptr) return std::nullopt;
  const auto slot = std::find_if(slots->begin(), slots->end(),
                                 [&](const Slot& one) { return one.name == child; });
  return slot == slots->end() ? std::nullopt : std::optional(slot->rank);
}

}  // namespace winchbook::recordfile
