#include "assess/assessment.h"
#include "record/enum_words.h"

#include <array>

namespace winchbook::assess {

namespace {

/// The reel's years, as the care of it asks for them.
care::Made when_made(const record::Record& record, const dating::Finding& dating) {
  const dating::DaySpan days = made(record, dating).days;
  return {days.first, days.last};
}

}  // namespace

Assessment assess(const record::Record& record, const knowledge::Knowledge& knowledge) {
  const knowledge::PartsList* parts =
      knowledge::parts_list(knowledge, record::word_of(record.reel.kind));
  Assessment assessment;
  assessment.dating = dating::assess(record, knowledge);
  const care::Made made = when_made(record, assessment.dating);
  for (const record::Visit& visit : record.visits) {
    assessment.visits.push_back(
        {visit.id, originality::assess(record, visit, knowledge.originality, parts),
         condition::assess(record, visit, knowledge, parts), strip::strip(record, visit, parts),
         care::assess(record, visit, knowledge.care, made), sums(record, visit)});
  }
  const VisitAssessment* last = assessment.last();
  assessment.identity =
      identity(record, assessment.dating, last == nullptr ? nullptr : &last->originality);
  return assessment;
}

}  // namespace winchbook::assess
