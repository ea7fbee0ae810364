#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "xml/schema.h"

namespace winchbook::recordfile {

/// One document as it was issued for good: a row of editions.xml.
struct IssuedEdition {
  std::string document;
  int number = 1;
  std::string issued_on;
  std::string reader;
  std::string file;
  std::string fingerprint;
  std::string code;
  std::string program;
};

/// The editions that editions.xml lists, oldest first; `file` is what messages call it, `schema`
/// editions-1.xsd.
[[nodiscard]] base::Result<std::vector<IssuedEdition>> editions_from(std::string file,
                                                                     std::string bytes,
                                                                     const xml::Schema& schema);

/// The bytes of an editions.xml that lists them.
[[nodiscard]] std::string editions_file(const std::vector<IssuedEdition>& editions);

}  // namespace winchbook::recordfile
