#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "answers/date.h"
#include "answers/date_words.h"

namespace winchbook::answers {
namespace {

namespace dating = assess::dating;
using dating::Finding;
using dating::LeftOut;
using record::EndFirmness;

/// The answer, a part after the other.
class Telling {
 public:
  Telling(const Graded& graded, const words::Catalogue& words)
      : record_(graded.loaded.record), finding_(graded.assessment.dating), words_(words) {}

  Blocks told() && {
    blocks_.emplace_back(paragraph(reel_name(record_, words_)));
    blocks_.emplace_back(paragraph(answer()));
    if (known()) ends();
    if (finding_.range50 && finding_.range90) {
      blocks_.emplace_back(
          next_line(words_.say("answer.date.likeliest", {{"half", years(*finding_.range50)},
                                                         {"most", years(*finding_.range90)}})));
    }
    steps();
    disagreements();
    doubts();
    left_out();
    assumptions();
    return std::move(blocks_);
  }

 private:
  std::string answer() const {
    std::string out;
    if (unsettled()) {
      const auto conflict =
          std::find_if(finding_.conflicts.begin(), finding_.conflicts.end(),
                       [](const auto& one) { return one.tier == dating::Tier::hard; });
      out = words_.say("answer.date.unsettled", {{"ways", ways(*conflict)}, {"made", made_in()}});
    } else {
      out = words_.say("answer.date.settled", {{"made", made_in()}});
      for (const dating::Suspect& suspect : finding_.suspects) {
        out += " " + words_.say("answer.date.does-not-fit",
                                {{"piece", piece_name(record_, suspect.piece, words_)}});
      }
    }
    if (finding_.attributed && known()) out += " " + words_.say("answer.date.attributed");
    return out;
  }

  bool known() const { return finding_.window.not_before || finding_.window.not_after; }

  bool unsettled() const {
    return std::any_of(finding_.conflicts.begin(), finding_.conflicts.end(), [](const auto& one) {
      return one.tier == dating::Tier::hard && one.alternatives_in_all > 1;
    });
  }

  /// "It was made between 1947 and 1948".
  std::string made_in() const {
    const auto& first = finding_.window.not_before;
    const auto& last = finding_.window.not_after;
    if (!first && !last) return words_.say("answer.date.made.unknown");
    const auto soft = [](const auto& end) { return end && end->firmness == EndFirmness::soft; };
    const auto year = [](const auto& end) {
      return end ? fmt::format("{}", end->day.year) : std::string();
    };
    const char* key = "answer.date.made.between";
    if (!last) {
      key = "answer.date.made.or-later";
    } else if (!first) {
      key = "answer.date.made.or-before";
    } else if (first->day.year == last->day.year) {
      key = "answer.date.made.in";
    } else if (last->day.year - first->day.year == 1) {
      key = "answer.date.made.either";
    }
    return words_.say(key, {{"how", soft(first) || soft(last) ? "likely" : "surely"},
                            {"first", year(first)},
                            {"last", year(last)}});
  }

  std::vector<std::string> end_cells(const char* side,
                                     const std::optional<dating::WindowEnd>& end) const {
    if (!end) return {words_.say(side), words_.say("answer.no-end")};
    return {words_.say(side),
            words_.say("answer.date.end",
                       {{"day", words_.day(end->day)},
                        {"speaker", speaker(record_, finding_.evidence[end->evidence], words_)},
                        {"firmness", named("answer.date.firmness", end->firmness)}})};
  }

  void ends() {
    document::Table table;
    table.columns = {{document::Column::Align::words, 0, true}, {}};
    table.rows = {row_of(end_cells("answer.not-before", finding_.window.not_before)),
                  row_of(end_cells("answer.not-after", finding_.window.not_after))};
    blocks_.emplace_back(std::move(table));
  }

  template <class Value> std::string named(const char* stem, Value value) const {
    return words_.say(fmt::format("{}.{}", stem, term(value).word));
  }

  std::string years(const dating::YearRange& range) const {
    if (range.first == range.last) return fmt::format("{}", range.first);
    return words_.say("range", {{"low", fmt::format("{}", range.first)},
                                {"high", fmt::format("{}", range.last)}});
  }

  std::string because(std::size_t i) const {
    const dating::Evidence& evidence = finding_.evidence[i];
    std::string out = evidence.because;
    if (out.empty() && evidence.marking) {
      const record::Marking* mark = find(record_, *evidence.marking);
      if (mark != nullptr && mark->says) out = plain_text(record_, mark->says->because);
    }
    if (!evidence.source.empty()) out += (out.empty() ? "" : " ") + ("[" + evidence.source + "]");
    return out;
  }

  void heading(const char* key) { blocks_.emplace_back(document::Subhead{words_.say(key)}); }

  void steps() {
    if (finding_.steps.empty()) return;
    document::List list{true, {}};
    for (const dating::Step& step : finding_.steps) {
      const dating::Evidence& evidence = finding_.evidence[step.evidence];
      const bool begins = step.side == dating::Side::not_before;
      const dating::End& end = begins ? *evidence.not_before : *evidence.not_after;
      list.items.push_back(document::in_lines(
          words_.say("answer.date.step", {{"side", named("answer", step.side)},
                                          {"day", words_.day(end.day)},
                                          {"speaker", speaker(record_, evidence, words_)},
                                          {"firm", named("answer.date.firm", end.firmness)},
                                          {"basis", named("answer.date.basis", end.basis)},
                                          {"because", because(step.evidence)}})));
    }
    heading("answer.date.steps");
    blocks_.emplace_back(std::move(list));
  }

