#pragma once

#include <string>
#include <string_view>

#include "record/record.h"

namespace winchbook::record {

/// Whether anything in the record has this id.
[[nodiscard]] bool has_id(const Record& record, std::string_view id);

/// An id that is free in the record, as close to the wish as can be: "Tail plate!" gives
/// "tail-plate", or "tail-plate-2".
[[nodiscard]] std::string free_id(const Record& record, std::string_view wish);

}  // namespace winchbook::record
