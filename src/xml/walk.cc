#include "xml/walk.h"

#include <string>

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

/// Words, and elements among them.
bool is_mixed(pugi::xml_node node) {
  bool words = false;
  bool elements = false;
  for (const pugi::xml_node child : node.children()) {
    elements = elements || child.type() == pugi::node_element;
    words = words || ((child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata) &&
                      std::string_view(child.value()).find_first_not_of(" \t\r\n") !=
                          std::string_view::npos);
  }
  return words && elements;
}

void append_text(pugi::xml_node node, std::string& all) {
  for (const pugi::xml_node child : node.children()) {
    if (child.type() == pugi::node_element) {
      append_text(child, all);
    } else {
      all += child.value();
    }
  }
}

void passages(const Document& document, pugi::xml_node node,
              const std::function<void(const Text&)>& take) {
  if (is_mixed(node)) {
    std::string all;
    append_text(node, all);
    take({node.name(), {}, all, document.offset(node)});
    return;
  }
  for (const pugi::xml_node child : node.children()) {
    if (child.type() == pugi::node_element) passages(document, child, take);
  }
}

}  // namespace

void for_each_passage(const Document& document, const std::function<void(const Text&)>& take) {
  passages(document, document.root(), take);
}

void for_each_text(const Document& document, const std::function<void(const Text&)>& take) {
  walk(document, document.root(), take);
}

}  // namespace winchbook::xml
