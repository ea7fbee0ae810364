#include "daybook/entries/fit.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "assess/tray/tray.h"
#include "daybook/entries/donor.h"
#include "daybook/entries/tray.h"
#include "daybook/hazards.h"
#include "daybook/limits.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using record::Piece;
using Kind = record::Whereabouts::Kind;

forms::Field state_flag(std::string name, std::string help, std::optional<PartState>& into,
                        PartState state) {
  forms::Field made;
  made.name = std::move(name);
  made.help = std::move(help);
  made.kind = forms::Field::Kind::flag;
  made.into = [&into, state](std::string_view /*typed*/) -> base::Diagnostics {
    if (into && *into != state) {
      return {base::error("a part is new, used or made, and only one of them",
                          "give one of --new, --used and --made", "command-state")};
    }
    into = state;
    return {};
  };
  return made;
}

forms::Form form_of_part(FitRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("NAME", "what is fitted: \"Pinion\"", request.name).asks("What is fitted?"),
      id_field(request.id),
      flag("--known",
           "it is in the record and not in the reel: a spare, or an old part from its bag",
           request.known),
      field("--place", "the place it goes into", request.place).asks("In which place?"),
      field("--instead-of", "the old part; left out, the place was empty", request.instead_of),
      field("--material", "of what it is", request.material)
          .asks("Of what is it?", [&request] { return !request.known; }),
      field("--count", "how many like things it is", request.count),
      field("--supplier", "it is new material: who supplied it", request.supplier),
      field("--donor", "what it came from: \"a broken Skerry No. 30\"", request.donor),
      flag("--same-maker", "the donor is by the reel's own maker", request.same_maker),
      field("--made-by", "this-maker, another, bench, owner or not-determined", request.made_by),
      field("--maker-name", "another maker's name", request.maker_name),
      field("--pattern", "right, running-change, service-spare, wrong or not-determined",
            request.pattern),
      field("--certainty", "certain, likely or possible", request.certainty),
      state_flag("--new", "it is new", request.state, PartState::fresh),
      state_flag("--used", "it was used before", request.state, PartState::used),
      state_flag("--made", "it was made for this reel", request.state, PartState::made),
      field("--cost", "what the donor cost: \"35 GBP\"", request.cost),
  };
}

forms::Form form(FitRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  Form form = form_of_part(request);
  append(form,
         {
             field("--why", "why it is fitted", request.why).asks("Why is it fitted?"),
             field("--adaptation", "what was altered for it", request.adaptation),
             flag("--reel-altered", "something of the reel itself was cut, bored or bent for it",
                  request.reel_altered),
             field("--bore", "of the seat, in mm", request.bore),
             field("--outside", "of the seat, in mm", request.outside),
             field("--depth", "of the seat, in mm", request.depth),
             field("--seat-note", "a note on the seat", request.seat_note),
             field("--way-back", "how far it can be undone: \"fully: The old one drops in.\"",
                   request.way_back)
                 .asks("How far can it be undone: \"fully: It drops in.\"?"),
             field("--old-to",
                   "where the old part goes: bagged, to-owner, kept-by-bench, lost, scrapped",
                   request.old_to)
                 .of({"bagged", "to-owner", "kept-by-bench", "lost", "scrapped"}),
             field("--label", "the label of the old part's bag: \"bag 3\"", request.bag)
                 .asks("In which bag is the old part?",
                       [&request] {
                         return !request.instead_of.empty() && request.old_to == Kind::bagged;
                       }),
             done_already_field(request.done_already),
             agreed_field(request.agreed),
             field("--note", "a note on the part", request.note),
             field("--photo", "a photograph of the new part", request.photos),
             field("--old-photo", "a photograph of the old part", request.old_photos),
         });
  return form;
}

/// Where the tray counts what went this way.
int& count_of(record::TrayLine& line, Kind way) {
  switch (way) {
    case Kind::to_owner:
      return line.to_owner;
    case Kind::kept_by_bench:
      return line.kept_by_bench;
    case Kind::lost:
      return line.lost;
    case Kind::scrapped:
      return line.scrapped;
    case Kind::bagged:
    case Kind::fitted:
    case Kind::with_reel:
    case Kind::not_known:
      break;
  }
  return line.bagged;
}

