#pragma once

#include <vector>

#include "assess/dating/gather.h"
#include "knowledge/makers.h"
#include "knowledge/marks.h"

namespace winchbook::assess::dating {

/// The bench's tables, as far as they speak of dates.
struct Tables {
  const knowledge::Marks& marks;
  const std::vector<knowledge::Maker>& makers;
};

/// Asks the tables about every mark among the evidence. Where the bench wrote what a mark says, the
/// bench's ends count and the tables only bear it out or raise a doubt; elsewhere theirs count,
/// taken together where a stamp says several things. What the tables find impossible (a number
/// beyond the last, a date that was no day of issue, number and date that disagree) is a doubt, and
/// gives no end.
void read_marks(const record::Record& record, const Tables& tables, Gathered& gathered);

/// Adds what the tables say of materials, the maker's finishes and fasteners, piece by piece.
void add_materials(const record::Record& record, const Tables& tables, Gathered& gathered);

}  // namespace winchbook::assess::dating
