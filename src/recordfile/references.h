#pragma once

#include <map>
#include <memory>
#include <string>
#include <string_view>
#include <utility>

#include "base/diagnostic.h"
#include "xml/document.h"

namespace winchbook::recordfile {

/// Where each thing of the record stands, by its id ("pinion"); and each element without an id by
/// the id above it, its name, and its number among its like below that id, from 0
/// ("visit-2026/test/0"). Looked up when the first fault is told: a record without faults never
/// asks.
class Places {
 public:
  Places() = default;
  explicit Places(std::shared_ptr<const xml::Document> document) : document_(std::move(document)) {}

  /// Null when nothing of that name is there.
  [[nodiscard]] const base::Location* find(std::string_view name) const;

 private:
  std::shared_ptr<const xml::Document> document_;
  mutable std::map<std::string, base::Location, std::less<>> known_;
};

/// Ids that stand twice, references that point at nothing, and references that point at a thing of
/// another kind ("ref" of <donor> at a person).
[[nodiscard]] base::Diagnostics faults_of_references(const xml::Document& document);

}  // namespace winchbook::recordfile