/// Where the old part goes; empty: nobody said.
std::optional<Kind> where_to(const FitRequest& request) {
  if (!request.old_to && !request.bag.empty()) return Kind::bagged;
  return request.old_to;
}

/// The old part's tray: it must have come off, and goes where it is told to be.
base::Diagnostics take_old_out(const FitRequest& request, const Piece& old, record::Visit& visit,
                               Draft& draft) {
  const auto line = std::find_if(visit.tray.begin(), visit.tray.end(),
                                 [&](const auto& one) { return one.piece == old.id; });
  const int there =
      line == visit.tray.end() ? 0 : assess::tray::PieceAccount{old.id, {}, *line}.unaccounted();
  if (there <= 0) {
    return {base::error_at(draft.loaded().where(old.id.text),
                           fmt::format("{} was never taken off", old.name),
                           "enter the step that takes it off with winchbook strip", "tray")};
  }
  auto leave = leave_for(draft.record(), visit, old, request.agreed);
  if (!leave) return leave.faults();
  const auto where = where_to(request);
  if (where) {
    line->on = date_of(request.on);
    count_of(*line, *where) += there;
  }
  take_out(draft.record(), visit.id, old.id,
           {where.value_or(Kind::not_known),
            where == Kind::bagged ? request.bag : "",
            std::move(leave).value(),
            date_of(request.on),
            {}});
  return {};
}

/// The donor of the record that is meant, or a new one.
base::Result<std::optional<record::DonorId>> donor_of(const FitRequest& request, Draft& draft) {
  std::optional<record::DonorId> id;
  if (request.donor.empty()) return id;
  for (const record::Donor& one : draft.record().donors) {
    if (one.id.text == request.donor || one.name == request.donor) return std::optional(one.id);
  }
  DonorRequest donor;
  donor.on = request.on;
  donor.name = request.donor;
  donor.same_maker = request.same_maker;
  donor.cost = request.cost;
  const auto added = add_donor(draft, donor);
  if (!added) return added.faults();
  id = {*added};
  return id;
}

record::MadeBy made_by_of(const FitRequest& request) {
  using record::MadeBy;
  if (request.made_by) return *request.made_by;
  if (request.state == PartState::made) return MadeBy::bench;
  if (request.same_maker) return MadeBy::this_maker;
  return request.maker_name.empty() ? MadeBy::not_determined : MadeBy::another;
}

template <class Answer>
record::Judgement<Answer> judged(Answer answer, std::optional<record::Certainty> certainty) {
  record::Judgement<Answer> judgement;
  judgement.answer = answer;
  if (answer != Answer::not_determined) judgement.certainty = certainty;
  return judgement;
}

/// A piece that is in the record and not in the reel is fitted now.
base::Result<record::PieceId> take_in(const std::string& said, Draft& draft) {
  const auto found = record::find_piece(draft.record(), said);
  if (!found) return found.faults();
  Piece& piece = to_change(draft.record().pieces, *found);
  if (piece.now.kind == Kind::fitted) {
    return base::error_at(draft.loaded().where(piece.id.text),
                          fmt::format("{} is in the reel already", piece.name),
                          "name one that is not, or leave --known out for a new part", "tray");
  }
  piece.now = {};
  piece.now.kind = Kind::fitted;
  return piece.id;
}

/// Empty, when nothing is to be noted.
std::string note_of(const FitRequest& request) {
  if (!request.note.empty()) return request.note;
  if (request.state == PartState::fresh) return "New, unused.";
  return request.state == PartState::used ? "Used before." : "";
}

base::Result<record::PieceId> add_piece(const FitRequest& request,
                                        const std::optional<record::DonorId>& donor, Draft& draft) {
  if (request.known) return take_in(request.name, draft);
  const auto id = draft.id_for(request.id, request.name);
  if (!id) return id.faults();
  Piece piece;
  piece.id = {*id};
  piece.name = request.name;
  piece.count = request.count;
  piece.material = request.material;
  piece.made_by = judged(made_by_of(request), request.certainty);
  piece.maker_name = request.maker_name;
  piece.of_this_reel = judged(record::OfThisReel::no, {});
  if (request.pattern) piece.pattern = judged(*request.pattern, request.certainty);
  piece.donor = donor;
  piece.supplier = request.supplier;
  if (request.tested) piece.tested = {*request.tested};
  if (request.state == PartState::made) piece.made = date_of(request.on);
  piece.now.kind = Kind::fitted;
  piece.note = draft.words(note_of(request));
  draft.record().pieces.push_back(std::move(piece));
  return record::PieceId{*id};
}

