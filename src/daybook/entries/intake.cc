#include "daybook/entries/intake.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "daybook/edit_difference.h"
#include "daybook/entries/intake_like.h"
#include "daybook/looks.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"
#include "knowledge/knowledge.h"
#include "library/lock.h"
#include "record/enum_words.h"
#include "record/find_named.h"
#include "recordfile/typed_words.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;
using base::Result;
using record::Record;

constexpr std::size_t kFewPlaces = 8;

forms::Form form_of_reel(IntakeRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("--like", "an earlier reel of the model: its places, steps and what was fitted before",
            request.like),
      field("--kind", "the kind of reel, as in shared/parts/", request.kind)
          .asks("Which kind: multiplier, baitcaster, fixed-spool, closed-face, centrepin, "
                "sidecast, fly-reel, plain-winch, wooden-reel?",
                [&request] { return !request.again && request.like.empty(); }),
      field("--brake", "star, lever, click or none", request.brake),
      field("--maker", "the maker's name", request.maker),
      field("--maker-place", "where the works stood", request.maker_place),
      field("--model", "the maker's name for the model", request.model),
      field("--name", "what the documents call it; left out, the model", request.name),
      flag("--all-places", "every place of the parts list; left out, the eight that weigh most",
           request.all_places),
      flag("--no-places", "no place yet: winchbook part enters them", request.no_places),
      field("--lang", "the language of your own words: en-GB", request.language),
  };
}

forms::Form form_of_owner(IntakeRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  PersonRequest& owner = request.owner;
  return {
      field("--owner", "the owner's full name", owner.name)
          .asks("Whose is it?", [&request] { return !request.again; }),
      field("--owner-id", "their id in the record", owner.id),
      field("--owner-who", "who they are to the reel", owner.who),
      field("--owner-short", "how the family calls them", owner.short_name),
      field("--owner-stand-in", "printed where the name is withheld; left out, the owner",
            owner.stand_in),
      field("--owner-address", "where they live", owner.address),
      field("--owner-contact", "how to reach them", owner.contact),
      field("--owner-named-to", "who may read the name: anyone, insurer or owner (left out, owner)",
            owner.named_to),
  };
}

forms::Form form_of_bench(IntakeRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  const auto of_no_reel = [&request] {
    return !request.again && request.like.empty() && request.bench_of.empty();
  };
  return {
      field("--bench-of", "a reel of yours, for the bench and its restorers", request.bench_of),
      field("--bench", "or the bench's name", request.bench)
          .asks("What is the bench called (or --bench-of a reel of yours)?", of_no_reel),
      field("--bench-place", "where the bench stands", request.bench_place)
          .asks("Where does the bench stand?", of_no_reel),
      field("--bench-address", "its address, as on a receipt", request.bench_address),
      field("--bench-contact", "how to reach the bench", request.bench_contact),
      field("--restorer", "who works on it", request.restorer).asks("Who works on it?", of_no_reel),
  };
}

forms::Form form_of_visit(IntakeRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  AgreeRequest& agreed = request.agreed;
  return {
      field("--brought-by", "who brought it", request.brought_by),
      field("--by", "who works on it in this stay", request.by),
      field("--arrived", "how it came", request.arrived),
      field("--with-it", "what came with it, as often as needed; or none", request.with_it),
      field("--loose", "a part that lay loose in it, as often as needed; or none", request.loose),
      field("--box", "its box and papers; or none", request.box),
      field("--use", "fish, show, fish-and-show, sell, keep", request.use),
      field("--wish", "the wishes in the owner's words", request.wish),
      field("--rank",
            "what matters to the owner, the most important first: "
            "memory,use,originality,value,way-back,cost",
            request.ranking),
      field("--promised-by", "when it is promised", request.promised_by),
      field("--may-be-done", "what may be done; as often as needed", agreed.may_be_done),
      field("--must-stay", "what must stay, in words", agreed.must_stay),
      field("--part-must-stay", "a part that must stay fitted", agreed.parts_must_stay),
      field("--may-leave", "a part that the bench may keep or scrap", agreed.parts_may_leave),
      field("--agreement-id", "the id of that agreement; left out, ag-intake", agreed.id),
      field("--agreement-note", "a note on it", agreed.note),
      field("--limit", "what it may cost: \"40 GBP\"", agreed.limit),
      field("--estimate", "what the bench thinks it will cost: \"30 to 40 GBP\"", agreed.estimate),
      field("--number", "the bench's own number of the job: 26-014", request.number),
      field("--how", "how that was agreed: in person, by letter", agreed.how),
      field("--with", "with whom it was agreed", agreed.with),
      flag("--again", "a further visit of a reel that has its record", request.again),
  };
}

