#include "report/hazards.h"

#include <iterator>
#include <utility>

#include "report/care_words.h"

namespace winchbook::report {
namespace {

/// The bench's own flags of hazards in its own words.
std::vector<document::Caution> written(const Telling& telling, knowledge::Matters where) {
  std::vector<document::Caution> cautions;
  for (ToldFlag& flag : flags_told(telling, {where})) {
    if (flag.written && !flag.legal)
      cautions.push_back({telling.words.capitalised(flag.name), std::move(flag.words)});
  }
  return cautions;
}

/// The same by their names alone.
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

std::vector<document::Caution> with_derived(std::vector<document::Caution> cautions,
                                            const Telling& telling, knowledge::Matters where) {
  auto more = flag_cautions(telling, {where});
  std::move(more.begin(), more.end(), std::back_inserter(cautions));
  return cautions;
}

}  // namespace

std::vector<document::Caution> hazards_open(const Telling& telling) {
  using knowledge::Matters;
  return with_derived(written(telling, Matters::open), telling, Matters::open);
}

std::vector<document::Caution> hazards_on_card(const Telling& telling, bool on_the_water) {
  using knowledge::Matters;
  if (on_the_water) return with_derived(named(telling, Matters::use), telling, Matters::use);
  return with_derived(written(telling, Matters::keep), telling, Matters::keep);
}

}  // namespace winchbook::report
