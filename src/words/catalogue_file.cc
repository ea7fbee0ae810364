#include "words/catalogue_file.h"

#include "base/words_of_text.h"

namespace winchbook::words {

base::Result<CatalogueFile> read_catalogue(const xml::Document& file, const xml::Schema& schema) {
  base::Diagnostics faults = schema.faults_in(file, file.root());
  if (base::has_error(faults)) return faults;
  CatalogueFile out;
  out.language = file.root().attribute("language").value();
  out.otherwise = file.root().attribute("otherwise").value();
  for (const pugi::xml_node node : file.root().children("m")) {
    const std::string key = node.attribute("key").value();
    out.messages.insert_or_assign(key, node.child_value());
    for (const std::string_view word : base::words_of(node.attribute("needs").value()))
      out.needs[key].emplace_back(word);
  }
  return out;
}

}  // namespace winchbook::words
