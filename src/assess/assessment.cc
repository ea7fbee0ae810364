#include "assess/assessment.h"

#include <array>

namespace winchbook::assess {

const char* word(record::ReelKind kind) {
  constexpr std::array kWords{"multiplier", "baitcaster", "fixed-spool", "closed-face", "centrepin",
                              "sidecast",   "fly-reel",   "plain-winch", "wooden-reel"};
  return kWords.at(static_cast<std::size_t>(kind));
}

Assessment assess(const record::Record& record, const knowledge::Knowledge& knowledge) {
  const knowledge::PartsList* parts = knowledge::parts_list(knowledge, word(record.reel.kind));
  Assessment assessment;
  assessment.dating = dating::assess(record, knowledge);
  for (const record::Visit& visit : record.visits) {
    assessment.visits.push_back({visit.id,
                                 originality::assess(record, visit, knowledge.originality, parts),
                                 condition::assess(record, visit, knowledge, parts)});
  }
  return assessment;
}

}  // namespace winchbook::assess
