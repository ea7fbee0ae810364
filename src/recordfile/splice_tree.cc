#include "recordfile/splice_tree.h"

#include <algorithm>
#include <optional>
#include <string>
#include <utility>

#include "recordfile/element_text.h"

namespace winchbook::recordfile {
namespace {

using Nodes = std::vector<pugi::xml_node>;

constexpr std::string_view kBlanks = " \t";
constexpr std::string_view kSpace = " \t\r\n";

bool is_element(pugi::xml_node node) {
  return node.type() == pugi::node_element;
}

bool is_new(pugi::xml_node node) {
  return node.offset_debug() < 0;
}

bool is_among(const Nodes& nodes, pugi::xml_node node) {
  return std::find(nodes.begin(), nodes.end(), node) != nodes.end();
}

/// The next brother, or the one before, that was in the file before.
pugi::xml_node old_brother(pugi::xml_node node, bool forwards) {
  do {
    node = forwards ? node.next_sibling() : node.previous_sibling();
  } while (node && (!is_element(node) || is_new(node)));
  return node;
}

/// How the file sets its lines; one level is indented as its first section.
Layout layout_of(const xml::Document& document) {
  Layout layout{xml::line_end_of(document.source().bytes()), "  "};
  for (const pugi::xml_node section : document.root().children()) {
    if (!is_element(section) || is_new(section)) continue;
    layout.indent = xml::indentation_of(document, section);
    break;
  }
  return layout;
}

/// The end of the line on which the byte at `at` stands, when only remarks and blanks follow it
/// there; else nothing.
std::optional<std::size_t> rest_of_line(std::string_view bytes, std::size_t at) {
  for (;;) {
    at = std::min(bytes.find_first_not_of(kBlanks, at), bytes.size());
    if (bytes.substr(at).starts_with("<!--")) {
      at = bytes.find("-->", at) + 3;
      continue;
    }
    if (bytes.substr(at).starts_with("\r\n")) return at + 2;
    if (at < bytes.size() && bytes[at] == '\n') return at + 1;
    return std::nullopt;
  }
}

/// The white space at the beginning of the line on which the byte at `at` stands.
std::string line_indentation(std::string_view bytes, std::size_t at) {
  const std::size_t before = at == 0 ? std::string_view::npos : bytes.rfind('\n', at - 1);
  const std::size_t begin = before == std::string_view::npos ? 0 : before + 1;
  const std::size_t end = std::min(bytes.find_first_not_of(kBlanks, begin), at);
  return std::string(bytes.substr(begin, end - begin));
}

std::string in_one_line(const Nodes& fresh) {
  std::string line;
  for (const pugi::xml_node one : fresh)
    line += written_on_one_line(one);
  return line;
}

}  // namespace

pugi::xml_node SpliceTree::put_in(pugi::xml_node parent, pugi::xml_node element) const {
  const auto rank = order_->rank(parent, element.name());
  pugi::xml_node before;
  for (const pugi::xml_node child : parent.children()) {
    if (!is_element(child)) continue;
    const auto other = order_->rank(parent, child.name());
    if (!rank || (other && *other <= *rank)) before = child;
  }
  return before ? parent.insert_copy_after(element, before) : parent.prepend_copy(element);
}

bool SpliceTree::stand_together(pugi::xml_node parent, std::string_view one,
                                std::string_view other) const {
  const auto rank = order_->rank(parent, one);
  return one == other || (rank && rank == order_->rank(parent, other));
}

void SpliceTree::fill(pugi::xml_node element, pugi::xml_node like) {
  element.remove_children();
  for (const pugi::xml_node child : like.children())
    element.append_copy(child);
  filled_.push_back(element);
}

std::vector<xml::Splice> SpliceTree::splices() const {
  std::vector<xml::Splice> splices;
  look_through(document_.root(), splices);
  for (const pugi::xml_node one : taken_) {
    const xml::Extent lines = xml::lines_of(document_, one);
    splices.push_back({lines.begin, lines.end, {}});
  }
  return splices;
}

void SpliceTree::look_through(pugi::xml_node element, std::vector<xml::Splice>& splices) const {
  if (is_among(taken_, element)) return;
  if (is_among(filled_, element)) {
    splices.push_back(refilled(element));
    return;
  }
  Nodes fresh;
  for (const pugi::xml_node child : element.children()) {
    if (!is_element(child)) continue;
    if (is_new(child)) {
      fresh.push_back(child);
      continue;
    }
    if (!fresh.empty()) splices.push_back(added(element, std::exchange(fresh, {})));
    look_through(child, splices);
  }
  if (!fresh.empty()) splices.push_back(added(element, fresh));
}

/// The whole inside of an element that was filled anew.
xml::Splice SpliceTree::refilled(pugi::xml_node element) const {
  const xml::ElementExtent around = xml::extent_of(document_, element);
  const std::string outer = line_indentation(document_.source().bytes(), around.whole.begin);
  const Layout layout = layout_of(document_);
  if (around.self_closing)
    return {around.whole.begin, around.whole.end, written(element, layout, outer)};
  return {around.content.begin, around.content.end, written_inside(element, layout, outer)};
}

std::string SpliceTree::in_lines(const Nodes& fresh, const std::string& indentation) const {
  const Layout layout = layout_of(document_);
  std::string lines;
  for (const pugi::xml_node one : fresh) {
    lines += indentation + written(one, layout, indentation);
    lines += layout.line_end;
  }
  return lines;
}

/// New brothers, which stand together, beside what is in the file.
xml::Splice SpliceTree::added(pugi::xml_node parent, const Nodes& fresh) const {
  const std::string_view bytes = document_.source().bytes();
  const xml::ElementExtent around = xml::extent_of(document_, parent);
  std::size_t at = around.content.begin;
  std::string indentation;
  if (const pugi::xml_node before = old_brother(fresh.front(), false)) {
    const xml::Extent whole = xml::extent_of(document_, before).whole;
    at = whole.end;
    indentation = line_indentation(bytes, whole.begin);
  } else if (old_brother(fresh.back(), true)) {
    indentation = line_indentation(bytes, around.whole.begin) + layout_of(document_).indent;
  } else {
    return added_alone(parent, fresh);
  }
  if (const auto line_end = rest_of_line(bytes, at))
    return {*line_end, *line_end, in_lines(fresh, indentation)};
  return {at, at, in_one_line(fresh)};
}

/// The first elements in an element that holds none.
xml::Splice SpliceTree::added_alone(pugi::xml_node parent, const Nodes& fresh) const {
  const std::string_view bytes = document_.source().bytes();
  const Layout layout = layout_of(document_);
  const xml::ElementExtent around = xml::extent_of(document_, parent);
  const std::string outer = line_indentation(bytes, around.whole.begin);
  std::string lines(layout.line_end);
  lines += in_lines(fresh, outer + layout.indent) + outer;
  if (around.self_closing) {
    const std::size_t slash = around.whole.end - 2;
    return {slash, around.whole.end, ">" + lines + "</" + parent.name() + ">"};
  }
  std::size_t tail = around.content.end;
  while (tail > around.content.begin && kSpace.find(bytes[tail - 1]) != std::string_view::npos)
    --tail;
  return {tail, around.content.end, lines};
}

}  // namespace winchbook::recordfile
