#include "answers/sales.h"
#include "json/json.h"

namespace winchbook::answers {

std::string summary_as_json(const SalesSummary& summary) {
  const auto counts = [](const std::map<std::string, std::size_t>& by_name) {
    return json::list(by_name, [](const auto& one) {
      return json::Json{{"name", one.first}, {"sales", one.second}};
    });
  };
  return json::answer("sales_check", {{"sales", summary.sales},
                                      {"first_date", json::or_null(summary.first_date)},
                                      {"last_date", json::or_null(summary.last_date)},
                                      {"models", counts(summary.by_model)},
                                      {"sales_of_other_models", summary.other_models},
                                      {"bases", counts(summary.by_basis)},
                                      {"currencies", counts(summary.by_currency)}});
}

}  // namespace winchbook::answers
