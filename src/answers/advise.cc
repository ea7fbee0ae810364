#include "answers/advise.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "answers/assessed.h"
#include "assess/value/apart.h"
#include "json/json.h"
#include "record/enum_words.h"
#include "record/ranking.h"

namespace winchbook::answers {
namespace {

namespace advice = assess::advice;
using advice::Flip;
using advice::Scored;
using advice::Stop;
using json::Json;
using record::Course;
using record::Matter;

/// A reel to value, and by what its courses are weighed.
struct AdviseRequest : ValueRequest {
  record::Ranking ranking;
};

forms::Form form(AdviseRequest& request) {
  forms::Form all = value_form(request, "the answer as JSON (schemas/advise.schema.json)");
  all.insert(all.begin() + 1,
             forms::field("--rank",
                          "what matters, the most important first: "
                          "memory,use,originality,value,way-back,cost; left out, the owner's "
                          "ranking in the record",
                          request.ranking));
  return all;
}

base::Result<forms::Outcome> run(const AdviseRequest& request, forms::Setting& setting) {
  const auto advised = advise(setting.library, request, request.ranking.matters);
  if (!advised) return advised.faults();
  if (request.json) return forms::Outcome{advice_as_json(*advised), {}, {}};
  return tell(setting, advised->loaded.record.language,
              [&](const words::Catalogue& words) { return advice_told(*advised, words); });
}

/// "way_back": its word as the name of a member.
std::string key_of(Matter matter) {
  std::string key(record::word_of(matter));
  std::replace(key.begin(), key.end(), '-', '_');
  return key;
}

/// The middle after each course; that of keeping it as found where the sales do not tell the two
/// apart.
std::array<std::optional<double>, advice::kCourses> values_of(const Valued& valued) {
  using assess::value::Estimate;
  using assess::value::Method;
  std::array<std::optional<double>, advice::kCourses> values;
  const Estimate* kept = nullptr;
  for (std::size_t i = 0; i < valued.courses.size(); ++i) {
    const Estimate& estimate = estimate_of(valued.finding, valued.courses[i]);
    if (estimate.method == Method::none) continue;
    if (valued.courses[i].course == Course::keep_as_found) kept = &estimate;
    const bool apart = kept == nullptr || assess::value::told_apart(*kept, estimate);
    values.at(i) = apart ? estimate.middle : kept->middle;
  }
  return values;
}

}  // namespace

base::Result<Advised> advise(library::Library& library, const ValueRequest& request,
                             const std::vector<Matter>& ranking) {
  auto loaded = library.record(request.record);
  if (!loaded) return loaded.faults();
  const auto found = assessed(library, loaded->record);
  if (!found) return found.faults();
  auto valued = value(library, request, std::move(loaded).value(), *found);
  if (!valued) return valued.faults();
  return advise(std::move(valued).value(), *found, ranking);
}

base::Result<Advised> advise(Valued valued, const assess::Assessment& assessment,
                             const std::vector<Matter>& ranking) {
  const record::Record& record = valued.loaded.record;
  const record::Visit* visit = last_visit(record);
  if (visit == nullptr) {
    return base::error_at({valued.loaded.file, 0, 0}, "there is no visit to advise on",
                          "take the reel in first: winchbook intake", "advice-visit");
  }
  const auto values = values_of(valued);
  const assess::VisitAssessment& last = *assessment.last();
  Advised advised;
  advised.finding = advice::advise(
      {record, *visit, last.originality, last.condition, valued.bench->scores, values},
      ranking.empty() ? visit->wishes.ranking : ranking);
  advised.loaded = std::move(valued.loaded);
  return advised;
}

std::string advice_as_json(const Advised& advised) {
  const advice::Finding& finding = advised.finding;
  const auto word = [](const auto& of) { return record::word_of(of); };
  const auto course = [&](const std::optional<Course>& of) { return json::or_null(of, word); };
  const auto points = [](const base::Ratio& of) {
    return static_cast<double>(of.rounded(10000)) / 100.0;
  };
  Json weights = Json::object();
  for (std::size_t i = 0; i < finding.weights.size(); ++i) {
    weights[key_of(advice::kAllMatters.at(i))] =
        static_cast<double>(finding.weights.at(i).rounded(1000000)) / 1e6;
  }
  Json courses = Json::array();
  for (const Scored& one : finding.courses) {
    Json scores = Json::object();
    for (std::size_t i = 0; i < one.scores.size(); ++i) {
      scores[key_of(advice::kAllMatters.at(i))] = {{"points", one.scores.at(i).points},
                                                   {"from", base::word_of(one.scores.at(i).from)}};
    }
    courses.push_back({{"course", record::word_of(one.course)},
                       {"forbidden", one.forbidden},
                       {"total", points(one.total)},
                       {"scores", std::move(scores)}});
  }
  Json stops = Json::array();
  for (const Stop& stop : finding.stops) {
    stops.push_back(
        {{"reason", base::word_of(stop.why)},
         {"name", stop.name},
         {"forbids", json::list(stop.forbids, word)},
         {"pieces", json::list(stop.pieces, [](const auto& piece) { return piece.text; })}});
  }
  Json differences = Json::array();
  for (const advice::Reason& one : finding.reasons) {
    differences.push_back({{"matter", record::word_of(one.matter)},
                           {"points", one.points},
                           {"runner_up_points", one.other},
                           {"weighted", points(one.counts)}});
  }
  Json flips = Json::array();
  for (const Flip& flip : finding.flips) {
    const bool swap = flip.kind == Flip::Kind::swap;
    flips.push_back({{"kind", base::word_of(flip.kind)},
                     {"first", swap ? Json(record::word_of(flip.first)) : Json(nullptr)},
                     {"second", swap ? Json(record::word_of(flip.second)) : Json(nullptr)},
                     {"points", swap ? Json(nullptr) : Json(flip.points)},
                     {"dearer_by", flip.dearer_by ? json::money(*flip.dearer_by) : Json(nullptr)},
                     {"then", record::word_of(flip.then)}});
  }
  const record::Visit* visit = last_visit(advised.loaded.record);
  const bool decided = visit != nullptr && visit->advice && visit->advice->chosen;
  const Json all{{"answer", course(finding.answer)},
                 {"runner_up", course(finding.runner_up)},
                 {"chosen", decided ? course(visit->advice->chosen) : Json(nullptr)},
                 {"ranking", json::list(finding.ranking, word)},
                 {"weights", std::move(weights)},
                 {"courses", std::move(courses)},
                 {"differences", std::move(differences)},
                 {"stops", std::move(stops)},
                 {"flips", std::move(flips)}};
  return json::answer("advise", all);
}

forms::Job advise_job() {
  return forms::job_of(form, run);
}

}  // namespace winchbook::answers
