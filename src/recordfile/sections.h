#pragma once

#include <span>
#include <vector>

#include "base/result.h"
#include "xml/document.h"

namespace winchbook::recordfile {

/// The newest version of the record this program reads and writes.
inline constexpr int kVersion = 1;

/// A section of the record: its element, and whether it must be there.
struct Section {
  const char* name;
  bool required;
};

/// All sections in the order of the file.
[[nodiscard]] std::span<const Section> sections();

/// Faults that leave no sense in looking further: another root, another namespace, a newer version.
[[nodiscard]] base::Diagnostics faults_of_root(const xml::Document& document);

/// Faults in how the sections stand: unknown, twice, out of order, missing; text between them.
[[nodiscard]] base::Diagnostics faults_of_order(const xml::Document& document);

/// Whether an element is of the record's namespace, as written without a prefix.
[[nodiscard]] bool is_ours(pugi::xml_node element);

}  // namespace winchbook::recordfile
