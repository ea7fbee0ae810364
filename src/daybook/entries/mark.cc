#include "daybook/entries/mark.h"

#include <fmt/format.h>

#include <utility>

#include "base/words_of_text.h"
#include "daybook/looks.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"

namespace winchbook::daybook {
namespace {

forms::Form form(MarkRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  const auto some = [&request] { return !request.none; };
  return {
      field("TEXT", "as read; [ ] round what is guessed", request.text)
          .asks("What does it say?", some),
      id_field(request.id),
      field("--part", "the part that bears it", request.part).asks("On which part?", some),
      field("--where", "where on the part: underside", request.where),
      field("--method",
            "stamped, cast, moulded, engraved, transfer, paper, painted, etched, pencilled, other",
            request.method),
      field("--whose", "maker, retailer, owner, repairer, assembler, not-determined",
            request.whose),
      field("--state", "as-struck, recut, filed-off, worn, not-determined", request.state),
      field("--legibility", "clear, in-part, not-legible", request.legibility),
      field("--person", "whom it names; withheld with that person", request.person),
      field("--claims", "the date it claims", request.claims),
      field("--cut", "when it may have been cut", request.cut),
      field("--not-before", "the part is not older: \"1940-01 hard\"", request.not_before),
      field("--not-after", "the part is not younger: \"1949 soft\"", request.not_after),
      field("--because", "why it says so", request.because),
      field("--source", "where that is to be found", request.source),
      field("--note", "a note", request.note),
      field("--photo", "a photograph of it", request.photos),
      flag("--serial", "it is the reel's serial number", request.serial),
      flag("--none", "marks were looked for (with --serial, a serial number), and none was found",
           request.none),
      field("--by", "who looked for them", request.by),
  };
}

base::Diagnostics draw_salt(MarkRequest& request, forms::Setting& setting) {
  request.salt = setting.library.world().draw_salt();
  return {};
}

std::optional<record::MarkSays> says_of(const MarkRequest& request, const Draft& draft) {
  if (!request.not_before && !request.not_after && request.because.empty() &&
      request.source.empty()) {
    return std::nullopt;
  }
  record::MarkSays says;
  if (request.not_before) says.not_before = request.not_before->end;
  if (request.not_after) says.not_after = request.not_after->end;
  says.because = draft.words(request.because);
  says.source = request.source;
  return says;
}

}  // namespace

base::Diagnostics read_typed(std::string_view typed, TypedEnd& into) {
  const std::string_view text = base::trimmed(typed);
  const std::size_t space = text.rfind(' ');
  record::MarkEnd end;
  if (auto faults = forms::read_typed(text.substr(0, space), end.date); !faults.empty()) {
    return faults;
  }
  if (space != std::string_view::npos) {
    auto faults = forms::read_typed(text.substr(space + 1), end.firmness);
    if (!faults.empty()) return faults;
  }
  into.end = std::move(end);
  return {};
}

base::Result<Said> mark(const MarkRequest& request, Draft& draft) {
  if (request.none) {
    const auto what = request.serial ? record::LookedFor::serial : record::LookedFor::marks;
    return found_none(draft, what, request.on, request.by);
  }
  const auto piece = piece_named(draft, request.part);
  if (!piece) return piece.faults();
  record::Marking marking;
  marking.piece = piece.value()->id;
  const auto person = person_of(draft.record(), request.person);
  if (!person) return person.faults();
  marking.person = *person;
  const auto id = draft.id_for(request.id, "mk-" + marking.piece.text);
  if (!id) return id.faults();
  marking.id = {*id};
  marking.where = request.where;
  marking.text = request.text;
  marking.method = request.method;
  marking.whose = request.whose;
  marking.state = request.state;
  marking.legibility = request.legibility;
  marking.claims = request.claims;
  marking.cut = request.cut;
  marking.says = says_of(request, draft);
  marking.note = draft.words(request.note);
  auto photos = photos_of(draft.record(), request.photos);
  if (!photos) return photos.faults();
  marking.photos = std::move(photos).value();
  marking.salt = request.salt;
  draft.record().markings.push_back(std::move(marking));
  if (request.serial) draft.record().reel.serial = request.text;
  return Said{fmt::format("mark \"{}\" on {}: {}", request.text, piece.value()->name, *id), {}};
}

forms::Job mark_job() {
  return entry_job<MarkRequest>(form, mark, draw_salt);
}

}  // namespace winchbook::daybook
