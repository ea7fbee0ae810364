#include "daybook/typed_words.h"

#include <algorithm>
#include <array>
#include <string>

#include "daybook/named_people.h"

namespace winchbook::daybook {
namespace {

constexpr auto kElements =
    std::to_array<std::string_view>({"person", "piece", "photo", "emphasis", "note"});

/// Whether there is nothing in it but words and elements of a sentence.
bool is_a_sentence(pugi::xml_node element) {
  const auto parts = element.children();
  return std::all_of(parts.begin(), parts.end(), [](pugi::xml_node part) {
    if (part.type() == pugi::node_pcdata) return true;
    return part.type() == pugi::node_element &&
           std::find(kElements.begin(), kElements.end(), part.name()) != kElements.end() &&
           is_a_sentence(part);
  });
}

void put_plain(const record::Record& record, std::string_view text, pugi::xml_node into) {
  for (const NamedStretch& stretch : name_people(record, text)) {
    if (stretch.person.empty()) {
      into.append_child(pugi::node_pcdata).set_value(stretch.words.c_str());
      continue;
    }
    pugi::xml_node person = into.append_child("person");
    person.append_attribute("ref") = stretch.person.text.c_str();
    person.text().set(stretch.words.c_str());
  }
}

void put_parts(const record::Record& record, pugi::xml_node typed, pugi::xml_node into) {
  for (const pugi::xml_node part : typed.children()) {
    if (part.type() != pugi::node_element) {
      put_plain(record, part.value(), into);
      continue;
    }
    pugi::xml_node element = into.append_child(part.name());
    for (const pugi::xml_attribute one : part.attributes())
      element.append_attribute(one.name()) = one.value();
    if (std::string_view(part.name()) == "note") {
      put_parts(record, part, element);
    } else if (part.first_child()) {
      element.text().set(part.text().get());
    }
  }
}

}  // namespace

void put_typed_words(const record::Record& record, std::string_view text, pugi::xml_node into) {
  if (text.find('<') != std::string_view::npos) {
    pugi::xml_document typed;
    const std::string whole = "<typed>" + std::string(text) + "</typed>";
    const bool parsed = static_cast<bool>(
        typed.load_string(whole.c_str(), pugi::parse_default | pugi::parse_ws_pcdata));
    const pugi::xml_node root = typed.document_element();
    if (parsed && !root.next_sibling() && is_a_sentence(root)) {
      put_parts(record, root, into);
      return;
    }
  }
  put_plain(record, text, into);
}

}  // namespace winchbook::daybook
