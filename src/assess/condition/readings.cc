#include "assess/condition/readings.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "record/entered.h"
#include "record/enum_words.h"
#include "record/looked_for.h"
#include "record/moments.h"

namespace winchbook::assess::condition {
namespace {

using base::Ratio;
using base::RatioRange;
using record::Moment;

constexpr WordRange kAnyWord{0, 3};
constexpr Position kAnywhere{Ratio(0, 1), Ratio(1, 1)};
constexpr std::int64_t kAll = 10000;  // hundredths of a percent

std::int64_t hundredths(const base::Percent& percent) {
  return knowledge::units_per_seat(percent.value, 1) / knowledge::units_per_seat({1, 2}, 1);
}

/// Whether the record tells that the bench filled the place when it found it empty.
bool filled_by_this_visit(const record::Record& record, const record::Visit& visit,
                          const record::PlaceId& place) {
  return std::any_of(
      record.fittings.begin(), record.fittings.end(), [&](const record::Fitting& fitting) {
        return fitting.place == place && fitting.visit == visit.id && !fitting.instead_of;
      });
}

Seat::Filled vacancy(const record::Record& record, const record::Visit& visit,
                     const record::Place& place, Moment moment, bool some_there) {
  for (const record::PlaceFinding& finding : visit.findings.places) {
    if (finding.place != place.id) continue;
    const auto& filled = moment == Moment::found ? finding.found : finding.left;
    if (!filled) continue;
    switch (*filled) {
      case record::Filled::yes:
        return Seat::Filled::yes;
      case record::Filled::empty:
        return Seat::Filled::no;
      case record::Filled::in_part:
        return some_there ? Seat::Filled::no : Seat::Filled::not_examined;
      case record::Filled::not_examined:
        break;
    }
  }
  if (moment == Moment::found && filled_by_this_visit(record, visit, place.id)) {
    return Seat::Filled::no;
  }
  return Seat::Filled::not_examined;
}

/// The pieces of a place at one moment, those that lay loose and were put back in this visit among
/// them.
std::vector<const record::Piece*> pieces_of(const record::Record& record,
                                            const record::Visit& visit, const record::Place& place,
                                            Moment moment) {
  std::vector<const record::Piece*> pieces;
  for (const record::Fitting* fitting : fittings_in(record, place.id, visit, moment)) {
    pieces.push_back(find(record, fitting->piece));
  }
  if (moment == Moment::found) {
    for (const record::Fitting* fitting : fittings_in(record, place.id, visit, Moment::left)) {
      const auto* state = record::state_entered(visit, fitting->piece, Moment::found);
      if (state != nullptr && state->presence == record::Presence::loose) {
        pieces.push_back(find(record, fitting->piece));
      }
    }
  }
  std::erase(pieces, nullptr);
  std::sort(pieces.begin(), pieces.end(),
            [](const auto* a, const auto* b) { return a->id < b->id; });
  pieces.erase(std::unique(pieces.begin(), pieces.end()), pieces.end());
  return pieces;
}

void seat_place(const record::Record& record, const record::Visit& visit,
                const record::Place& place, Moment moment, std::vector<Seat>& seats) {
  int free = place.quantity;
  int missing = 0;
  bool some_there = false;
  const auto sit = [&](Seat seat, int count) {
    for (; count > 0 && free > 0; --count, --free) {
      seats.push_back(seat);
    }
  };
  for (const record::Piece* piece : pieces_of(record, visit, place, moment)) {
    const auto state = record::state_of(record, visit, piece->id, moment);
    if (state && state->presence == record::Presence::missing) {
      missing += piece->count;
      continue;
    }
    some_there = true;
    const bool loose = state && state->presence == record::Presence::loose;
    sit({&place, piece, Seat::Filled::yes, loose}, piece->count);
  }
  if (place.may_be_empty) return;
  sit({&place, nullptr, Seat::Filled::no, false}, missing);
  sit({&place, nullptr, vacancy(record, visit, place, moment, some_there), false}, free);
}

std::int64_t area_of(const Seat& seat, AreaBasis basis, const knowledge::PartsList* parts) {
  if (basis == AreaBasis::measured) {
    return seat.place->exposed_area
               ? knowledge::units_per_seat(seat.place->exposed_area->value, seat.place->quantity)
               : 0;
  }
  const knowledge::PartsEntry* entry =
      parts == nullptr ? nullptr : knowledge::find(*parts, seat.place->kind);
  return basis == AreaBasis::none || entry == nullptr
             ? 0
             : knowledge::units_per_seat(entry->exposed, entry->usual_quantity);
}

knowledge::Counts counts(const knowledge::ConditionRules& rules, record::SurfaceState state) {
  for (const knowledge::FinishRule& rule : rules.finish) {
    if (rule.state == record::word_of(state)) return rule.counts;
  }
  return knowledge::Counts::no;
}

/// Hundredths of a percent of a piece's surface that certainly, and perhaps, are the maker's
/// finish.
struct Finish {
  std::int64_t certain = 0;
  std::int64_t perhaps = 0;
};

Finish finish_of(const record::Piece& piece, const When& when,
                 const knowledge::ConditionRules& rules) {
  using record::FinishBy;
  using record::MadeBy;
  const bool makers = piece.made_by.answer == MadeBy::this_maker ||
                      piece.of_this_reel.answer == record::OfThisReel::yes;
  const bool perhaps_makers = piece.made_by.answer == MadeBy::not_determined;
  const FinishBy uppermost = record::uppermost_finish(piece, when.visit, when.moment);
  if (!makers && !perhaps_makers) return {};
  if (uppermost != FinishBy::maker && uppermost != FinishBy::not_determined) return {};

  Finish finish;
  std::int64_t examined = 0;
  if (const auto state = record::state_of(when.record, when.visit, piece.id, when.moment)) {
    for (const record::SurfaceShare& share : state->surface) {
      const std::int64_t area = hundredths(share.share);
      examined += area;
      const knowledge::Counts counted = counts(rules, share.state);
      if (counted == knowledge::Counts::yes) finish.certain += area;
      if (counted == knowledge::Counts::not_determined) finish.perhaps += area;
    }
  }
  if (examined > kAll) return {0, kAll};
  finish.perhaps += kAll - examined;
  if (!makers || uppermost == FinishBy::not_determined) {
    finish.perhaps += finish.certain;
    finish.certain = 0;
  }
  return finish;
}

struct TestCounts {
  int as_made = 0;
  int with_care = 0;
  int in_part = 0;
  int not_working = 0;

