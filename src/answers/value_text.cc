#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "answers/value.h"
#include "answers/value_words.h"

namespace winchbook::answers {
namespace {

using assess::value::AdjustedSale;
using assess::value::Comparable;
using assess::value::Estimate;
using assess::value::Excluded;
using assess::value::Exclusion;
using assess::value::Method;

std::string amount(const Valued& valued, double value) {
  return fmt::format("{:.2f} {}", value, valued.question.currency);
}

const char* title(assess::ValuedState::Kind kind) {
  return kind == assess::ValuedState::Kind::found ? "As found" : "As left";
}

std::string range(const Valued& valued, const Estimate& estimate) {
  if (estimate.method == Method::none) return "no figure";
  return fmt::format("{} to {} {}, most likely about {}",
                     price_text(estimate.low, RoundPrice::down),
                     price_text(estimate.high, RoundPrice::up), valued.question.currency,
                     price_text(estimate.middle, RoundPrice::near));
}

std::string traits(const std::vector<assess::value::Trait>& traits) {
  std::string names;
  for (const auto trait : traits)
    names += (names.empty() ? "" : ", ") + std::string(base::word_of(trait));
  return names;
}

/// A note, with the traits it is about.
std::string note_words(const Estimate& estimate, assess::value::Note note) {
  using assess::value::Note;
  const std::string about = traits(note == Note::beyond            ? estimate.beyond
                                   : note == Note::alike           ? estimate.alike
                                   : note == Note::silent_sales    ? estimate.silent
                                   : note == Note::change_not_told ? estimate.untold
                                                                   : decltype(estimate.untold){});
  return std::string(spoken(note)) + (about.empty() ? "" : ": " + about);
}

void say_estimate(const Valued& valued, std::size_t at, std::string& text) {
  const Estimate& estimate = valued.finding.estimates[at];
  text += fmt::format("{}: {}.\n", title(valued.states[at].kind), range(valued, estimate));
  for (const auto note : estimate.notes)
    text += fmt::format("    {}\n", note_words(estimate, note));
}

/// Why the state of a course is what it is.
std::string state_words(const Valued& valued, const assess::value::CourseState& course) {
  using assess::value::StateFrom;
  if (course.from == StateFrom::left) return "as left: this course was taken";
  if (course.from == StateFrom::found) {
    return course.course == record::Course::keep_as_found
               ? "as found"
               : "as found: it changes nothing that sales tell";
  }
  std::string list;
  for (const auto trait : changes(valued.states.front().state, course.state))
    list += (list.empty() ? "" : ", ") + changed_words(trait, course.state);
  return "expected: " + list;
}

void say_courses(const Valued& valued, std::string& text) {
  if (valued.courses.empty()) return;
  text += "\nAfter each course:\n";
  for (const auto& one : valued.courses) {
    const Estimate& estimate = estimate_of(valued.finding, one);
    text += fmt::format("  {}: {}\n    {}\n", spoken(one.course), range(valued, estimate),
                        state_words(valued, one));
    if (one.from != assess::value::StateFrom::expected) continue;
    for (const auto note : estimate.notes) {
      using assess::value::Note;
      if (note == Note::beyond || note == Note::alike || note == Note::far_beyond ||
          note == Note::apart || note == Note::change_not_told) {
        text += fmt::format("    {}\n", note_words(estimate, note));
      }
    }
  }
}

void say_method(const Valued& valued, std::string& text) {
  if (valued.finding.estimates.empty()) return;
  const Estimate& first = valued.finding.estimates.front();
  if (first.method == Method::grid) {
    text +=
        "\nHow: each sale was brought to this reel step by step; the middle is the median by "
        "weight "
        "(nearer,\nnewer and better told sales weigh more), the ends are the lowest and highest, "
        "or "
        "from ten sales on\nthe tenth and ninetieth in a hundred.\n";
  }
  if (first.method == Method::regression) {
    text += fmt::format(
        "\nHow: the logarithm of the price was fitted to {} by least squares (R² {:.2f}, condition "
        "{:.1f});\nthe ends are the {} in a hundred prediction interval by Student's t with {} "
        "degrees of freedom.\n",
        first.columns.empty() ? std::string("its mean") : traits(first.columns),
        first.fit->r_squared, first.fit->condition, valued.rules.interval, first.fit->degrees);
  }
  if (const auto& trial = valued.finding.trial) {
    text += fmt::format(
        "Tried on {} of the sales themselves, each told from the others: half were off by no more "
        "than {:.0f},\nnine in ten by no more than {:.0f} in a hundred.\n",
        trial->sales, trial->median_error * 100, trial->ninth_error * 100);
  }
}

std::string sale_line(const assess::value::Sale& sale) {
  std::string text = sale.line > 0 ? fmt::format("line {}: ", sale.line) : std::string();
  text += fmt::format("{}, {} {}, {}", sale.date.text(), sale.price.amount.text(),
                      sale.price.currency, base::word_of(sale.basis));
  if (!sale.source.empty()) text += ", " + sale.source;
  return text;
}

void say_counted(const Valued& valued, std::string& text) {
  const auto& counted = valued.finding.evidence.counted;
  if (counted.empty()) return;
  constexpr std::size_t kMostShown = 30;
  text += fmt::format("\nSales that count: {}\n", counted.size());
  if (valued.older > 0) {
    text += fmt::format("  and {} older ones that were not used: the newest {} are\n", valued.older,
                        valued.rules.most);
  }
  for (std::size_t i = 0; i < std::min(counted.size(), kMostShown); ++i) {
    const Comparable& one = counted[i];
    text +=
        fmt::format("  {}\n    paid {:.2f} × rate {:.4g} × prices {:.4g} = {}", sale_line(one.sale),
                    one.paid, one.rate, one.index, amount(valued, one.amount));
    const auto& estimates = valued.finding.estimates;
    if (!estimates.empty() && i < estimates.front().grid.size()) {
      const AdjustedSale& sale = estimates.front().grid[i];
      for (const auto& step : sale.steps)
        text += fmt::format("; {} {:+.1f} %", base::word_of(step.trait), step.percent);
      text += fmt::format("; as found {}, weight {:.2f}", amount(valued, sale.amount), sale.weight);
    }
    text += "\n";
  }
  if (counted.size() > kMostShown)
    text += fmt::format("  and {} more\n", counted.size() - kMostShown);
}

void say_excluded(const Valued& valued, std::string& text) {
  const auto& excluded = valued.finding.evidence.excluded;
  if (excluded.empty()) return;
  constexpr std::size_t kMostShown = 20;
  text += fmt::format("\nSales that do not: {}\n", excluded.size());
  std::size_t shown = 0;
  std::map<std::string, std::size_t> rest;
  for (const Exclusion& one : excluded) {
    // What lies far off is always named.
    if (one.why != Excluded::outlier && shown == kMostShown) {
      ++rest[std::string(spoken(one.why))];
      continue;
    }
    if (one.why != Excluded::outlier) ++shown;
    text += fmt::format("  {}\n    {}{}\n", sale_line(one.sale), spoken(one.why),
                        one.sale.not_used.empty() ? "" : ": " + one.sale.not_used);
  }
  for (const auto& [why, count] : rest)
    text += fmt::format("  and {} more: {}\n", count, why);
  if (valued.finding.with_outliers) {
    text += fmt::format(
        "  With those that lie far off, the middle as found would be about {} {}.\n",
        price_text(*valued.finding.with_outliers, RoundPrice::near), valued.question.currency);
  }
}

}  // namespace

std::string value_in_words(const Valued& valued) {
  const auto& question = valued.question;
  std::string text = fmt::format("{}, {}: for {}, on {}.\nThe basis: {} ({}).\n\n",
                                 question.model.empty() ? "model not determined" : question.model,
                                 question.maker.empty() ? "maker not determined" : question.maker,
                                 question.purpose.name, base::iso_text(question.as_of),
                                 question.purpose.definition, question.purpose.source);
  for (std::size_t i = 0; i < valued.finding.estimates.size(); ++i)
    say_estimate(valued, i, text);
  if (valued.finding.estimates.empty())
    text += "The record has no visit: there is no state to value.\n";
  say_courses(valued, text);
  say_method(valued, text);
  say_counted(valued, text);
  say_excluded(valued, text);
  text +=
      "\nThis is no certified appraisal. It holds for that day and rests on the sales listed, and "
      "on "
      "the\nsteps of shared/prices/rules.xml, which are the bench's own. For tax, probate, "
      "insurance "
      "or a sale\nof weight, ask a qualified appraiser. What memory adds is in no price.\n";
  return text;
}

}  // namespace winchbook::answers
