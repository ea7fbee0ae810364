#include "app/sales.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>

#include "cli/command.h"

namespace winchbook::cli {
namespace {

Exit check(const std::string& file, Surroundings& surroundings) {
  const app::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto summary = app::check_sales(world, file, surroundings.today);
  if (!summary) return tell(summary.faults(), surroundings.err);
  surroundings.out << app::summary_in_words(*summary);
  return kFine;
}

}  // namespace

Action add_sales(CLI::App& app) {
  auto file = std::make_shared<std::string>();
  app.require_subcommand(1);
  CLI::App* checking = app.add_subcommand("check", "look a sales file over, row by row");
  checking->add_option("FILE", *file, "the sales: CSV or XML")->required();
  checking->footer("The columns: " + std::string(app::kSalesColumns));
  return [file](Surroundings& surroundings) { return check(*file, surroundings); };
}

}  // namespace winchbook::cli
