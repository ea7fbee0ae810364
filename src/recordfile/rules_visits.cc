#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string>

#include "record/enum_words.h"
#include "recordfile/rules_list.h"

namespace winchbook::recordfile {

using namespace record;  // NOLINT: the rules speak of nothing else
using base::error_at;
using base::warning_at;

namespace {

bool is_fitted(const Record& record, const PieceId& piece, const Visit& visit, Moment moment) {
  return std::any_of(record.places.begin(), record.places.end(), [&](const Place& place) {
    const auto here = fittings_in(record, place.id, visit, moment);
    return std::any_of(here.begin(), here.end(),
                       [&](const Fitting* one) { return one->piece == piece; });
  });
}

/// The pieces that must stay in this visit: by its life, and by every agreement that no later one
/// lifts.
std::set<PieceId> pieces_that_must_stay(const Record& record, const Visit& visit) {
  std::set<PieceId> stay;
  for (const LifeEvent& event : record.life)
    stay.insert(event.must_stay.begin(), event.must_stay.end());
  for (const Agreement& agreement : visit.agreements) {
    for (const PieceId& piece : agreement.pieces_may_leave)
      stay.erase(piece);
    stay.insert(agreement.pieces_must_stay.begin(), agreement.pieces_must_stay.end());
  }
  return stay;
}

bool takes_spring(const Record& record, const StripStep& step, const Visit& visit) {
  return std::any_of(record.places.begin(), record.places.end(), [&](const Place& place) {
    if (!place.captive_spring) return false;
    const auto here = fittings_in(record, place.id, visit, Moment::found);
    return std::any_of(here.begin(), here.end(), [&](const Fitting* fitting) {
      return std::count(step.pieces.begin(), step.pieces.end(), fitting->piece) > 0;
    });
  });
}

}  // namespace

void hand_back_after_arrival(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    if (!visit.hand_back || !surely_before(visit.hand_back->on, visit.taken_in)) continue;
    found.push_back(error_at(loaded.where(visit.id.text, "hand-back", 0),
                             fmt::format("the reel is handed back {} before it was taken in {}",
                                         visit.hand_back->on.text(), visit.taken_in.text()),
                             "correct one of the two dates"));
  }
}

void visits_apart(const LoadedRecord& loaded, Diagnostics& found) {
  const auto& visits = loaded.record.visits;
  for (std::size_t i = 1; i < visits.size(); ++i) {
    const Visit& before = visits[i - 1];
    const Visit& visit = visits[i];
    if (!before.hand_back) {
      found.push_back(error_at(loaded.where(visit.id.text),
                               fmt::format("visit \"{}\" begins, and visit \"{}\" has no hand-back",
                                           visit.id.text, before.id.text),
                               "write the hand-back of the earlier visit"));
    } else if (surely_before(visit.taken_in, before.hand_back->on)) {
      found.push_back(
          error_at(loaded.where(visit.id.text),
                   fmt::format("visit \"{}\" begins {} before visit \"{}\" ended {}", visit.id.text,
                               visit.taken_in.text(), before.id.text, before.hand_back->on.text()),
                   "put the visits in order, earliest first, or correct a date"));
    }
  }
}

void agreements_in_order(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    for (std::size_t i = 1; i < visit.agreements.size(); ++i) {
      const Agreement& before = visit.agreements[i - 1];
      const Agreement& agreement = visit.agreements[i];
      if (!surely_before(agreement.on, before.on)) continue;
      found.push_back(error_at(
          loaded.where(agreement.id.text),
          fmt::format("the agreement of {} stands after that of {}, expected earliest first",
                      agreement.on.text(), before.on.text()),
          "move it up, or correct its date"));
    }
  }
}

void agreement_kept(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    for (const PieceId& piece : pieces_that_must_stay(loaded.record, visit)) {
      const bool came = is_fitted(loaded.record, piece, visit, Moment::found);
      if (!came || is_fitted(loaded.record, piece, visit, Moment::left)) continue;
      found.push_back(error_at(loaded.where(piece.text),
                               fmt::format("piece \"{}\" must stay, and visit \"{}\" took it out",
                                           piece.text, visit.id.text),
                               "put it back, or write the later agreement that lets it leave"));
    }
  }
}

void cost_limit(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    std::optional<base::Money> limit;
    for (const Agreement& agreement : visit.agreements) {
      if (agreement.cost_limit) limit = agreement.cost_limit;
    }
    if (!limit) continue;
    base::Decimal spent;
    for (const Work& work : visit.work) {
      if (work.parts_cost && work.parts_cost->currency == limit->currency) {
        spent = spent + work.parts_cost->amount;
      }
    }
    if (spent <= limit->amount) continue;
    found.push_back(warning_at(loaded.where(visit.id.text),
                               fmt::format("parts cost {} {}, and {} {} was agreed", spent.text(),
                                           limit->currency, limit->amount.text(), limit->currency),
                               "add the agreement that raised the limit"));
  }
}

void service_after(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    if (!visit.hand_back) continue;
    const auto look = [&](const std::optional<base::EdtfDate>& date, const char* element) {
      if (!date || !surely_before(*date, visit.hand_back->on)) return;
      found.push_back(error_at(loaded.where(visit.id.text, element, 0),
                               fmt::format("\"{}\" is {}, before the hand-back {}", element,
                                           date->text(), visit.hand_back->on.text()),
                               "correct the date"));
    };
    look(visit.next_service, "next-service");
    look(visit.review_by, "review-by");
  }
}

