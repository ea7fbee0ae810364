#include "assess/strip/strip.h"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include "record/entered.h"

namespace winchbook::assess::strip {
namespace {

using knowledge::PartsEntry;
using knowledge::PartsList;
using record::Fitting;
using record::Piece;
using record::PieceId;
using record::Place;
using record::Record;
using record::Visit;

constexpr std::string_view kLubricantPlace = "lubricant";

/// Where pieces sit, by the record, and what the parts list says of such a place.
class Bench {
 public:
  Bench(const Record& record, const Visit& visit, const PartsList* list)
      : record_(record), visit_(visit), list_(list) {}

  [[nodiscard]] const Record& record() const { return record_; }
  [[nodiscard]] const Visit& visit() const { return visit_; }

  [[nodiscard]] const PartsEntry* entry(std::string_view word) const {
    return list_ == nullptr ? nullptr : knowledge::find(*list_, word);
  }

  /// The place where a piece sat when it came, or sits as it leaves; null when none is known.
  [[nodiscard]] const Place* place_of(const PieceId& piece) const {
    const Place* somewhere = nullptr;
    for (const Fitting& fitting : record_.fittings) {
      if (fitting.piece != piece) continue;
      somewhere = find(record_, fitting.place);
      if (!fitting.until) break;
    }
    return somewhere;
  }

  [[nodiscard]] Part part(const PieceId& id) const {
    const Piece* piece = find(record_, id);
    Part part{id, piece == nullptr ? id.text : piece->name, piece == nullptr ? 1 : piece->count};
    const Place* place = place_of(id);
    const PartsEntry* known = place == nullptr ? nullptr : entry(place->kind);
    if (known != nullptr) part.lubricant = known->lubricant;
    return part;
  }

  [[nodiscard]] bool captive(const Place& place) const {
    const PartsEntry* known = entry(place.kind);
    return place.captive_spring || (known != nullptr && known->captive_spring);
  }

