#include "daybook/entries/strip.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <utility>

#include "daybook/hazards.h"
#include "daybook/limits.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"
#include "knowledge/knowledge.h"
#include "record/entered.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using Pieces = std::vector<const record::Piece*>;

/// A spring that comes free when some parts come off.
struct LooseSpring {
  std::string name;
  std::string freed_by;  ///< what held it down; empty: it comes off itself
  int pieces = 1;        ///< in how many it comes out
};

/// What comes off: pieces, and of a step that is not done yet the places of the list.
struct ComesOff {
  Pieces pieces;
  std::vector<record::PlaceId> places = {};
};

forms::Form form(StripRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  Form fields = entry_form(request);
  append(
      fields,
      {
          field("WHAT", "what is done: \"Lift the bridge straight up.\"", request.what)
              .asks("What is done in this step?",
                    [&request] { return request.step.empty() && !request.ask; }),
          field("--step", "a step that is written already, by its number or id, and is done now",
                request.step),
          field("--off", "a part that comes off, in order; \"tail screws: 4\" for four of them",
                request.off),
          field("--found", "a part that lay loose and is found in this step", request.found),
          flag("--ask", "only tell what flies when the parts of --off come off; nothing is written",
               request.ask),
          field("--orientation", "which way up, which face out", request.orientation),
          field("--tool", "the tool", request.tool),
          flag("--spring", "a spring comes free in this step", request.spring),
          field("--caution", "a caution: \"Springs: cover it\"", request.caution),
          field("--photo", "a photograph of the step", request.photos),
          done_already_field(request.done_already),
          confirm("spring", "Enter to go on, Ctrl-D to leave it for now:", request.springs_seen),
      });
  return fields;
}

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

/// The step that is written already, or null.
record::StripStep* find_step(record::Visit& visit, const std::string& said) {
  for (record::StripStep& step : visit.strip_down) {
    if (step.id.text == said || std::to_string(step.number) == said) return &step;
  }
  return nullptr;
}

/// The step that is written already and is done now; its parts. What it only named by the place is
/// a piece from now on.
base::Result<std::vector<record::CountedPiece>> parts_of_step(const StripRequest& request,
                                                              record::Visit& visit, Draft& draft) {
  record::StripStep* step = find_step(visit, request.step);
  if (step == nullptr) {
    return base::of_command(base::error(fmt::format("there is no step \"{}\"", request.step),
                                        "name one by its number, or say what is done",
                                        "command-name"));
  }
  step->on = date_of(request.on);
  for (const record::PlaceId& place : step->places)
    step->pieces.push_back(piece_of(draft, place));
  step->places.clear();
  std::vector<record::CountedPiece> parts;
  for (const record::PieceId& piece : step->pieces) {
    const record::Piece* found = record::find(draft.record(), piece);
    if (found != nullptr) parts.push_back({found, found->count});
  }
  return parts;
}

base::Result<record::StripStep> step_of(const StripRequest& request,
                                        const std::vector<record::CountedPiece>& parts,
                                        const record::Visit& visit, const Draft& draft) {
  auto photos = photos_of(draft.record(), request.photos);
  if (!photos) return photos.faults();
  record::StripStep step;
  step.number = static_cast<int>(visit.strip_down.size()) + 1;
  step.id = {draft.free_id("st-" + std::to_string(step.number))};
  step.on = date_of(request.on);
  step.what = draft.words(request.what);
  for (const record::CountedPiece& one : parts)
    step.pieces.push_back(one.piece->id);
  step.orientation = draft.words(request.orientation);
  step.tool = request.tool;
  step.spring_loose = request.spring;
  if (request.caution) step.caution = caution_of(draft, *request.caution, "Caution");
  step.photos = std::move(photos).value();
  return step;
}