  [[nodiscard]] int all() const { return as_made + with_care + in_part + not_working; }
};

struct Standing {
  int word = 0;
  Ratio position;
};

Standing working_of(const TestCounts& counts) {
  const int all = counts.all();
  if (counts.not_working == all) return {3, Ratio(0, 1)};
  if (counts.in_part + counts.not_working > 0) {
    return {2, Ratio(1, 2) - Ratio(2 * counts.not_working + counts.in_part, 8 * all)};
  }
  if (counts.with_care > 0) return {1, Ratio(3, 4) - Ratio(counts.with_care, 4 * (all + 1))};
  return {0, Ratio(1, 1)};
}

Standing structure_of(const StructureReading& reading) {
  const auto within = [](int quarter, int faults) {
    return Ratio(quarter, 4) - Ratio(std::min(faults, 5), 24);
  };
  if (reading.unsafe > 0) return {3, within(1, reading.unsafe)};
  if (reading.weakening > 0) return {2, within(2, reading.weakening)};
  if (reading.blemish > 0) return {1, within(3, reading.blemish)};
  return {0, Ratio(1, 1)};
}

/// Faults were looked for, or found: a part that was looked at for its finish may have any.
bool examined_at(const When& when) {
  return !when.visit.findings.faults.empty() ||
         record::find_look(when.visit, record::LookedFor::faults) != nullptr;
}

}  // namespace

std::vector<Seat> seats_of(const record::Record& record, const record::Visit& visit,
                           Moment moment) {
  std::vector<Seat> seats;
  for (const record::Place& place : record.places) {
    if (record::is_entered(record, place)) seat_place(record, visit, place, moment, seats);
  }
  return seats;
}

AreaBasis area_basis(const record::Record& record, const knowledge::PartsList* parts) {
  const auto measured = [&](const record::Place& place) {
    return place.exposed_area.has_value() && record::is_entered(record, place);
  };
  if (std::any_of(record.places.begin(), record.places.end(), measured)) {
    return AreaBasis::measured;
  }
  const auto listed = [&](const record::Place& place) {
    const auto* entry = parts == nullptr ? nullptr : knowledge::find(*parts, place.kind);
    return entry != nullptr && entry->exposed > base::Decimal();
  };
  return std::any_of(record.places.begin(), record.places.end(), listed) ? AreaBasis::usual_shares
                                                                         : AreaBasis::none;
}

SurfaceReading read_surface(const When& when, const std::vector<Seat>& seats,
                            const knowledge::ConditionRules& rules, AreaBasis basis,
                            const knowledge::PartsList* parts) {
  base::Wide whole = 0;
  base::Wide certain = 0;
  base::Wide perhaps = 0;
  for (const Seat& seat : seats) {
    if (seat.filled == Seat::Filled::no) continue;
    const std::int64_t area = area_of(seat, basis, parts);
    const Finish finish =
        seat.piece == nullptr ? Finish{0, kAll} : finish_of(*seat.piece, when, rules);
    whole += base::Wide{area} * kAll;
    certain += base::Wide{area} * finish.certain;
    perhaps += base::Wide{area} * finish.perhaps;
  }
  if (whole == 0) return {kAnyWord, kAnywhere, std::nullopt};
  const RatioRange share{Ratio(certain, whole), Ratio(certain + perhaps, whole)};
  return {{word_of(rules.surface, share.high), word_of(rules.surface, share.low)},
          {position_of(rules.surface, share.low), position_of(rules.surface, share.high)},
          share};
}

StructureReading read_structure(const When& when) {
  StructureReading reading;
  for (const record::Fault& fault : when.visit.findings.faults) {
    const auto severity = record::severity_at(fault, when.moment);
    if (!severity) continue;
    switch (*severity) {
      case record::Severity::unsafe:
        ++reading.unsafe;
        break;
      case record::Severity::weakening:
        ++reading.weakening;
        break;
      case record::Severity::blemish:
        ++reading.blemish;
        break;
    }
  }
  reading.examined = examined_at(when);
  const Standing known = structure_of(reading);
  reading.word = {known.word, reading.examined ? known.word : 3};
  reading.position = {reading.examined ? known.position : Ratio(0, 1), known.position};
  return reading;
}

WorkingReading read_working(const std::vector<record::Test>& tests, Moment moment) {
  WorkingReading reading;
  TestCounts sure;
  for (const record::Test& test : tests) {
    const record::TestResult& result = moment == Moment::found ? test.before : test.after;
    ++reading.tests;
    if (result.kind == record::TestResult::Kind::not_safe_to_test) {
      ++reading.not_safe_to_test;
    } else if (result.kind == record::TestResult::Kind::not_tested || !result.verdict) {
      ++reading.not_tested;
    } else {
      switch (*result.verdict) {
        case record::Verdict::as_made:
          ++sure.as_made;
          break;
        case record::Verdict::with_care:
          ++sure.with_care;
          break;
        case record::Verdict::in_part:
          ++sure.in_part;
          break;
        case record::Verdict::not_working:
          ++sure.not_working;
          break;
      }
    }
  }
  reading.as_made = sure.as_made;
  reading.with_care = sure.with_care;
  reading.in_part = sure.in_part;
  reading.not_working = sure.not_working;
  if (reading.tests == 0) {
    reading.word = kAnyWord;
    reading.position = kAnywhere;
    return reading;
  }
  // At best what nobody tested goes as made, and what is not safe to test goes in part.
  TestCounts best = sure;
  best.as_made += reading.not_tested;
  best.in_part += reading.not_safe_to_test;
  TestCounts worst = sure;
  worst.not_working += reading.not_tested + reading.not_safe_to_test;
  const Standing high = working_of(best);
  const Standing low = working_of(worst);
  reading.word = {high.word, low.word};
  reading.position = {low.position, high.position};
  return reading;
}

CompletenessReading read_completeness(const std::vector<Seat>& seats,
                                      const knowledge::ConditionRules& rules) {
  CompletenessReading reading;
  for (const Seat& seat : seats) {
    ++reading.seats;
    if (seat.loose) ++reading.loose;
    switch (seat.filled) {
      case Seat::Filled::yes:
        ++reading.filled;
        break;
      case Seat::Filled::no:
        ++reading.empty;
        break;
      case Seat::Filled::not_examined:
        ++reading.not_examined;
        break;
    }
  }
  if (reading.seats == 0) {
    reading.word = kAnyWord;
    reading.position = kAnywhere;
    return reading;
  }
  const RatioRange share{Ratio(reading.filled, reading.seats),
                         Ratio(reading.filled + reading.not_examined, reading.seats)};
  reading.share = share;
  const knowledge::ShareAxis& axis = rules.completeness;
  reading.word = {word_of(axis, share.high), word_of(axis, share.low)};
  reading.position = {position_of(axis, share.low), position_of(axis, share.high)};
  return reading;
}

}  // namespace winchbook::assess::condition
