#include "report/hazards.h"

#include <iterator>
#include <utility>

#include "report/care_words.h"

namespace winchbook::report {

std::vector<document::Caution> hazards_open(const Telling& telling) {
  std::vector<document::Caution> cautions;
  for (ToldFlag& flag : flags_told(telling, {knowledge::Matters::open})) {
    if (flag.written && !flag.legal)
      cautions.push_back({telling.words.capitalised(flag.name), std::move(flag.words)});
  }
  auto more = flag_cautions(telling, {knowledge::Matters::open});
  std::move(more.begin(), more.end(), std::back_inserter(cautions));
  return cautions;
}

std::vector<document::Caution> hazards_on_card(const Telling& telling, bool on_the_water) {
  using knowledge::Matters;
  const Matters where = on_the_water ? Matters::use : Matters::keep;
  std::vector<std::string> names;
  for (const ToldFlag& flag : flags_told(telling, {where})) {
    if (flag.written && !flag.legal) names.push_back(flag.name);
  }
  std::vector<document::Caution> cautions = flag_cautions(telling, {where});
  if (!names.empty()) {
    const std::string listed = telling.words.capitalised(telling.words.list(names));
    cautions.push_back(
        {telling.words.say("care-card.flags"),
         document::plain(telling.words.say("care-card.flags-are", {{"names", listed}}))});
  }
  return cautions;
}

}  // namespace winchbook::report
