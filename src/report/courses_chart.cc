#include "report/courses_chart.h"
#include "report/told.h"

#include <algorithm>
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
  std::vector<std::string> names;
  for (const advice::Stop& stop : telling.courses->stops) {
    if (stop.why == why) names.push_back(stop.name);
  }
  if (names.empty()) return "";
  return telling.words.say(key, {{"names", telling.words.joined("join.semicolon", names)}});
}

std::string flip_words(const Telling& telling, const advice::Flip& flip) {
  const auto& words = telling.words;
  const std::string then = course(telling, flip.then);
  const bool swap = flip.kind == advice::Flip::Kind::swap;
  const char* kind = swap                                     ? "swap"
                     : flip.kind == advice::Flip::Kind::value ? "value"
                     : flip.dearer_by                         ? "dearer"
                                                              : "cost";
  return words.say("advice.flip",
                   {{"kind", kind},
                    {"first", swap ? matter(telling, flip.first) : ""},
                    {"second", swap ? matter(telling, flip.second) : ""},
                    {"count", flip.points},
                    {"amount", flip.dearer_by ? words.whole_money(*flip.dearer_by) : ""},
                    {"course", then}});
}

/// What speaks for the answer, or against it; empty when nothing does.
std::string reason_words(const Telling& telling, const advice::Finding& finding, bool for_it) {
  std::vector<std::string> list;
  const base::Ratio nothing;
  for (const advice::Reason& one : finding.reasons) {
    if ((one.counts > nothing) != for_it) continue;
    list.push_back(telling.words.say(
        "advice.reason",
        {{"matter", matter(telling, one.matter)}, {"points", one.points}, {"other", one.other}}));
  }
  if (list.empty()) return "";
  if (!for_it) std::reverse(list.begin(), list.end());  // what weighs most first
  return telling.words.say(for_it ? "advice.reasons-for" : "advice.reasons-against",
                           {{"list", telling.words.list(list)}});
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
  if (!finding.answer) return telling.words.say("advice.answer-none");
  std::vector<std::string> sentences{
      telling.words.say("advice.answer", {{"course", course(telling, *finding.answer)}})};
  if (finding.runner_up) {
    sentences.push_back(
        telling.words.say("advice.runner-up", {{"course", course(telling, *finding.runner_up)}}));
  }
  sentences.push_back(reason_words(telling, finding, true));
  sentences.push_back(reason_words(telling, finding, false));
  const auto& own = telling.visit.advice;
  if (own && own->chosen && own->chosen != finding.answer) {
    sentences.push_back(telling.words.say("advice.decision-differs"));
  }
  return joined(sentences);
}

std::string change(const Telling& telling, const advice::Finding& finding) {
  std::vector<std::string> sentences;
  for (const advice::Flip& flip : finding.flips)
    sentences.push_back(flip_words(telling, flip));
  if (finding.flips.empty()) sentences.push_back(telling.words.say("advice.flip-none"));
  return joined(sentences);
}

/// What stands in the way of a course, and what is minded in each.
std::vector<document::Beside> stop_notes(const Telling& telling, const advice::Finding& finding) {
  std::vector<std::string> stops;
  for (const advice::Stop& stop : finding.stops)
    stops.push_back(stop_words(telling, stop));
  using advice::Stop;
  std::vector<document::Beside> notes;
  const auto note = [&notes](std::string words, bool warns = false) {
    if (words.empty()) return;
    notes.emplace_back(document::SideNote{document::plain(std::move(words)), warns});
  };
  note(joined(stops));
  note(minded(telling, Stop::Why::hazard, "advice.stop.hazard"), true);
  note(minded(telling, Stop::Why::legal, "advice.stop.legal"));
  return notes;
}

}  // namespace

void add_weighed_courses(const Telling& telling, document::Chapter& chapter) {
  if (telling.courses == nullptr) return;
  const advice::Finding& finding = *telling.courses;
  document::Subhead subhead{telling.words.say("advice.weighed")};
  subhead.beside.emplace_back(document::SideNote{document::plain(telling.words.say(
      "advice.weighed-by", {{"ranked", finding.ranking.empty() ? "no" : "yes"}}))});
  chapter.blocks.emplace_back(std::move(subhead));
  chapter.blocks.emplace_back(bars(telling, finding));
  document::Paragraph said = telling.sentence(answer(telling, finding));
  said.manner = document::ParagraphManner::unindented;
  said.beside = stop_notes(telling, finding);
  chapter.blocks.emplace_back(std::move(said)).tells = {
      told_course("advice:answer", finding.answer),
      told_course("advice.runner-up", finding.runner_up)};
  if (!finding.answer) return;
  document::Paragraph changed = telling.sentence({});
  changed.words = document::with_lead(telling.words.say("advice.change"), change(telling, finding));
  chapter.blocks.emplace_back(std::move(changed));
}

}  // namespace winchbook::report
