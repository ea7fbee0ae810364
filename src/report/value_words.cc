#include "report/value_words.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace winchbook::report {

using assess::value::Basis;
using assess::value::Estimate;
using assess::value::Excluded;
using assess::value::Exclusion;
using assess::value::Method;
using assess::value::Note;
using assess::value::RoundPrice;
using assess::value::Trait;

const Estimate& explained(const Telling& telling) {
  const Estimate* left = telling.worth->estimate(assess::ValuedState::Kind::left);
  return left != nullptr ? *left : telling.worth->finding.estimates.front();
}

std::string amount_words(const Telling& telling, double amount, int places) {
  const base::Money money{base::Decimal(std::llround(amount * std::pow(10, places)), places),
                          telling.worth->question.currency};
  return places == 0 ? telling.words.whole_money(money) : telling.words.money(money);
}

std::string rounded_words(const Telling& telling, double amount, RoundPrice how) {
  return amount_words(telling, assess::value::rounded_price(amount, how), 0);
}

std::string range_words(const Telling& telling, const Estimate& estimate) {
  if (estimate.method == Method::none) return "";
  return telling.words.say("value.range",
                           {{"low", rounded_words(telling, estimate.low, RoundPrice::down)},
                            {"high", rounded_words(telling, estimate.high, RoundPrice::up)},
                            {"middle", rounded_words(telling, estimate.middle, RoundPrice::near)}});
}

std::string hundredth_words(const Telling& telling, double share) {
  const auto whole = static_cast<std::int64_t>(std::round(share * 100));
  return telling.words.number(base::Decimal(whole, 0));
}

std::string trait_words(const Telling& telling, Trait trait) {
  switch (trait) {
    case Trait::surface:
      return telling.words.say("value.trait.surface");
    case Trait::structure:
      return telling.words.say("value.trait.structure");
    case Trait::working:
      return telling.words.say("value.trait.working");
    case Trait::completeness:
      return telling.words.say("value.trait.completeness");
    case Trait::originality:
      return telling.words.say("value.trait.originality");
    case Trait::box:
      break;
  }
  return telling.words.say("value.trait.box");
}

std::string trait_list(const Telling& telling, const std::vector<Trait>& traits) {
  std::vector<std::string> names;
  names.reserve(traits.size());
  for (const Trait trait : traits)
    names.push_back(trait_words(telling, trait));
  return telling.words.list(names);
}

std::string note_words(const Telling& telling, const Estimate& estimate, Note note) {
  const auto& words = telling.words;
  switch (note) {
    case Note::too_few:
      return words.say("value.note.too-few", {{"least", telling.worth->rules.least}});
    case Note::too_few_to_fit:
      return words.say("value.note.too-few-to-fit", {{"least", telling.worth->rules.regression}});
    case Note::alike:
      return words.say("value.note.alike", {{"traits", trait_list(telling, estimate.alike)}});
    case Note::seldom_told:
      return words.say("value.note.seldom-told");
    case Note::partly_told:
      return words.say("value.note.partly-told");
    case Note::far_beyond:
      return words.say("value.note.far-beyond");
    case Note::apart:
      return words.say("value.note.apart");
    case Note::change_not_told:
      return words.say("value.note.change-not-told",
                       {{"traits", trait_list(telling, estimate.untold)}});
    case Note::collinear:
      return words.say("value.note.collinear");
    case Note::beyond:
      return words.say("value.note.beyond", {{"traits", trait_list(telling, estimate.beyond)}});
    case Note::silent_sales:
      return words.say("value.note.silent-sales",
                       {{"traits", trait_list(telling, estimate.silent)}});
    case Note::not_told:
      return words.say("value.note.not-told");
    case Note::no_index:
      return words.say("value.note.no-index");
    case Note::estimated_index:
      break;
  }
  return words.say("value.note.estimated-index");
}

namespace {

bool noted(const Estimate& estimate, Note note) {
  return std::find(estimate.notes.begin(), estimate.notes.end(), note) != estimate.notes.end();
}

/// Why there is no figure at all.
std::string refusal(const Telling& telling, const Estimate& estimate) {
  const Worth& worth = *telling.worth;
  if (noted(estimate, Note::too_few)) {
    return telling.words.say("value.refused", {{"count", worth.finding.evidence.counted.size()},
                                               {"least", worth.rules.least}});
  }
  if (noted(estimate, Note::apart)) return telling.words.say("value.refused-apart");
  std::vector<Trait> traits = estimate.beyond;
  traits.insert(traits.end(), estimate.alike.begin(), estimate.alike.end());
  return telling.words.say("value.refused-beyond", {{"traits", trait_list(telling, traits)}});
}

}  // namespace

std::string answer_words(const Telling& telling) {
  const Estimate* found = telling.worth->estimate(assess::ValuedState::Kind::found);
  const Estimate* left = telling.worth->estimate(assess::ValuedState::Kind::left);
  const auto told = [](const Estimate* one) {
    return one != nullptr && one->method != Method::none;
  };
  if (!told(found) && !told(left)) return refusal(telling, explained(telling));
  std::vector<std::string> sentences;
  const auto say = [&](const Estimate* one, const char* key, const char* none) {
    if (told(one)) {
      sentences.push_back(telling.words.say(key, {{"range", range_words(telling, *one)}}));
    } else if (one != nullptr) {
      sentences.push_back(telling.words.say(none));
    }
  };
  say(left, "value.answer-left", "value.answer-left-none");
  say(found, "value.answer-found", "value.answer-found-none");
  return joined(sentences);
}

std::string trial_words(const Telling& telling) {
  const auto& trial = *telling.worth->finding.trial;
  return telling.words.say("value.trial", {{"count", trial.sales},
                                           {"half", hundredth_words(telling, trial.median_error)},
                                           {"nine", hundredth_words(telling, trial.ninth_error)}});
}

std::string exclusion_words(const Telling& telling, const Exclusion& exclusion) {
  switch (exclusion.why) {
    case Excluded::by_bench:
      return telling.words.say("value.out.by-bench", {{"reason", exclusion.sale.not_used}});
    case Excluded::asked:
      return telling.words.say("value.out.asked");
    case Excluded::after:
      return telling.words.say("value.out.after");
    case Excluded::undated:
      return telling.words.say("value.out.undated");
    case Excluded::twice:
      return telling.words.say("value.out.twice");
    case Excluded::dealer:
      return telling.words.say("value.out.dealer");
    case Excluded::premium_unknown:
      return telling.words.say("value.out.premium-unknown");
    case Excluded::no_rate:
      return telling.words.say("value.out.no-rate");
    case Excluded::no_index:
      return telling.words.say("value.out.no-index");
    case Excluded::outlier:
      break;
  }
  return telling.words.say("value.out.outlier",
                           {{"amount", amount_words(telling, exclusion.amount)}});
}

namespace {

std::string basis_words(const Telling& telling, Basis basis) {
  switch (basis) {
    case Basis::hammer:
      return telling.words.say("value.paid.hammer");
    case Basis::premium:
      return telling.words.say("value.paid.premium");
    case Basis::asking:
      return telling.words.say("value.paid.asking");
    case Basis::privately:
      return telling.words.say("value.paid.private");
    case Basis::dealer:
      break;
  }
  return telling.words.say("value.paid.dealer");
}

}  // namespace

std::string price_words(const Telling& telling, const assess::value::Sale& sale) {
  return telling.words.money(sale.price) + " " + basis_words(telling, sale.basis);
}

}  // namespace winchbook::report
