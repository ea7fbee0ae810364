#pragma once

#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "library/library.h"
#include "recordfile/record_file.h"
#include "report/template.h"
#include "words/catalogue_file.h"

/// Which messages each document says of a record: every message of the catalogue carries its own
/// key in marks that no page prints, and the words of the document are searched for them.
namespace silence {

using Keys = std::set<std::string>;

class Teller {
 public:
  explicit Teller(winchbook::library::Library& library);

  /// The keys that each document says, by the document's name; one that is refused says nothing.
  [[nodiscard]] std::map<std::string, Keys> said(
      const winchbook::recordfile::LoadedRecord& record) const;
  /// What a message needs.
  [[nodiscard]] const std::vector<std::string>& needs(const std::string& key) const;
  /// Its words as they stand in the catalogue.
  [[nodiscard]] const std::string& words(const std::string& key) const;

  /// The documents that it tells.
  [[nodiscard]] static const std::vector<std::string>& documents();

 private:
  [[nodiscard]] Keys said_in(const std::string& document,
                             const winchbook::recordfile::LoadedRecord& record) const;

  winchbook::library::Library& library_;
  winchbook::words::CatalogueFile shipped_;
  mutable std::optional<winchbook::words::Catalogue> marked_;
  mutable std::map<std::string, winchbook::report::Template> designs_;
};

}  // namespace silence