forms::Form form(IntakeRequest& request) {
  forms::Form form = entry_form(request);
  forms::append(form, form_of_reel(request));
  forms::append(form, form_of_owner(request));
  forms::append(form, form_of_bench(request));
  forms::append(form, form_of_visit(request));
  return form;
}

/// What the folder's record is begun with.
struct Sources {
  std::optional<recordfile::LoadedRecord> like;
  std::optional<recordfile::LoadedRecord> bench;
  const knowledge::PartsList* parts = nullptr;  ///< null with `like`
};

std::string kind_of(const IntakeRequest& request) {
  return request.kind ? std::string(record::word_of(*request.kind)) : std::string();
}

Result<Sources> read_sources(library::Library& library, const IntakeRequest& request) {
  Sources sources;
  if (!request.like.empty()) {
    auto like = library.record(request.like);
    if (!like) return like.faults();
    sources.like = std::move(like).value();
  }
  const fs::path bench = request.bench_of.empty() ? request.like : request.bench_of;
  if (!bench.empty() && request.bench.empty()) {
    auto loaded = library.record(bench);
    if (!loaded) return loaded.faults();
    sources.bench = std::move(loaded).value();
  }
  if (sources.like) return sources;
  const std::string kind = kind_of(request);
  const auto knowledge = library.knowledge(kind);
  if (!knowledge) return knowledge.faults();
  sources.parts = knowledge::parts_list(**knowledge, kind);
  if (sources.parts == nullptr) {
    return base::of_command(
        base::error(fmt::format("there is no parts list of the kind \"{}\"", kind),
                    "see shared/parts/ for the kinds", "command-kind"));
  }
  return sources;
}

/// Adds somebody, with a salt of their own; gives their id.
Result<record::PersonId> add(PersonRequest person, Draft& draft) {
  person.salt = draft.library().world().draw_salt();
  const auto id = add_person(draft, person);
  if (!id) return id.faults();
  return record::PersonId{*id};
}

/// The bench's people who are named in its own records.
std::vector<PersonRequest> restorers_of(const Record& from) {
  std::vector<PersonRequest> restorers;
  for (const record::PersonId& id : from.bench.restorers) {
    const record::Person* person = record::find(from, id);
    const std::string* name = person == nullptr ? nullptr : record::told(person->name);
    if (name == nullptr) continue;
    PersonRequest& restorer = restorers.emplace_back();
    restorer.name = *name;
    restorer.short_name = person->short_name;
    restorer.stand_in = person->stand_in;
    restorer.named_to = person->named_to;
  }
  return restorers;
}

base::Diagnostics add_bench(const IntakeRequest& request, const Sources& sources, Draft& draft) {
  record::Bench& bench = draft.record().bench;
  std::vector<PersonRequest> restorers;
  if (sources.bench) {
    const Record& from = sources.bench->record;
    bench = from.bench;
    bench.restorers.clear();
    bench.own_interest = {};
    bench.terms = draft.words(record::plain_text(from, from.bench.terms));
    restorers = restorers_of(from);
  } else {
    bench.name = request.bench;
    bench.place = request.bench_place;
    bench.address = request.bench_address;
    bench.contact = request.bench_contact;
    PersonRequest& restorer = restorers.emplace_back();
    restorer.name = request.restorer;
    restorer.stand_in = "the restorer";
    restorer.named_to = record::NamedTo::anyone;
  }
  for (PersonRequest& restorer : restorers) {
    const auto id = add(std::move(restorer), draft);
    if (!id) return id.faults();
    bench.restorers.push_back(*id);
  }
  return {};
}

