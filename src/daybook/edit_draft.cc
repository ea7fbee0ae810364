#include "daybook/edit_draft.h"

#include <algorithm>
#include <cctype>
#include <optional>
#include <utility>

#include "daybook/edit_text.h"
#include "daybook/typed_words.h"

namespace winchbook::daybook {
namespace {

constexpr std::string_view kBlanks = " \t";
constexpr std::string_view kSpace = " \t\r\n";

bool is_element(pugi::xml_node node) {
  return node.type() == pugi::node_element;
}

pugi::xml_node found_by_id(pugi::xml_node from, std::string_view id) {
  return from.find_node([&](pugi::xml_node node) { return id == node.attribute("id").value(); });
}

/// One level of the file's own indentation: that of its first section.
std::string indent_of(const xml::Document& document) {
  for (const pugi::xml_node section : document.root().children()) {
    if (!is_element(section) || section.offset_debug() < 0) continue;
    return std::string(xml::indentation_of(document, section));
  }
  return "  ";
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

}  // namespace

base::Result<Draft> Draft::of(const recordfile::LoadedRecord& loaded, const ElementOrder& order) {
  auto document = xml::Document::parse(loaded.file, loaded.bytes);
  if (!document) return document.faults();
  return Draft(loaded, order, std::move(document).value());
}

Draft::Draft(const recordfile::LoadedRecord& loaded, const ElementOrder& order,
             xml::Document document)
    : loaded_(&loaded), order_(&order), document_(std::move(document)) {}

pugi::xml_node Draft::section(const char* name) {
  return need(document_.root(), name);
}

pugi::xml_node Draft::by_id(std::string_view id) const {
  return found_by_id(document_.root(), id);
}

pugi::xml_node Draft::visit() const {
  pugi::xml_node last;
  for (const pugi::xml_node visit : document_.root().child("visits").children("visit"))
    last = visit;
  return last;
}

pugi::xml_node Draft::add(pugi::xml_node parent, const char* name, std::string_view text) {
  const auto rank = order_->rank(parent, name);
  pugi::xml_node before;
  for (const pugi::xml_node child : parent.children()) {
    if (!is_element(child)) continue;
    const auto other = order_->rank(parent, child.name());
    if (!rank || (other && *other <= *rank)) before = child;
  }
  pugi::xml_node added =
      before ? parent.insert_child_after(name, before) : parent.prepend_child(name);
  if (!text.empty()) added.text().set(std::string(text).c_str());
  return added;
}

pugi::xml_node Draft::add_before(pugi::xml_node brother, const char* name) {
  return brother.parent().insert_child_before(name, brother);
}

pugi::xml_node Draft::add_with_id(pugi::xml_node parent, const char* name, std::string_view id) {
  pugi::xml_node added = add(parent, name);
  added.append_attribute("id") = std::string(id).c_str();
  return added;
}

pugi::xml_node Draft::add_ref(pugi::xml_node parent, const char* name, std::string_view id) {
  pugi::xml_node added = add(parent, name);
  added.append_attribute("ref") = std::string(id).c_str();
  return added;
}

void Draft::add_words(pugi::xml_node parent, const char* name, std::string_view text) {
  if (text.find_first_not_of(kSpace) == std::string_view::npos) return;
  put_typed_words(record(), text, add(parent, name));
}

void Draft::set_words(pugi::xml_node parent, const char* name, std::string_view text) {
  if (text.find_first_not_of(kSpace) == std::string_view::npos) return;
  const pugi::xml_node there = parent.child(name);
  if (!there) return add_words(parent, name, text);
  empty(there);
  put_typed_words(record(), text, there);
}

void Draft::add_paragraphs(pugi::xml_node parent, std::string_view text) {
  std::string paragraph;
  const auto end_paragraph = [&] { add_words(parent, "p", std::exchange(paragraph, {})); };
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    const std::string_view line = text.substr(0, end);
    text.remove_prefix(std::min(end + 1, text.size()));
    if (line.find_first_not_of(kSpace) == std::string_view::npos) {
      end_paragraph();
      continue;
    }
    if (!paragraph.empty()) paragraph += ' ';
    const std::size_t first = line.find_first_not_of(kSpace);
    paragraph += line.substr(first, line.find_last_not_of(kSpace) - first + 1);
  }
  end_paragraph();
}

void Draft::add_if(pugi::xml_node parent, const char* name, std::string_view text) {
  if (!text.empty()) add(parent, name, text);
}

pugi::xml_node Draft::need(pugi::xml_node parent, const char* name) {
  const pugi::xml_node there = parent.child(name);
  return there ? there : add(parent, name);
}

void Draft::set(pugi::xml_node parent, const char* name, std::string_view text) {
  pugi::xml_node child = need(parent, name);
  if (text == child.text().get()) return;
  empty(child);
  child.text().set(std::string(text).c_str());
}

void Draft::empty(pugi::xml_node element) {
  element.remove_children();
  if (!is_new(element) && std::find(emptied_.begin(), emptied_.end(), element) == emptied_.end()) {
    emptied_.push_back(element);
  }
}

std::string Draft::free_id(std::string_view wish) {
  constexpr std::size_t kLongest = 56;
  std::string id;
  for (const char c : wish) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte < 0x80 && std::isalnum(byte) != 0) {
      id += static_cast<char>(std::tolower(byte));
    } else if (!id.empty() && id.back() != '-' && byte < 0x80) {
      id += '-';
    }
  }
  id.resize(std::min(id.size(), kLongest));
  while (!id.empty() && id.back() == '-')
    id.pop_back();
  if (id.empty() || std::isdigit(static_cast<unsigned char>(id.front())) != 0) id = "x-" + id;
  if (!by_id(id)) return id;
  for (int number = 2;; ++number) {
    std::string numbered = id + "-" + std::to_string(number);
    if (!by_id(numbered)) return numbered;
  }
}

