#pragma once

#include <span>
#include <string_view>

#include "base/diagnostic.h"

namespace winchbook::recordfile {

struct LoadedRecord;

/// Something a schema cannot say. Each rule is one function; it adds what it finds.
struct Rule {
  std::string_view id;       ///< printed in brackets after the message
  std::string_view meaning;  ///< what must hold, in a sentence
  void (*check)(const LoadedRecord&, base::Diagnostics&);
};

/// All rules about the record itself, in the order in which they are asked.
[[nodiscard]] std::span<const Rule> rules();

/// What all rules find, errors and warnings.
[[nodiscard]] base::Diagnostics apply_rules(const LoadedRecord& loaded);

}  // namespace winchbook::recordfile
