#include "daybook/entries/part.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/words_of_text.h"
#include "daybook/hazards.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using base::Diagnostics;
using base::Result;
using record::Whereabouts;

forms::Form place_form(PartRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  PlaceRequest& place = request.place;
  return {
      field("--place", "where it sits: a place, or with --kind a new one's name", place.said),
      field("--place-id", "a new place's id; left out, made from its name", place.id),
      field("--kind", "the place's word in the parts list: plate-screw", place.kind)
          .asks("Of which kind is the place (a word of the parts list)?",
                [&request] { return request.empty; }),
      field("--assembly", "the assembly it belongs to: \"tail side\"", place.assembly),
      field("--quantity", "how many belong there", place.quantity),
      field("--weight", "its weight in the index of originality", place.weight),
      field("--area", "the surface open to view, in square millimetres", place.area),
      flag("--consumable", "worn and replaced as a matter of course", place.consumable),
      flag("--may-be-empty", "the maker left it empty on some reels", place.may_be_empty),
      flag("--spring", "a spring under load sits there", place.spring),
      flag("--empty", "nothing sits there: NAME is the place's", request.empty),
  };
}

forms::Form form(PartRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  Form fields = {
      field("NAME", "the part's name; with --known, as you call it", request.name)
          .asks("What is the part called?"),
      id_field(request.id),
      flag("--known", "it is in the record: set what is given", request.known),
  };
  append(fields, place_form(request));
  append(
      fields,
      {
          field("--count", "how many like things it is", request.count),
          field("--role", "content (came with it) or spare; left out, a part", request.role),
          field("--material", "of what it is", request.material),
          field("--finish",
                "a layer, the lowest first: \"nickel plate (maker, 1948): worn at the ends\"",
                request.finish),
          field("--maker-name", "another maker's name", request.maker_name),
          field("--supplier", "it is new material: who supplied it", request.supplier),
          field("--donor", "what it came from: a donor of the record", request.donor),
          field("--fragment-of", "the part it broke off from", request.fragment_of),
          field("--made", "when it was made, if that is known apart", request.made),
          field("--note", "a note", request.note),
          field("--fitted-by", "maker, bench, not-known, or somebody; left out, not-known",
                request.fitted_by),
          field("--from", "it sat there from when", request.from),
          field("--until", "it sat there until when", request.until),
          field("--photo", "a photograph of it as fitted", request.photos),
          field("--now",
                "where it is: fitted, bagged, to-owner, kept-by-bench, lost, scrapped, with-reel, "
                "not-known",
                request.now),
          field("--label", "the bag's label: \"bag 3\"", request.bag),
          field("--since", "since when it is there", request.since),
          field("--now-note", "a note on where it is", request.now_note),
      });
  return fields;
}

void set_place(record::Place& place, const PlaceRequest& request) {
  set_if(place.kind, request.kind);
  set_if(place.assembly, request.assembly);
  set_if(place.quantity, request.quantity);
  set_if(place.weight, request.weight);
  set_if(place.exposed_area, request.area);
  place.consumable |= request.consumable;
  place.may_be_empty |= request.may_be_empty;
  place.captive_spring |= request.spring;
}

/// The place that is meant, or a new one when its kind is given, for so many as there are of the
/// part.
Result<record::PlaceId> place_of(Draft& draft, const PlaceRequest& request,
                                 std::optional<int> count) {
  auto& places = draft.record().places;
  const bool is_there = std::any_of(places.begin(), places.end(), [&](const auto& one) {
    return one.id.text == request.said || one.name == request.said;
  });
  if (request.kind.empty() || is_there) {
    const auto found = record::find_place(draft.record(), request.said);
    if (!found) {
      Diagnostics faults = found.faults();
      faults.front().hint += "; a new place needs its --kind, a word of the parts list";
      return faults;
    }
    record::Place& place = to_change(places, *found);
    set_place(place, request);
    return place.id;
  }
  const auto id = draft.id_for(request.id, "pl-" + request.said);
  if (!id) return id.faults();
  record::Place place;
  place.id = {*id};
  place.name = request.said;
  set_if(place.quantity, count);
  set_place(place, request);
  places.push_back(std::move(place));
  return places.back().id;
}

