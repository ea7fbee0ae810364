#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "answers/advise.h"
#include "record/enum_words.h"

namespace winchbook::answers {
namespace {

namespace advice = assess::advice;
using advice::Flip;
using advice::Scored;
using advice::Stop;
using record::Course;
using record::Matter;

/// The answer, a part after the other.
class Telling {
 public:
  Telling(const Advised& advised, const words::Catalogue& words)
      : record_(advised.loaded.record), finding_(advised.finding), words_(words) {}

  Blocks told() && {
    blocks_.emplace_back(paragraph(answer()));
    blocks_.emplace_back(scores());
    if (finding_.answer) flips();
    const record::Visit* visit = last_visit(record_);
    if (visit != nullptr && visit->advice && visit->advice->chosen) {
      blocks_.emplace_back(paragraph(
          words_.say("answer.advise.chose", {{"course", named(*visit->advice->chosen)}})));
    }
    blocks_.emplace_back(paragraph(words_.say("answer.advise.owner-decides")));
    return std::move(blocks_);
  }

 private:
  std::string named(Course course) const { return called(words_, "course", course); }
  std::string named(Matter matter) const { return called(words_, "matter", matter); }

  /// The advice and what speaks for it, in lines.
  std::string answer() const {
    std::string text =
        finding_.answer ? words_.say("answer.advise.advice", {{"course", named(*finding_.answer)}})
                        : words_.say("answer.advise.none");
    if (finding_.answer && finding_.runner_up)
      text += " " + words_.say("answer.advise.next", {{"course", named(*finding_.runner_up)}});
    std::vector<std::string> ranked;
    for (const Matter matter : finding_.ranking)
      ranked.push_back(named(matter));
    text += "\n" + (ranked.empty() ? words_.say("answer.advise.not-ranked")
                                   : words_.say("answer.advise.ranked",
                                                {{"list", words_.joined("join.comma", ranked)}}));
    if (finding_.answer && finding_.runner_up) {
      const std::string good = reasons(true);
      const std::string bad = reasons(false);
      if (!good.empty()) {
        text += "\n" + words_.say("answer.advise.for",
                                  {{"other", named(*finding_.runner_up)}, {"list", good}});
      }
      if (!bad.empty()) text += "\n" + words_.say("answer.advise.against", {{"list", bad}});
    }
    for (const Stop& stop : finding_.stops)
      text += "\n" + sentence(stop);
    return text;
  }

  /// "use, 67 of 100 against 33", of those that count for the answer, or of those against it.
  std::string reasons(bool for_it) const {
    std::vector<std::string> list;
    const base::Ratio nothing;
    std::vector<advice::Reason> heaviest_first = finding_.reasons;
    if (!for_it) std::reverse(heaviest_first.begin(), heaviest_first.end());
    for (const advice::Reason& one : heaviest_first) {
      if ((one.counts > nothing) != for_it) continue;
      list.push_back(words_.say(
          "answer.advise.reason",
          {{"matter", named(one.matter)}, {"points", one.points}, {"other", one.other}}));
    }
    return words_.joined("join.semicolon", list);
  }

  std::string sentence(const Stop& stop) const {
    const bool empty = stop.why == Stop::Why::missing_piece && stop.forbids.empty();
    std::vector<std::string> names;
    for (const record::PieceId& id : stop.pieces) {
      const record::Piece* piece = find(record_, id);
      names.push_back(piece == nullptr ? id.text : piece->name);
    }
    const std::string key = empty ? "answer.advise.stop.empty"
                                  : fmt::format("answer.advise.stop.{}", base::word_of(stop.why));
    return words_.say(key, {{"name", stop.name}, {"pieces", words_.joined("join.comma", names)}});
  }

  document::Table scores() const {
    document::Table table;
    table.columns.resize(advice::kAllMatters.size() + 2, {document::Column::Align::numbers});
    table.columns.front() = {document::Column::Align::words, 0, true};
    std::vector<std::string> head{""};
    std::vector<std::string> weights{words_.say("answer.advise.weight")};
    for (std::size_t i = 0; i < advice::kAllMatters.size(); ++i) {
      head.push_back(called(words_, "answer.advise.column", advice::kAllMatters.at(i)));
      weights.push_back(
          fmt::format("{:.2f}", static_cast<double>(finding_.weights.at(i).rounded(100)) / 100));
    }
    head.push_back(words_.say("answer.advise.together"));
    weights.emplace_back();
    table.head = {row_of(head)};
    table.rows = {row_of(weights)};
    for (const Scored& one : finding_.courses) {
      std::vector<std::string> cells{named(one.course)};
      for (const advice::Score& score : one.scores) {
        const char* mark = score.from == advice::ScoreFrom::bench ? "*" : "";
        cells.push_back(fmt::format("{}{}", score.points, mark));
      }
      cells.push_back(one.forbidden ? "–" : fmt::format("{}", one.total.rounded(100)));
      table.rows.push_back(row_of(cells));
    }
    table.below = document::plain(words_.say("answer.advise.points"));
    return table;
  }

  std::string sentence(const Flip& flip) const {
    const std::string answer = named(*finding_.answer);
    const std::string then = named(flip.then);
    if (flip.kind == Flip::Kind::swap) {
      return words_.say(
          "answer.advise.flip.swap",
          {{"first", named(flip.first)}, {"second", named(flip.second)}, {"then", then}});
    }
    if (flip.kind == Flip::Kind::cost && flip.dearer_by) {
      return words_.say("answer.advise.flip.dearer",
                        {{"answer", answer},
                         {"amount", fmt::format("{} {}", flip.dearer_by->amount.text(),
                                                flip.dearer_by->currency)},
                         {"then", then}});
    }
    return words_.say(
        flip.kind == Flip::Kind::cost ? "answer.advise.flip.cost" : "answer.advise.flip.value",
        {{"answer", answer}, {"points", flip.points}, {"then", then}});
  }

  void flips() {
    std::vector<std::string> items;
    for (const Flip& flip : finding_.flips)
      items.push_back(sentence(flip));
    if (items.empty()) items.push_back(words_.say("answer.advise.nothing-near"));
    blocks_.emplace_back(paragraph(words_.say("answer.advise.flips")));
    blocks_.emplace_back(list_of(items));
  }

  const record::Record& record_;
  const advice::Finding& finding_;
  const words::Catalogue& words_;
  Blocks blocks_;
};

}  // namespace

Blocks advice_told(const Advised& advised, const words::Catalogue& words) {
  return Telling(advised, words).told();
}

}  // namespace winchbook::answers
