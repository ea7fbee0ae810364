#include "assess/advice/advice.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "record/enum_words.h"
#include "record/moments.h"

namespace winchbook::assess::advice {
namespace {

using record::Course;
using record::Matter;

constexpr int kWhole = 100;

std::size_t place_of(Course course) {
  return static_cast<std::size_t>(std::find(kAllCourses.begin(), kAllCourses.end(), course) -
                                  kAllCourses.begin());
}

std::size_t place_of(Matter matter) {
  return static_cast<std::size_t>(std::find(kAllMatters.begin(), kAllMatters.end(), matter) -
                                  kAllMatters.begin());
}

bool fishes(Course course) {
  return course == Course::make_it_fish || course == Course::rebuild_to_fish;
}

/// The middle of an index, in points.
std::optional<int> middle(const std::optional<base::RatioRange>& index) {
  if (!index) return std::nullopt;
  return static_cast<int>((index->low.rounded(kWhole) + index->high.rounded(kWhole)) / 2);
}

/// As made 100, with care 67, in part 33, not 0; empty while it is open between several.
std::optional<int> working_points(const condition::Readings& readings) {
  const auto& word = readings.working.word;
  if (word.best != word.worst) return std::nullopt;
  return static_cast<int>(std::lround(kWhole * (3 - word.best) / 3.0));
}

/// The pieces that must stay, by the life they tell of and by what was agreed; by their ids.
std::vector<record::PieceId> must_stay(const record::Record& record, const record::Visit& visit) {
  std::vector<record::PieceId> staying;
  for (const record::LifeEvent& event : record.life) {
    staying.insert(staying.end(), event.must_stay.begin(), event.must_stay.end());
  }
  for (const record::Agreement& agreement : visit.agreements) {
    staying.insert(staying.end(), agreement.pieces_must_stay.begin(),
                   agreement.pieces_must_stay.end());
  }
  std::sort(staying.begin(), staying.end());
  staying.erase(std::unique(staying.begin(), staying.end()), staying.end());
  return staying;
}

/// The middle of what a course may cost; empty when nobody said.
std::optional<base::Money> middle_cost(const record::CourseCost& cost) {
  const auto& most = cost.high ? cost.high : cost.low;
  if (!most) return std::nullopt;
  const auto& least = cost.low ? cost.low : cost.high;
  constexpr int kPence = 100;
  const double middle = (most->amount.approximate() + least->amount.approximate()) / 2;
  return base::Money{base::Decimal(std::llround(middle * kPence), 2), most->currency};
}

/// Everything that is known of each course, matter by matter.
class Scoring {
 public:
  explicit Scoring(const Grounds& grounds) : grounds_(grounds) {}

  std::array<Score, kMatters> of(Course course) const {
    std::array<Score, kMatters> scores;
    for (std::size_t i = 0; i < scores.size(); ++i) {
      scores.at(i) = known(course, kAllMatters.at(i)).value_or(benchs(course, kAllMatters.at(i)));
    }
    return scores;
  }

 private:
  Score benchs(Course course, Matter matter) const {
    return {find_score(grounds_.bench, record::word_of(course), record::word_of(matter)).points,
            ScoreFrom::bench};
  }

  /// The state at the end of the visit is this course's.
  bool is_as_left(Course course) const {
    return grounds_.visit.advice && grounds_.visit.advice->chosen == course;
  }
  static bool is_as_found(Course course) { return !fishes(course); }

  std::optional<Score> known(Course course, Matter matter) const {
    switch (matter) {
      case Matter::originality:
        return originality(course);
      case Matter::use:
        return use(course);
      case Matter::value:
        return value(course);
      case Matter::way_back:
        return way_back(course);
      case Matter::cost:
        return cost(course);
      case Matter::memory:
        return memory(course);
    }
    return std::nullopt;
  }