/// A reference that is there already is left when it is the same; another is refused.
template <class Id>
Diagnostics refer_to(std::optional<Id>& into, const Id& id, const char* name,
                     const base::Location& where) {
  if (into && *into != id) {
    return {base::of_command(base::error_at(
        where, fmt::format("its {} is \"{}\" in the record already", name, into->text),
        "change it in the record by hand", "command-name"))};
  }
  into = id;
  return {};
}

Diagnostics set_piece(record::Piece& piece, const Draft& draft, const PartRequest& request) {
  if (auto faults = faults_of_supplier(request.supplier); !faults.empty()) return faults;
  set_if(piece.count, request.count);
  set_if(piece.role, request.role);
  set_if(piece.material, request.material);
  for (const TypedFinish& one : request.finish)
    piece.finish.push_back({one.what, one.by, one.when, draft.words(one.note)});
  set_if(piece.maker_name, request.maker_name);
  set_if(piece.supplier, request.supplier);
  set_if(piece.made, request.made);
  draft.put(piece.note, request.note);
  const base::Location where = draft.loaded().where(piece.id.text);
  if (!request.donor.empty()) {
    const auto donor = record::find_donor(draft.record(), request.donor);
    if (!donor) return donor.faults();
    auto faults = refer_to(piece.donor, donor.value()->id, "donor", where);
    if (!faults.empty()) return faults;
  }
  if (!request.fragment_of.empty()) {
    const auto whole = record::find_piece(draft.record(), request.fragment_of);
    if (!whole) return whole.faults();
    return refer_to(piece.fragment_of, whole.value()->id, "fragment-of", where);
  }
  return {};
}

void set_now(Whereabouts& now, const Draft& draft, const PartRequest& request,
             Whereabouts::Kind kind) {
  if (kind != now.kind) now = Whereabouts{kind, {}, {}, {}, {}};
  set_if(now.bag, request.bag);
  set_if(now.since, request.since);
  draft.put(now.note, request.now_note);
}

/// Who put it there.
Result<record::FittedBy> fitted_by(const Draft& draft, const std::string& said) {
  if (said.empty() || said == "not-known") return record::FittedBy(record::ByNobodyKnown{});
  if (said == "maker") return record::FittedBy(record::ByMaker{});
  if (said == "bench") return record::FittedBy(record::ByBench{});
  const auto person = record::find_person(draft.record(), said);
  if (!person) return person.faults();
  return record::FittedBy(person.value()->id);
}

Diagnostics add_fitting(Draft& draft, const record::PieceId& piece, const record::PlaceId& place,
                        const PartRequest& request) {
  auto by = fitted_by(draft, request.fitted_by);
  if (!by) return by.faults();
  auto photos = photos_of(draft.record(), request.photos);
  if (!photos) return photos.faults();
  record::Fitting fitting;
  fitting.id = {draft.free_id("fi-" + piece.text)};
  fitting.piece = piece;
  fitting.place = place;
  fitting.from = request.from;
  fitting.until = request.until;
  fitting.by = std::move(by).value();
  fitting.photos = std::move(photos).value();
  draft.record().fittings.push_back(std::move(fitting));
  return {};
}

/// Photographs of the part as fitted, in its last fitting.
Diagnostics add_fitted_photos(Draft& draft, const record::Piece& piece,
                              const std::vector<std::string>& said) {
  if (said.empty()) return {};
  auto& all = draft.record().fittings;
  const auto last = std::find_if(all.rbegin(), all.rend(),
                                 [&](const auto& one) { return one.piece == piece.id; });
  if (last == all.rend()) {
    return {base::of_command(base::error(fmt::format("{} was never fitted", piece.name),
                                         "winchbook photo add --part shows it as it is",
                                         "command-name"))};
  }
  const auto photos = photos_of(draft.record(), said);
  if (!photos) return photos.faults();
  last->photos.insert(last->photos.end(), photos->begin(), photos->end());
  return {};
}

/// As many belong in its place, at least.
void make_room(record::Record& record, const record::Piece& piece) {
  for (const record::Fitting& one : record.fittings) {
    if (one.piece != piece.id || one.until) continue;
    record::Place& place = to_change(record.places, record::find(record, one.place));
    place.quantity = std::max(place.quantity, piece.count);
  }
}

