#include "xml/walk.h"

namespace winchbook::xml {
namespace {

void walk(const Document& document, pugi::xml_node node,
          const std::function<void(const Text&)>& take) {
  for (const pugi::xml_attribute attribute : node.attributes())
    take({node.name(), attribute.name(), attribute.value(), document.offset(node)});
  for (const pugi::xml_node child : node.children()) {
    if (child.type() == pugi::node_element) {
      walk(document, child, take);
    } else {
      take({node.name(), {}, child.value(), document.offset(child)});
    }
  }
}

}  // namespace

void for_each_text(const Document& document, const std::function<void(const Text&)>& take) {
  walk(document, document.root(), take);
}

}  // namespace winchbook::xml
