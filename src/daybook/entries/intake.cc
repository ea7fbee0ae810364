#include "daybook/entries/intake.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "daybook/edit_difference.h"
#include "daybook/entries/intake_like.h"
#include "knowledge/knowledge.h"
#include "library/lock.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;
using base::Result;
using record::Record;

constexpr std::size_t kFewPlaces = 8;

/// What the folder's record is begun with.
struct Sources {
  std::optional<recordfile::LoadedRecord> like;
  std::optional<recordfile::LoadedRecord> bench;
  knowledge::Knowledge knowledge;
};

Result<Sources> read_sources(const library::World& world, const IntakeRequest& request) {
  Sources sources;
  const auto read = [&](const fs::path& path) {
    return recordfile::read(world.files, path, world.data / "schemas");
  };
  if (!request.like.empty()) {
    auto like = read(request.like);
    if (!like) return like.faults();
    sources.like = std::move(like).value();
  }
  const fs::path bench = request.bench_of.empty() ? request.like : request.bench_of;
  if (!bench.empty() && request.bench.empty()) {
    auto loaded = read(bench);
    if (!loaded) return loaded.faults();
    sources.bench = std::move(loaded).value();
  }
  if (!sources.like) {
    auto knowledge = knowledge::load(world.files, world.data, request.kind);
    if (!knowledge) return knowledge.faults();
    sources.knowledge = std::move(knowledge).value();
  }
  return sources;
}

base::Diagnostics add_restorer(Draft& draft, pugi::xml_node bench, const PersonRequest& restorer) {
  const auto id = add_person(draft, restorer);
  if (!id) return id.faults();
  draft.add_ref(bench, "restorer", *id);
  return {};
}

base::Diagnostics add_bench(Draft& draft, const IntakeRequest& request, const Sources& sources) {
  const pugi::xml_node bench = draft.section("bench");
  if (!sources.bench) {
    draft.add(bench, "name", request.bench);
    draft.add(bench, "place", request.bench_place);
    draft.add_if(bench, "address", request.bench_address);
    draft.add_if(bench, "contact", request.bench_contact);
    PersonRequest restorer;
    restorer.name = request.restorer;
    restorer.stand_in = "the restorer";
    restorer.named_to = "anyone";
    restorer.salt = request.draw_salt();
    return add_restorer(draft, bench, restorer);
  }
  const Record& from = sources.bench->record;
  draft.add(bench, "name", from.bench.name);
  draft.add(bench, "place", from.bench.place);
  draft.add_if(bench, "address", from.bench.address);
  draft.add_if(bench, "contact", from.bench.contact);
  draft.add_words(bench, "terms", record::plain_text(from, from.bench.terms));
  for (const record::PersonId& id : from.bench.restorers) {
    const record::Person* person = record::find(from, id);
    const std::string* name = person == nullptr ? nullptr : record::told(person->name);
    if (name == nullptr) continue;
    PersonRequest restorer;
    restorer.name = *name;
    restorer.short_name = person->short_name;
    restorer.stand_in = person->stand_in;
    restorer.named_to = record::word_of(person->named_to);
    restorer.salt = request.draw_salt();
    if (auto faults = add_restorer(draft, bench, restorer); !faults.empty()) return faults;
  }
  return {};
}

void add_reel(Draft& draft, const IntakeRequest& request, const Sources& sources) {
  const pugi::xml_node reel = draft.section("reel");
  const record::Reel* like = sources.like ? &sources.like->record.reel : nullptr;
  const auto told = [&](const std::string& own, const std::string& earlier) {
    return own.empty() && like != nullptr ? earlier : own;
  };
  const std::string model = told(request.model, like == nullptr ? "" : like->model);
  const std::string maker = told(request.maker, like == nullptr ? "" : like->maker.name);
  const std::string kind =
      told(request.kind, like == nullptr ? "" : std::string(record::word_of(like->kind)));
  draft.add(reel, "name",
            !request.name.empty() ? request.name
            : !model.empty()      ? model
            : !maker.empty()      ? maker
                                  : kind);
  draft.add_if(reel, "model", model);
  draft.add(reel, "kind", kind);
  draft.add(reel, "brake",
            like != nullptr && request.brake == "none" ? std::string(record::word_of(like->brake))
                                                       : request.brake);
  const pugi::xml_node made = draft.add(reel, "maker");
  draft.add(made, "kind", maker.empty() ? "not-determined" : "made-by");
  if (maker.empty()) return;
  draft.add(made, "name", maker);
  draft.add_if(made, "place", told(request.maker_place, like == nullptr ? "" : like->maker.place));
  draft.add(made, "certainty", "likely");
}

