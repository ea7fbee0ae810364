#include "record/latest_day.h"

namespace winchbook::record {
namespace {

/// The latest of the days it is shown.
class Latest {
 public:
  void look(const std::optional<base::EdtfDate>& date) {
    const auto day = date ? date->latest() : std::nullopt;
    if (day && (!latest_ || *latest_ < *day)) latest_ = day;
  }
  template <class Things> void look_at_all(const Things& things) {
    for (const auto& one : things)
      look(one.on);
  }
  [[nodiscard]] const std::optional<base::Day>& day() const { return latest_; }

 private:
  std::optional<base::Day> latest_;
};

void look_at(const Findings& findings, Latest& latest) {
  latest.look(findings.found_on);
  latest.look(findings.left_on);
  latest.look_at_all(findings.looked_for);
  latest.look_at_all(findings.places);
  latest.look_at_all(findings.faults);
  latest.look_at_all(findings.flags);
  for (const Fault& fault : findings.faults)
    latest.look(fault.left_on);
  for (const PieceFinding& one : findings.pieces) {
    if (one.found) latest.look(one.found->on);
    if (one.left) latest.look(one.left->on);
  }
  for (const Test& test : findings.tests) {
    latest.look(test.before.on);
    latest.look(test.after.on);
  }
}

void look_at(const Visit& visit, Latest& latest) {
  latest.look(visit.taken_in);
  latest.look_at_all(visit.agreements);
  look_at(visit.findings, latest);
  latest.look_at_all(visit.strip_down);
  latest.look_at_all(visit.cleaning);
  latest.look_at_all(visit.work);
  latest.look_at_all(visit.tray);
  if (visit.advice) latest.look(visit.advice->on);
  if (visit.advice) latest.look(visit.advice->chosen_on);
  if (visit.drag) latest.look(visit.drag->on);
  if (visit.care) latest.look(visit.care->on);
  if (visit.hand_back) latest.look(visit.hand_back->on);
}

}  // namespace

std::optional<base::Day> latest_day(const Record& record) {
  Latest latest;
  for (const Visit& visit : record.visits)
    look_at(visit, latest);
  for (const Photo& photo : record.photos) {
    if (photo.visit) latest.look(photo.taken);
  }
  for (const Fitting& fitting : record.fittings) {
    if (fitting.visit) latest.look(fitting.from);
  }
  return latest.day();
}

}  // namespace winchbook::record
