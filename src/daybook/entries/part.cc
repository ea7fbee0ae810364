#include "daybook/entries/part.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using base::Diagnostics;
using base::Result;

std::string trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(' ') - first + 1));
}

void set_if(Draft& draft, pugi::xml_node parent, const char* name, const std::string& text) {
  if (!text.empty()) draft.set(parent, name, text);
}

void set_place(Draft& draft, pugi::xml_node place, const PlaceRequest& request) {
  set_if(draft, place, "kind", request.kind);
  set_if(draft, place, "assembly", request.assembly);
  set_if(draft, place, "quantity", request.quantity);
  set_if(draft, place, "weight", request.weight);
  set_if(draft, place, "exposed-area", request.area);
  if (request.consumable) draft.set(place, "consumable", "yes");
  if (request.may_be_empty) draft.set(place, "may-be-empty", "yes");
  if (request.spring) draft.set(place, "captive-spring", "yes");
}

/// The place that is meant, or a new one when its kind is given, for so many as there are of the
/// part; its id.
Result<std::string> place_of(Draft& draft, PlaceRequest request, const std::string& count) {
  const record::Record& record = draft.record();
  const auto same = std::find_if(record.places.begin(), record.places.end(), [&](const auto& one) {
    return one.id.text == request.said || one.name == request.said;
  });
  if (request.kind.empty() || same != record.places.end()) {
    const auto place = record::find_place(record, request.said);
    if (!place) {
      Diagnostics faults = place.faults();
      faults.front().hint += "; a new place needs its --kind, a word of the parts list";
      return faults;
    }
    set_place(draft, draft.by_id(place.value()->id.text), request);
    return place.value()->id.text;
  }
  auto id = draft.id_for(request.id, "pl-" + request.said);
  if (!id) return id.faults();
  const pugi::xml_node place = draft.add_with_id(draft.section("places"), "place", *id);
  draft.add(place, "name", request.said);
  if (request.quantity.empty()) request.quantity = count;
  set_place(draft, place, request);
  return id;
}

/// "nickel plate (maker, 1948): worn at the ends"; without brackets, the maker's.
void add_finish(Draft& draft, pugi::xml_node piece, const std::string& text) {
  const std::size_t open = text.find('(');
  const std::size_t close = open == std::string::npos ? open : text.find(')', open);
  const std::size_t colon = text.find(':', close == std::string::npos ? 0 : close);
  const pugi::xml_node finish = draft.add(piece, "finish");
  if (close == std::string::npos) {
    draft.add(finish, "what", trimmed(text.substr(0, colon)));
    draft.add(finish, "by", "maker");
  } else {
    const std::string inside = text.substr(open + 1, close - open - 1);
    const std::size_t comma = inside.find(',');
    draft.add(finish, "what", trimmed(text.substr(0, open)));
    draft.add(finish, "by", trimmed(inside.substr(0, comma)));
    if (comma != std::string::npos) draft.add(finish, "when", trimmed(inside.substr(comma + 1)));
  }
  if (colon != std::string::npos) draft.add_words(finish, "note", trimmed(text.substr(colon + 1)));
}

/// A reference that is there already is left when it is the same; another is refused, since a
/// reference cannot be set anew.
Diagnostics set_ref(Draft& draft, pugi::xml_node piece, const char* name, const std::string& id) {
  const pugi::xml_node there = piece.child(name);
  if (!there) {
    draft.add_ref(piece, name, id);
    return {};
  }
  if (id == there.attribute("ref").value()) return {};
  return {base::of_command(base::error(
      fmt::format("its {} is \"{}\" in the record already", name, there.attribute("ref").value()),
      "change it in the record by hand", "command-name"))};
}

Diagnostics set_piece(Draft& draft, pugi::xml_node piece, const PartRequest& request) {
  set_if(draft, piece, "count", request.count);
  set_if(draft, piece, "role", request.role);
  set_if(draft, piece, "material", request.material);
  for (const std::string& one : request.finish)
    add_finish(draft, piece, one);
  set_if(draft, piece, "maker-name", request.maker_name);
  set_if(draft, piece, "made", request.made);
  draft.set_words(piece, "note", request.note);
  if (!request.donor.empty()) {
    const auto donor = record::find_donor(draft.record(), request.donor);
    if (!donor) return donor.faults();
    if (auto faults = set_ref(draft, piece, "donor", donor.value()->id.text); !faults.empty())
      return faults;
  }
  if (!request.fragment_of.empty()) {
    const auto whole = record::find_piece(draft.record(), request.fragment_of);
    if (!whole) return whole.faults();
    return set_ref(draft, piece, "fragment-of", whole.value()->id.text);
  }
  return {};
}

void set_now(Draft& draft, pugi::xml_node piece, const PartRequest& request,
             const std::string& kind) {
  const pugi::xml_node now = draft.need(piece, "now");
  if (now.first_child() && kind != now.child("kind").text().get()) draft.empty(now);
  draft.set(now, "kind", kind);
  set_if(draft, now, "bag", request.bag);
  set_if(draft, now, "since", request.since);
  draft.set_words(now, "note", request.now_note);
}

