#include "daybook/entries/intake_like.h"

#include <fmt/format.h>

#include <map>
#include <utility>
#include <variant>

#include "record/named_people.h"

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

/// The step as it is to be done again; nothing, when it takes off only what was not taken over.
void add_step(const Record& earlier, const record::StripStep& step,
              const std::map<PieceId, PlaceId>& taken, Draft& draft) {
  record::StripStep added;
  for (const PieceId& piece : step.pieces) {
    const auto found = taken.find(piece);
    if (found != taken.end()) added.places.push_back(found->second);
  }
  if (added.places.empty() && !step.pieces.empty()) return;
  std::vector<record::StripStep>& steps = draft.record().visits.back().strip_down;
  added.id = {draft.free_id(step.id.text)};
  added.number = static_cast<int>(steps.size()) + 1;
  added.what = draft.words(without_people(earlier, step.what));
  added.orientation = draft.words(without_people(earlier, step.orientation));
  added.tool = record::without_names(earlier, step.tool);
  added.spring_loose = step.spring_loose;
  if (step.caution) {
    added.caution = {step.caution->label,
                     draft.words(without_people(earlier, step.caution->words))};
  }
  steps.push_back(std::move(added));
}

}  // namespace

std::vector<recordfile::OwnNote> take_over(const Record& earlier, Draft& draft) {
  std::vector<recordfile::OwnNote> notes;
  std::map<PieceId, PlaceId> taken;  // every piece that sat in a place to that place
  for (record::Place place : earlier.places) {
    place.name = record::without_names(earlier, place.name);
    place.quantity = 1;
    place.exposed_area.reset();
    draft.record().places.push_back(place);
    for (const Fitting& fitting : earlier.fittings) {
      if (fitting.place != place.id) continue;
      taken[fitting.piece] = place.id;
      std::string note = fitting.visit ? substitute(earlier, fitting) : std::string();
      if (note.empty()) continue;
      notes.push_back({place.id.text, "fitted-before", kNotes, std::move(note)});
    }
  }
  for (const record::Visit& one : earlier.visits) {
    if (one.strip_down.empty()) continue;
    for (const record::StripStep& step : one.strip_down)
      add_step(earlier, step, taken, draft);
    break;
  }
  return notes;
}

}  // namespace winchbook::daybook
