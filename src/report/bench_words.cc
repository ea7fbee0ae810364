#include "report/bench_words.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace winchbook::report {
namespace {

using assess::fitting::Lacking;
using assess::fitting::Pull;
using assess::fitting::RecordedDrag;
using assess::fitting::Span;
using assess::strip::Part;
using assess::strip::Spring;

constexpr double kPoundForce = 4.4482216152605;  // N
constexpr double kKilogramForce = 9.80665;       // N
constexpr double kFullPlot = 150;                // points
constexpr double kSmallPlot = 81;

std::string span_words(const Telling& telling, const Span& span, double unit, int places) {
  std::string low = number_words(telling, span.low / unit, places);
  const std::string high = number_words(telling, span.high / unit, places);
  if (low == high) return low;
  return telling.words.say("range", {{"low", low}, {"high", high}});
}

double middle(const Span& span) {
  return (span.low + span.high) / 2;
}

/// From the least that worn washers give to the most that new ones give.
Span whole(const Pull& pull) {
  return {std::min(pull.wear.low, pull.pressure.low), std::max(pull.wear.high, pull.pressure.high)};
}

std::string across(const Telling& telling, const char* key, double diameter) {
  return telling.words.say(key, {{"diameter", number_words(telling, diameter, 1)}});
}

document::CurveChart curve_of(const Telling& telling, const RecordedDrag& drag, ChartSize size) {
  document::CurveChart curve;
  curve.title = telling.words.say("drag.chart.title");
  curve.unit = telling.words.say("drag.chart.unit");
  for (const Pull& pull : drag.curve) {
    const double x = 1 - pull.fill / 100.0;
    curve.points.emplace_back(x, middle(pull.pressure));
    curve.low.emplace_back(x, whole(pull).low);
    curve.high.emplace_back(x, whole(pull).high);
  }
  curve.first_label = across(telling, "drag.chart.full", drag.curve.front().diameter);
  curve.last_label = across(telling, "drag.chart.empty", drag.curve.back().diameter);
  curve.marks = {{0.25, telling.words.say("drag.chart.three-quarters")},
                 {0.5, telling.words.say("drag.chart.half")},
                 {0.75, telling.words.say("drag.chart.quarter")}};
  curve.from_nought = true;
  const bool full = size == ChartSize::full;
  curve.height = full ? kFullPlot : kSmallPlot;
  if (full && drag.finding.setting) {
    const Span share = *drag.finding.setting;
    curve.levels = {
        {share.low, telling.words.say("drag.chart.quarter-of-line",
                                      {{"force", newtons_words(telling, share.low)}})},
        {share.high, telling.words.say("drag.chart.third-of-line",
                                       {{"force", newtons_words(telling, share.high)}})}};
  }
  curve.below =
      document::plain(telling.words.say(full ? "drag.chart.key" : "drag.chart.key-short",
                                        {{"setting", newtons_words(telling, *drag.setting)},
                                         {"low", number_words(telling, drag.friction.low, 2)},
                                         {"high", number_words(telling, drag.friction.high, 2)}}));
  return curve;
}

}  // namespace

const assess::strip::Finding& strip_of(const Telling& telling) {
  static const assess::strip::Finding kNone;
  const assess::VisitAssessment* last = telling.assessment.last();
  return last == nullptr ? kNone : last->strip;
}

std::string number_words(const Telling& telling, double value, int places) {
  auto units = static_cast<std::int64_t>(std::llround(value * std::pow(10, places)));
  while (places > 0 && units % 10 == 0) {
    units /= 10;
    --places;
  }
  return telling.words.number(base::Decimal(units, places));
}

std::string newtons_words(const Telling& telling, double newtons) {
  constexpr double kWhole = 10;
  return telling.words.say("drag.newtons",
                           {{"force", number_words(telling, newtons, newtons < kWhole ? 1 : 0)}});
}

std::string pull_words(const Telling& telling, const Span& newtons) {
  constexpr double kWhole = 10;
  const auto end = [&](double value) {
    return number_words(telling, value, value < kWhole ? 1 : 0);
  };
  const std::string low = end(newtons.low);
  const std::string high = end(newtons.high);
  const std::string both =
      low == high ? low : telling.words.say("range", {{"low", low}, {"high", high}});
  return telling.words.say("drag.newtons", {{"force", both}});
}

std::string scale_words(const Telling& telling, const Span& newtons) {
  return telling.words.say("drag.scale",
                           {{"kilograms", span_words(telling, newtons, kKilogramForce, 1)},
                            {"pounds", span_words(telling, newtons, kPoundForce, 1)}});
}