/// Who put it there, into a fitting.
Diagnostics add_fitted_by(Draft& draft, pugi::xml_node fitting, const std::string& said) {
  const pugi::xml_node by = draft.add(fitting, "by");
  if (said.empty() || said == "maker" || said == "bench" || said == "not-known") {
    draft.add(by, "answer", said.empty() ? "not-known" : said);
    return {};
  }
  const auto person = record::find_person(draft.record(), said);
  if (!person) return person.faults();
  draft.add_ref(by, "person", person.value()->id.text);
  return {};
}

Diagnostics add_fitting(Draft& draft, const std::string& piece, const std::string& place,
                        const PartRequest& request) {
  const pugi::xml_node fitting =
      draft.add_with_id(draft.section("fittings"), "fitting", draft.free_id("fi-" + piece));
  draft.add_ref(fitting, "piece", piece);
  draft.add_ref(fitting, "place", place);
  draft.add_if(fitting, "from", request.from);
  draft.add_if(fitting, "until", request.until);
  auto faults = add_fitted_by(draft, fitting, request.fitted_by);
  return faults.empty() ? add_photos(draft, fitting, request.photos) : faults;
}

/// Photographs of the part as fitted, in its last fitting.
Diagnostics add_fitted_photos(Draft& draft, const record::Piece& piece,
                              const std::vector<std::string>& photos) {
  if (photos.empty()) return {};
  const record::Fitting* last = nullptr;
  for (const record::Fitting& one : draft.record().fittings) {
    if (one.piece == piece.id) last = &one;
  }
  if (last == nullptr) {
    return {base::of_command(base::error(fmt::format("{} was never fitted", piece.name),
                                         "winchbook photo add --part shows it as it is",
                                         "command-name"))};
  }
  return add_photos(draft, draft.by_id(last->id.text), photos);
}

/// What a part that is in the record is: only what is given is set.
Result<Said> set_known(Draft& draft, const PartRequest& request) {
  const auto found = record::find_piece(draft.record(), request.name);
  if (!found) return found.faults();
  const record::Piece& known = **found;
  const pugi::xml_node piece = draft.by_id(known.id.text);
  if (auto faults = set_piece(draft, piece, request); !faults.empty()) return faults;
  const bool says_where = !request.now.empty() || !request.bag.empty() || !request.since.empty() ||
                          !request.now_note.empty();
  if (says_where) {
    set_now(draft, piece, request,
            request.now.empty() ? std::string(record::word_of(known.now.kind)) : request.now);
  }
  if (!request.until.empty()) {
    for (const record::Fitting& one : draft.record().fittings) {
      if (one.piece == known.id && !one.until)
        draft.set(draft.by_id(one.id.text), "until", request.until);
    }
  }
  if (auto faults = add_fitted_photos(draft, known, request.photos); !faults.empty()) return faults;
  if (!request.place.said.empty()) {
    const auto place = place_of(draft, request.place, request.count);
    if (!place) return place.faults();
  }
  return Said{fmt::format("{}: what is known of it is set", known.name), {}};
}

/// Where a new part is when nothing is said of it.
std::string usual_now(const PartRequest& request) {
  if (!request.now.empty()) return request.now;
  if (request.role == "content" || request.role == "spare") return "with-reel";
  return request.place.said.empty() || !request.until.empty() ? "not-known" : "fitted";
}

}  // namespace

Change part(PartRequest request) {
  return [request = std::move(request)](Draft& draft) -> Result<Said> {
    if (request.known) return set_known(draft, request);
    if (request.empty) {
      PlaceRequest place = request.place;
      place.said = request.name;
      const auto id = place_of(draft, place, request.count);
      if (!id) return id.faults();
      return Said{fmt::format("place {}: {}, nothing sits there", *id, request.name), {}};
    }
    std::string place;
    if (!request.place.said.empty()) {
      const auto found = place_of(draft, request.place, request.count);
      if (!found) return found.faults();
      place = *found;
    }
    const auto id = draft.id_for(request.id, request.name);
    if (!id) return id.faults();
    const pugi::xml_node piece = draft.add_with_id(draft.section("pieces"), "piece", *id);
    draft.add(piece, "name", request.name);
    draft.add(piece, "material", "not determined");
    if (auto faults = set_piece(draft, piece, request); !faults.empty()) return faults;
    set_now(draft, piece, request, usual_now(request));
    if (!place.empty()) {
      if (auto faults = add_fitting(draft, *id, place, request); !faults.empty()) return faults;
    }
    return Said{place.empty() ? fmt::format("part {}: {}", *id, request.name)
                              : fmt::format("part {}: {}, in {}", *id, request.name, place),
                {}};
  };
}

}  // namespace winchbook::daybook
