#include "recordfile/element_text.h"

#include <fmt/format.h>

#include <algorithm>

#include "xml/edit.h"

namespace winchbook::recordfile {
namespace {

constexpr std::size_t kLineLength = 100;

std::string start_tag(pugi::xml_node element) {
  std::string tag = fmt::format("<{}", element.name());
  for (const pugi::xml_attribute one : element.attributes())
    tag += fmt::format(" {}=\"{}\"", one.name(), xml::escaped(one.value()));
  return tag;
}

std::string end_tag(pugi::xml_node element) {
  return fmt::format("</{}>", element.name());
}

bool holds_text(pugi::xml_node element) {
  const auto parts = element.children();
  return std::any_of(parts.begin(), parts.end(), [](pugi::xml_node part) {
    return part.type() == pugi::node_pcdata || part.type() == pugi::node_cdata;
  });
}

/// Characters, not bytes.
std::size_t length_of(std::string_view text) {
  return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) {
    return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
  }));
}

std::string inside_on_one_line(pugi::xml_node element) {
  std::string inside;
  for (const pugi::xml_node part : element.children()) {
    if (part.type() == pugi::node_element) {
      inside += written_on_one_line(part);
    } else {
      inside += xml::escaped(part.value());
    }
  }
  return inside;
}

}  // namespace

std::string written_on_one_line(pugi::xml_node element) {
  if (!element.first_child()) return start_tag(element) + "/>";
  return start_tag(element) + ">" + inside_on_one_line(element) + end_tag(element);
}

std::string written_inside(pugi::xml_node element, const Layout& layout,
                           const std::string& indentation) {
  if (holds_text(element)) return inside_on_one_line(element);
  std::string inside;
  const std::string deeper = indentation + layout.indent;
  for (const pugi::xml_node part : element.children()) {
    inside += layout.line_end;
    inside += deeper + written(part, layout, deeper);
  }
  if (!inside.empty()) {
    inside += layout.line_end;
    inside += indentation;
  }
  return inside;
}

std::string written(pugi::xml_node element, const Layout& layout, const std::string& indentation) {
  std::string line = written_on_one_line(element);
  if (holds_text(element) || !element.first_child() ||
      indentation.size() + length_of(line) <= kLineLength) {
    return line;
  }
  return start_tag(element) + ">" + written_inside(element, layout, indentation) + end_tag(element);
}

}  // namespace winchbook::recordfile
