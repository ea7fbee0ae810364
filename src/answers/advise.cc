#include "answers/advise.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "answers/assessed.h"
#include "answers/value_words.h"
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

using answers::spoken;

std::string spoken(Matter matter) {
  return matter == Matter::way_back ? "the way back" : std::string(record::word_of(matter));
}

std::string piece_names(const record::Record& record, const std::vector<record::PieceId>& ids) {
  std::string names;
  for (const record::PieceId& id : ids) {
    const record::Piece* piece = find(record, id);
    names += (names.empty() ? "" : ", ") + (piece == nullptr ? id.text : piece->name);
  }
  return names;
}

std::string stop_sentence(const record::Record& record, const Stop& stop) {
  switch (stop.why) {
    case Stop::Why::unsafe_fault:
      return fmt::format("It is not fished: {} is unsafe and is still there.", stop.name);
    case Stop::Why::hazard:
      return fmt::format("Minded in every course: {}. Local rules come first.", stop.name);
    case Stop::Why::legal:
      return fmt::format(
          "Minded in every course: {}. Ask before it is sold, posted or taken abroad.", stop.name);
    case Stop::Why::missing_piece:
      return stop.forbids.empty()
                 ? fmt::format("Empty as it stands: {}.", stop.name)
                 : fmt::format("It cannot be made to fish: nothing is in the place \"{}\".",
                               stop.name);
    case Stop::Why::must_stay:
      break;
  }
  return fmt::format("It is not rebuilt: these must stay: {}.", piece_names(record, stop.pieces));
}

std::string flip_sentence(const Flip& flip, Course answer) {
  if (flip.kind == Flip::Kind::cost) {
    const std::string more =
        flip.dearer_by
            ? fmt::format("about {} {}", flip.dearer_by->amount.text(), flip.dearer_by->currency)
            : fmt::format("{} points", flip.points);
    return fmt::format("If to {} cost {} more: {}.", spoken(answer), more, spoken(flip.then));
  }
  if (flip.kind == Flip::Kind::value) {
    return fmt::format("If to {} left it worth {} in a hundred of the best value less: {}.",
                       spoken(answer), flip.points, spoken(flip.then));
  }
  return fmt::format("If {} stood where {} stands, and the other way round: {}.",
                     spoken(flip.first), spoken(flip.second), spoken(flip.then));
}

/// "use, 67 of 100 against 33", of those that count for the answer, or of those against it.
std::string reasons(const advice::Finding& finding, bool for_it) {
  std::string list;
  const base::Ratio nothing;
  std::vector<advice::Reason> heaviest_first = finding.reasons;
  if (!for_it) std::reverse(heaviest_first.begin(), heaviest_first.end());
  for (const advice::Reason& one : heaviest_first) {
    if ((one.counts > nothing) != for_it) continue;
    list += fmt::format("{}{}, {} of 100 against {}", list.empty() ? "" : "; ", spoken(one.matter),
                        one.points, one.other);
  }
  return list;
}

void say_reasons(const advice::Finding& finding, std::string& text) {
  if (!finding.answer || !finding.runner_up) return;
  const std::string good = reasons(finding, true);
  const std::string bad = reasons(finding, false);
  const std::string_view other = spoken(*finding.runner_up);
  if (!good.empty()) text += fmt::format("For it, beside \"{}\": {}.\n", other, good);
  if (!bad.empty()) text += fmt::format("Against it: {}.\n", bad);
}

void say_scores(const Advised& advised, std::string& text) {
  text += fmt::format("\n{:<20}", "");
  for (const Matter matter : advice::kAllMatters)
    text += fmt::format("{:>12}", record::word_of(matter));
  text += fmt::format("{:>10}\n{:<20}", "together", "weight");
  for (const base::Ratio& weight : advised.finding.weights) {
    text += fmt::format("{:>12.2f}", static_cast<double>(weight.rounded(100)) / 100);
  }
  text += "\n";
  for (const Scored& one : advised.finding.courses) {
    text += fmt::format("{:<20}", spoken(one.course));
    for (const advice::Score& score : one.scores) {
      const char* mark = score.from == advice::ScoreFrom::bench ? "*" : "";
      text += fmt::format("{:>12}", fmt::format("{}{}", score.points, mark));
    }
    text += one.forbidden ? "         –\n" : fmt::format("{:>10}\n", one.total.rounded(100));
  }
  text +=
      "* the bench's own points for the course (shared/advice/courses.xml); the rest follow from "
      "the "
      "record.\n";
}

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
  return forms::Outcome{
      request.json ? advice_as_json(*advised) : advice_in_words(*advised), {}, {}};
}

/// "way_back": its word as the name of a member.
std::string key_of(Matter matter) {
  std::string key(record::word_of(matter));
  std::replace(key.begin(), key.end(), '-', '_');
  return key;
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
  std::array<std::optional<double>, advice::kCourses> values;
  for (std::size_t i = 0; i < valued.courses.size(); ++i) {
    const auto& estimate = estimate_of(valued.finding, valued.courses[i]);
    if (estimate.method != assess::value::Method::none) values.at(i) = estimate.middle;
  }
  const assess::VisitAssessment& last = *assessment.last();
  Advised advised;
  advised.finding = advice::advise(
      {record, *visit, last.originality, last.condition, valued.bench->scores, values},
      ranking.empty() ? visit->wishes.ranking : ranking);
  advised.loaded = std::move(valued.loaded);
  return advised;
}

std::string advice_in_words(const Advised& advised) {
  const advice::Finding& finding = advised.finding;
  const record::Record& record = advised.loaded.record;
  std::string text;
  if (finding.answer) {
    text += fmt::format("The advice: {}.", spoken(*finding.answer));
    if (finding.runner_up) text += fmt::format(" Next: {}.", spoken(*finding.runner_up));
    text += "\n";
  } else {
    text += "No course can be advised; see what stands in the way.\n";
  }
  if (finding.ranking.empty()) {
    text += "Nobody has ranked what matters: all six weigh the same.\n";
  } else {
    text += "Ranked: ";
    for (std::size_t i = 0; i < finding.ranking.size(); ++i)
      text += (i == 0 ? "" : ", ") + spoken(finding.ranking[i]);
    text += ".\n";
  }
  say_reasons(finding, text);
  for (const Stop& stop : finding.stops)
    text += stop_sentence(record, stop) + "\n";
  say_scores(advised, text);
  if (finding.answer) {
    text += "\nWhat would turn it over:\n";
    if (finding.flips.empty()) text += "  Nothing near.\n";
    for (const Flip& flip : finding.flips)
      text += "  " + flip_sentence(flip, *finding.answer) + "\n";
  }
  const record::Visit* visit = last_visit(record);
  if (visit != nullptr && visit->advice && visit->advice->chosen) {
    text += fmt::format("\nThe owner chose: {}.\n", spoken(*visit->advice->chosen));
  }
  text += "\nThe owner decides. A total is a way of comparing, not a grade of the reel.\n";
  return text;
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