std::string parts_words(const Telling& telling, const std::vector<Part>& parts) {
  std::vector<std::string> names;
  for (const Part& part : parts) {
    const std::string name = names.empty() ? telling.words.capitalised(part.name) : part.name;
    names.push_back(part.count > 1 ? telling.words.say("bench.counted-part",
                                                       {{"name", name}, {"count", part.count}})
                                   : name);
  }
  return telling.words.joined("join.semicolon", names);
}

std::string lubricated_words(const Telling& telling, const std::vector<Part>& parts,
                             knowledge::Lubricant lubricant) {
  std::vector<Part> those;
  for (const Part& part : parts) {
    const bool told = std::any_of(those.begin(), those.end(),
                                  [&](const Part& one) { return one.name == part.name; });
    if (part.lubricant == lubricant && !told) those.push_back(part);
  }
  return parts_words(telling, those);
}

std::optional<document::Caution> spring_caution(const Telling& telling,
                                                const std::vector<Spring>& springs) {
  if (springs.empty()) return std::nullopt;
  std::vector<std::string> sentences;
  for (const Spring& spring : springs) {
    const std::string name = telling.words.capitalised(spring.name);
    if (spring.frees == Spring::Frees::loses_its_hold) {
      sentences.push_back(telling.words.say("bench.spring.loses-its-hold",
                                            {{"name", name}, {"holder", spring.held_by}}));
    } else {
      sentences.push_back(telling.words.say("bench.spring.comes-off", {{"name", name}}));
    }
    if (spring.loose_pieces > 1) {
      sentences.push_back(telling.words.say(
          "bench.spring.pieces", {{"count", spring.loose_pieces},
                                  {"spelled", telling.words.spelled(spring.loose_pieces)}}));
    }
  }
  sentences.push_back(telling.words.say("bench.spring.guard"));
  return document::Caution{telling.words.say("bench.spring.label"),
                           document::plain(joined(sentences))};
}

bool has_drag(const Telling& telling) {
  if (telling.visit.drag) return true;
  using record::Brake;
  const Brake brake = telling.record.reel.brake;
  return brake == Brake::star || brake == Brake::lever || brake == Brake::front_drag ||
         brake == Brake::rear_drag;
}

std::optional<document::ChartFigure> drag_chart(const Telling& telling, ChartSize size) {
  if (telling.recorded == nullptr || !telling.recorded->drag.lacking.empty()) return std::nullopt;
  const RecordedDrag& drag = telling.recorded->drag;
  document::CurveChart curve = curve_of(telling, drag, size);
  const Pull& full = drag.curve.front();
  const Pull& empty = drag.curve.back();
  document::ChartFigure figure{std::move(curve), ""};
  figure.alternative = telling.words.say(
      "drag.chart.alternative", {{"setting", newtons_words(telling, middle(full.pressure))},
                                 {"full", pull_words(telling, whole(full))},
                                 {"at_empty", newtons_words(telling, middle(empty.pressure))},
                                 {"empty", pull_words(telling, whole(empty))}});
  if (size == ChartSize::full && drag.finding.setting) {
    figure.alternative +=
        " " + telling.words.say("drag.chart.alternative-share",
                                {{"share", pull_words(telling, *drag.finding.setting)}});
  }
  return figure;
}

std::string lacking_words(const Telling& telling) {
  if (telling.recorded == nullptr) return "";
  const RecordedDrag& drag = telling.recorded->drag;
  if (drag.lacking.empty()) return "";
  std::vector<std::string> names;
  for (const Lacking lacking : drag.lacking) {
    names.push_back(telling.words.say("drag.lacks." + std::string(base::word_of(lacking)),
                                      {{"names", telling.words.list(drag.unmeasured)}}));
  }
  return telling.words.say("drag.lacking",
                           {{"count", names.size()}, {"names", telling.words.list(names)}});
}

std::string share_words(const Telling& telling) {
  if (telling.recorded == nullptr) return "";
  const RecordedDrag& drag = telling.recorded->drag;
  if (!drag.finding.setting) return "";
  const Span share = *drag.finding.setting;
  std::vector<std::string> sentences{
      telling.words.say("drag.share", {{"share", pull_words(telling, share)}})};
  if (drag.setting && *drag.setting < share.low) {
    sentences.push_back(telling.words.say("drag.share-below",
                                          {{"setting", newtons_words(telling, *drag.setting)}}));
  } else if (drag.setting && *drag.setting > share.high) {
    sentences.push_back(telling.words.say("drag.share-above",
                                          {{"setting", newtons_words(telling, *drag.setting)}}));
  }
  sentences.push_back(telling.words.say("drag.share-caveat"));
  return joined(sentences);
}

std::string short_share_words(const Telling& telling) {
  if (telling.recorded == nullptr || !telling.recorded->drag.finding.setting) return "";
  return telling.words.say(
      "drag.share-short",
      {{"share", pull_words(telling, *telling.recorded->drag.finding.setting)}});
}

}  // namespace winchbook::report
