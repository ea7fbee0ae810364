#include "report/courses_chart.h"

#include <utility>

namespace winchbook::report {
namespace {

namespace advice = assess::advice;

std::string course(const Telling& telling, record::Course which) {
  return telling.words.say("course." + std::string(record::word_of(which)));
}

std::string matter(const Telling& telling, record::Matter which) {
  return telling.words.say("matter." + std::string(record::word_of(which)));
}

/// What stands in the way; nothing for what is only to be minded.
std::string stop_words(const Telling& telling, const advice::Stop& stop) {
  using Why = advice::Stop::Why;
  switch (stop.why) {
    case Why::unsafe_fault:
      return telling.words.say("advice.stop.unsafe", {{"name", stop.name}});
    case Why::hazard:
    case Why::legal:
      return "";
    case Why::missing_piece:
      return telling.words.say(stop.forbids.empty() ? "advice.stop.empty" : "advice.stop.missing",
                               {{"name", stop.name}});
    case Why::must_stay:
      break;
  }
  std::vector<std::string> pieces;
  pieces.reserve(stop.pieces.size());
  for (const record::PieceId& id : stop.pieces)
    pieces.push_back(telling.piece_name(id));
  return telling.words.say("advice.stop.must-stay",
                           {{"count", pieces.size()}, {"pieces", telling.words.list(pieces)}});
}

/// Flags of one kind in one sentence.
std::string minded(const Telling& telling, advice::Stop::Why why, std::string_view key) {
  std::string names;
  for (const advice::Stop& stop : telling.courses->stops) {
    if (stop.why == why) names += (names.empty() ? "" : "; ") + stop.name;
  }
  return names.empty() ? "" : telling.words.say(key, {{"names", names}});
}

std::string flip_words(const Telling& telling, const advice::Flip& flip) {
  if (flip.kind == advice::Flip::Kind::cost) {
    return telling.words.say("advice.flip-cost",
                             {{"count", flip.cost_points}, {"course", course(telling, flip.then)}});
  }
  return telling.words.say("advice.flip-swap", {{"first", matter(telling, flip.first)},
                                                {"second", matter(telling, flip.second)},
                                                {"course", course(telling, flip.then)}});
}

document::ChartFigure bars(const Telling& telling, const advice::Finding& finding) {
  const auto& chosen = telling.visit.advice ? telling.visit.advice->chosen : std::nullopt;
  const auto& filled = chosen ? chosen : finding.answer;
  document::BarChart chart;
  std::vector<std::string> spoken;
  for (const advice::Scored& one : finding.courses) {
    constexpr int kHundred = 100;
    const std::int64_t points = one.total.rounded(kHundred);
    const bool is_filled = filled == one.course;
    std::string figures =
        one.forbidden
            ? telling.words.say("advice.ruled-out")
            : telling.words.say("advice.points", {{"points", static_cast<std::size_t>(points)},
                                                  {"chosen", chosen == one.course ? "yes" : "no"}});
    spoken.push_back(telling.words.say(
        "advice.bar", {{"course", course(telling, one.course)}, {"figures", figures}}));
    chart.bars.push_back({telling.words.capitalised(course(telling, one.course)),
                          one.forbidden ? 0 : static_cast<double>(points), std::move(figures),
                          is_filled});
  }
  return {std::move(chart),
          joined({telling.words.say("advice.bars"), telling.words.list(spoken) + "."}),
          document::Width::main};
}

std::string answer(const Telling& telling, const advice::Finding& finding) {
  std::vector<std::string> sentences;
  sentences.push_back(telling.words.say(finding.ranking.empty() ? "advice.weighed-alike"
                                                                : "advice.weighed-ranked"));
  if (!finding.answer) {
    sentences.push_back(telling.words.say("advice.answer-none"));
    return joined(sentences);
  }
  sentences.push_back(
      telling.words.say("advice.answer", {{"course", course(telling, *finding.answer)}}));
  if (finding.runner_up) {
    sentences.push_back(
        telling.words.say("advice.runner-up", {{"course", course(telling, *finding.runner_up)}}));
  }
  for (const advice::Flip& flip : finding.flips)
    sentences.push_back(flip_words(telling, flip));
  if (finding.flips.empty()) sentences.push_back(telling.words.say("advice.flip-none"));
  const auto& own = telling.visit.advice;
  if (own && own->chosen && own->chosen != finding.answer) {
    sentences.push_back(telling.words.say("advice.decision-differs"));
  }
  return joined(sentences);
}

}  // namespace

void add_weighed_courses(const Telling& telling, document::Chapter& chapter) {
  if (telling.courses == nullptr) return;
  const advice::Finding& finding = *telling.courses;
  chapter.blocks.emplace_back(document::Subhead{telling.words.say("advice.weighed")});
  chapter.blocks.emplace_back(bars(telling, finding));
  document::Paragraph said = telling.sentence(answer(telling, finding));
  said.manner = document::ParagraphManner::unindented;
  chapter.blocks.emplace_back(std::move(said));
  std::vector<std::string> stops;
  for (const advice::Stop& stop : finding.stops)
    stops.push_back(stop_words(telling, stop));
  stops.push_back(minded(telling, advice::Stop::Why::hazard, "advice.stop.hazard"));
  stops.push_back(minded(telling, advice::Stop::Why::legal, "advice.stop.legal"));
  if (!joined(stops).empty()) chapter.blocks.emplace_back(telling.sentence(joined(stops)));
}

}  // namespace winchbook::report
