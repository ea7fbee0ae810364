#include "report/hazards.h"

#include <iterator>
#include <utility>

#include "report/care_words.h"

namespace winchbook::report {
namespace {

/// The bench's own flags of hazards by their names alone.
std::vector<document::Caution> named(const Telling& telling, knowledge::Matters where) {
  std::vector<std::string> names;
  for (const ToldFlag& flag : flags_told(telling, {where})) {
    if (flag.written && !flag.legal) names.push_back(flag.name);
  }
  if (names.empty()) return {};
  const std::string listed = telling.words.capitalised(telling.words.list(names));
  return {{telling.words.say("care-card.flags"),
           document::plain(telling.words.say("care-card.flags-are", {{"names", listed}}))}};
}

}  // namespace

std::vector<document::Caution> hazards_open(const Telling& telling) {
  return flag_cautions(telling, {knowledge::Matters::open});
}

std::vector<document::Caution> hazards_on_card(const Telling& telling, bool on_the_water) {
  using knowledge::Matters;
  if (!on_the_water) return flag_cautions(telling, {Matters::keep});
  std::vector<document::Caution> cautions = named(telling, Matters::use);
  auto more = further_cautions(telling, {Matters::use});
  std::move(more.begin(), more.end(), std::back_inserter(cautions));
  return cautions;
}

}  // namespace winchbook::report