 private:
  const Record& record_;
  const Visit& visit_;
  const PartsList* list_;
};

Spring spring_of(const Bench& bench, const Place& place, std::string name) {
  Spring spring{std::move(name)};
  if (const PartsEntry* known = bench.entry(place.kind)) spring.loose_pieces = known->loose_pieces;
  return spring;
}

/// The pieces that sat in a place when the reel came.
std::vector<PieceId> found_in(const Bench& bench, const Place& place) {
  std::vector<PieceId> pieces;
  for (const Fitting* fitting :
       record::fittings_in(bench.record(), place.id, bench.visit(), record::Moment::found)) {
    pieces.push_back(fitting->piece);
  }
  return pieces;
}

std::string name_of(const Bench& bench, const PieceId& id) {
  const Piece* piece = find(bench.record(), id);
  return piece == nullptr ? id.text : piece->name;
}

bool names(const record::StripStep& step, const Place& place) {
  return std::find(step.places.begin(), step.places.end(), place.id) != step.places.end();
}

/// What the step takes out of places of this kind, by its name; empty: nothing.
std::string taken_from(const Bench& bench, const record::StripStep& step, std::string_view kind) {
  for (const PieceId& piece : step.pieces) {
    const Place* place = bench.place_of(piece);
    if (place != nullptr && place->kind == kind) return name_of(bench, piece);
  }
  for (const record::PlaceId& id : step.places) {
    const Place* place = find(bench.record(), id);
    if (place != nullptr && place->kind == kind) return place->name;
  }
  return {};
}

/// Springs that the step takes off, then those that lose their hold in it.
std::vector<Spring> springs_in(const Bench& bench, const record::StripStep& step,
                               const std::set<PieceId>& off_before) {
  std::vector<Spring> springs;
  const auto comes_off = [&](const PieceId& piece) {
    return std::find(step.pieces.begin(), step.pieces.end(), piece) != step.pieces.end();
  };
  for (const PieceId& piece : step.pieces) {
    const Place* place = bench.place_of(piece);
    if (place == nullptr || !bench.captive(*place)) continue;
    springs.push_back(spring_of(bench, *place, name_of(bench, piece)));
  }
  for (const record::PlaceId& id : step.places) {
    const Place* place = find(bench.record(), id);
    if (place != nullptr && bench.captive(*place))
      springs.push_back(spring_of(bench, *place, place->name));
  }
  for (const Place& place : bench.record().places) {
    const PartsEntry* known = bench.entry(place.kind);
    if (known == nullptr || known->freed_by.empty() || !bench.captive(place)) continue;
    const std::string holder = taken_from(bench, step, known->freed_by);
    if (holder.empty() || names(step, place)) continue;
    const std::vector<PieceId> there = found_in(bench, place);
    const bool free_already = std::any_of(there.begin(), there.end(), [&](const PieceId& piece) {
      return comes_off(piece) || off_before.contains(piece);
    });
    if (free_already) continue;
    Spring spring =
        spring_of(bench, place, there.empty() ? place.name : name_of(bench, there.front()));
    spring.frees = Spring::Frees::loses_its_hold;
    spring.held_by = holder;
    springs.push_back(std::move(spring));
  }
  return springs;
}

/// What goes back where a part came off: itself, or what was fitted instead of it in this visit, or
/// nothing when it stays out.
std::optional<Part> back_for(const Bench& bench, const PieceId& off) {
  for (const Fitting& fitting : bench.record().fittings) {
    if (fitting.visit == bench.visit().id && fitting.instead_of == off) {
      return bench.part(fitting.piece);
    }
  }
  const Piece* piece = find(bench.record(), off);
  if (piece == nullptr) return std::nullopt;
  using Kind = record::Whereabouts::Kind;
  const Kind now = piece->now.kind;
  const bool stays_out = now == Kind::bagged || now == Kind::lost || now == Kind::scrapped ||
                         now == Kind::to_owner || now == Kind::kept_by_bench;
  if (stays_out) return std::nullopt;
  return bench.part(off);
}

void add_steps(const Bench& bench, Finding& finding) {
  std::set<PieceId> off;
  const auto& steps = bench.visit().strip_down;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    Step step;
    step.at = i;
    step.springs = springs_in(bench, steps[i], off);
    for (const PieceId& piece : steps[i].pieces) {
      step.off.push_back(bench.part(piece));
      if (auto back = back_for(bench, piece)) step.back.push_back(std::move(*back));
      off.insert(piece);
    }
    for (const record::PlaceId& id : steps[i].places) {
      const Place* place = find(bench.record(), id);
      if (place == nullptr) continue;
      step.off.push_back({{}, place->name, place->quantity});
      step.back.push_back(step.off.back());
    }
    finding.steps.push_back(std::move(step));
  }
}

/// What was fitted where no step took anything off.
void add_put_in(const Bench& bench, Finding& finding) {
  std::set<PieceId> goes_back;
  for (const Step& step : finding.steps) {
    for (const Part& part : step.back)
      goes_back.insert(part.piece);
  }
  for (const Fitting& fitting : bench.record().fittings) {
    if (fitting.visit != bench.visit().id || !goes_back.insert(fitting.piece).second) continue;
    finding.put_in.push_back(bench.part(fitting.piece));
  }
}

void add_not_apart(const Bench& bench, Finding& finding) {
  std::set<PieceId> off;
  for (const record::StripStep& step : bench.visit().strip_down)
    off.insert(step.pieces.begin(), step.pieces.end());
  for (const Place& place : bench.record().places) {
    if (place.kind == kLubricantPlace) continue;
    for (const PieceId& piece : found_in(bench, place)) {
      if (!off.insert(piece).second) continue;
      finding.not_apart.push_back(bench.part(piece));
      if (!bench.captive(place)) continue;
      finding.left_loaded.push_back(spring_of(bench, place, name_of(bench, piece)));
    }
  }
}

/// The places of the record, then those of the parts list that it does not have, grouped by
/// assembly in the order in which the assemblies are first named.
std::vector<PlaceToStrip> places_of(const Bench& bench, const PartsList* list) {
  std::vector<PlaceToStrip> places;
  std::set<std::string> kinds;
  const auto add = [&](PlaceToStrip row, const PartsEntry* known) {
    if (known != nullptr) {
      row.captive_spring = row.captive_spring || known->captive_spring;
      row.loose_pieces = known->loose_pieces;
      const PartsEntry* holder = known->freed_by.empty() ? nullptr : bench.entry(known->freed_by);
      if (holder != nullptr) row.held_by = holder->name;
      if (row.assembly.empty()) row.assembly = known->assembly;
    }
    places.push_back(std::move(row));
  };
  for (const Place& place : bench.record().places) {
    kinds.insert(place.kind);
    if (place.kind == kLubricantPlace) continue;
    const PartsEntry* known = bench.entry(place.kind);
    const bool only_listed = known != nullptr && !record::is_entered(bench.record(), place);
    add({place.assembly, place.name, only_listed ? known->usual_quantity : place.quantity,
         place.captive_spring},
        known);
  }
  if (list != nullptr) {
    for (const PartsEntry& entry : list->places) {
      if (entry.word == kLubricantPlace || kinds.contains(entry.word)) continue;
      add({entry.assembly, entry.name, entry.usual_quantity, entry.captive_spring}, &entry);
    }
  }
  std::vector<std::string> assemblies;
  for (const PlaceToStrip& place : places) {
    if (std::find(assemblies.begin(), assemblies.end(), place.assembly) == assemblies.end())
      assemblies.push_back(place.assembly);
  }
  const auto rank = [&](const PlaceToStrip& place) {
    return std::find(assemblies.begin(), assemblies.end(), place.assembly);
  };
  std::stable_sort(places.begin(), places.end(),
                   [&](const auto& a, const auto& b) { return rank(a) < rank(b); });
  return places;
}

/// The parts that want oil or grease as the reel leaves.
std::vector<Part> lubricated(const Bench& bench) {
  std::vector<Part> parts;
  for (const Place& place : bench.record().places) {
    for (const Fitting* fitting :
         record::fittings_in(bench.record(), place.id, bench.visit(), record::Moment::left)) {
      Part part = bench.part(fitting->piece);
      if (part.lubricant != knowledge::Lubricant::none) parts.push_back(std::move(part));
    }
  }
  return parts;
}

/// Whether the spool can be let off its gears.
bool lets_off_spool(const Bench& bench) {
  constexpr std::array<std::string_view, 2> kWords{"free-spool-lever", "free-spool-button"};
  const auto& places = bench.record().places;
  return std::any_of(kWords.begin(), kWords.end(), [&](std::string_view word) {
    const bool there = std::any_of(places.begin(), places.end(),
                                   [&](const Place& place) { return place.kind == word; });
    return there || bench.entry(word) != nullptr;
  });
}

}  // namespace

