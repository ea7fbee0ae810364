#include "daybook/entries/fit.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "daybook/entries/donor.h"
#include "daybook/entries/tray.h"
#include "daybook/limits.h"
#include "daybook/open_visit.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using record::Piece;

/// The old part's tray: it must have come off, and goes where it is told to be.
base::Result<std::string> take_old_out(Draft& draft, const OpenVisit& open,
                                       const FitRequest& request, const Piece& old) {
  const record::TrayLine* line = nullptr;
  for (const record::TrayLine& one : open.visit->tray) {
    if (one.piece == old.id) line = &one;
  }
  const int there =
      line == nullptr ? 0 : assess::tray::PieceAccount{old.id, {}, *line}.unaccounted();
  if (there <= 0) {
    return base::error_at(draft.loaded().where(old.id.text),
                          fmt::format("{} was never taken off", old.name),
                          "enter the step that takes it off with winchbook strip", "tray");
  }
  const auto leave = leave_for(draft.record(), *open.visit, old, request.agreed);
  if (!leave) return leave.faults();
  add_to_tray(draft, tray_line_of(draft, open.element, old.id), request.old_to.c_str(), there);
  take_out(draft, *open.visit, old, request.on, request.old_to.c_str(),
           request.old_to == "bagged" ? request.bag : "", *leave);
  return *leave;
}

/// The donor of the record that is meant, or a new one; its id.
base::Result<std::string> donor_of(Draft& draft, const FitRequest& request) {
  if (request.donor.empty()) return std::string();
  for (const record::Donor& one : draft.record().donors) {
    if (one.id.text == request.donor || one.name == request.donor) return one.id.text;
  }
  return add_donor(
      draft, {{}, request.donor, request.same_maker, {}, base::iso_text(request.on), request.cost});
}

void add_answer(Draft& draft, pugi::xml_node piece, const char* element, const std::string& answer,
                const std::string& certainty) {
  if (answer.empty()) return;
  const pugi::xml_node judgement = draft.add(piece, element);
  draft.add(judgement, "answer", answer);
  if (answer != "not-determined") draft.add(judgement, "certainty", certainty);
}

std::string made_by_of(const FitRequest& request) {
  if (!request.made_by.empty()) return request.made_by;
  if (request.state == "made") return "bench";
  if (request.same_maker) return "this-maker";
  return request.donor.empty() && request.maker_name.empty() ? "not-determined" : "another";
}

/// A piece that is in the record and not in the reel is fitted now; its id.
base::Result<std::string> take_in(Draft& draft, const std::string& said) {
  const auto found = record::find_piece(draft.record(), said);
  if (!found) return found.faults();
  const Piece& piece = **found;
  if (piece.now.kind == record::Whereabouts::Kind::fitted) {
    return base::error_at(draft.loaded().where(piece.id.text),
                          fmt::format("{} is in the reel already", piece.name),
                          "name one that is not, or leave --known out for a new part", "tray");
  }
  const pugi::xml_node now = draft.need(draft.by_id(piece.id.text), "now");
  draft.empty(now);
  draft.add(now, "kind", "fitted");
  return piece.id.text;
}

base::Result<std::string> add_piece(Draft& draft, const FitRequest& request,
                                    const std::string& donor) {
  if (request.known) return take_in(draft, request.name);
  auto id = draft.id_for(request.id, request.name);
  if (!id) return id.faults();
  const pugi::xml_node piece = draft.add_with_id(draft.section("pieces"), "piece", *id);
  draft.add(piece, "name", request.name);
  if (request.count > 1) draft.add(piece, "count", std::to_string(request.count));
  draft.add(piece, "material", request.material);
  add_answer(draft, piece, "made-by", made_by_of(request), request.certainty);
  draft.add_if(piece, "maker-name", request.maker_name);
  add_answer(draft, piece, "born-here", "no", "certain");
  add_answer(draft, piece, "pattern", request.pattern, request.certainty);
  if (!donor.empty()) draft.add_ref(piece, "donor", donor);
  if (request.state == "made") draft.add(piece, "made", base::iso_text(request.on));
  draft.add(draft.add(piece, "now"), "kind", "fitted");
  draft.add_words(piece, "note", request.note);
  if (request.note.empty() && !request.state.empty() && request.state != "made") {
    draft.add_words(piece, "note", request.state == "new" ? "New, unused." : "Used before.");
  }
  return id;
}

void add_seat(Draft& draft, pugi::xml_node fitting, const FitRequest& request) {
  if (request.bore.empty() && request.outside.empty() && request.depth.empty() &&
      request.seat_note.empty()) {
    return;
  }
  const pugi::xml_node seat = draft.add(fitting, "seat");
  draft.add_if(seat, "bore", request.bore);
  draft.add_if(seat, "outside", request.outside);
  draft.add_if(seat, "depth", request.depth);
  draft.add_words(seat, "note", request.seat_note);
}

/// What of the reel the fitting touches: the place's other pieces are not looked at.
base::Diagnostics limits_of(const Draft& draft, const record::Visit& visit,
                            const FitRequest& request) {
  return limits_broken(draft, visit, {{}, request.adaptation, request.reel_altered},
                       request.agreed);
}

}  // namespace

Change fit(FitRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, request.on);
    if (!open) return open.faults();
    const auto place = record::find_place(draft.record(), request.place);
    if (!place) return place.faults();
    base::Diagnostics limits = limits_of(draft, *open->visit, request);
    if (base::has_error(limits)) return limits;
    if (!request.agreed.empty()) {
      const auto agreement = record::find_agreement(draft.record(), request.agreed);
      if (!agreement) return agreement.faults();
    }
    const Piece* old = nullptr;
    if (!request.instead_of.empty()) {
      const auto found = record::find_piece(draft.record(), request.instead_of);
      if (!found) return found.faults();
      old = *found;
      const auto out = take_old_out(draft, *open, request, *old);
      if (!out) return out.faults();
    }
    const auto donor = donor_of(draft, request);
    if (!donor) return donor.faults();
    const auto added = add_piece(draft, request, *donor);
    if (!added) return added.faults();
    const std::string& piece = *added;
    const pugi::xml_node fitting =
        draft.add_with_id(draft.section("fittings"), "fitting", draft.free_id("fi-" + piece));
    draft.add_ref(fitting, "piece", piece);
    draft.add_ref(fitting, "place", place.value()->id.text);
    draft.add(fitting, "from", base::iso_text(request.on));
    draft.add(draft.add(fitting, "by"), "answer", "bench");
    draft.add_ref(fitting, "visit", open->visit->id.text);
    draft.add_words(fitting, "why", request.why);
    draft.add_words(fitting, "adaptation", request.adaptation);
    if (request.reel_altered) draft.add(fitting, "reel-altered", "yes");
    add_seat(draft, fitting, request);
    add_way_back(draft, fitting, request.way_back);
    if (old != nullptr) draft.add_ref(fitting, "instead-of", old->id.text);
    if (auto faults = add_photos(draft, fitting, request.photos); !faults.empty()) return faults;
    if (auto faults = add_photos(draft, fitting, request.old_photos, "old-photo"); !faults.empty())
      return faults;
    std::string sentence = fmt::format("fitted {} in {}", piece, place.value()->name);
    if (old != nullptr) {
      sentence += fmt::format(" instead of {}, which is {}", old->id.text,
                              request.old_to == "bagged" ? "in " + request.bag : request.old_to);
    }
    return Said{std::move(sentence), std::move(limits)};
  };
}

}  // namespace winchbook::daybook
