#include "words/catalogue_file.h"

namespace winchbook::words {

base::Result<CatalogueFile> read_catalogue(const xml::Document& file, const xml::Schema& schema) {
  base::Diagnostics faults = schema.faults_in(file, file.root());
  if (base::has_error(faults)) return faults;
  CatalogueFile out;
  out.language = file.root().attribute("language").value();
  out.otherwise = file.root().attribute("otherwise").value();
  for (const pugi::xml_node node : file.root().children("m")) {
    out.messages.insert_or_assign(node.attribute("key").value(), node.child_value());
  }
  return out;
}

}  // namespace winchbook::words
