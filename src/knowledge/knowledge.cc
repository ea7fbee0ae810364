#include "knowledge/knowledge.h"

#include <algorithm>

namespace winchbook::knowledge {

namespace {

constexpr std::int64_t kUnitsOfHundredth = 27720;  // the least common multiple of 1 to 12
constexpr std::int64_t kMost = 100'000'000;        // hundredths

}  // namespace

std::int64_t units_per_seat(const base::Decimal& amount, int seats) {
  std::int64_t hundredths = amount.units();
  for (int places = amount.places(); places < 2; ++places) {
    hundredths = std::min(hundredths, kMost) * 10;
  }
  for (int places = amount.places(); places > 2; --places) {
    hundredths /= 10;
  }
  return std::clamp<std::int64_t>(hundredths, 0, kMost) * kUnitsOfHundredth / std::max(1, seats);
}

const PartsEntry* find(const PartsList& list, std::string_view word) {
  const auto entry = std::find_if(list.places.begin(), list.places.end(),
                                  [&](const PartsEntry& place) { return place.word == word; });
  return entry == list.places.end() ? nullptr : &*entry;
}

int credit(const std::vector<Credit>& credits, std::string_view state) {
  const auto found = std::find_if(credits.begin(), credits.end(),
                                  [&](const Credit& one) { return one.state == state; });
  return found == credits.end() ? 0 : found->percent;
}

int rating(const CorrosionTable& table, const base::Percent& area) {
  for (const CorrosionStep& step : table.steps) {
    if (area.value <= step.percent) return step.rating;
  }
  return 0;
}

const PartsList* parts_list(const Knowledge& knowledge, std::string_view reel_kind) {
  const auto list = std::find_if(knowledge.parts_lists.begin(), knowledge.parts_lists.end(),
                                 [&](const PartsList& one) { return one.reel_kind == reel_kind; });
  return list == knowledge.parts_lists.end() ? nullptr : &*list;
}

}  // namespace winchbook::knowledge
