#pragma once

#include <map>
#include <string>

#include "base/diagnostic.h"
#include "xml/document.h"

namespace winchbook::recordfile {

/// Where each thing of the record stands, by its id ("pinion"); and each element without an id by
/// the id above it, its name, and its number among its like below that id, from 0
/// ("visit-2026/test/0").
using Places = std::map<std::string, base::Location, std::less<>>;

[[nodiscard]] Places places_of(const xml::Document& document);

/// Ids that stand twice, references that point at nothing, and references that point at a thing of
/// another kind ("ref" of <donor> at a person).
[[nodiscard]] base::Diagnostics faults_of_references(const xml::Document& document);

}  // namespace winchbook::recordfile
