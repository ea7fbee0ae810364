#include "report/told.h"

#include <array>
#include <cmath>
#include <utility>

#include "assess/value/rounding.h"
#include "record/enum_words.h"

namespace winchbook::report {

using assess::Identity;
using assess::Made;
using document::Fact;

namespace {

constexpr const char* kNone = "none";

std::string hundredths(base::Ratio share) {
  constexpr std::int64_t kSteps = 10000;
  const std::string digits = std::to_string(share.rounded(kSteps));
  const std::string three = std::string(digits.size() < 3 ? 3 - digits.size() : 0, '0') + digits;
  return three.substr(0, three.size() - 2) + "." + three.substr(three.size() - 2);
}

std::string span(const assess::dating::DaySpan& days) {
  const auto iso = [](const std::optional<base::Day>& day) {
    return day ? base::iso_text(*day) : std::string();
  };
  return iso(days.first) + "/" + iso(days.last);
}

Fact years(const char* id, const std::optional<assess::dating::YearRange>& range) {
  if (!range) return {id, kNone};
  return {id, std::to_string(range->first) + "/" + std::to_string(range->last)};
}

}  // namespace

Fact told_share(std::string id, const std::optional<base::RatioRange>& share) {
  if (!share) return {std::move(id), kNone};
  return {std::move(id), hundredths(share->low) + "-" + hundredths(share->high)};
}

FactList told_index(const std::string& id, const assess::originality::Index& index) {
  return {told_share(id + ".found", index.found), told_share(id + ".left", index.left)};
}

FactList told_identity(const Identity& reel) {
  std::string maker(base::word_of(reel.how));
  if (!reel.maker.empty()) maker += " " + reel.maker;
  return {{"identity:maker", std::move(maker)},
          {"identity:model", reel.model},
          {"identity:serial", reel.serial},
          {"identity:reels", std::to_string(reel.reels)}};
}

Fact told_name(const Identity& reel) {
  return {"identity:name", reel.name};
}

FactList told_made(const Made& made) {
  if (made.by == Made::By::nobody) return {};
  if (!made.settled) return {{"date:made", "none-fits"}};
  if (made.by == Made::By::bench) return {{"date:made", "bench " + made.written->text()}};
  return {{"date:made", "marks " + span(made.days)}};
}

FactList told_dating(const assess::dating::Finding& dating) {
  return {{"date:window", span(dating.window.days())},
          years("date:half", dating.range50),
          years("date:nine-tenths", dating.range90)};
}

Fact told_state(std::size_t axis, std::string_view when, const assess::condition::WordRange& word) {
  constexpr std::array<std::string_view, 4> kNames{"finish_left", "structure", "working",
                                                   "completeness"};
  const auto& words = assess::condition::kStateAxes.at(axis).words;
  const auto say = [&](int at) { return std::string(words.at(static_cast<std::size_t>(at))); };
  const bool one = word.best == word.worst;
  return {std::string(kNames.at(axis)) + "." + std::string(when),
          one ? say(word.best) : say(word.worst) + "-" + say(word.best)};
}

FactList told_counts(const assess::originality::Finding& finding) {
  if (!finding.assembled.empty()) return {{"identity:reels", std::to_string(finding.reels)}};
  const auto of = [](const assess::originality::Counts& counts) {
    return std::to_string(counts.original) + " of " + std::to_string(counts.places_for);
  };
  return {{"counts.found", of(finding.found)}, {"counts.left", of(finding.left)}};
}

FactList told_standing(const assess::originality::PieceRow& row) {
  const std::string id = "standing." + std::to_string(row.number);
  return {{id + ".found", std::string(base::word_of(row.found.standing))},
          {id + ".left", std::string(base::word_of(row.left.standing))}};
}

Fact told_value(std::string id, const assess::value::Estimate& estimate,
                const std::string& currency) {
  using assess::value::RoundPrice;
  if (estimate.method == assess::value::Method::none) return {std::move(id), kNone};
  const auto price = [](double amount, RoundPrice how) {
    return std::to_string(std::llround(assess::value::rounded_price(amount, how)));
  };
  return {std::move(id), price(estimate.low, RoundPrice::down) + "-" +
                             price(estimate.high, RoundPrice::up) + " " +
                             price(estimate.middle, RoundPrice::near) + " " + currency};
}

Fact told_course(std::string id, const std::optional<record::Course>& course) {
  return {std::move(id), course ? std::string(record::word_of(*course)) : kNone};
}

}  // namespace winchbook::report
