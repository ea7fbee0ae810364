#pragma once

#include <memory>
#include <pugixml.hpp>
#include <string_view>

#include "base/result.h"
#include "xml/document.h"

struct _xmlSchema;

namespace winchbook::xml {

/// A compiled XSD 1.0 schema.
class Schema {
 public:
  /// Error when the schema itself is not in order (our own file is broken).
  [[nodiscard]] static base::Result<Schema> compile(std::string_view file, std::string_view xsd);

  /// Everything wrong inside `element` (which the schema must know as a global element), in our own
  /// words, in document order. Identity constraints of elements above it are not looked at.
  [[nodiscard]] base::Diagnostics faults_in(const Document& document, pugi::xml_node element) const;

 private:
  struct Deleter {
    void operator()(_xmlSchema* schema) const;
  };

  Schema() = default;

  std::unique_ptr<_xmlSchema, Deleter> schema_;
};

}  // namespace winchbook::xml
