#include "app/strip.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "app/find_named.h"
#include "app/open_visit.h"
#include "record/enum_words.h"

namespace winchbook::app {
namespace {

using Pieces = std::vector<const record::Piece*>;

/// How many of a piece lie in the tray by the record.
int in_tray(const record::Visit& visit, const record::PieceId& piece) {
  for (const record::TrayLine& line : visit.tray) {
    if (line.piece == piece) return line.taken_off - line.refitted;
  }
  return 0;
}

base::Diagnostics faults_of(const Draft& draft, const record::Visit& visit,
                            const std::vector<CountedPiece>& off) {
  base::Diagnostics faults;
  for (const CountedPiece& one : off) {
    const base::Location where = draft.loaded().where(one.piece->id.text);
    const int there = one.piece->count - in_tray(visit, one.piece->id);
    const bool out = one.piece->role == record::PieceRole::part &&
                     one.piece->now.kind != record::Whereabouts::Kind::fitted;
    if (out && one.piece->now.kind != record::Whereabouts::Kind::not_known) {
      faults.push_back(base::error_at(
          where,
          fmt::format("{} is not in the reel: it is {}", one.piece->name,
                      record::word_of(one.piece->now.kind)),
          "name the part that comes off; winchbook tray --found-loose takes in what lay in it",
          "tray"));
    } else if (one.count > there) {
      faults.push_back(base::error_at(where,
                                      there <= 0
                                          ? fmt::format("{} is off already", one.piece->name)
                                          : fmt::format("{} of {} come off, and {} are in the reel",
                                                        one.count, one.piece->name, there),
                                      "winchbook tray tells what is off", "tray"));
    }
  }
  return faults;
}

/// The step that is written already and is done now; its parts.
base::Result<std::vector<CountedPiece>> parts_of_step(const Draft& draft,
                                                      const record::Visit& visit,
                                                      const std::string& id) {
  for (const record::StripStep& step : visit.strip_down) {
    if (step.id.text != id && std::to_string(step.number) != id) continue;
    std::vector<CountedPiece> parts;
    for (const record::PieceId& piece : step.pieces) {
      const record::Piece* found = record::find(draft.record(), piece);
      if (found != nullptr) parts.push_back({found, found->count});
    }
    return parts;
  }
  return base::error(fmt::format("there is no step \"{}\"", id),
                     "name one by its number, or say what is done", "command-name");
}

base::Diagnostics write_step(Draft& draft, pugi::xml_node visit, const StripRequest& request,
                             const std::vector<CountedPiece>& off, bool spring) {
  const pugi::xml_node strip_down = draft.need(visit, "strip-down");
  int number = 1;
  for ([[maybe_unused]] const pugi::xml_node one : strip_down.children("step"))
    ++number;
  const pugi::xml_node step =
      draft.add_with_id(strip_down, "step", draft.free_id("st-" + std::to_string(number)));
  draft.add_words(step, "what", request.what);
  for (const CountedPiece& one : off)
    draft.add_ref(step, "piece", one.piece->id.text);
  draft.add_words(step, "orientation", request.orientation);
  draft.add_if(step, "tool", request.tool);
  if (spring) draft.add(step, "spring-loose", "yes");
  add_caution(draft, step,
              request.caution.empty() && spring ? request.spring_caution : request.caution,
              "Caution");
  return add_photos(draft, step, request.photos);
}

}  // namespace

std::vector<const record::Piece*> springs_in(const record::Record& record,
                                             const record::Visit& visit, const Pieces& pieces) {
  Pieces springs;
  for (const record::Place& place : record.places) {
    if (!place.captive_spring) continue;
    for (const record::Fitting* fitting :
         record::fittings_in(record, place.id, visit, record::Moment::found)) {
      const auto piece = std::find_if(pieces.begin(), pieces.end(), [&](const record::Piece* one) {
        return one->id == fitting->piece;
      });
      if (piece != pieces.end()) springs.push_back(*piece);
    }
  }
  return springs;
}

Change strip(StripRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, request.on);
    if (!open) return open.faults();
    const auto off = request.step.empty() ? find_counted(draft.record(), request.off)
                                          : parts_of_step(draft, *open->visit, request.step);
    if (!off) return off.faults();
    if (auto faults = faults_of(draft, *open->visit, *off); !faults.empty()) return faults;
    Pieces pieces;
    for (const CountedPiece& one : *off)
      pieces.push_back(one.piece);
    const Pieces springs = springs_in(draft.record(), *open->visit, pieces);
    base::Diagnostics warnings;
    for (const record::Piece* spring : springs) {
      warnings.push_back(base::warning_at(
          {}, fmt::format("{} is under load and comes free in this step", spring->name),
          "before you go on: eye protection, a cloth over it, note where it seats; "
          "local rules come first",
          "spring"));
    }
    if (request.step.empty()) {
      const bool spring = request.spring || !springs.empty();
      auto faults = write_step(draft, open->element, request, *off, spring);
      if (!faults.empty()) return faults;
    }
    for (const CountedPiece& one : *off)
      add_to_tray(draft, tray_line_of(draft, open->element, one.piece->id), "taken-off", one.count);
    std::string sentence =
        request.step.empty() ? request.what : "step " + request.step + " is done";
    while (sentence.ends_with('.'))
      sentence.pop_back();
    if (!pieces.empty()) sentence += "; off: " + listed(pieces);
    return Said{std::move(sentence), std::move(warnings)};
  };
}

}  // namespace winchbook::app
