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
  bool json = false;
};

forms::Form form(SalesCheck& asked) {
  return {
      forms::field("FILE", "the sales: CSV or XML", asked.file).must(),
      forms::flag("--json", "what it holds as JSON (schemas/sales_check.schema.json)", asked.json),
      forms::today(asked.today)};
}

base::Result<forms::Outcome> run(const SalesCheck& asked, forms::Setting& setting) {
  const auto summary = check_sales(setting.library, asked.file, asked.today);
  if (!summary) return summary.faults();
  if (asked.json) return forms::Outcome{summary_as_json(*summary), {}, {}};
  return tell(setting, kNoRecord,
              [&](const words::Catalogue& words) { return summary_told(*summary, words); });
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

Blocks summary_told(const SalesSummary& summary, const words::Catalogue& words) {
  const auto text = [](std::size_t count) { return fmt::format("{}", count); };
  Blocks blocks{paragraph(
      words.say(summary.first_date.empty() ? "answer.sales.undated" : "answer.sales.sales",
                {{"count", text(summary.sales)},
                 {"one", summary.sales == 1 ? "one" : "other"},
                 {"first", summary.first_date},
                 {"last", summary.last_date}}))};
  const auto list = [&](const char* title, const std::map<std::string, std::size_t>& counts,
                        std::size_t others = 0) {
    constexpr std::size_t kMostShown = 20;
    std::vector<std::string> items;
    for (const auto& [name, count] : counts) {
      if (items.size() == kMostShown) {
        items.push_back(words.say("answer.more", {{"count", text(counts.size() - kMostShown)}}));
        break;
      }
      items.push_back(words.say("answer.sales.count", {{"name", name}, {"count", text(count)}}));
    }
    if (others > 0)
      items.push_back(words.say("answer.sales.other-models", {{"count", text(others)}}));
    blocks.emplace_back(next_line(words.say(title)));
    blocks.emplace_back(list_of(items));
  };
  list("answer.sales.models", summary.by_model, summary.other_models);
  std::map<std::string, std::size_t> bases;
  for (const auto& [basis, count] : summary.by_basis)
    bases[words.say("answer.value.paid." + basis)] += count;
  list("answer.sales.bases", bases);
  list("answer.sales.currencies", summary.by_currency);
  return blocks;
}

forms::Job sales_check_job() {
  forms::Job job = forms::job_of(form, run);
  job.more_help = "The columns: " + std::string(knowledge::kSalesColumns);
  return job;
}

}  // namespace winchbook::answers