/// What a part that is in the record is: only what is given is set.
Result<Said> set_known(const PartRequest& request, Draft& draft) {
  const auto found = piece_named(draft, request.name);
  if (!found) return found.faults();
  record::Piece& piece = to_change(draft.record().pieces, *found);
  if (auto faults = set_piece(piece, draft, request); !faults.empty()) return faults;
  set_now(piece.now, draft, request, request.now.value_or(piece.now.kind));
  if (request.count) make_room(draft.record(), piece);
  if (request.until) {
    for (record::Fitting& one : draft.record().fittings) {
      if (one.piece == piece.id && !one.until) one.until = request.until;
    }
  }
  if (auto faults = add_fitted_photos(draft, piece, request.photos); !faults.empty()) return faults;
  if (!request.place.said.empty()) {
    const auto place = place_of(draft, request.place, request.count);
    if (!place) return place.faults();
  }
  return Said{fmt::format("{}: what is known of it is set", piece.name),
              doubtful_material(draft, request.material)};
}

/// Where a new part is when nothing is said of it.
Whereabouts::Kind usual_now(const PartRequest& request) {
  using record::PieceRole;
  if (request.now) return *request.now;
  if (request.role == PieceRole::content || request.role == PieceRole::spare) {
    return Whereabouts::Kind::with_reel;
  }
  return request.place.said.empty() || request.until ? Whereabouts::Kind::not_known
                                                     : Whereabouts::Kind::fitted;
}

/// A place in which nothing sits.
Result<Said> add_empty(const PartRequest& request, Draft& draft) {
  PlaceRequest place = request.place;
  place.said = request.name;
  const auto id = place_of(draft, place, request.count);
  if (!id) return id.faults();
  const auto open = open_visit(draft, request.on);
  if (open) {
    record::PlaceFinding& finding = finding_of(**open, *id);
    finding.on = date_of(request.on);
    finding.found = record::Filled::empty;
  }
  return Said{fmt::format("place {}: {}, nothing sits there", id->text, request.name), {}};
}

}  // namespace

base::Diagnostics read_typed(std::string_view typed, TypedFinish& into) {
  // Brackets behind the colon are the note's.
  const std::size_t open = typed.find_first_of("(:");
  const bool opened = open != std::string_view::npos && typed[open] == '(';
  const std::size_t close = opened ? typed.find(')', open) : std::string_view::npos;
  const bool in_brackets = close != std::string_view::npos;
  const std::size_t colon = typed.find(':', in_brackets ? close : 0);
  TypedFinish finish;
  finish.what = base::trimmed(typed.substr(0, in_brackets ? open : colon));
  if (in_brackets) {
    const std::string_view inside = typed.substr(open + 1, close - open - 1);
    const std::size_t comma = inside.find(',');
    auto faults = forms::read_typed(base::trimmed(inside.substr(0, comma)), finish.by);
    if (!faults.empty()) return faults;
    if (comma != std::string_view::npos) {
      faults = forms::read_typed(inside.substr(comma + 1), finish.when);
      if (!faults.empty()) return faults;
    }
  }
  if (colon != std::string_view::npos) finish.note = base::trimmed(typed.substr(colon + 1));
  into = std::move(finish);
  return {};
}

base::Result<Said> part(const PartRequest& request, Draft& draft) {
  if (request.known) return set_known(request, draft);
  if (request.empty) return add_empty(request, draft);
  std::optional<record::PlaceId> place;
  if (!request.place.said.empty()) {
    const auto found = place_of(draft, request.place, request.count);
    if (!found) return found.faults();
    place = *found;
  }
  const auto id = draft.id_for(request.id, request.name);
  if (!id) return id.faults();
  record::Piece piece;
  piece.id = {*id};
  piece.name = request.name;
  piece.material = "not determined";
  if (auto faults = set_piece(piece, draft, request); !faults.empty()) return faults;
  set_now(piece.now, draft, request, usual_now(request));
  draft.record().pieces.push_back(std::move(piece));
  std::string sentence = fmt::format("part {}: {}", *id, request.name);
  if (place) {
    if (auto faults = add_fitting(draft, {*id}, *place, request); !faults.empty()) return faults;
    sentence += ", in " + place->text;
  }
  return Said{std::move(sentence), doubtful_material(draft, request.material)};
}

forms::Job part_job() {
  return entry_job<PartRequest>(form, part);
}

}  // namespace winchbook::daybook