/// The places that weigh most, or all; in the order of the list.
std::vector<const knowledge::PartsEntry*> places_of(const knowledge::PartsList& list, bool all) {
  std::vector<const knowledge::PartsEntry*> places;
  for (const knowledge::PartsEntry& one : list.places)
    places.push_back(&one);
  if (all || places.size() <= kFewPlaces) return places;
  std::vector<const knowledge::PartsEntry*> heaviest = places;
  std::stable_sort(heaviest.begin(), heaviest.end(),
                   [](const auto* one, const auto* other) { return other->weight < one->weight; });
  heaviest.resize(kFewPlaces);
  places.erase(std::remove_if(places.begin(), places.end(),
                              [&](const auto* one) {
                                return std::find(heaviest.begin(), heaviest.end(), one) ==
                                       heaviest.end();
                              }),
               places.end());
  return places;
}

void add_places(Draft& draft, const knowledge::PartsList& list, const IntakeRequest& request) {
  for (const char* section : {"places", "pieces", "fittings"})
    draft.section(section);
  if (request.no_places) return;
  for (const knowledge::PartsEntry* one : places_of(list, request.all_places)) {
    record::Place place;
    place.name = one->name;
    place.kind = one->word;
    place.assembly = one->assembly;
    place.quantity = one->usual_quantity;
    place.consumable = one->consumable;
    place.captive_spring = one->captive_spring;
    add_filled_place(draft, place, "not determined");
  }
}

bool says_anything(const AgreeRequest& agreed) {
  return !agreed.may_be_done.empty() || !agreed.must_stay.empty() ||
         !agreed.parts_must_stay.empty() || !agreed.parts_may_leave.empty() ||
         !agreed.limit.empty() || !agreed.estimate.empty() || !agreed.note.empty();
}

pugi::xml_node add_visit(Draft& draft, const IntakeRequest& request, const std::string& owner,
                         const std::vector<std::string>& restorers) {
  const pugi::xml_node visit = draft.add_with_id(
      draft.section("visits"), "visit", draft.free_id(fmt::format("v-{}", request.on.year)));
  draft.add(visit, "taken-in", base::iso_text(request.on));
  if (!owner.empty()) draft.add_ref(visit, "brought-by", owner);
  for (const std::string& one : restorers)
    draft.add_ref(visit, "restorer", one);
  draft.add_words(visit, "arrived", request.arrived);
  const pugi::xml_node wishes = draft.add(visit, "wishes");
  draft.add(wishes, "use", request.use);
  if (!request.wish.empty()) draft.add_paragraphs(draft.add(wishes, "words"), request.wish);
  for (const record::Matter one : request.ranking)
    draft.add(wishes, "ranking", record::word_of(one));
  draft.add_if(visit, "number", request.number);
  draft.add_if(visit, "promised-by", request.promised_by);
  return visit;
}

/// The agreement of the intake; its parts are found among the pieces just added by their names.
base::Diagnostics add_limits(Draft& draft, pugi::xml_node visit, const IntakeRequest& request,
                             const std::string& owner) {
  if (!says_anything(request.agreed)) return {};
  AgreeRequest agreed = request.agreed;
  agreed.on = request.on;
  agreed.with = owner;
  if (agreed.how.empty()) agreed.how = "in person";
  const auto id = draft.id_for(agreed.id, "ag-intake");
  if (!id) return id.faults();
  return add_agreement(draft, draft.add_with_id(visit, "agreement", *id), agreed);
}

std::vector<std::string> restorers_of(pugi::xml_node bench) {
  std::vector<std::string> ids;
  for (const pugi::xml_node one : bench.children("restorer"))
    ids.emplace_back(one.attribute("ref").value());
  return ids;
}

/// A record with nothing in it, to be added to; the people and pieces it will have are known
/// beforehand, so that sentences can name them.
recordfile::LoadedRecord blank(const IntakeRequest& request) {
  recordfile::LoadedRecord loaded;
  loaded.file = (request.folder / "record.xml").string();
  loaded.bytes = fmt::format(
      "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
      "<reel-record xmlns=\"urn:winchbook:record:1\" version=\"1\" lang=\"{}\">\n"
      "</reel-record>\n",
      request.language);
  return loaded;
}

struct Begun {
  std::string bytes;
  std::vector<std::string> notes;
};

