#include "assess/fitting/recorded.h"

#include "record/moments.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <utility>

namespace winchbook::assess::fitting {
namespace {

using knowledge::Friction;
using knowledge::WasherSort;

constexpr double kMetre = 1000;  // mm
constexpr int kCurveStep = 5;    // of a hundred

// Diameters in which line is commonly sold, mm; those near the known one are told.
constexpr std::array kCommonDiameters{0.15, 0.18, 0.20, 0.25, 0.30, 0.35,
                                      0.40, 0.45, 0.50, 0.60, 0.70, 0.80};
constexpr double kThinnest = 0.6;
constexpr double kThickest = 1.35;
constexpr double kSame = 0.02;
constexpr std::size_t kMostOthers = 3;

template <class Unit> std::optional<double> number(const std::optional<Unit>& value) {
  if (!value) return std::nullopt;
  return value->value.approximate();
}

Turns turns_of(record::Keyed keyed) {
  switch (keyed) {
    case record::Keyed::to_gear:
      return Turns::with_gear;
    case record::Keyed::to_sleeve:
      return Turns::with_sleeve;
    case record::Keyed::free:
      break;
  }
  return Turns::freely;
}

std::vector<Member> stack_of(const record::Record& record, const record::DragStack& drag) {
  std::vector<Member> stack;
  for (const record::DragWasher& washer : drag.washers) {
    const record::Piece* piece = find(record, washer.piece);
    stack.push_back({washer.piece, piece == nullptr ? washer.piece.text : piece->name,
                     piece == nullptr ? "" : piece->material, turns_of(washer.keyed),
                     number(washer.outside), number(washer.inside), number(washer.thickness)});
  }
  return stack;
}

/// Friction dry or greased; both, where nobody wrote which. Empty when the table has none in that
/// state.
std::optional<Span> friction_of(const Friction* row, std::optional<bool> greased) {
  if (row == nullptr) return std::nullopt;
  std::optional<Span> both;
  const auto add = [&](const std::optional<double>& low, const std::optional<double>& high) {
    if (!low || !high) return;
    both = both ? Span{std::min(both->low, *low), std::max(both->high, *high)} : Span{*low, *high};
  };
  if (!greased || !*greased) add(row->dry_low, row->dry_high);
  if (!greased || *greased) add(row->greased_low, row->greased_high);
  return both;
}

double arm_of(PressureLaw law, const Ring& ring) {
  return slip_torque(law, ring, 1, 1, 1);
}

double middle(const Span& span) {
  return (span.low + span.high) / 2;
}

/// Reads the stack from the gear's floor outwards and finds every face that rubs and carries.
class FaceFinder {
 public:
  FaceFinder(const knowledge::DragKnowledge& knowledge, RecordedDrag& drag)
      : knowledge_(knowledge), drag_(drag) {}

  void find() {
    std::vector<const Member*> between{nullptr};  // the floor, and what lies on it
    Turns last = Turns::with_gear;
    for (const Member& member : drag_.stack) {
      between.push_back(&member);
      if (member.turns == Turns::freely) continue;
      if (member.turns != last) add_face(between);
      last = member.turns;
      between.assign(1, &member);
    }
    between.push_back(nullptr);  // the plate at the end turns with the sleeve
    if (last != Turns::with_sleeve) add_face(between);
    for (const Lacking lacking : {Lacking::sizes, Lacking::friction}) {
      if (std::find(found_.begin(), found_.end(), lacking) != found_.end())
        drag_.lacking.push_back(lacking);
    }
  }

 private:
  void lacks(Lacking what, const Member* member) {
    found_.push_back(what);
    auto& names = drag_.unmeasured;
    if (member != nullptr && std::find(names.begin(), names.end(), member->name) == names.end())
      names.push_back(member->name);
  }