std::string warning_of(const LooseSpring& spring) {
  std::string text = spring.freed_by.empty()
                         ? fmt::format("{} is under load and comes free in this step", spring.name)
                         : fmt::format("{} is under load and flies when {} comes away", spring.name,
                                       spring.freed_by);
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

bool holds(const Pieces& pieces, const record::Piece* piece) {
  return std::find(pieces.begin(), pieces.end(), piece) != pieces.end();
}

/// What of this comes out of a place, by name; empty: nothing.
std::string off_from(const record::Record& record, const record::Visit& visit, const ComesOff& off,
                     const record::Place& place) {
  for (const record::Piece* piece : still_in(record, visit, place)) {
    if (holds(off.pieces, piece)) return piece->name;
  }
  const bool named = std::find(off.places.begin(), off.places.end(), place.id) != off.places.end();
  return named ? place.name : std::string();
}

/// What of this comes out of a place of this kind, by name.
std::string off_from_kind(const record::Record& record, const record::Visit& visit,
                          const ComesOff& off, std::string_view kind) {
  for (const record::Place& place : record.places) {
    if (kind.empty() || place.kind != kind) continue;
    if (std::string name = off_from(record, visit, off, place); !name.empty()) return name;
  }
  return {};
}

/// The springs that come free when these parts come off: those among them whose place holds a
/// spring under load, and those that lose what holds them down and are not off yet. A place that is
/// only listed may hold its spring.
std::vector<LooseSpring> springs_freed(const Draft& draft, const record::Visit& visit,
                                       const ComesOff& off) {
  const record::Record& record = draft.record();
  const std::string_view kind = record::word_of(record.reel.kind);
  const auto known = draft.library().knowledge(kind);
  const knowledge::PartsList* list = known ? knowledge::parts_list(**known, kind) : nullptr;
  std::vector<LooseSpring> springs;
  for (const record::Place& place : record.places) {
    const knowledge::PartsEntry* entry =
        list == nullptr ? nullptr : knowledge::find(*list, place.kind);
    if (!place.captive_spring && (entry == nullptr || !entry->captive_spring)) continue;
    const int loose = entry == nullptr ? 1 : entry->loose_pieces;
    const std::string itself = off_from(record, visit, off, place);
    const std::string holder =
        entry == nullptr ? "" : off_from_kind(record, visit, off, entry->freed_by);
    if (!itself.empty()) springs.push_back({itself, "", loose});
    if (!itself.empty() || holder.empty()) continue;
    const Pieces there = still_in(record, visit, place);
    if (!record::is_entered(record, place)) springs.push_back({place.name, holder, loose});
    for (const record::Piece* piece : there)
      springs.push_back({piece->name, holder, loose});
  }
  return springs;
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
  for (const LooseSpring& spring : springs_freed(draft, visit, {pieces, next.places}))
    text += "\n  take care: " + warning_of(spring);
  return text;
}

/// The springs among the warnings, while somebody can stop and has not seen them.
base::Diagnostics springs_to_see(const StripRequest& request, const Draft& draft,
                                 const base::Diagnostics& warnings) {
  base::Diagnostics springs;
  if (!draft.somebody_there() || request.springs_seen || request.dry_run) return springs;
  std::copy_if(warnings.begin(), warnings.end(), std::back_inserter(springs),
               [](const base::Diagnostic& one) { return one.rule == "spring"; });
  return springs;
}

/// "Lift the bridge; off: Bridge", "step 2 is done; off: Handle nut" and what comes next.
std::string sentence_of(const StripRequest& request, const Draft& draft, const record::Visit& visit,
                        const Pieces& pieces) {
  std::string sentence = request.step.empty() ? request.what : "step " + request.step + " is done";
  while (sentence.ends_with('.'))
    sentence.pop_back();
  if (!pieces.empty()) sentence += "; off: " + record::listed(pieces);
  if (!request.step.empty()) sentence += next_of(draft, visit, request);
  return sentence;
}

/// Enters the step, or only tells what would fly and what must stay.
base::Result<forms::Outcome> enter_or_ask(const StripRequest& request, forms::Setting& setting) {
  if (!request.ask) {
    return write_entry(
        request, [&](Draft& draft) { return strip(request, draft); }, setting);
  }
  StripRequest asked = request;
  asked.what = "asked";
  const auto tried = edit(setting.library, {request.path, setting.command, true},
                          [&](Draft& draft) { return strip(asked, draft); });
  if (!tried) return tried.faults();
  const bool none = tried->warnings.empty();
  return forms::Outcome{
      none ? "nothing flies that the record knows of\n" : "", tried->warnings, {}};
}

}  // namespace

base::Result<Said> strip(const StripRequest& request, Draft& draft) {
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  record::Visit& visit = **open;
  // Both are named before either is found: a piece that is added moves the others.
  for (const auto* said : {&request.off, &request.found}) {
    if (const auto named = counted_named(draft, *said); !named) return named.faults();
  }
  const auto off = request.step.empty() ? record::find_counted(draft.record(), request.off)
                                        : parts_of_step(request, visit, draft);
  if (!off) return off.faults();
  if (auto faults = faults_of(draft, visit, *off); !faults.empty()) return faults;
  const auto found = record::find_counted(draft.record(), request.found);
  if (!found) return found.faults();
  Pieces pieces;
  std::vector<record::PieceId> ids;
  for (const record::CountedPiece& one : *off) {
    pieces.push_back(one.piece);
    ids.push_back(one.piece->id);
  }
  base::Diagnostics warnings = hazards_in(draft, visit, {ids, request.what, request.done_already});
  if (base::has_error(warnings)) return warnings;
  const auto unseen = hazards_of(draft, visit, ids);
  warnings.insert(warnings.end(), unseen.begin(), unseen.end());
  warn_of(springs_freed(draft, visit, {pieces}), warnings);
  warn_of_limits(draft, visit, pieces, warnings);
  std::string sentence = sentence_of(request, draft, visit, pieces);
  if (request.step.empty()) {
    std::vector<record::CountedPiece> parts = *off;
    parts.insert(parts.end(), found->begin(), found->end());
    auto step = step_of(request, parts, visit, draft);
    if (!step) return step.faults();
    visit.strip_down.push_back(std::move(step).value());
  }
  if (auto waiting = springs_to_see(request, draft, warnings); !waiting.empty()) return waiting;
  for (const record::CountedPiece& one : *off)
    tray_line_of(visit, one.piece->id, request.on).taken_off += one.count;
  for (const record::CountedPiece& one : *found)
    tray_line_of(visit, one.piece->id, request.on).found_loose += one.count;
  return Said{std::move(sentence), std::move(warnings)};
}

forms::Job strip_job() {
  return forms::job_of<StripRequest>(form, enter_or_ask);
}

}  // namespace winchbook::daybook
