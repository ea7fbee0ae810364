#include "daybook/entries/strip.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

#include "daybook/limits.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
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
                            const std::vector<record::CountedPiece>& off) {
  base::Diagnostics faults;
  for (const record::CountedPiece& one : off) {
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
base::Result<std::vector<record::CountedPiece>> parts_of_step(const Draft& draft,
                                                              const record::Visit& visit,
                                                              const std::string& id) {
  for (const record::StripStep& step : visit.strip_down) {
    if (step.id.text != id && std::to_string(step.number) != id) continue;
    std::vector<record::CountedPiece> parts;
    for (const record::PieceId& piece : step.pieces) {
      const record::Piece* found = record::find(draft.record(), piece);
      if (found != nullptr) parts.push_back({found, found->count});
    }
    return parts;
  }
  return base::of_command(base::error(fmt::format("there is no step \"{}\"", id),
                                      "name one by its number, or say what is done",
                                      "command-name"));
}

/// What stands beside the step: the caution given, or the usual one of springs.
std::string caution_of(const StripRequest& request, const std::vector<LooseSpring>& springs) {
  if (!request.caution.empty() || (springs.empty() && !request.spring)) return request.caution;
  const bool in_pieces = std::any_of(springs.begin(), springs.end(),
                                     [](const LooseSpring& one) { return one.pieces > 1; });
  return in_pieces ? request.lore.pieces_caution : request.lore.caution;
}

base::Diagnostics write_step(Draft& draft, pugi::xml_node visit, const StripRequest& request,
                             const std::vector<record::CountedPiece>& parts,
                             const std::vector<LooseSpring>& springs) {
  const pugi::xml_node strip_down = draft.need(visit, "strip-down");
  int number = 1;
  for ([[maybe_unused]] const pugi::xml_node one : strip_down.children("step"))
    ++number;
  const pugi::xml_node step =
      draft.add_with_id(strip_down, "step", draft.free_id("st-" + std::to_string(number)));
  draft.add_words(step, "what", request.what);
  for (const record::CountedPiece& one : parts)
    draft.add_ref(step, "piece", one.piece->id.text);
  draft.add_words(step, "orientation", request.orientation);
  draft.add_if(step, "tool", request.tool);
  if (request.spring || !springs.empty()) draft.add(step, "spring-loose", "yes");
  add_caution(draft, step, caution_of(request, springs), "Caution");
  return add_photos(draft, step, request.photos);
}

std::string warning_of(const LooseSpring& spring) {
  std::string text =
      spring.freed_by == nullptr
          ? fmt::format("{} is under load and comes free in this step", spring.piece->name)
          : fmt::format("{} is under load and flies when {} comes away", spring.piece->name,
                        spring.freed_by->name);
  if (spring.pieces > 1) text += fmt::format("; it and its loose tip are {} pieces", spring.pieces);
  return text;
}

void warn_of(const std::vector<LooseSpring>& springs, base::Diagnostics& warnings) {
  for (const LooseSpring& spring : springs) {
    warnings.push_back(
        base::warning_at({}, warning_of(spring),
                         "before you go on: eye protection, a cloth over it, note where it seats; "
                         "local rules come first",
                         "spring"));
  }
}

/// What comes off and must stay goes back into its place.
void warn_of_limits(const Draft& draft, const record::Visit& visit, const Pieces& pieces,
                    base::Diagnostics& warnings) {
  for (const record::Piece* piece : pieces) {
    const std::string limit = limit_on(draft.record(), visit, *piece);
    if (limit.empty()) continue;
    warnings.push_back(base::warning_at({}, fmt::format("{} must stay, {}", piece->name, limit),
                                        "it goes back into its place", "limit"));
  }
}

/// The step behind this one in the plan, and the springs that it frees.
std::string next_of(const Draft& draft, const record::Visit& visit, const StripRequest& request) {
  const auto& steps = visit.strip_down;
  const auto done = std::find_if(steps.begin(), steps.end(), [&](const record::StripStep& one) {
    return one.id.text == request.step || std::to_string(one.number) == request.step;
  });
  if (done == steps.end() || std::next(done) == steps.end()) return {};
  const record::StripStep& next = *std::next(done);
  std::string text = fmt::format("\nnext, step {}: {}", next.number,
                                 record::plain_text(draft.record(), next.what));
  Pieces pieces;
  for (const record::PieceId& one : next.pieces) {
    if (const record::Piece* piece = record::find(draft.record(), one)) pieces.push_back(piece);
  }
  for (const LooseSpring& spring : springs_freed(draft.record(), visit, pieces, request.lore))
    text += "\n  take care: " + warning_of(spring);
  return text;
}

/// The pieces that sit in a place as the visit found it and have not come off yet.
Pieces still_in(const record::Record& record, const record::Visit& visit,
                const record::Place& place) {
  Pieces pieces;
  for (const record::Fitting* fitting :
       record::fittings_in(record, place.id, visit, record::Moment::found)) {
    const record::Piece* piece = record::find(record, fitting->piece);
    if (piece != nullptr && in_tray(visit, piece->id) < piece->count &&
        piece->now.kind == record::Whereabouts::Kind::fitted) {
      pieces.push_back(piece);
    }
  }
  return pieces;
}

/// Which of these pieces sits in a place of this kind.
const record::Piece* piece_in(const record::Record& record, const record::Visit& visit,
                              const Pieces& pieces, std::string_view kind) {
  for (const record::Place& place : record.places) {
    if (place.kind != kind) continue;
    for (const record::Piece* piece : still_in(record, visit, place)) {
      if (std::find(pieces.begin(), pieces.end(), piece) != pieces.end()) return piece;
    }
  }
  return nullptr;
}

}  // namespace

std::vector<LooseSpring> springs_freed(const record::Record& record, const record::Visit& visit,
                                       const Pieces& pieces, const SpringLore& lore) {
  std::vector<LooseSpring> springs;
  for (const record::Place& place : record.places) {
    const knowledge::PartsEntry* entry =
        lore.parts == nullptr ? nullptr : knowledge::find(*lore.parts, place.kind);
    const bool captive = place.captive_spring || (entry != nullptr && entry->captive_spring);
    if (!captive) continue;
    const int loose = entry == nullptr ? 1 : entry->loose_pieces;
    const record::Piece* holder = entry == nullptr || entry->freed_by.empty()
                                      ? nullptr
                                      : piece_in(record, visit, pieces, entry->freed_by);
    for (const record::Piece* piece : still_in(record, visit, place)) {
      const bool itself = std::find(pieces.begin(), pieces.end(), piece) != pieces.end();
      if (itself) springs.push_back({piece, nullptr, loose});
      if (!itself && holder != nullptr) springs.push_back({piece, holder, loose});
    }
  }
  return springs;
}

Change strip(StripRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, request.on);
    if (!open) return open.faults();
    const auto off = request.step.empty() ? record::find_counted(draft.record(), request.off)
                                          : parts_of_step(draft, *open->visit, request.step);
    if (!off) return off.faults();
    if (auto faults = faults_of(draft, *open->visit, *off); !faults.empty()) return faults;
    const auto found = record::find_counted(draft.record(), request.found);
    if (!found) return found.faults();
    Pieces pieces;
    for (const record::CountedPiece& one : *off)
      pieces.push_back(one.piece);
    const auto springs = springs_freed(draft.record(), *open->visit, pieces, request.lore);
    base::Diagnostics warnings;
    warn_of(springs, warnings);
    warn_of_limits(draft, *open->visit, pieces, warnings);
    if (request.step.empty()) {
      std::vector<record::CountedPiece> parts = *off;
      parts.insert(parts.end(), found->begin(), found->end());
      auto faults = write_step(draft, open->element, request, parts, springs);
      if (!faults.empty()) return faults;
    }
    for (const record::CountedPiece& one : *off)
      add_to_tray(draft, tray_line_of(draft, open->element, one.piece->id), "taken-off", one.count);
    for (const record::CountedPiece& one : *found)
      add_to_tray(draft, tray_line_of(draft, open->element, one.piece->id), "found-loose",
                  one.count);
    std::string sentence =
        request.step.empty() ? request.what : "step " + request.step + " is done";
    while (sentence.ends_with('.'))
      sentence.pop_back();
    if (!pieces.empty()) sentence += "; off: " + record::listed(pieces);
    if (!request.step.empty()) sentence += next_of(draft, *open->visit, request);
    return Said{std::move(sentence), std::move(warnings)};
  };
}

}  // namespace winchbook::daybook