  /// Of the pieces that must stay, how many are in the reel or travel with it as it left.
  std::optional<Score> memory(Course course) const {
    if (!is_as_left(course)) return std::nullopt;
    const auto staying = must_stay(grounds_.record, grounds_.visit);
    if (staying.empty()) return std::nullopt;
    const auto there = std::count_if(staying.begin(), staying.end(), [&](const auto& id) {
      const record::Piece* piece = find(grounds_.record, id);
      using Kind = record::Whereabouts::Kind;
      return piece != nullptr &&
             (piece->now.kind == Kind::fitted || piece->now.kind == Kind::with_reel);
    });
    return Score{static_cast<int>(kWhole * there / std::ssize(staying)), ScoreFrom::kept};
  }

  std::optional<Score> originality(Course course) const {
    const auto& original = grounds_.originality.original;
    std::optional<int> points;
    if (is_as_left(course)) {
      points = middle(original.left);
    } else if (is_as_found(course)) {
      points = middle(original.found);
    } else if (const auto found = middle(original.found)) {
      points = *found * benchs(course, Matter::originality).points / kWhole;
    }
    if (!points) return std::nullopt;
    return Score{*points, ScoreFrom::index};
  }

  std::optional<Score> use(Course course) const {
    std::optional<int> points;
    if (is_as_left(course)) points = working_points(grounds_.condition.left);
    if (!points && is_as_found(course)) points = working_points(grounds_.condition.found);
    if (!points) return std::nullopt;
    return Score{*points, ScoreFrom::tests};
  }

  /// Against the best of all courses. A course without a figure has the bench's points, as they
  /// stand to keeping the reel as found; without a figure for that, the bench's points alone.
  std::optional<Score> value(Course course) const {
    double most = 0;
    for (const auto& one : grounds_.values)
      most = std::max(most, one.value_or(0));
    const auto& kept = grounds_.values.at(place_of(Course::keep_as_found));
    if (!kept || most <= 0) return std::nullopt;
    const auto points = [&](double amount) {
      return static_cast<int>(std::lround(kWhole * amount / most));
    };
    if (const auto& own = grounds_.values.at(place_of(course))) {
      return Score{points(*own), ScoreFrom::sales};
    }
    const int of_kept = benchs(Course::keep_as_found, Matter::value).points;
    if (of_kept <= 0) return std::nullopt;
    const int scaled = points(*kept) * benchs(course, Matter::value).points / of_kept;
    return Score{std::min(scaled, kWhole), ScoreFrom::bench};
  }

  /// The mean degree of the fittings of this visit.
  std::optional<Score> way_back(Course course) const {
    if (!is_as_left(course)) return std::nullopt;
    std::int64_t sum = 0;
    std::int64_t count = 0;
    for (const record::Fitting& fitting : grounds_.record.fittings) {
      if (fitting.visit != grounds_.visit.id || !fitting.way_back) continue;
      sum += std::lround(fitting.way_back->degree.value.approximate());
      ++count;
    }
    if (count == 0) return std::nullopt;
    return Score{static_cast<int>(sum / count), ScoreFrom::undone};
  }

  /// Nothing is 100, the dearest course 0.
  std::optional<Score> cost(Course course) const {
    if (!grounds_.visit.advice) return std::nullopt;
    double dearest = 0;
    std::optional<double> ours;
    for (const record::CourseCost& one : grounds_.visit.advice->courses) {
      const auto middle = middle_cost(one);
      if (!middle) continue;
      dearest = std::max(dearest, middle->amount.approximate());
      if (one.course == course) ours = middle->amount.approximate();
    }
    if (!ours || dearest <= 0) return std::nullopt;
    return Score{static_cast<int>(std::lround(kWhole * (1 - *ours / dearest))), ScoreFrom::costs};
  }

