#include "daybook/entries/custody.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

forms::Form form(CustodyRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("HOLDER", "who had it; left out, nobody knows (a gap)", request.holder),
      id_field(request.id),
      field("--held", "both, possession or title", request.held),
      field("--from", "from when, EDTF: 1948, 1979~", request.from),
      field("--until", "until when; left out, they have it still", request.until),
      field("--how", "how it came to them; of a gap, what little is known", request.how),
      field("--source", "how that is known", request.source)
          .asks("How is that known?", [&request] { return !request.holder.empty(); }),
      field("--certainty", "certain, likely or possible", request.certainty),
      field("--photo", "a photograph of a document", request.photos),
  };
}

/// Puts it before the first that surely began later.
template <class Step> void add_step(record::Custody& custody, Step step) {
  const auto later = std::find_if(custody.begin(), custody.end(), [&](const auto& one) {
    const auto begun = std::visit([](const auto& told) { return told.from; }, one);
    return step.from && begun && base::surely_before(*step.from, *begun);
  });
  custody.insert(later, std::move(step));
}

base::Result<Said> add_gap(const CustodyRequest& request, Draft& draft, const std::string& when) {
  const auto id = draft.id_for(request.id, "cu-gap");
  if (!id) return id.faults();
  add_step(draft.record().custody,
           record::CustodyGap{{*id}, request.from, request.until, draft.words(request.how)});
  return Said{fmt::format("custody: nobody knows who had it, {}", when), {}};
}

}  // namespace

base::Result<Said> custody(const CustodyRequest& request, Draft& draft) {
  const std::string when =
      fmt::format("{} to {}", request.from ? request.from->text() : "not known",
                  request.until ? request.until->text() : "now");
  if (request.holder.empty()) return add_gap(request, draft, when);
  const auto person = record::find_person(draft.record(), request.holder);
  if (!person) return person.faults();
  record::CustodyStep step;
  step.holder = person.value()->id;
  const auto id = draft.id_for(request.id, "cu-" + step.holder.text);
  if (!id) return id.faults();
  step.id = {*id};
  step.held = request.held;
  step.from = request.from;
  step.until = request.until;
  step.how = draft.words(request.how);
  step.source = request.source;
  step.certainty = request.certainty;
  auto photos = photos_of(draft.record(), request.photos);
  if (!photos) return photos.faults();
  step.photos = std::move(photos).value();
  std::string sentence =
      fmt::format("custody: {}, {} ({})", step.holder.text, when, record::word_of(step.held));
  add_step(draft.record().custody, std::move(step));
  return Said{std::move(sentence), {}};
}

forms::Job custody_job() {
  return entry_job<CustodyRequest>(form, custody);
}

}  // namespace winchbook::daybook
