#pragma once

#include <cstddef>
#include <filesystem>
#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "assess/value/sale.h"
#include "base/edtf_date.h"
#include "base/result.h"
#include "forms/job.h"
#include "library/library.h"

namespace winchbook::answers {

/// The columns of a sales file in CSV, in the order in which they are usually written. date, price,
/// currency, basis, maker and model must be there. The words of the axes are those of `grade`.
constexpr std::string_view kSalesColumns =
    "date,price,currency,basis,fees,venue,maker,model,kind,surface,structure,working,completeness,"
    "originality,box,notes,source";

/// Which rows of a sales file are wanted whole; the others are passed over unread.
using WantsSale = std::function<bool(std::string_view maker, std::string_view model)>;

/// The sales that were wanted, in the order of the file.
struct SalesRead {
  std::vector<assess::value::Sale> sales;
  std::size_t older = 0;  ///< wanted too, but older than those that were kept
};

/// Reads a sales file row by row: CSV, or XML by `schemas/sales-1.xsd`, told apart by how
/// they begin. Rows that are wanted are read whole, and what is wrong in them is told with its line
/// (a hundred at most, then how many more). A date after `today` is a fault. Of more than `most`
/// wanted sales the newest are kept, so that memory does not grow with the file.
[[nodiscard]] base::Result<SalesRead> read_sales(library::Library& library,
                                                 const std::filesystem::path& file,
                                                 const base::Day& today, const WantsSale& wants,
                                                 std::size_t most);

/// What a sales file holds.
struct SalesSummary {
  std::size_t sales = 0;
  std::map<std::string, std::size_t> by_model;  ///< "maker, model"; ten thousand at most
  std::size_t other_models = 0;                 ///< sales of models that were not counted apart
  std::map<std::string, std::size_t> by_currency;
  std::map<std::string, std::size_t> by_basis;
  std::string first_date;
  std::string last_date;
};

/// Looks a whole sales file over. Memory does not grow with the number of sales.
[[nodiscard]] base::Result<SalesSummary> check_sales(library::Library& library,
                                                     const std::filesystem::path& file,
                                                     const base::Day& today);

/// The summary in words; ends with a line break.
[[nodiscard]] std::string summary_in_words(const SalesSummary& summary);

/// The same as JSON that keeps schemas/sales_check.schema.json.
[[nodiscard]] std::string summary_as_json(const SalesSummary& summary);

[[nodiscard]] forms::Job sales_check_job();

}  // namespace winchbook::answers