std::size_t springs_named(const Finding& finding) {
  std::set<std::string> names;
  for (const Step& step : finding.steps) {
    for (const Spring& spring : step.springs)
      names.insert(spring.name);
  }
  for (const PlaceToStrip& place : finding.places) {
    if (place.captive_spring) names.insert(place.name);
  }
  return names.size();
}

int pieces_off(const Finding& finding) {
  int pieces = 0;
  for (const Step& step : finding.steps) {
    for (const Part& part : step.off)
      pieces += part.count;
  }
  return pieces;
}

std::vector<Part> stays_out(const Step& step) {
  std::vector<Part> out;
  for (const Part& part : step.off) {
    const bool back = std::any_of(step.back.begin(), step.back.end(),
                                  [&](const Part& one) { return one.piece == part.piece; });
    if (!back) out.push_back(part);
  }
  return out;
}

Finding strip(const Record& record, const Visit& visit, const PartsList* list) {
  const Bench bench(record, visit, list);
  Finding finding;
  finding.free_spool = lets_off_spool(bench);
  finding.lubricated = lubricated(bench);
  if (visit.strip_down.empty()) {
    finding.places = places_of(bench, list);
    return finding;
  }
  add_steps(bench, finding);
  add_put_in(bench, finding);
  add_not_apart(bench, finding);
  return finding;
}

}  // namespace winchbook::assess::strip
