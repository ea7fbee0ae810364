#include "record/entered.h"

#include <algorithm>

namespace winchbook::record {

bool is_entered(const Record& record, const Place& place) {
  const auto of_place = [&](const auto& one) { return one.place == place.id; };
  return std::any_of(record.fittings.begin(), record.fittings.end(), of_place) ||
         std::any_of(record.visits.begin(), record.visits.end(), [&](const Visit& visit) {
           const auto& findings = visit.findings.places;
           return std::any_of(findings.begin(), findings.end(), of_place);
         });
}

std::vector<const Place*> places_without_piece(const Record& record) {
  const auto sits_in = [](const Place& place) {
    return [&](const Fitting& one) { return one.place == place.id; };
  };
  const auto found_empty = [&](const Place& place) {
    return std::any_of(record.visits.begin(), record.visits.end(), [&](const Visit& visit) {
      return std::any_of(visit.findings.places.begin(), visit.findings.places.end(),
                         [&](const PlaceFinding& one) {
                           return one.place == place.id && one.found == Filled::empty;
                         });
    });
  };
  std::vector<const Place*> places;
  for (const Place& place : record.places) {
    const auto& all = record.fittings;
    if (std::any_of(all.begin(), all.end(), sits_in(place)) || found_empty(place)) continue;
    places.push_back(&place);
  }
  return places;
}

std::vector<const Place*> places_not_entered(const Record& record) {
  std::vector<const Place*> places;
  for (const Place& place : record.places) {
    if (!is_entered(record, place)) places.push_back(&place);
  }
  return places;
}

}  // namespace winchbook::record
