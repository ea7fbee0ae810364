#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <utility>

#include "answers/value.h"
#include "answers/value_words.h"
#include "record/enum_words.h"

namespace winchbook::answers {
namespace {

using assess::value::AdjustedSale;
using assess::value::Comparable;
using assess::value::Estimate;
using assess::value::Excluded;
using assess::value::Exclusion;
using assess::value::Method;
using assess::value::Note;
using assess::value::Trait;

/// The answer, a part after the other.
class Telling {
 public:
  Telling(const Valued& valued, const words::Catalogue& words) : valued_(valued), words_(words) {}

  Blocks told() && {
    question();
    for (std::size_t i = 0; i < valued_.finding.estimates.size(); ++i)
      estimate(i);
    if (valued_.finding.estimates.empty())
      blocks_.emplace_back(paragraph(words_.say("answer.value.no-visit")));
    courses();
    method();
    counted();
    excluded();
    blocks_.emplace_back(paragraph(words_.say("answer.value.no-appraisal")));
    return std::move(blocks_);
  }

 private:
  void question() {
    const auto& asked = valued_.question;
    const auto known = [&](const std::string& name, const char* otherwise) {
      return name.empty() ? words_.say(otherwise) : name;
    };
    blocks_.emplace_back(paragraph(
        words_.say("answer.value.question", {{"model", known(asked.model, "answer.value.no-model")},
                                             {"maker", known(asked.maker, "answer.value.no-maker")},
                                             {"purpose", asked.purpose.name},
                                             {"day", base::iso_text(asked.as_of)}}) +
        "\n" +
        words_.say("answer.value.basis",
                   {{"definition", asked.purpose.definition}, {"source", asked.purpose.source}})));
  }

  std::string amount(double value) const {
    return fmt::format("{:.2f} {}", value, valued_.question.currency);
  }

  std::string range(const Estimate& of) const {
    if (of.method == Method::none) return words_.say("value.no-figure");
    return words_.say("answer.value.range", {{"low", price_text(of.low, RoundPrice::down)},
                                             {"high", price_text(of.high, RoundPrice::up)},
                                             {"currency", valued_.question.currency},
                                             {"middle", price_text(of.middle, RoundPrice::near)}});
  }

  std::string traits(const std::vector<Trait>& of) const {
    std::vector<std::string> names;
    for (const Trait trait : of)
      names.push_back(called(words_, "value.trait", trait));
    return words_.joined("join.comma", names);
  }

  /// A note, with the traits it is about.
  std::string note(const Estimate& of, Note note) const {
    const std::string about = traits(note == Note::beyond            ? of.beyond
                                     : note == Note::alike           ? of.alike
                                     : note == Note::silent_sales    ? of.silent
                                     : note == Note::change_not_told ? of.untold
                                                                     : std::vector<Trait>{});
    std::string said = called(words_, "answer.value.note", note);
    if (about.empty()) return said;
    return words_.say("answer.value.about", {{"what", said}, {"which", about}});
  }

  void estimate(std::size_t at) {
    const Estimate& of = valued_.finding.estimates[at];
    const bool found = valued_.states[at].kind == assess::ValuedState::Kind::found;
    const std::string said =
        words_.say(found ? "answer.value.found" : "answer.value.left", {{"range", range(of)}});
    document::Paragraph told = at == 0 ? paragraph(said) : next_line(said);
    for (const Note one : of.notes)
      told.beside.emplace_back(document::SideNote{document::plain(note(of, one))});
    blocks_.emplace_back(std::move(told));
  }

  /// Why the state of a course is what it is.
  std::string state(const assess::value::CourseState& course) const {
    using assess::value::StateFrom;
    if (course.from == StateFrom::left) return words_.say("answer.value.taken");
    if (course.from == StateFrom::found) {
      return words_.say(course.course == record::Course::keep_as_found ? "as-found"
                                                                       : "answer.value.same");
    }
    std::vector<std::string> list;
    for (const Trait trait : changes(valued_.states.front().state, course.state))
      list.push_back(becomes(words_, trait, course.state));
    return words_.say("answer.value.expected", {{"changes", words_.joined("join.comma", list)}});
  }

  void courses() {
    if (valued_.courses.empty()) return;
    std::vector<std::string> items;
    for (const auto& one : valued_.courses) {
      const Estimate& of = estimate_of(valued_.finding, one);
      std::string item =
          words_.say("answer.value.about",
                     {{"what", called(words_, "course", one.course)}, {"which", range(of)}}) +
          "\n" + state(one);
      for (const Note what : of.notes) {
        const bool why = what == Note::beyond || what == Note::alike || what == Note::far_beyond ||
                         what == Note::apart || what == Note::change_not_told;
        if (why && one.from == assess::value::StateFrom::expected) item += "\n" + note(of, what);
      }
      items.push_back(std::move(item));
    }
    blocks_.emplace_back(paragraph(words_.say("answer.value.courses")));
    blocks_.emplace_back(list_of(items));
  }