std::optional<record::Seat> seat_of(const FitRequest& request, const Draft& draft) {
  if (!request.bore && !request.outside && !request.depth && request.seat_note.empty()) {
    return std::nullopt;
  }
  return record::Seat{request.bore, request.outside, request.depth, draft.words(request.seat_note)};
}

/// The fitting itself, without its photographs.
record::Fitting fitting_of(const FitRequest& request, const record::PieceId& piece,
                           const record::VisitId& visit, const Draft& draft) {
  record::Fitting fitting;
  fitting.id = {draft.free_id("fi-" + piece.text)};
  fitting.piece = piece;
  fitting.from = date_of(request.on);
  fitting.by = record::ByBench{};
  fitting.visit = visit;
  fitting.why = draft.words(request.why);
  fitting.adaptation = draft.words(request.adaptation);
  fitting.reel_altered = request.reel_altered;
  fitting.seat = seat_of(request, draft);
  if (request.way_back) fitting.way_back = way_back_of(draft, *request.way_back);
  return fitting;
}

std::string where_it_is(const FitRequest& request) {
  const auto where = where_to(request);
  if (!where) return "in the tray";
  return where == Kind::bagged ? "in " + request.bag : std::string(record::word_of(*where));
}

}  // namespace

base::Result<Said> fit(const FitRequest& request, Draft& draft) {
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  record::Visit& visit = **open;
  if (auto faults = faults_of_supplier(request.supplier); !faults.empty()) return faults;
  const auto place = record::find_place(draft.record(), request.place);
  if (!place) return place.faults();
  // The place's other pieces are not looked at.
  const base::Diagnostics limits =
      limits_broken(draft, visit, {{}, request.adaptation, request.reel_altered}, request.agreed);
  if (base::has_error(limits)) return limits;
  if (!request.agreed.empty()) {
    const auto agreement = record::find_agreement(draft.record(), request.agreed);
    if (!agreement) return agreement.faults();
  }
  std::optional<record::PieceId> old;
  if (!request.instead_of.empty()) {
    const auto found = piece_named(draft, request.instead_of);
    if (!found) return found.faults();
    old = found.value()->id;
    if (auto faults = take_old_out(request, **found, visit, draft); !faults.empty()) return faults;
  }
  const auto donor = donor_of(request, draft);
  if (!donor) return donor.faults();
  const auto piece = add_piece(request, *donor, draft);
  if (!piece) return piece.faults();
  record::Fitting fitting = fitting_of(request, *piece, visit.id, draft);
  fitting.place = place.value()->id;
  fitting.instead_of = old;
  const auto photos = photos_of(draft.record(), request.photos);
  if (!photos) return photos.faults();
  fitting.photos = *photos;
  const auto old_photos = photos_of(draft.record(), request.old_photos);
  if (!old_photos) return old_photos.faults();
  fitting.old_photos = *old_photos;
  draft.record().fittings.push_back(std::move(fitting));
  base::Diagnostics warnings =
      hazards_in(draft, visit, {{*piece}, request.adaptation, request.done_already});
  if (base::has_error(warnings)) return warnings;
  if (old) {
    const auto unseen = hazards_of(draft, visit, {*old});
    warnings.insert(warnings.end(), unseen.begin(), unseen.end());
  }
  for (auto& more : {limits, doubtful_material(draft, request.material)})
    warnings.insert(warnings.end(), more.begin(), more.end());
  std::string sentence = fmt::format("fitted {} in {}", piece->text, place.value()->name);
  if (old) {
    sentence += fmt::format(" instead of {}, which is {}", old->text, where_it_is(request));
  }
  return Said{std::move(sentence), std::move(warnings)};
}

forms::Job fit_job() {
  return entry_job<FitRequest>(form, fit);
}

}  // namespace winchbook::daybook
