#pragma once

#include <vector>

#include "assess/condition/condition.h"

namespace winchbook::assess::condition {

/// Of which visit, and at which end of it.
struct When {
  const record::Record& record;
  const record::Visit& visit;
  record::Moment moment;
};

/// One seat of a place at one moment.
struct Seat {
  const record::Place* place = nullptr;
  const record::Piece* piece = nullptr;  ///< null: none that is described
  enum class Filled { yes, no, not_examined } filled = Filled::not_examined;
  bool loose = false;
};

/// Every seat of every place about which something was entered, those the maker left empty not
/// counted.
[[nodiscard]] std::vector<Seat> seats_of(const record::Record& record, const record::Visit& visit,
                                         record::Moment moment);

[[nodiscard]] AreaBasis area_basis(const record::Record& record, const knowledge::PartsList* parts);

[[nodiscard]] SurfaceReading read_surface(const When& when, const std::vector<Seat>& seats,
                                          const knowledge::ConditionRules& rules, AreaBasis basis,
                                          const knowledge::PartsList* parts);

[[nodiscard]] StructureReading read_structure(const When& when);

[[nodiscard]] WorkingReading read_working(const std::vector<record::Test>& tests,
                                          record::Moment moment);

[[nodiscard]] CompletenessReading read_completeness(const std::vector<Seat>& seats,
                                                    const knowledge::ConditionRules& rules);

}  // namespace winchbook::assess::condition
