#pragma once

#include <pugixml.hpp>
#include <span>
#include <string>

#include "record/record.h"

namespace winchbook::recordfile {

/// A bench's own note, of a namespace of its own: kept in the file and never read.
struct OwnNote {
  std::string in;     ///< the id of the element that it stands in
  std::string name;   ///< of its element: "fitted-before"
  std::string space;  ///< its namespace
  std::string text;
};

/// The record as one and the same tree for the same values: every section in the order of the
/// schema, and what may be left out only where it says more than its absence. Valid when the values
/// are; whatever the values do not hold (remarks, notes, digests of mentions) is not in it.
[[nodiscard]] pugi::xml_document written_tree(const record::Record& record);

/// The same as the bytes of a new record.xml.
[[nodiscard]] std::string write_new(const record::Record& record,
                                    std::span<const OwnNote> notes = {});

}  // namespace winchbook::recordfile
