#pragma once

#include <cstddef>
#include <filesystem>
#include <map>
#include <string>

#include "answers/telling.h"
#include "base/edtf_date.h"
#include "base/result.h"
#include "forms/job.h"
#include "library/library.h"

namespace winchbook::answers {

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

/// The summary in words.
[[nodiscard]] Blocks summary_told(const SalesSummary& summary, const words::Catalogue& words);

/// The same as JSON that keeps schemas/sales_check.schema.json.
[[nodiscard]] std::string summary_as_json(const SalesSummary& summary);

[[nodiscard]] forms::Job sales_check_job();

}  // namespace winchbook::answers
