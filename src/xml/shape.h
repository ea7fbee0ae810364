#pragma once

#include <cstddef>
#include <optional>

#include "base/diagnostic.h"
#include "xml/source.h"

namespace winchbook::xml {

/// What a file may be at most, whatever a parser would bear.
struct Limits {
  std::size_t bytes = std::size_t{64} << 20U;
  std::size_t depth = 64;
  std::size_t text = std::size_t{8} << 20U;  ///< one stretch of text or one tag, in bytes
};

/// Looks over the bytes before any parser sees them. The first fault among: empty, not UTF-8,
/// another encoding declared, no "<" at the beginning, a document type, elements nested deeper than
/// the limit, a text or tag longer than the limit. Nothing when it is fit to be parsed.
[[nodiscard]] std::optional<base::Diagnostic> fault_of_shape(const Source& source,
                                                             const Limits& limits);

}  // namespace winchbook::xml
