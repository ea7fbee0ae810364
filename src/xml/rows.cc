#include "xml/rows.h"

#include <sstream>

namespace winchbook::xml {

void for_each_row(const Document& list, std::string_view name,
                  const std::function<void(const Row&)>& take) {
  const std::string wanted(name);
  for (const pugi::xml_node node : list.root().children(wanted.c_str())) {
    Row row{list.where(node), {}};
    for (const pugi::xml_node field : node.children()) {
      if (field.type() == pugi::node_element) row.fields.emplace(field.name(), field.text().get());
    }
    take(row);
  }
}

std::string written(const RowList& list) {
  pugi::xml_document file;
  pugi::xml_node declaration = file.append_child(pugi::node_declaration);
  declaration.append_attribute("version") = "1.0";
  declaration.append_attribute("encoding") = "UTF-8";
  pugi::xml_node root = file.append_child(list.root.c_str());
  root.append_attribute("xmlns") = list.name_space.c_str();
  root.append_attribute("version") = "1";
  for (const auto& fields : list.rows) {
    pugi::xml_node row = root.append_child(list.row.c_str());
    for (const auto& [name, value] : fields)
      row.append_child(name.c_str()).text().set(value.c_str());
  }
  std::ostringstream out;
  file.save(out, "  ", pugi::format_default, pugi::encoding_utf8);
  return out.str();
}

}  // namespace winchbook::xml
