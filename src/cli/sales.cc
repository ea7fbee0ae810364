#include "answers/sales.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>
#include <utility>

#include "cli/writing.h"
#include "daybook/entries/enter_sale.h"

namespace winchbook::cli {
namespace {

struct Options {
  std::string file;
  WritingOptions writing;
  daybook::SaleRequest sale;
  daybook::ValuePurposeRequest purpose;
};

Exit check(const std::string& file, Surroundings& surroundings) {
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto summary = answers::check_sales(world, file, surroundings.today);
  if (!summary) return tell(summary.faults(), surroundings.err);
  surroundings.out << answers::summary_in_words(*summary);
  return kFine;
}

Exit enter(Options options, Surroundings& surroundings) {
  daybook::SaleRequest& sale = options.sale;
  Questions questions(surroundings);
  questions.need("--date", "When was it sold?", sale.date);
  questions.need("--price", "For how much (\"128.00 GBP\")?", sale.price);
  questions.need("--included", "What was sold?", sale.included);
  questions.need("--kind", "How: auction, dealer, private, asking-price or other?", sale.kind);
  questions.need("--state", "In what state, in the source's own words?", sale.state);
  questions.need("--source", "How is that known?", sale.source);
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  return write(options.writing, daybook::enter_sale(std::move(sale)), surroundings);
}

void add_enter_options(CLI::App& app, Options& options) {
  add_writing_options(app, options.writing);
  add_id_option(app, options.sale.id);
  app.add_option("--date", options.sale.date, "when it was sold, EDTF");
  app.add_option("--price", options.sale.price, "for how much: \"128.00 GBP\"");
  app.add_option("--included", options.sale.included, "what was sold: \"reel, box, spare spool\"");
  app.add_option("--kind", options.sale.kind, "auction, dealer, private, asking-price or other");
  app.add_flag("--with-premium", options.sale.with_premium, "the price holds the buyer's premium");
  app.add_option("--state", options.sale.state, "its state, in the source's own words");
  app.add_option("--originality", options.sale.originality, "how much was the maker's, 0 to 100");
  app.add_flag("--box", options.sale.box, "it had its box");
  app.add_option("--source", options.sale.source, "how that is known");
  app.add_option("--not-used", options.sale.not_used, "why it does not count");
}

void add_purpose_options(CLI::App& app, Options& options) {
  add_writing_options(app, options.writing);
  app.add_option("--purpose", options.purpose.purpose, "insurance, sale, division, …");
  app.add_option("--effective", options.purpose.effective, "the day for which the value holds");
  app.add_option("--basis", options.purpose.basis,
                 "\"what a willing buyer pays a willing seller\"");
  app.add_option("--currency", options.purpose.currency, "the currency: GBP");
  app.add_option("--note", options.purpose.note, "a note");
}

}  // namespace

Action add_sales(CLI::App& app) {
  auto options = std::make_shared<Options>();
  app.require_subcommand(1);
  CLI::App* checking = app.add_subcommand("check", "look a sales file over, row by row");
  checking->add_option("FILE", options->file, "the sales: CSV or XML")->required();
  checking->footer("The columns: " + std::string(answers::kSalesColumns));
  CLI::App* entering = app.add_subcommand("add", "enter a sale into a reel's record");
  add_enter_options(*entering, *options);
  CLI::App* purpose = app.add_subcommand("for", "enter what the value in a reel's record is for");
  add_purpose_options(*purpose, *options);
  return [=](Surroundings& surroundings) {
    if (entering->parsed()) return enter(*options, surroundings);
    if (purpose->parsed()) {
      return write(options->writing, daybook::value_purpose(options->purpose), surroundings);
    }
    return check(options->file, surroundings);
  };
}

}  // namespace winchbook::cli
