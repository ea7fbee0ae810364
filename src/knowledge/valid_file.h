#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "base/enum_words.h"
#include "base/result.h"
#include "knowledge/source.h"
#include "xml/document.h"

namespace winchbook::knowledge {

/// One of the knowledge files: read, of that root, and valid. All its faults with their places.
[[nodiscard]] base::Result<xml::Document> read_valid(const Source& source,
                                                     const std::filesystem::path& path,
                                                     std::string_view root);

/// A file of the bench's own, called `file` in messages, that keeps a schema of schemas/. All its
/// faults with their places.
[[nodiscard]] base::Result<xml::Document> valid_document(const Source& source, std::string file,
                                                         std::string bytes,
                                                         std::string_view schema);

/// The value whose word an attribute holds; `otherwise` where the attribute is not there. The
/// schema has refused any other word.
template <class Value> [[nodiscard]] Value listed(pugi::xml_attribute attribute, Value otherwise) {
  return base::value_of<Value>(attribute.value()).value_or(otherwise);
}

/// The words of a node with white space folded, as the schema's tokens are.
[[nodiscard]] std::string folded(pugi::xml_node node);

}  // namespace winchbook::knowledge
