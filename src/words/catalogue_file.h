#pragma once

#include <string>

#include "base/result.h"
#include "words/catalogue.h"
#include "xml/document.h"
#include "xml/schema.h"

namespace winchbook::words {

/// One language's messages.
struct CatalogueFile {
  std::string language;
  std::string otherwise;  ///< the language to ask where this one has no message; empty: none
  Messages messages;
  Needs needs;
};

/// Reads a file of shared/words/. Errors: what the schema refuses.
[[nodiscard]] base::Result<CatalogueFile> read_catalogue(const xml::Document& file,
                                                         const xml::Schema& schema);

}  // namespace winchbook::words
