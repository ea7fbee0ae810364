#include "daybook/entries/enter_sale.h"

#include <fmt/format.h>

#include <utility>

#include "record/enum_words.h"

namespace winchbook::daybook {
namespace {

forms::Form sale_form(SaleRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      id_field(request.id),
      field("--date", "when it was sold, EDTF", request.date).asks("When was it sold?"),
      field("--price", "for how much: \"128.00 GBP\"", request.price)
          .asks("For how much (\"128.00 GBP\")?"),
      field("--included", "what was sold: \"reel, box, spare spool\"", request.included)
          .asks("What was sold?"),
      field("--kind", "auction, dealer, private, asking-price or other", request.kind)
          .asks("How: auction, dealer, private, asking-price or other?"),
      flag("--with-premium", "the price holds the buyer's premium", request.with_premium),
      field("--state", "its state, in the source's own words", request.state)
          .asks("In what state, in the source's own words?"),
      field("--originality", "how much was the maker's, 0 to 100", request.originality),
      flag("--box", "it had its box", request.box),
      field("--source", "how that is known", request.source).asks("How is that known?"),
      field("--not-used", "why it does not count", request.not_used),
  };
}

forms::Form purpose_form(ValuePurposeRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("--purpose", "insurance, sale, division, …", request.purpose),
      field("--effective", "the day for which the value holds", request.effective),
      field("--basis", "\"what a willing buyer pays a willing seller\"", request.basis),
      field("--currency", "the currency: GBP", request.currency),
      field("--note", "a note", request.note),
  };
}

}  // namespace

base::Result<Said> value_purpose(const ValuePurposeRequest& request, Draft& draft) {
  const bool complete = request.effective && !request.basis.empty() && !request.purpose.empty() &&
                        !request.currency.empty();
  if (!draft.record().value && !complete) {
    return base::of_command(base::error("the record's value is not begun yet",
                                        "give --purpose, --effective, --basis and --currency",
                                        "command-value"));
  }
  record::Value value = draft.record().value.value_or(record::Value{});
  set_if(value.effective, request.effective);
  set_if(value.basis, request.basis);
  set_if(value.purpose, request.purpose);
  set_if(value.currency, request.currency);
  draft.put(value.note, request.note);
  std::string sentence = fmt::format("the value is for {}, of {}, in {}", value.purpose,
                                     value.effective.text(), value.currency);
  draft.record().value = std::move(value);
  return Said{std::move(sentence), {}};
}

base::Result<Said> enter_sale(const SaleRequest& request, Draft& draft) {
  auto& value = draft.record().value;
  if (!value) {
    return base::of_command(base::error("the record does not say what the value is for",
                                        "say it first with winchbook sales for", "command-value"));
  }
  const auto id = draft.id_for(request.id, fmt::format("sa-{}", value->sales.size() + 1));
  if (!id) return id.faults();
  record::Sale sale;
  sale.id = {*id};
  sale.on = request.date;
  sale.price = request.price;
  sale.included = request.included;
  sale.kind = request.kind;
  sale.with_premium = request.with_premium;
  sale.state = request.state;
  sale.originality = request.originality;
  sale.box = request.box;
  sale.source = request.source;
  sale.used = request.not_used.empty();
  sale.excluded_because = draft.words(request.not_used);
  value->sales.push_back(std::move(sale));
  return Said{
      fmt::format("sale {}: {}, {} {} ({})", *id, request.date.text(), request.price.amount.text(),
                  request.price.currency, record::word_of(request.kind)),
      {}};
}

forms::Job enter_sale_job() {
  return entry_job<SaleRequest>(sale_form, enter_sale);
}

forms::Job value_purpose_job() {
  return entry_job<ValuePurposeRequest>(purpose_form, value_purpose);
}

}  // namespace winchbook::daybook
