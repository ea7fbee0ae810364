#include "assess/sums.h"

#include <algorithm>

namespace winchbook::assess {
namespace {

void add(const std::optional<base::Money>& more, std::vector<base::Money>& sums) {
  if (!more) return;
  const auto same = std::find_if(sums.begin(), sums.end(), [&](const base::Money& sum) {
    return sum.currency == more->currency;
  });
  if (same == sums.end()) {
    sums.push_back(*more);
  } else {
    same->amount = same->amount + more->amount;
  }
}

}  // namespace

Sums sums(const record::Record& record, const record::Visit& visit) {
  Sums sums;
  for (const record::Work& work : visit.work) {
    if (work.hours) sums.hours = sums.hours + work.hours->value;
    add(work.parts_cost, sums.parts);
  }
  for (const record::Donor& donor : record.donors) {
    if (donor.acquired && !base::surely_before(*donor.acquired, visit.taken_in))
      add(donor.cost, sums.donors);
  }
  return sums;
}

const record::Agreement* agreed_limit(const record::Visit& visit) {
  const auto last = std::find_if(visit.agreements.rbegin(), visit.agreements.rend(),
                                 [](const auto& one) { return one.cost_limit.has_value(); });
  return last == visit.agreements.rend() ? nullptr : &*last;
}

}  // namespace winchbook::assess