/// What is told of the reel itself; what is not, as the earlier reel was.
record::Reel reel_of(const IntakeRequest& request, const Sources& sources) {
  const record::Reel like = sources.like ? sources.like->record.reel : record::Reel{};
  const auto told = [](const std::string& own, const std::string& earlier) {
    return own.empty() ? earlier : own;
  };
  record::Reel reel;
  reel.model = told(request.model, like.model);
  reel.kind = request.kind.value_or(like.kind);
  reel.brake = request.brake.value_or(like.brake);
  reel.maker.name = told(request.maker, like.maker.name);
  if (!reel.maker.name.empty()) {
    reel.maker.kind = record::MakerStatement::Kind::made_by;
    reel.maker.place = told(request.maker_place, like.maker.place);
  }
  reel.name = told(request.name, told(reel.model, reel.maker.name));
  if (reel.name.empty()) reel.name = record::word_of(reel.kind);
  return reel;
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

void add_places(const IntakeRequest& request, const knowledge::PartsList& list, Draft& draft) {
  if (request.no_places) return;
  for (const knowledge::PartsEntry* one : places_of(list, request.all_places)) {
    record::Place place;
    place.id = {draft.free_id("pl-" + one->name)};
    place.name = one->name;
    place.kind = one->word;
    place.assembly = one->assembly;
    place.consumable = one->consumable;
    place.captive_spring = one->captive_spring;
    draft.record().places.push_back(std::move(place));
  }
}

bool says_anything(const AgreeRequest& agreed) {
  return !agreed.may_be_done.empty() || !agreed.must_stay.empty() ||
         !agreed.parts_must_stay.empty() || !agreed.parts_may_leave.empty() || agreed.limit ||
         agreed.estimate || !agreed.note.empty() || !agreed.how.empty() || !agreed.with.empty();
}

/// Who is named; somebody new to the record is added.
Result<std::optional<record::PersonId>> person_known_or_added(const std::string& said,
                                                              const char* stand_in, Draft& draft) {
  if (said.empty()) return std::optional<record::PersonId>();
  if (const auto known = record::find_person(draft.record(), said)) {
    return std::optional(known.value()->id);
  }
  PersonRequest person;
  person.name = said;
  person.stand_in = stand_in;
  const auto added = add(std::move(person), draft);
  if (!added) return added.faults();
  return std::optional(*added);
}

base::Diagnostics add_visit(const IntakeRequest& request,
                            const std::optional<record::PersonId>& owner, Draft& draft) {
  const auto brought_by = person_known_or_added(request.brought_by, "who brought it", draft);
  if (!brought_by) return brought_by.faults();
  const auto by = person_known_or_added(request.by, "who worked on it", draft);
  if (!by) return by.faults();
  record::Visit visit;
  visit.id = {draft.free_id(fmt::format("v-{}", request.on.year))};
  visit.taken_in = date_of(request.on);
  visit.owner = owner;
  visit.brought_by = *brought_by;
  if (*by) visit.restorers.push_back(**by);
  visit.arrived = draft.words(request.arrived);
  visit.wishes.use = request.use;
  visit.wishes.words = recordfile::prose_of(draft.record(), request.wish);
  visit.wishes.ranking = request.ranking.matters;
  visit.number = request.number;
  visit.promised_by = request.promised_by;
  draft.record().visits.push_back(std::move(visit));
  return {};
}

bool is_none(const std::vector<std::string>& said) {
  return said.size() == 1 && said.front() == kNone;
}

void add_content(const std::string& name, Draft& draft) {
  record::Piece piece;
  piece.id = {draft.free_id(name)};
  piece.name = name;
  piece.role = record::PieceRole::content;
  piece.now.kind = record::Whereabouts::Kind::with_reel;
  draft.record().pieces.push_back(std::move(piece));
}

/// What came with it, what lay loose in it, its box: there, or none of it.
base::Diagnostics add_what_came(const IntakeRequest& request, Draft& draft) {
  using record::LookedFor;
  record::Visit& visit = draft.record().visits.back();
  base::Diagnostics faults;
  const auto none = [&](LookedFor what) {
    const auto more = look_for_none(draft, visit, what, request.on);
    faults.insert(faults.end(), more.begin(), more.end());
  };
  if (is_none(request.with_it)) {
    none(LookedFor::contents);
  } else {
    for (const std::string& one : request.with_it)
      add_content(one, draft);
  }
  if (request.box == kNone) {
    none(LookedFor::box);
  } else {
    draft.put(draft.record().reel.box_and_papers, request.box);
  }
  if (is_none(request.loose)) {
    none(LookedFor::loose_parts);
    return faults;
  }
  const auto loose = counted_named(draft, request.loose);
  if (!loose) return loose.faults();
  for (const record::CountedPiece& one : *loose)
    tray_line_of(visit, one.piece->id, request.on).found_loose += one.count;
  return faults;
}

/// The agreement of the intake; its parts are found among those of the list by their names.
base::Diagnostics add_limits(const IntakeRequest& request, Draft& draft) {
  if (!says_anything(request.agreed)) return {};
  AgreeRequest agreed = request.agreed;
  agreed.on = request.on;
  auto agreement = agreement_of(draft, agreed, "ag-intake");
  if (!agreement) return agreement.faults();
  draft.record().visits.back().agreements.push_back(std::move(agreement).value());
  return {};
}

/// A new record, and the bench's own notes that go with it.
struct Begun {
  Record record;
  std::vector<recordfile::OwnNote> notes;
};

Result<Begun> begin(const IntakeRequest& request, const Sources& sources, const std::string& file,
                    library::Library& library) {
  recordfile::LoadedRecord blank;
  blank.file = file;
  blank.record.language = request.language;
  Draft draft(blank, library, false);
  if (auto faults = add_bench(request, sources, draft); !faults.empty()) return faults;
  draft.record().reel = reel_of(request, sources);
  PersonRequest owner = request.owner;
  if (owner.stand_in.empty()) owner.stand_in = "the owner";
  const auto owner_id = add(std::move(owner), draft);
  if (!owner_id) return owner_id.faults();
  if (auto faults = add_visit(request, *owner_id, draft); !faults.empty()) return faults;
  std::vector<recordfile::OwnNote> notes;
  if (sources.like) {
    notes = take_over(sources.like->record, draft);
  } else {
    add_places(request, *sources.parts, draft);
  }
  if (auto faults = add_what_came(request, draft); !faults.empty()) return faults;
  if (auto faults = add_limits(request, draft); !faults.empty()) return faults;
  return Begun{std::move(draft.record()), std::move(notes)};
}

Result<forms::Outcome> take_in(const IntakeRequest& request, forms::Setting& setting) {
  if (auto faults = against_day(request); !faults.empty()) return faults;
  if (!request.again) {
    return told(intake(setting.library, request, setting.command), request.dry_run);
  }
  return write_entry(
      request, [&](Draft& draft) { return intake_again(request, draft); }, setting);
}

}  // namespace