Result<Begun> written_anew(const IntakeRequest& request, const Sources& sources,
                           const ElementOrder& order) {
  recordfile::LoadedRecord loaded = blank(request);
  auto begun = Draft::of(loaded, order);
  if (!begun) return begun.faults();
  Draft& draft = begun.value();
  if (auto faults = add_bench(draft, request, sources); !faults.empty()) return faults;
  add_reel(draft, request, sources);
  PersonRequest owner = request.owner;
  owner.salt = request.draw_salt();
  const auto added = add_person(draft, owner);
  if (!added) return added.faults();
  const std::string& owner_id = *added;
  record::Person known;
  known.id = {owner_id};
  known.name = owner.name;
  known.short_name = owner.short_name;
  loaded.record.people.push_back(known);

  Begun out;
  const pugi::xml_node visit =
      add_visit(draft, request, owner_id, restorers_of(draft.section("bench")));
  if (sources.like) {
    out.notes = take_over(draft, sources.like->record, visit);
  } else {
    const knowledge::PartsList* list = knowledge::parts_list(sources.knowledge, request.kind);
    if (list == nullptr) {
      return base::of_command(
          base::of_command(base::error(fmt::format("there is no parts list of the kind \"{}\"", request.kind),
                      "see shared/parts/ for the kinds", "command-kind")));
    }
    add_places(draft, *list, request);
  }
  for (const pugi::xml_node piece : draft.section("pieces").children("piece")) {
    record::Piece known_piece;
    known_piece.id = {piece.attribute("id").value()};
    known_piece.name = piece.child("name").text().get();
    loaded.record.pieces.push_back(known_piece);
  }
  if (auto faults = add_limits(draft, visit, request, owner_id); !faults.empty()) return faults;
  out.bytes = xml::spliced(loaded.bytes, draft.splices());
  return out;
}

}  // namespace

Result<Edited> intake(const library::World& world, const IntakeRequest& request) {
  const fs::path file = request.folder / "record.xml";
  const auto already = [&] {
    return base::of_command(base::error_at(
        {file.string(), 0, 0}, "there is a record already",
        "name another folder; a further visit is begun with --again", "command-folder"));
  };
  if (world.files.exists(file)) return already();
  const auto sources = read_sources(world, request);
  if (!sources) return sources.faults();
  const auto order = ElementOrder::read(world);
  if (!order) return order.faults();
  const auto begun = written_anew(request, *sources, *order);
  if (!begun) return begun.faults();
  const auto schema = recordfile::load_schema(world.files, world.data / "schemas");
  if (!schema) return schema.faults();
  const auto looked_over = recordfile::read_bytes(file.string(), begun->bytes, *schema);
  if (!looked_over) {
    base::Diagnostics faults = looked_over.faults();
    for (base::Diagnostic& fault : faults)
      fault.where = {file.string(), 0, 0};
    return faults;
  }

  Edited edited{file, {}, looked_over->warnings, {}};
  edited.sentence = fmt::format("taken in: {}, {}, {} places", looked_over->record.reel.name,
                                request.owner.name, looked_over->record.places.size());
  for (const std::string& note : begun->notes)
    edited.sentence += "\nfitted before: " + note;
  if (request.dry_run) {
    edited.difference = difference("", begun->bytes);
    return edited;
  }
  base::Diagnostics faults = world.files.make_folder(request.folder);
  if (base::has_error(faults)) return faults;
  const auto held = library::lock_reel(world, request.folder, request.command);
  if (!held) return held.faults();
  if (world.files.exists(file)) return already();
  faults = world.files.write_aside(file, begun->bytes);
  if (base::has_error(faults)) return faults;
  return edited;
}

Change intake_again(IntakeRequest request) {
  return [request = std::move(request)](Draft& draft) -> Result<Said> {
    const record::Visit* last = record::last_visit(draft.record());
    if (last != nullptr && !last->hand_back) {
      return base::error_at(draft.loaded().where(last->id.text), "the reel is at the bench still",
                            "hand it back first", "visit");
    }
    std::string owner;
    if (!request.owner.name.empty()) {
      const auto person = record::find_person(draft.record(), request.owner.name);
      if (!person) return person.faults();
      owner = person.value()->id.text;
    }
    std::vector<std::string> restorers;
    for (const record::PersonId& one : draft.record().bench.restorers)
      restorers.push_back(one.text);
    const pugi::xml_node visit = add_visit(draft, request, owner, restorers);
    if (auto faults = add_limits(draft, visit, request, owner); !faults.empty()) return faults;
    return Said{
        fmt::format("taken in again {}: {}", base::iso_text(request.on), draft.record().reel.name),
        {}};
  };
}

}  // namespace winchbook::daybook
