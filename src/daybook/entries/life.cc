#include "daybook/entries/life.h"

#include <fmt/format.h>

#include <utility>

#include "daybook/looks.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "recordfile/typed_words.h"

namespace winchbook::daybook {
namespace {

base::Diagnostics add_pieces(Draft& draft, const std::vector<std::string>& said,
                             std::vector<record::PieceId>& into) {
  const auto pieces = pieces_named(draft, said);
  if (!pieces) return pieces.faults();
  for (const record::Piece* piece : *pieces)
    into.push_back(piece->id);
  return {};
}

}  // namespace

forms::Form life_form(LifeRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      or_none_field("--event",
                    "not the story but something that happened in its life: engraving, repair, "
                    "damage, loss, storage, …; TEXT tells it, --title names it; or none",
                    request.kind, request.none),
      field("--id", "the event's id in the record; left out, made from its title", request.id),
      field("--date", "when, EDTF: 1962-08", request.date),
      field("--as-told", "when, in the teller's words", request.as_told),
      field("--by", "who did it", request.by),
      field("--part", "a part it left on the reel; as often as needed", request.parts),
      field("--source", "how it is known", request.source)
          .asks("How is that known?", [&request] { return request.kind.has_value(); }),
      field("--certainty", "certain, likely or possible", request.certainty),
      field("--keep-because", "why it must stay", request.keep_because),
      field("--must-stay", "a part that must stay because of it", request.must_stay),
      field("--photo", "a photograph of it", request.photos),
  };
}

base::Result<Said> life_event(const LifeRequest& request, Draft& draft) {
  const auto id = draft.id_for(request.id, "le-" + request.title);
  if (!id) return id.faults();
  record::LifeEvent event;
  event.id = {*id};
  event.kind = request.kind.value_or(record::LifeEventKind::other);
  event.title = request.title;
  event.date_as_told = request.as_told;
  event.date = request.date;
  const auto by = person_of(draft.record(), request.by);
  if (!by) return by.faults();
  event.by = *by;
  event.what = recordfile::prose_of(draft.record(), request.what);
  if (auto faults = add_pieces(draft, request.parts, event.pieces); !faults.empty()) return faults;
  event.source = request.source;
  event.certainty = request.certainty;
  event.keep_because = draft.words(request.keep_because);
  if (auto faults = add_pieces(draft, request.must_stay, event.must_stay); !faults.empty()) {
    return faults;
  }
  auto photos = photos_of(draft.record(), request.photos);
  if (!photos) return photos.faults();
  event.photos = std::move(photos).value();
  std::string sentence =
      fmt::format("{} in its life: {}", record::word_of(event.kind), request.title);
  draft.record().life.push_back(std::move(event));
  return Said{std::move(sentence), {}};
}

}  // namespace winchbook::daybook