  /// The weakest pair of neighbours between two that turn apart slips.
  void add_face(const std::vector<const Member*>& between) {
    ++drag_.faces;
    std::optional<RubbingFace> weakest;
    for (std::size_t i = 0; i + 1 < between.size(); ++i) {
      const auto face = face_between(between[i], between[i + 1]);
      if (!face) return;
      const auto strength = [](const RubbingFace& one) {
        return middle(one.friction) * arm_of(PressureLaw::uniform_pressure, one.ring);
      };
      if (!weakest || strength(*face) < strength(*weakest)) weakest = face;
    }
    if (weakest) drag_.rubbing.push_back(*weakest);
  }

  std::optional<RubbingFace> face_between(const Member* one, const Member* other) {
    RubbingFace face;
    double outer = std::numeric_limits<double>::infinity();
    double inner = 0;
    for (const Member* member : {one, other}) {
      if (member == nullptr) continue;
      outer = std::min(outer, member->outside.value_or(outer));
      inner = std::max(inner, member->inside.value_or(inner));
    }
    const Member* lining = lining_of(one, other);
    if (lining == nullptr) return std::nullopt;
    const bool measured =
        lining->outside && lining->inside && std::isfinite(outer) && inner < outer;
    if (!measured) lacks(Lacking::sizes, lining);
    const Friction* row = find_friction(knowledge_, lining->material);
    const auto friction = friction_of(row, drag_.greased);
    if (!friction) lacks(Lacking::friction, lining);
    if (row != nullptr && row->sort == WasherSort::hazard) drag_.hazard = true;
    if (!measured || !friction) return std::nullopt;
    face.ring = {outer, inner};
    face.material = row->material;
    face.friction = *friction;
    const std::string source = row->material + ": " + row->source;
    if (drag_.friction_source.find(source) == std::string::npos) {
      if (!drag_.friction_source.empty()) drag_.friction_source += "; ";
      drag_.friction_source += source;
    }
    return face;
  }

  /// Which of two neighbours is the friction washer: the one that is no metal.
  [[nodiscard]] const Member* lining_of(const Member* one, const Member* other) const {
    const auto metal = [&](const Member* member) {
      const Friction* row = find_friction(knowledge_, member->material);
      return row != nullptr && row->sort == WasherSort::metal;
    };
    if (one == nullptr || other == nullptr) return one == nullptr ? other : one;
    return metal(one) ? other : one;
  }