  std::string names(const std::vector<record::PieceId>& pieces) const {
    std::vector<std::string> all;
    for (const record::PieceId& piece : pieces)
      all.push_back(piece_name(record_, piece, words_));
    return words_.joined("answer.date.and", all);
  }

  std::string span(const dating::DaySpan& days) const {
    const std::string first = days.first ? words_.day(*days.first) : "";
    const std::string last = days.last ? words_.day(*days.last) : "";
    if (days.first && days.last) return words_.say("date.span", {{"first", first}, {"last", last}});
    if (days.first) return words_.say("date.from", {{"first", first}});
    return days.last ? words_.say("date.until", {{"last", last}})
                     : words_.say("answer.date.any-time");
  }

  std::string ways(const dating::Conflict& conflict) const {
    if (conflict.alternatives_in_all == 1) {
      const dating::Alternative& way = conflict.alternatives.front();
      return words_.say("answer.date.one-way",
                        {{"pieces", names(way.must_go)}, {"years", span(way.agreed)}});
    }
    std::vector<std::string> all;
    for (const dating::Alternative& way : conflict.alternatives) {
      all.push_back(words_.say("answer.date.way",
                               {{"pieces", names(way.must_go)}, {"years", span(way.agreed)}}));
    }
    if (conflict.alternatives_in_all > conflict.alternatives.size()) {
      all.push_back(words_.say("answer.date.more-ways",
                               {{"count", fmt::format("{}", conflict.alternatives_in_all -
                                                                conflict.alternatives.size())}}));
    }
    return words_.say("answer.date.ways", {{"ways", words_.joined("answer.date.or", all)}});
  }

  void disagreements() {
    if (finding_.conflicts.empty()) return;
    heading("answer.date.disagreements");
    for (const dating::Conflict& conflict : finding_.conflicts) {
      blocks_.emplace_back(next_line(words_.say(
          "answer.date.conflict",
          {{"tier", named("answer.date.tier", conflict.tier)}, {"ways", ways(conflict)}})));
    }
    std::vector<std::string> items;
    for (const dating::Suspect& suspect : finding_.suspects) {
      std::string item = proposal(suspect);
      for (const std::size_t i : suspect.evidence) {
        item += "\n" + words_.say("answer.date.because",
                                  {{"speaker", speaker(record_, finding_.evidence[i], words_)},
                                   {"because", because(i)}});
      }
      items.push_back(std::move(item));
    }
    blocks_.emplace_back(list_of(items));
  }

  std::string proposal(const dating::Suspect& suspect) const {
    return words_.say("answer.date.suspect",
                      {{"piece", piece_name(record_, suspect.piece, words_)},
                       {"own", suspect.own.empty() ? words_.say("answer.date.two-things")
                                                   : span(suspect.own)},
                       {"others", span(suspect.others)}}) +
           " " +
           words_.say(suspect.already_open ? "answer.date.left-open" : "answer.date.proposed");
  }

  void doubts() {
    if (finding_.warnings.empty()) return;
    std::vector<std::string> items;
    for (const dating::Warning& warning : finding_.warnings) {
      std::string what =
          warning.words.empty() ? named("answer.date.warning", warning.kind) : warning.words;
      if (warning.evidence) {
        const std::string side = warning.side ? named("answer", *warning.side) : std::string();
        const std::string who = words_.joined(
            "join.comma", {speaker(record_, finding_.evidence[*warning.evidence], words_), side});
        what = words_.say("answer.date.of", {{"who", who}, {"what", what}});
      }
      items.push_back(what + ".");
    }
    heading("answer.doubts");
    blocks_.emplace_back(list_of(items));
  }

  /// Nothing of the year; or that what a bench made was made at the bench.
  static bool says_nothing(const dating::Evidence& evidence) {
    if (evidence.grounds == dating::Grounds::making) return true;
    return !evidence.not_before && !evidence.not_after;
  }

  void left_out() {
    std::vector<std::string> items;
    for (std::size_t i = 0; i < finding_.evidence.size(); ++i) {
      const LeftOut reason = finding_.uses[i].left_out;
      if (reason == LeftOut::no || says_nothing(finding_.evidence[i])) continue;
      items.push_back(
          words_.say("answer.date.of", {{"who", speaker(record_, finding_.evidence[i], words_)},
                                        {"what", named("answer.date.left-out", reason)}}) +
          ".");
    }
    if (items.empty()) return;
    heading("answer.date.left-out");
    blocks_.emplace_back(list_of(items));
  }

  void assumptions() {
    if (finding_.profile.empty()) return;
    std::vector<std::string> items;
    for (const dating::ProfileAssumption& one : dating::kProfileAssumptions)
      items.push_back(words_.say(fmt::format("answer.date.assumes.{}", one.word)));
    heading("answer.date.assumes");
    blocks_.emplace_back(list_of(items));
  }

  const record::Record& record_;
  const Finding& finding_;
  const words::Catalogue& words_;
  Blocks blocks_;
};

}  // namespace

Blocks date_told(const Graded& graded, const words::Catalogue& words) {
  return Telling(graded, words).told();
}

}  // namespace winchbook::answers