void findings_dates(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    const Findings& findings = visit.findings;
    const auto look = [&](const std::optional<base::EdtfDate>& date, const char* element) {
      if (!date) return;
      const bool early = surely_before(*date, visit.taken_in);
      const bool late = visit.hand_back && surely_before(visit.hand_back->on, *date);
      if (!early && !late) return;
      found.push_back(
          error_at(loaded.where(visit.id.text, element, 0),
                   fmt::format("the reel was examined {}, {}", date->text(),
                               early ? "before it was taken in " + visit.taken_in.text()
                                     : "after it was handed back " + visit.hand_back->on.text()),
                   "correct the date"));
    };
    look(findings.found_on, "found-on");
    look(findings.left_on, "left-on");
    if (findings.found_on && findings.left_on &&
        surely_before(*findings.left_on, *findings.found_on)) {
      found.push_back(error_at(
          loaded.where(visit.id.text, "left-on", 0),
          fmt::format("the reel was examined as left {} before it was examined as found {}",
                      findings.left_on->text(), findings.found_on->text()),
          "exchange the two dates, or correct one"));
    }
  }
}

void tray_account(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    for (std::size_t i = 0; i < visit.tray.size(); ++i) {
      const TrayLine& line = visit.tray[i];
      const int came = line.taken_off + line.found_loose;
      const int went = line.refitted + line.bagged + line.to_owner + line.kept_by_bench +
                       line.lost + line.scrapped;
      if (came == went) continue;
      found.push_back(warning_at(
          loaded.where(visit.id.text, "line", i),
          fmt::format("of piece \"{}\" {} came off or lay loose, and {} are accounted for",
                      line.piece.text, came, went),
          came > went ? "look for it before the reel is closed; say where each one went"
                      : "count again; more went than came"));
    }
  }
}

void bags_returned(const LoadedRecord& loaded, Diagnostics& found) {
  const Visit* visit = last_visit(loaded.record);
  if (visit == nullptr || !visit->hand_back) return;
  std::set<std::string> returned;
  for (const Visit& one : loaded.record.visits) {
    if (one.hand_back) returned.insert(one.hand_back->bags.begin(), one.hand_back->bags.end());
  }
  for (const Piece& piece : loaded.record.pieces) {
    if (piece.now.kind != Whereabouts::Kind::bagged || piece.now.bag.empty()) continue;
    if (returned.count(piece.now.bag) > 0) continue;
    found.push_back(warning_at(
        loaded.where(piece.id.text),
        fmt::format("\"{}\" with piece \"{}\" is in no hand-back", piece.now.bag, piece.id.text),
        "add the bag to the hand-back, or say where the piece is"));
  }
}

void spring_caution(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    for (const StripStep& step : visit.strip_down) {
      const bool spring = step.spring_loose || takes_spring(loaded.record, step, visit);
      if (!spring || step.caution) continue;
      found.push_back(
          warning_at(loaded.where(step.id.text),
                     fmt::format("step {} frees a spring without a caution", step.number),
                     "add a <caution>: cover it, wear glasses, note where it seats"));
    }
  }
}

void ranking(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    const std::vector<Matter>& given = visit.wishes.ranking;
    if (given.empty()) continue;
    const std::set<Matter> once(given.begin(), given.end());
    if (once.size() == given.size() && once.size() == enum_words(Matter{}).size()) continue;
    found.push_back(error_at(loaded.where(visit.id.text, "ranking", 0),
                             fmt::format("the ranking names {} of the six things, {} times in all",
                                         once.size(), given.size()),
                             "name memory, originality, value, use, way-back and cost, each once"));
  }
}

void range_order(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    const auto tell = [&](const char* element, std::size_t number, const std::string& low,
                          const std::string& high) {
      found.push_back(error_at(loaded.where(visit.id.text, element, number),
                               fmt::format("the lower end {} is above the upper end {}", low, high),
                               "exchange the two, or correct one of them"));
    };
    if (visit.care && visit.care->drag_low && visit.care->drag_high &&
        *visit.care->drag_high < *visit.care->drag_low) {
      tell("drag-low", 0, visit.care->drag_low->value.text(), visit.care->drag_high->value.text());
    }
    const std::vector<CourseCost> courses =
        visit.advice ? visit.advice->courses : std::vector<CourseCost>{};
    for (std::size_t i = 0; i < courses.size(); ++i) {
      const CourseCost& cost = courses[i];
      if (!cost.low || !cost.high || cost.low->currency != cost.high->currency) continue;
      if (cost.high->amount < cost.low->amount) {
        tell("course-cost", i, cost.low->amount.text(), cost.high->amount.text());
      }
    }
    for (std::size_t i = 0; i < visit.findings.tests.size(); ++i) {
      const Test& test = visit.findings.tests[i];
      for (const TestResult* result : {&test.before, &test.after}) {
        if (result->reading && result->reading_high && *result->reading_high < *result->reading) {
          tell("test", i, result->reading->text(), result->reading_high->text());
        }
      }
    }
  }
}

}  // namespace winchbook::recordfile