  const knowledge::DragKnowledge& knowledge_;
  RecordedDrag& drag_;
  std::vector<Lacking> found_;
};

void reckon(RecordedDrag& drag, const std::optional<double>& line) {
  const double torque = *drag.setting * drag.ratio * drag.spool->full / 2 / kMetre;
  double of_one_newton = 0;
  for (const RubbingFace& face : drag.rubbing)
    of_one_newton += middle(face.friction) * arm_of(PressureLaw::uniform_pressure, face.ring);
  drag.force = torque / of_one_newton;
  const auto sum = [&](PressureLaw law) {
    Span span;
    for (const RubbingFace& face : drag.rubbing) {
      span.low += slip_torque(law, face.ring, face.friction.low, drag.force, 1);
      span.high += slip_torque(law, face.ring, face.friction.high, drag.force, 1);
    }
    return span;
  };
  DragFinding& finding = drag.finding;
  finding.force_wear = finding.force_pressure = {drag.force, drag.force};
  finding.torque_wear = sum(PressureLaw::uniform_wear);
  finding.torque_pressure = sum(PressureLaw::uniform_pressure);
  for (int fill = 100; fill >= 0; fill -= kCurveStep) {
    drag.curve.push_back(
        pull_at(*drag.spool, drag.ratio, finding.torque_wear, finding.torque_pressure, fill));
    if (fill % 25 == 0) finding.pulls.push_back(drag.curve.back());
  }
  if (line) finding.setting = Span{*line * kSettingShare.low, *line * kSettingShare.high};
}

}  // namespace

RecordedDrag recorded_drag(const record::Record& record, const record::Visit& visit,
                           const knowledge::DragKnowledge& knowledge) {
  RecordedDrag drag;
  if (visit.care && visit.care->drag_low && visit.care->drag_high) {
    drag.advised = Span{*number(visit.care->drag_low), *number(visit.care->drag_high)};
  }
  if (!visit.drag || visit.drag->washers.empty()) {
    drag.lacking.push_back(Lacking::stack);
    return drag;
  }
  const record::DragStack& written = *visit.drag;
  drag.greased = written.greased;
  drag.stack = stack_of(record, written);
  FaceFinder(knowledge, drag).find();
  if (drag.faces == 0) drag.lacking.push_back(Lacking::stack);
  drag.setting = number(written.setting);
  if (!drag.setting || *drag.setting <= 0) drag.lacking.push_back(Lacking::setting);
  if (record.reel.brake == record::Brake::star) {
    if (record.reel.gear_ratio) {
      drag.ratio = record.reel.gear_ratio->approximate();
    } else {
      drag.lacking.push_back(Lacking::gear_ratio);
    }
  }
  const auto full = number(written.spool_full);
  const auto empty = number(written.spool_empty);
  if (full && empty && *empty > 0 && *empty < *full) {
    drag.spool = SpoolFill{*full, *empty};
  } else {
    drag.lacking.push_back(Lacking::spool);
  }
  for (const RubbingFace& face : drag.rubbing) {
    const bool first = drag.friction.high == 0;
    drag.friction.low = first ? face.friction.low : std::min(drag.friction.low, face.friction.low);
    drag.friction.high = std::max(drag.friction.high, face.friction.high);
  }
  if (drag.lacking.empty()) reckon(drag, number(written.line_strength));
  return drag;
}

Use use_of(const record::Visit& visit) {
  const auto& faults = visit.findings.faults;
  const bool unsafe = std::any_of(faults.begin(), faults.end(), [](const record::Fault& fault) {
    return record::severity_at(fault, record::Moment::left) == record::Severity::unsafe;
  });
  if (unsafe) return Use::not_safe;
  const auto fishes = [](record::Course course) {
    const bool fish =
        course == record::Course::make_it_fish || course == record::Course::rebuild_to_fish;
    return fish ? Use::fish : Use::shelf;
  };
  if (visit.advice && visit.advice->chosen) return fishes(*visit.advice->chosen);
  if (visit.advice && visit.advice->advised) return fishes(*visit.advice->advised);
  const auto& care = visit.care;
  const bool counselled = care && (care->drag_high || !care->line.empty() || !care->fish.empty());
  if (counselled) return Use::fish;
  using Wish = record::Use;
  const Wish wish = visit.wishes.use;
  const bool shelf = wish == Wish::show || wish == Wish::keep || wish == Wish::sell;
  return shelf ? Use::shelf : Use::undecided;
}

Recorded recorded(const record::Record& record, const record::Visit& visit,
                  const knowledge::DragKnowledge& knowledge) {
  Recorded all{recorded_drag(record, visit, knowledge), {}, use_of(visit)};
  RecordedLine& line = all.line;
  if (const auto& capacity = record.reel.capacity) {
    line.holds =
        LineLoad{capacity->metres.approximate(), *number(std::optional(capacity->line_diameter))};
    for (const double diameter : kCommonDiameters) {
      const double share = diameter / line.holds->diameter;
      if (share < kThinnest || share > kThickest || std::abs(share - 1) < kSame) continue;
      if (line.others.size() == kMostOthers) line.others.erase(line.others.begin());
      line.others.push_back({fitting::capacity(*line.holds, diameter), diameter});
    }
  }
  if (all.drag.spool && record.reel.gear_ratio) {
    line.per_turn = retrieve(all.drag.spool->full, record.reel.gear_ratio->approximate());
  }
  return all;
}

}  // namespace winchbook::assess::fitting
