#pragma once

#include <filesystem>
#include <string_view>
#include <vector>

#include "assess/fitting/seat.h"
#include "base/result.h"
#include "library/library.h"

namespace winchbook::answers {

/// Reads a bench's stock of washers: CSV (RFC 4180; columns donor, material, outside, inside,
/// thickness, and if wanted held, flats, price, count, unit) or XML (`schemas/stock-1.xsd`), told
/// apart by the first byte. A length carries its unit ("22 mm", "7/8 in"), or the row's `unit`
/// column gives it. `held` is free, gear (ears) or sleeve (flats); left out, free. All faults with
/// their lines.
[[nodiscard]] base::Result<std::vector<assess::fitting::StockWasher>> read_stock(
    library::Library& library, const std::filesystem::path& file);

/// Reads a stack: a list such as "red fibre free 1.3 mm, steel gear 0.9 mm", from the gear's floor
/// outwards, or the CSV file of that name with the columns material, held, thickness. A thickness
/// may be left out.
[[nodiscard]] base::Result<std::vector<assess::fitting::StackWasher>> read_stack(
    library::Library& library, std::string_view list_or_file);

}  // namespace winchbook::answers
