#include "assess/originality/seats.h"

#include <algorithm>
#include <tuple>

#include "assess/originality/piece.h"
#include "record/moments.h"

namespace winchbook::assess::originality {
namespace {

using record::Moment;

struct Sitting {
  const record::Piece* piece = nullptr;
  const record::Fitting* fitting = nullptr;
  int seats = 0;  ///< not yet told
};

using Sittings = std::vector<Sitting>;

/// Who sits there, and how many of them were looked for and not found.
struct Seated {
  Sittings there;
  int missing = 0;
};

int rank(record::OfThisReel original) {
  return original == record::OfThisReel::yes              ? 0
         : original == record::OfThisReel::not_determined ? 1
                                                          : 2;
}

Seated seated(const record::Record& record, const record::Visit& visit, const record::Place& place,
              Moment moment) {
  Seated all;
  for (const record::Fitting* fitting : fittings_in(record, place.id, visit, moment)) {
    const record::Piece* piece = find(record, fitting->piece);
    if (piece == nullptr) continue;
    const auto state = state_of(record, visit, piece->id, moment);
    if (state && state->presence == record::Presence::missing) {
      all.missing += piece->count;
    } else {
      all.there.push_back({piece, fitting, piece->count});
    }
  }
  // The maker's own first, so that a place with more pieces than seats tells the same story
  // whatever the order of the record.
  std::sort(all.there.begin(), all.there.end(), [&](const Sitting& a, const Sitting& b) {
    return std::make_tuple(rank(of_this_reel(record, *a.piece).answer), a.piece->id,
                           a.fitting->id) <
           std::make_tuple(rank(of_this_reel(record, *b.piece).answer), b.piece->id, b.fitting->id);
  });
  return all;
}

class PlaceStory {
 public:
  PlaceStory(const record::Record& record, const record::Visit& visit, const record::Place& place)
      : record_(record),
        visit_(visit),
        place_(place),
        found_(seated(record, visit, place, Moment::found)),
        left_(seated(record, visit, place, Moment::left)),
        free_(place.quantity) {}

  std::vector<SeatGroup> tell() && {
    stay();
    change_for_named();
    change_for_rest();
    take_out();
    put_in();
    leave_empty();
    return std::move(groups_);
  }

 private:
  void stay() {
    for (Sitting& before : found_.there) {
      for (Sitting& after : left_.there) {
        if (before.piece == after.piece) add(&before, &after);
      }
    }
  }

  void change_for_named() {
    for (Sitting& after : left_.there) {
      for (Sitting& before : found_.there) {
        if (after.fitting->instead_of == before.piece->id) add(&before, &after);
      }
    }
  }

  void change_for_rest() {
    for (Sitting& after : left_.there) {
      if (after.fitting->instead_of) continue;
      for (Sitting& before : found_.there) {
        add(&before, &after);
      }
    }
  }

  void take_out() {
    for (Sitting& before : found_.there) {
      add(&before, nullptr);
    }
  }

  void put_in() {
    for (Sitting& after : left_.there) {
      add(nullptr, &after);
    }
  }

  void leave_empty() {
    while (free_ > 0) {
      SeatGroup group;
      group.found = {vacancy(Moment::found), nullptr};
      group.left = {vacancy(Moment::left), nullptr};
      int seats = free_;
      if (found_.missing > 0) seats = std::min(seats, found_.missing);
      if (left_.missing > 0) seats = std::min(seats, left_.missing);
      push(group, seats);
      found_.missing = std::max(0, found_.missing - seats);
      left_.missing = std::max(0, left_.missing - seats);
    }
  }

  void add(Sitting* before, Sitting* after) {
    int seats = free_;
    if (before != nullptr) seats = std::min(seats, before->seats);
    if (after != nullptr) seats = std::min(seats, after->seats);
    if (seats <= 0) return;
    SeatGroup group;
    // What was changed for nothing that is named was changed for nothing.
    group.found = before != nullptr ? Occupant{Occupant::Kind::piece, before->piece}
                                    : Occupant{Occupant::Kind::empty, nullptr};
    group.left = after != nullptr ? Occupant{Occupant::Kind::piece, after->piece}
                                  : Occupant{Occupant::Kind::empty, nullptr};
    if (after != nullptr && (before == nullptr || before->piece != after->piece)) {
      group.fitting = after->fitting;
      group.came_loose = of_this_reel(record_, *after->piece).answer != record::OfThisReel::no;
      if (group.came_loose && before == nullptr) group.found = group.left;
    }
    if (before != nullptr) before->seats -= seats;
    if (after != nullptr) after->seats -= seats;
    if (before == nullptr) found_.missing = std::max(0, found_.missing - seats);
    push(group, seats);
  }

  void push(SeatGroup group, int seats) {
    group.seats = seats;
    free_ -= seats;
    groups_.push_back(group);
  }

  [[nodiscard]] Occupant::Kind vacancy(Moment moment) const {
    const Seated& seated = moment == Moment::found ? found_ : left_;
    if (seated.missing > 0) return Occupant::Kind::empty;
    for (const record::PlaceFinding& finding : visit_.findings.places) {
      if (finding.place != place_.id) continue;
      const auto& filled = moment == Moment::found ? finding.found : finding.left;
      if (!filled) continue;
      switch (*filled) {
        case record::Filled::empty:
          return Occupant::Kind::empty;
        case record::Filled::in_part:
          return seated.there.empty() ? Occupant::Kind::not_described : Occupant::Kind::empty;
        case record::Filled::yes:
          return Occupant::Kind::not_described;
        case record::Filled::not_examined:
          return Occupant::Kind::not_examined;
      }
    }
    return Occupant::Kind::not_examined;
  }

  const record::Record& record_;
  const record::Visit& visit_;
  const record::Place& place_;
  Seated found_;
  Seated left_;
  int free_;
  std::vector<SeatGroup> groups_;
};

}  // namespace

std::vector<SeatGroup> seat_groups(const record::Record& record, const record::Visit& visit,
                                   const record::Place& place) {
  return PlaceStory(record, visit, place).tell();
}

bool was_ever_filled(const record::Record& record, const record::PlaceId& place) {
  return std::any_of(
      record.fittings.begin(), record.fittings.end(), [&](const record::Fitting& fitting) {
        if (fitting.place != place) return false;
        const record::Piece* piece = find(record, fitting.piece);
        return piece != nullptr && of_this_reel(record, *piece).answer != record::OfThisReel::no;
      });
}

SeatWeight seat_weight(const record::Place& place, const knowledge::PartsList* parts) {
  const knowledge::PartsEntry* entry =
      parts == nullptr ? nullptr : knowledge::find(*parts, place.kind);
  if (place.consumable || (entry != nullptr && entry->consumable)) return {0, Reason::consumable};
  if (place.weight) {
    return {knowledge::units_per_seat(*place.weight, place.quantity), Reason::weight_of_record};
  }
  if (entry != nullptr) {
    return {knowledge::units_per_seat(entry->weight, entry->usual_quantity),
            Reason::weight_of_parts_list};
  }
  // Without a list all seats weigh alike.
  const base::Decimal other = parts == nullptr ? base::Decimal(1, 0) : parts->other_weight;
  return {knowledge::units_per_seat(other, 1), Reason::weight_of_unknown_place};
}

}  // namespace winchbook::assess::originality