base::Result<std::string> Draft::id_for(const std::string& given, std::string_view wish) {
  if (given.empty()) return free_id(wish);
  if (!by_id(given)) return given;
  return base::error_at(loaded().where(given),
                        "something is called \"" + given + "\" in the record already",
                        "give another --id, or leave it out", "command-id");
}

bool Draft::is_new(pugi::xml_node node) const {
  return node.offset_debug() < 0;
}

std::vector<xml::Splice> Draft::splices() const {
  std::vector<xml::Splice> splices;
  look_through(document_.root(), splices);
  return splices;
}

void Draft::look_through(pugi::xml_node element, std::vector<xml::Splice>& splices) const {
  if (std::find(emptied_.begin(), emptied_.end(), element) != emptied_.end()) {
    put_in(element, {}, splices);
    return;
  }
  std::vector<pugi::xml_node> fresh;
  for (const pugi::xml_node child : element.children()) {
    if (!is_element(child)) continue;
    if (is_new(child)) {
      fresh.push_back(child);
      continue;
    }
    if (!fresh.empty()) put_in(element, std::exchange(fresh, {}), splices);
    look_through(child, splices);
  }
  if (!fresh.empty()) put_in(element, fresh, splices);
}

/// Puts new brothers, which stand together, into the file; without any, writes the whole inside of
/// an element that was emptied.
void Draft::put_in(pugi::xml_node parent, const std::vector<pugi::xml_node>& fresh,
                   std::vector<xml::Splice>& splices) const {
  const std::string_view bytes = document_.source().bytes();
  const Layout layout{xml::line_end_of(bytes), indent_of(document_)};
  const xml::ElementExtent around = xml::extent_of(document_, parent);
  const std::string outer = line_indentation(bytes, around.whole.begin);
  const auto in_lines = [&](const std::string& indentation) {
    std::string lines;
    for (const pugi::xml_node one : fresh) {
      lines += indentation + written(one, layout, indentation);
      lines += layout.line_end;
    }
    return lines;
  };
  const auto in_one_line = [&] {
    std::string line;
    for (const pugi::xml_node one : fresh)
      line += written_on_one_line(one);
    return line;
  };
  if (fresh.empty()) {
    if (around.self_closing) {
      splices.push_back({around.whole.begin, around.whole.end, written(parent, layout, outer)});
      return;
    }
    std::string inside = written(parent, layout, outer);
    const std::size_t begin = inside.find('>') + 1;
    const std::size_t end = inside.rfind('<');
    inside = begin > end ? std::string() : inside.substr(begin, end - begin);
    splices.push_back({around.content.begin, around.content.end, std::move(inside)});
    return;
  }
  const auto original = [&](pugi::xml_node node, bool forwards) {
    do {
      node = forwards ? node.next_sibling() : node.previous_sibling();
    } while (node && (!is_element(node) || is_new(node)));
    return node;
  };
  if (const pugi::xml_node before = original(fresh.front(), false)) {
    const std::size_t end = xml::extent_of(document_, before).whole.end;
    if (const auto line_end = rest_of_line(bytes, end)) {
      const std::size_t begin = xml::extent_of(document_, before).whole.begin;
      splices.push_back({*line_end, *line_end, in_lines(line_indentation(bytes, begin))});
    } else {
      splices.push_back({end, end, in_one_line()});
    }
    return;
  }
  if (original(fresh.back(), true)) {
    const std::size_t begin = around.content.begin;
    if (const auto line_end = rest_of_line(bytes, begin)) {
      splices.push_back({*line_end, *line_end, in_lines(outer + layout.indent)});
    } else {
      splices.push_back({begin, begin, in_one_line()});
    }
    return;
  }
  const std::string lines = std::string(layout.line_end) + in_lines(outer + layout.indent) + outer;
  if (around.self_closing) {
    const std::size_t slash = around.whole.end - 2;
    splices.push_back({slash, around.whole.end, ">" + lines + "</" + parent.name() + ">"});
    return;
  }
  std::size_t tail = around.content.end;
  while (tail > around.content.begin && kSpace.find(bytes[tail - 1]) != std::string_view::npos)
    --tail;
  splices.push_back({tail, around.content.end, lines});
}

}  // namespace winchbook::daybook