  void method() {
    if (valued_.finding.estimates.empty()) return;
    const Estimate& first = valued_.finding.estimates.front();
    if (first.method == Method::grid)
      blocks_.emplace_back(paragraph(words_.say("answer.value.how-grid")));
    if (first.method == Method::regression) {
      const std::string columns =
          first.columns.empty() ? words_.say("answer.value.its-mean") : traits(first.columns);
      blocks_.emplace_back(
          paragraph(words_.say("answer.value.how-regression",
                               {{"columns", columns},
                                {"explained", fmt::format("{:.2f}", first.fit->r_squared)},
                                {"condition", fmt::format("{:.1f}", first.fit->condition)},
                                {"interval", valued_.rules.interval},
                                {"degrees", fmt::format("{}", first.fit->degrees)}})));
    }
    if (const auto& trial = valued_.finding.trial) {
      blocks_.emplace_back(next_line(
          words_.say("value.trial", {{"count", fmt::format("{}", trial->sales)},
                                     {"half", fmt::format("{:.0f}", trial->median_error * 100)},
                                     {"nine", fmt::format("{:.0f}", trial->ninth_error * 100)}})));
    }
  }

  std::string sale(const assess::value::Sale& of) const {
    std::string said = words_.joined(
        "join.comma",
        {of.date.text(), fmt::format("{} {}", of.price.amount.text(), of.price.currency),
         called(words_, "answer.value.paid", of.basis), of.source});
    if (of.line <= 0) return said;
    return words_.say("answer.value.line", {{"line", fmt::format("{}", of.line)}, {"sale", said}});
  }

  std::string brought(std::size_t at) const {
    const Comparable& one = valued_.finding.evidence.counted[at];
    std::vector<std::string> parts{
        words_.say("answer.value.brought", {{"paid", fmt::format("{:.2f}", one.paid)},
                                            {"rate", fmt::format("{:.4g}", one.rate)},
                                            {"index", fmt::format("{:.4g}", one.index)},
                                            {"amount", amount(one.amount)}})};
    const auto& estimates = valued_.finding.estimates;
    if (!estimates.empty() && at < estimates.front().grid.size()) {
      const AdjustedSale& adjusted = estimates.front().grid[at];
      for (const auto& step : adjusted.steps) {
        parts.push_back(
            words_.say("value.step-rule", {{"trait", called(words_, "value.trait", step.trait)},
                                           {"percent", fmt::format("{:+.1f}", step.percent)}}));
      }
      parts.push_back(
          words_.say("answer.value.weighed", {{"amount", amount(adjusted.amount)},
                                              {"weight", fmt::format("{:.2f}", adjusted.weight)}}));
    }
    return words_.joined("join.semicolon", parts);
  }

  void counted() {
    const auto& counted = valued_.finding.evidence.counted;
    if (counted.empty()) return;
    constexpr std::size_t kMostShown = 30;
    std::vector<std::string> items;
    if (valued_.older > 0) {
      items.push_back(
          words_.say("answer.value.older", {{"count", fmt::format("{}", valued_.older)},
                                            {"most", fmt::format("{}", valued_.rules.most)}}));
    }
    for (std::size_t i = 0; i < std::min(counted.size(), kMostShown); ++i)
      items.push_back(sale(counted[i].sale) + "\n" + brought(i));
    if (counted.size() > kMostShown) {
      items.push_back(
          words_.say("answer.more", {{"count", fmt::format("{}", counted.size() - kMostShown)}}));
    }
    blocks_.emplace_back(paragraph(
        words_.say("answer.value.counted", {{"count", fmt::format("{}", counted.size())}})));
    blocks_.emplace_back(list_of(items));
  }

  void excluded() {
    const auto& excluded = valued_.finding.evidence.excluded;
    if (excluded.empty()) return;
    constexpr std::size_t kMostShown = 20;
    std::size_t shown = 0;
    std::map<std::string, std::size_t> rest;
    std::vector<std::string> items;
    for (const Exclusion& one : excluded) {
      const std::string why = called(words_, "answer.value.out", one.why);
      // What lies far off is always named.
      if (one.why != Excluded::outlier && shown == kMostShown) {
        ++rest[why];
        continue;
      }
      if (one.why != Excluded::outlier) ++shown;
      items.push_back(
          sale(one.sale) + "\n" +
          (one.sale.not_used.empty()
               ? why
               : words_.say("answer.value.about", {{"what", why}, {"which", one.sale.not_used}})));
    }
    for (const auto& [why, count] : rest) {
      items.push_back(
          words_.say("answer.value.about",
                     {{"what", words_.say("answer.more", {{"count", fmt::format("{}", count)}})},
                      {"which", why}}));
    }
    if (valued_.finding.with_outliers) {
      items.push_back(
          words_.say("answer.value.with-outliers",
                     {{"amount", price_text(*valued_.finding.with_outliers, RoundPrice::near)},
                      {"currency", valued_.question.currency}}));
    }
    blocks_.emplace_back(paragraph(
        words_.say("answer.value.excluded", {{"count", fmt::format("{}", excluded.size())}})));
    blocks_.emplace_back(list_of(items));
  }

  const Valued& valued_;
  const words::Catalogue& words_;
  Blocks blocks_;
};

}  // namespace

Blocks value_told(const Valued& valued, const words::Catalogue& words) {
  return Telling(valued, words).told();
}

}  // namespace winchbook::answers
