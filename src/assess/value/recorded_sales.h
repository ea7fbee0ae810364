#pragma once

#include <string>
#include <vector>

#include "assess/value/sale.h"
#include "record/record.h"

namespace winchbook::assess::value {

/// The sales that a record holds, told as sales of this model.
[[nodiscard]] std::vector<Sale> recorded_sales(const record::Record& record);

/// The currency in which most of the sales were paid, the first by its letters of several; empty
/// without a sale.
[[nodiscard]] std::string most_frequent_currency(const std::vector<Sale>& sales);

}  // namespace winchbook::assess::value
