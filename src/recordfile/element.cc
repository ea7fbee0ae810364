#include "recordfile/element.h"

#include <algorithm>

namespace winchbook::recordfile {
namespace {

bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

}  // namespace

std::string own_text(pugi::xml_node node) {
  std::string text;
  for (const pugi::xml_node child : node.children()) {
    if (child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata)
      text += child.value();
  }
  return text;
}

std::string folded(std::string_view text) {
  std::string out;
  bool space = false;
  for (const char c : text) {
    if (is_space(c)) {
      space = true;
      continue;
    }
    if (space && !out.empty()) out += ' ';
    space = false;
    out += c;
  }
  return out;
}

std::string folded_lines(std::string_view text) {
  std::string out;
  std::size_t empty_lines = 0;
  for (std::size_t begin = 0; begin <= text.size();) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    const std::string line = folded(text.substr(begin, end - begin));
    if (line.empty()) {
      ++empty_lines;
    } else {
      if (!out.empty()) out.append(empty_lines + 1, '\n');
      empty_lines = 0;
      out += line;
    }
    begin = end + 1;
  }
  return out;
}

std::vector<Element> Element::all(const char* name) const {
  std::vector<Element> found;
  const std::string_view wanted = name;
  for (const pugi::xml_node child : node_.children()) {
    if (child.type() != pugi::node_element) continue;
    if (wanted.empty() || wanted == child.name()) found.push_back(with(child));
  }
  return found;
}

void Element::add_fault(base::Diagnostic fault) const {
  fault.where = document_->where(node_);
  faults_->push_back(std::move(fault));
}

}  // namespace winchbook::recordfile
