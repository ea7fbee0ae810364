#include "report/hazards.h"

#include <iterator>
#include <utility>

#include "report/care_words.h"

namespace winchbook::report {
namespace {

/// The bench's own flags of hazards in its own words; what only materials and dates say, short.
std::vector<document::Caution> hazards_of(const Telling& telling, knowledge::Matters where) {
  std::vector<document::Caution> cautions;
  for (ToldFlag& flag : flags_told(telling, {where})) {
    if (flag.written && !flag.legal)
      cautions.push_back({telling.words.capitalised(flag.name), std::move(flag.words)});
  }
  auto more = flag_cautions(telling, {where});
  std::move(more.begin(), more.end(), std::back_inserter(cautions));
  return cautions;
}

}  // namespace

std::vector<document::Caution> hazards(const Telling& telling, Hazards where) {
  switch (where) {
    case Hazards::open:
      return hazards_of(telling, knowledge::Matters::open);
    case Hazards::use:
      return hazards_of(telling, knowledge::Matters::use);
    case Hazards::keep:
      break;
  }
  return hazards_of(telling, knowledge::Matters::keep);
}

}  // namespace winchbook::report
