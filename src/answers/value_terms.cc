#include "answers/value_terms.h"

#include <fmt/format.h>

#include "words/catalogue.h"

namespace winchbook::answers {

base::Diagnostics read_typed(std::string_view typed, Currency& into) {
  if (!words::is_currency(typed)) {
    return {base::error(fmt::format("there is no currency \"{}\"", typed),
                        "write its three capitals: GBP, EUR, USD (ISO 4217)", "command-currency")};
  }
  into.code = typed;
  return {};
}

forms::Form valuing_form(ValueTerms& terms, std::string_view sales_help,
                         std::string_view day_help) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("--sales", fmt::format("recorded sales, CSV or XML; left out, {}", sales_help),
            terms.sales),
      field("--prices", "a price index or exchange rates of your own, CSV; may be given again",
            terms.prices),
      field("--as-of", fmt::format("the day the value is for; left out, {}", day_help),
            terms.as_of),
      field("--currency", "GBP; left out, the record's or the sales' own", terms.currency),
      field("--purpose", "insurance (left out), sale or family", terms.purpose),
  };
}

}  // namespace winchbook::answers
