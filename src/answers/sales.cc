#include "answers/sales.h"

#include <fmt/format.h>

#include <optional>

#include "knowledge/sales.h"
#include "words/catalogue.h"

namespace winchbook::answers {
namespace {

constexpr std::size_t kMostModels = 10000;  // counted apart: memory stays bounded

struct SalesCheck {
  std::filesystem::path file;
  base::Day today;
};

forms::Form form(SalesCheck& asked) {
  return {forms::field("FILE", "the sales: CSV or XML", asked.file).must(),
          forms::today(asked.today)};
}

base::Result<forms::Outcome> run(const SalesCheck& asked, forms::Setting& setting) {
  const auto summary = check_sales(setting.library, asked.file, asked.today);
  if (!summary) return summary.faults();
  return forms::Outcome{summary_in_words(*summary), {}, {}};
}

}  // namespace

base::Result<SalesSummary> check_sales(library::Library& library, const std::filesystem::path& file,
                                       const base::Day& today) {
  SalesSummary summary;
  std::optional<base::Day> first;
  std::optional<base::Day> last;
  const auto take = [&](const knowledge::Sale& sale) {
    ++summary.sales;
    const std::string model = sale.maker + ", " + sale.model;
    if (summary.by_model.size() < kMostModels || summary.by_model.contains(model)) {
      ++summary.by_model[model];
    } else {
      ++summary.other_models;
    }
    ++summary.by_currency[sale.price.currency];
    ++summary.by_basis[std::string(base::word_of(sale.basis))];
    const auto day = sale.date.earliest();
    if (!day) return;
    if (!first || *day < *first) {
      first = day;
      summary.first_date = sale.date.text();
    }
    if (!last || *day > *last) {
      last = day;
      summary.last_date = sale.date.text();
    }
  };
  base::Diagnostics faults = knowledge::each_sale(
      library.source(), {file, today, words::is_currency},
      [](std::string_view, std::string_view) { return true; }, take);
  if (!faults.empty()) return faults;
  return summary;
}

std::string summary_in_words(const SalesSummary& summary) {
  std::string text = fmt::format("{} {}", summary.sales, summary.sales == 1 ? "sale" : "sales");
  if (!summary.first_date.empty()) {
    text += fmt::format(", {} to {}", summary.first_date, summary.last_date);
  }
  text += "; nothing is wrong with them\n";
  const auto list = [&](std::string_view title, const std::map<std::string, std::size_t>& counts) {
    constexpr std::size_t kMostShown = 20;
    text += fmt::format("{}:\n", title);
    std::size_t shown = 0;
    for (const auto& [name, count] : counts) {
      if (shown++ == kMostShown) {
        text += fmt::format("  and {} more\n", counts.size() - kMostShown);
        break;
      }
      text += fmt::format("  {}: {}\n", name, count);
    }
  };
  list("models", summary.by_model);
  if (summary.other_models > 0) {
    text += fmt::format("  and sales of still other models: {}\n", summary.other_models);
  }
  list("bases", summary.by_basis);
  list("currencies", summary.by_currency);
  return text;
}

forms::Job sales_check_job() {
  forms::Job job = forms::job_of(form, run);
  job.more_help = "The columns: " + std::string(knowledge::kSalesColumns);
  return job;
}

}  // namespace winchbook::answers