Result<Edited> intake(library::Library& library, const IntakeRequest& request,
                      const std::string& command) {
  base::Files& files = library.files();
  const fs::path file = request.path / "record.xml";
  const auto already = [&] {
    return base::of_command(base::error_at(
        {file.string(), 0, 0}, "there is a record already",
        "name another folder; a further visit is begun with --again", "command-folder"));
  };
  if (files.exists(file)) return already();
  const auto sources = read_sources(library, request);
  if (!sources) return sources.faults();
  const auto begun = begin(request, *sources, file.string(), library);
  if (!begun) return begun.faults();
  const std::string bytes = recordfile::write_new(begun->record, begun->notes);
  const auto looked_over = library.record_of(file.string(), bytes);
  if (!looked_over) {
    base::Diagnostics faults = looked_over.faults();
    for (base::Diagnostic& fault : faults)
      fault.where = {file.string(), 0, 0};
    return faults;
  }

  Edited edited{file, {}, looked_over->warnings, {}};
  edited.sentence = fmt::format("taken in: {}, {}; {} places listed", looked_over->record.reel.name,
                                request.owner.name, looked_over->record.places.size());
  for (const recordfile::OwnNote& note : begun->notes) {
    const record::Place* place = record::find(begun->record, record::PlaceId{note.in});
    edited.sentence += "\nfitted before: " + place->name + ": " + note.text;
  }
  if (request.dry_run) {
    edited.difference = difference("", bytes);
    return edited;
  }
  base::Diagnostics faults = files.make_folder(request.path);
  if (base::has_error(faults)) return faults;
  const auto held = library::lock_reel(library.world(), request.path, command);
  if (!held) return held.faults();
  if (files.exists(file)) return already();
  faults = files.write_aside(file, bytes);
  if (base::has_error(faults)) return faults;
  return edited;
}

Result<Said> intake_again(const IntakeRequest& request, Draft& draft) {
  const record::Visit* last = record::last_visit(draft.record());
  if (last != nullptr && !last->hand_back) {
    return base::error_at(draft.loaded().where(last->id.text), "the reel is at the bench still",
                          "hand it back first", "visit");
  }
  const auto owner = person_of(draft.record(), request.owner.name);
  if (!owner) return owner.faults();
  if (auto faults = add_visit(request, *owner, draft); !faults.empty()) return faults;
  if (auto faults = add_what_came(request, draft); !faults.empty()) return faults;
  if (auto faults = add_limits(request, draft); !faults.empty()) return faults;
  return Said{
      fmt::format("taken in again {}: {}", base::iso_text(request.on), draft.record().reel.name),
      {}};
}

forms::Job intake_job() {
  return forms::job_of<IntakeRequest>(form, take_in);
}

}  // namespace winchbook::daybook
