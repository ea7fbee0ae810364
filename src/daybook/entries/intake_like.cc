#include "daybook/entries/intake_like.h"

#include <fmt/format.h>

#include <map>
#include <utility>
#include <variant>

#include "daybook/named_people.h"

namespace winchbook::daybook {
namespace {

using record::Fitting;
using record::PieceId;
using record::PlaceId;
using record::Record;

constexpr const char* kNotes = "urn:winchbook:bench-notes:1";

/// The words with people by what is printed where a name is withheld.
std::string without_people(const Record& record, const record::Words& words) {
  std::string text;
  for (const record::Run& run : words.runs) {
    if (const auto* plain = std::get_if<record::Plain>(&run))
      text += without_names(record, plain->words);
    if (const auto* stressed = std::get_if<record::Emphasis>(&run))
      text += without_names(record, stressed->words);
    if (const auto* person = std::get_if<record::PersonMention>(&run)) {
      const record::Person* found = record::find(record, person->person);
      text += found == nullptr ? "somebody" : found->stand_in;
    }
    if (const auto* piece = std::get_if<record::PieceMention>(&run)) {
      const record::Piece* found = record::find(record, piece->piece);
      text += piece->words.empty() && found != nullptr ? found->name : piece->words;
    }
  }
  return text;
}

/// The material of the place's first piece: the oldest one the earlier record knows.
std::string material_in(const Record& record, const PlaceId& place) {
  for (const Fitting& fitting : record.fittings) {
    const record::Piece* piece = record::find(record, fitting.piece);
    if (fitting.place == place && piece != nullptr) return piece->material;
  }
  return "not determined";
}

/// "Pinion: a broken Skerry No. 30; trimmed 0.4 mm; seat 6.35 mm".
std::string substitute(const Record& record, const Fitting& fitting) {
  const record::Piece* piece = record::find(record, fitting.piece);
  if (piece == nullptr) return {};
  std::string text = without_names(record, piece->name);
  if (piece->donor) {
    const record::Donor* donor = record::find(record, *piece->donor);
    if (donor != nullptr) text += ": " + without_names(record, donor->name);
  }
  if (!piece->maker_name.empty()) text += ", by " + piece->maker_name;
  if (!fitting.adaptation.empty()) text += "; " + without_people(record, fitting.adaptation);
  if (fitting.seat && fitting.seat->bore) {
    text += fmt::format("; seat bore {} mm", fitting.seat->bore->value.text());
  }
  if (fitting.seat && fitting.seat->outside) {
    text += fmt::format(", outside {} mm", fitting.seat->outside->value.text());
  }
  return text;
}

void add_step(Draft& draft, pugi::xml_node strip_down, const Record& earlier,
              const record::StripStep& step, const std::map<PieceId, std::string>& taken) {
  std::vector<std::string> parts;
  for (const PieceId& piece : step.pieces) {
    const auto found = taken.find(piece);
    if (found != taken.end()) parts.push_back(found->second);
  }
  if (parts.empty() && !step.pieces.empty()) return;
  const pugi::xml_node added = draft.add_with_id(strip_down, "step", draft.free_id(step.id.text));
  draft.add_words(added, "what", without_people(earlier, step.what));
  for (const std::string& part : parts)
    draft.add_ref(added, "piece", part);
  draft.add_words(added, "orientation", without_people(earlier, step.orientation));
  draft.add_if(added, "tool", without_names(earlier, step.tool));
  if (step.spring_loose) draft.add(added, "spring-loose", "yes");
  if (!step.caution) return;
  const pugi::xml_node caution = draft.add(added, "caution");
  draft.add(caution, "label", step.caution->label);
  draft.add_words(caution, "words", without_people(earlier, step.caution->words));
}

}  // namespace

std::string add_filled_place(Draft& draft, const record::Place& place,
                             const std::string& material) {
  const std::string id = place.id.empty() ? draft.free_id("pl-" + place.name) : place.id.text;
  const pugi::xml_node added = draft.add_with_id(draft.section("places"), "place", id);
  draft.add(added, "name", place.name);
  draft.add(added, "kind", place.kind);
  draft.add_if(added, "assembly", place.assembly);
  if (place.quantity > 1) draft.add(added, "quantity", std::to_string(place.quantity));
  if (place.weight) draft.add(added, "weight", place.weight->text());
  if (place.consumable) draft.add(added, "consumable", "yes");
  if (place.may_be_empty) draft.add(added, "may-be-empty", "yes");
  if (place.captive_spring) draft.add(added, "captive-spring", "yes");
  if (place.exposed_area) draft.add(added, "exposed-area", place.exposed_area->value.text());

  std::string piece = draft.free_id(place.name);
  const pugi::xml_node thing = draft.add_with_id(draft.section("pieces"), "piece", piece);
  draft.add(thing, "name", place.name);
  if (place.quantity > 1) draft.add(thing, "count", std::to_string(place.quantity));
  draft.add(thing, "material", material);
  draft.add(draft.add(thing, "now"), "kind", "fitted");
  const pugi::xml_node fitting =
      draft.add_with_id(draft.section("fittings"), "fitting", draft.free_id("fi-" + piece));
  draft.add_ref(fitting, "piece", piece);
  draft.add_ref(fitting, "place", id);
  draft.add(draft.add(fitting, "by"), "answer", "not-known");
  return piece;
}

std::vector<std::string> take_over(Draft& draft, const Record& earlier, pugi::xml_node visit) {
  std::vector<std::string> notes;
  std::map<PieceId, std::string> taken;  // every piece that sat in a place to the new one there
  for (record::Place place : earlier.places) {
    place.name = without_names(earlier, place.name);
    const std::string piece = add_filled_place(draft, place, material_in(earlier, place.id));
    for (const Fitting& fitting : earlier.fittings) {
      if (fitting.place != place.id) continue;
      taken[fitting.piece] = piece;
      const std::string note = fitting.visit ? substitute(earlier, fitting) : std::string();
      if (note.empty()) continue;
      pugi::xml_node element = draft.add(draft.by_id(place.id.text), "fitted-before");
      element.append_attribute("xmlns") = kNotes;
      element.text().set(note.c_str());
      notes.push_back(place.name + ": " + note);
    }
  }
  for (const record::Visit& one : earlier.visits) {
    if (one.strip_down.empty()) continue;
    const pugi::xml_node strip_down = draft.need(visit, "strip-down");
    for (const record::StripStep& step : one.strip_down)
      add_step(draft, strip_down, earlier, step, taken);
    break;
  }
  return notes;
}

}  // namespace winchbook::daybook
