#include "assess/assessment.h"
#include "record/enum_words.h"

#include <array>

namespace winchbook::assess {

namespace {

/// What the bench wrote; else what the marks and materials leave.
care::Made when_made(const record::Record& record, const dating::Finding& dating) {
  if (record.reel.made) return {record.reel.made->date.earliest(), record.reel.made->date.latest()};
  const auto& window = dating.window;
  care::Made made;
  if (window.not_before) made.first = window.not_before->day;
  if (window.not_after) made.last = window.not_after->day;
  return made;
}

}  // namespace

Assessment assess(const record::Record& record, const knowledge::Knowledge& knowledge) {
  const knowledge::PartsList* parts =
      knowledge::parts_list(knowledge, record::word_of(record.reel.kind));
  Assessment assessment;
  assessment.identity = identity(record);
  assessment.dating = dating::assess(record, knowledge);
  const care::Made made = when_made(record, assessment.dating);
  for (const record::Visit& visit : record.visits) {
    assessment.visits.push_back(
        {visit.id, originality::assess(record, visit, knowledge.originality, parts),
         condition::assess(record, visit, knowledge, parts), strip::strip(record, visit, parts),
         care::assess(record, visit, knowledge.care, made), sums(record, visit)});
  }
  return assessment;
}

}  // namespace winchbook::assess
