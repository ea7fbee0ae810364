#include "recordfile/write_record.h"

#include <string_view>

#include "recordfile/element.h"
#include "recordfile/element_text.h"
#include "recordfile/fields.h"
#include "recordfile/writer.h"

namespace winchbook::recordfile {

pugi::xml_document written_tree(const record::Record& record) {
  pugi::xml_document document;
  pugi::xml_node root = document.append_child("reel-record");
  root.append_attribute("xmlns") = kNamespace;
  root.append_attribute("version") = std::to_string(record.version).c_str();
  root.append_attribute("lang") = record.language.c_str();
  const Writer writer(root);
  fields(writer, record);
  return document;
}

std::string write_new(const record::Record& record, std::span<const OwnNote> notes) {
  const pugi::xml_document document = written_tree(record);
  const pugi::xml_node root = document.document_element();
  for (const OwnNote& note : notes) {
    pugi::xml_node around = root.find_node(
        [&](pugi::xml_node node) { return note.in == node.attribute("id").value(); });
    pugi::xml_node element = around.append_child(note.name.c_str());
    element.append_attribute("xmlns") = note.space.c_str();
    element.append_child(pugi::node_pcdata).set_value(note.text.c_str());
  }
  return "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n" + written(root, {"\n", "  "}, "") + "\n";
}

}  // namespace winchbook::recordfile