  const Grounds& grounds_;
};

/// What stands in the way, in the order in which it is told: life and limb first.
std::vector<Stop> stops_of(const Grounds& grounds) {
  std::vector<Stop> stops;
  const std::vector<Course> fishing{Course::make_it_fish, Course::rebuild_to_fish};
  for (const record::Fault& fault : grounds.visit.findings.faults) {
    if (record::severity_at(fault, record::Moment::left) != record::Severity::unsafe) continue;
    Stop stop{Stop::Why::unsafe_fault, fishing, fault.id, {}, {}, fault.name};
    if (fault.piece) stop.pieces.push_back(*fault.piece);
    stops.push_back(std::move(stop));
  }
  for (const record::Flag& flag : grounds.visit.findings.flags) {
    const bool hazard = flag.kind == record::Flag::Kind::hazard;
    stops.push_back(
        {hazard ? Stop::Why::hazard : Stop::Why::legal, {}, {}, {}, flag.pieces, flag.name});
  }
  for (const condition::Empty& empty : grounds.condition.empty) {
    if (empty.left == 0) continue;
    const record::Place* place = find(grounds.record, empty.place);
    const bool matters = place != nullptr && !place->consumable && !place->may_be_empty;
    stops.push_back({Stop::Why::missing_piece,
                     matters ? std::vector{Course::make_it_fish} : std::vector<Course>{},
                     {},
                     empty.place,
                     {},
                     place == nullptr ? std::string() : place->name});
  }
  const std::vector<record::PieceId> staying = must_stay(grounds.record, grounds.visit);
  if (!staying.empty()) {
    stops.push_back({Stop::Why::must_stay, {Course::rebuild_to_fish}, {}, {}, staying, {}});
  }
  return stops;
}

base::Ratio total_of(const std::array<Score, kMatters>& scores,
                     const std::array<base::Ratio, kMatters>& weights) {
  base::Ratio total;
  for (std::size_t i = 0; i < scores.size(); ++i) {
    total = total + weights.at(i) * base::Ratio(scores.at(i).points, kWhole);
  }
  return total;
}

/// The best permitted course, the earlier and gentler on a tie; then the next.
void choose(Finding& finding) {
  std::vector<const Scored*> permitted;
  for (const Scored& one : finding.courses) {
    if (!one.forbidden) permitted.push_back(&one);
  }
  std::stable_sort(permitted.begin(), permitted.end(),
                   [](const Scored* a, const Scored* b) { return a->total > b->total; });
  if (!permitted.empty()) finding.answer = permitted[0]->course;
  if (permitted.size() > 1) finding.runner_up = permitted[1]->course;
}

std::optional<Course> answer_by(const Finding& finding, const std::vector<Matter>& ranking) {
  Finding other = finding;
  other.answer.reset();
  const auto weights = weights_of(ranking);
  for (Scored& one : other.courses)
    one.total = total_of(one.scores, weights);
  choose(other);
  return other.answer;
}

/// The swap of two ranks that turns the answer and moves them least; of several the one lowest in
/// the ranking.
std::optional<Flip> nearest_swap(const Finding& finding) {
  const auto n = finding.ranking.size();
  for (std::size_t distance = 1; distance < n; ++distance) {
    for (std::size_t i = n - distance; i-- > 0;) {
      std::vector<Matter> swapped = finding.ranking;
      std::swap(swapped[i], swapped[i + distance]);
      const auto then = answer_by(finding, swapped);
      if (then && then != finding.answer) {
        return Flip{Flip::Kind::swap, swapped[i], swapped[i + distance], *then, 0, std::nullopt};
      }
    }
  }
  return std::nullopt;
}

/// By how many points the answer would have to fall in a matter before the runner-up stands first.
std::optional<Flip> fall_in(const Finding& finding, Matter matter, Flip::Kind kind) {
  if (!finding.answer || !finding.runner_up) return std::nullopt;
  const Scored& first = finding.courses.at(place_of(*finding.answer));
  const Scored& second = finding.courses.at(place_of(*finding.runner_up));
  const base::Ratio weight = finding.weights.at(place_of(matter));
  const int has = first.scores.at(place_of(matter)).points;
  for (int points = 1; points <= has; ++points) {
    if (first.total - weight * base::Ratio(points, kWhole) < second.total) {
      return Flip{kind, matter, matter, *finding.runner_up, points, std::nullopt};
    }
  }
  return std::nullopt;
}

/// The dearest course, by the middle of what it may cost.
std::optional<base::Money> dearest_course(const record::Visit& visit) {
  std::optional<base::Money> dearest;
  if (!visit.advice) return dearest;
  for (const record::CourseCost& one : visit.advice->courses) {
    const auto middle = middle_cost(one);
    if (middle && (!dearest || dearest->amount < middle->amount)) dearest = middle;
  }
  return dearest;
}

/// How much dearer the answer would have to be: points of the dearest course, in whole units.
std::optional<Flip> dearer(const Finding& finding, const record::Visit& visit) {
  auto flip = fall_in(finding, Matter::cost, Flip::Kind::cost);
  const auto dearest = dearest_course(visit);
  if (flip && dearest) {
    const double more = dearest->amount.approximate() * flip->points / kWhole;
    flip->dearer_by = {base::Decimal(std::llround(std::ceil(more)), 0), dearest->currency};
  }
  return flip;
}

/// The matters in which the answer and the runner-up differ.
std::vector<Reason> reasons_of(const Finding& finding) {
  std::vector<Reason> reasons;
  if (!finding.answer || !finding.runner_up) return reasons;
  const Scored& first = finding.courses.at(place_of(*finding.answer));
  const Scored& second = finding.courses.at(place_of(*finding.runner_up));
  for (std::size_t i = 0; i < kAllMatters.size(); ++i) {
    const int points = first.scores.at(i).points;
    const int other = second.scores.at(i).points;
    if (points == other) continue;
    reasons.push_back({kAllMatters.at(i), points, other,
                       finding.weights.at(i) * base::Ratio(points - other, kWhole)});
  }
  std::stable_sort(reasons.begin(), reasons.end(),
                   [](const Reason& a, const Reason& b) { return a.counts > b.counts; });
  return reasons;
}

}  // namespace

base::Ratio centroid_weight(int rank, int n) {
  base::Ratio sum;
  for (int i = rank; i <= n; ++i)
    sum = sum + base::Ratio(1, i);
  return sum * base::Ratio(1, n);
}

std::array<base::Ratio, kMatters> weights_of(const std::vector<Matter>& ranking) {
  std::array<base::Ratio, kMatters> weights;
  base::Ratio rest(1, 1);
  int rank = 0;
  std::array<bool, kMatters> ranked{};
  for (const Matter matter : ranking) {
    const std::size_t at = place_of(matter);
    if (ranked.at(at)) continue;
    ranked.at(at) = true;
    weights.at(at) = centroid_weight(++rank, kMatters);
    rest = rest - weights.at(at);
  }
  if (rank == kMatters) return weights;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    if (!ranked.at(i)) weights.at(i) = rest * base::Ratio(1, kMatters - rank);
  }
  return weights;
}

Finding advise(const Grounds& grounds, const std::vector<Matter>& ranking) {
  Finding finding;
  finding.ranking = ranking;
  finding.weights = weights_of(ranking);
  finding.stops = stops_of(grounds);
  const Scoring scoring(grounds);
  for (std::size_t i = 0; i < kAllCourses.size(); ++i) {
    Scored& one = finding.courses.at(i);
    one.course = kAllCourses.at(i);
    one.scores = scoring.of(one.course);
    one.total = total_of(one.scores, finding.weights);
    one.forbidden = std::any_of(finding.stops.begin(), finding.stops.end(), [&](const Stop& stop) {
      return std::find(stop.forbids.begin(), stop.forbids.end(), one.course) != stop.forbids.end();
    });
  }
  choose(finding);
  if (!finding.answer) return finding;
  finding.reasons = reasons_of(finding);
  if (const auto swap = nearest_swap(finding)) finding.flips.push_back(*swap);
  if (const auto cost = dearer(finding, grounds.visit)) finding.flips.push_back(*cost);
  if (const auto value = fall_in(finding, Matter::value, Flip::Kind::value)) {
    finding.flips.push_back(*value);
  }
  return finding;
}

}  // namespace winchbook::assess::advice
