#include "daybook/entries/enter_sale.h"

#include <fmt/format.h>

#include <utility>

namespace winchbook::daybook {

Change value_purpose(ValuePurposeRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const pugi::xml_node value = draft.section("value");
    for (const auto& [name, text] :
         {std::pair{"effective", &request.effective}, std::pair{"basis", &request.basis},
          std::pair{"purpose", &request.purpose}, std::pair{"currency", &request.currency}}) {
      if (!text->empty()) draft.set(value, name, *text);
    }
    draft.set_words(value, "note", request.note);
    return Said{
        fmt::format("the value is for {}, of {}, in {}", value.child("purpose").text().get(),
                    value.child("effective").text().get(), value.child("currency").text().get()),
        {}};
  };
}

Change enter_sale(SaleRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    if (!draft.record().value) {
      return base::of_command(base::error("the record does not say what the value is for",
                                          "say it first with winchbook sales for",
                                          "command-value"));
    }
    const auto id =
        draft.id_for(request.id, fmt::format("sa-{}", draft.record().value->sales.size() + 1));
    if (!id) return id.faults();
    const pugi::xml_node sale = draft.add_with_id(draft.section("value"), "sale", *id);
    draft.add(sale, "on", request.date);
    draft.add(sale, "price", request.price);
    draft.add(sale, "included", request.included);
    draft.add(sale, "kind", request.kind);
    draft.add(sale, "with-premium", request.with_premium ? "yes" : "no");
    draft.add(sale, "state", request.state);
    draft.add_if(sale, "originality", request.originality);
    draft.add(sale, "box", request.box ? "yes" : "no");
    draft.add(sale, "source", request.source);
    if (!request.not_used.empty()) {
      draft.add(sale, "used", "no");
      draft.add_words(sale, "excluded-because", request.not_used);
    }
    return Said{fmt::format("sale {}: {}, {} ({})", *id, request.date, request.price, request.kind),
                {}};
  };
}

}  // namespace winchbook::daybook
