#include <fmt/format.h>

#include <optional>
#include <set>
#include <string>

#include "record/enum_words.h"
#include "record/looked_for.h"
#include "record/moments.h"
#include "recordfile/rules_list.h"

namespace winchbook::recordfile {

using namespace record;  // NOLINT: the rules speak of nothing else
using base::error_at;
using base::warning_at;

namespace {

/// Where a finding stands, when a fault in it has to be told.
struct FindingPlace {
  const LoadedRecord& loaded;
  const Visit& visit;
  std::size_t number = 0;

  [[nodiscard]] base::Location location() const {
    return loaded.where(visit.id.text, "piece-finding", number);
  }
};

/// Calls `look(place of the finding, piece, state, "as found" or "as left")` for every state
/// written down.
template <class Look> void each_state(const LoadedRecord& loaded, const Look& look) {
  for (const Visit& visit : loaded.record.visits) {
    for (std::size_t i = 0; i < visit.findings.pieces.size(); ++i) {
      const PieceFinding& finding = visit.findings.pieces[i];
      const FindingPlace where{loaded, visit, i};
      if (finding.found) look(where, finding.piece, *finding.found, "as found");
      if (finding.left) look(where, finding.piece, *finding.left, "as left");
    }
  }
}

base::Decimal share_of(const PieceState& state, SurfaceState wanted) {
  base::Decimal sum;
  for (const SurfaceShare& share : state.surface) {
    if (share.state == wanted) sum = sum + share.share.value;
  }
  return sum;
}

bool present(const LoadedRecord& loaded, const Visit& visit, const PieceId& piece, Moment moment) {
  for (const PieceFinding& finding : visit.findings.pieces) {
    if (finding.piece != piece) continue;
    const auto& state = moment == Moment::found ? finding.found : finding.left;
    if (state) return state->presence != Presence::loose && is_there(*state);
  }
  static_cast<void>(loaded);
  return false;
}

}  // namespace

void missing_and_graded(const LoadedRecord& loaded, Diagnostics& found) {
  each_state(loaded, [&](const FindingPlace& where, const PieceId& piece, const PieceState& state,
                         const char* when) {
    if (state.presence != Presence::missing) return;
    if (state.surface.empty() && !state.corroded && !state.appearance_defects) return;
    const std::string_view what =
        state.surface.empty() ? "corroded" : word_of(state.surface.front().state);
    found.push_back(
        error_at(where.location(),
                 fmt::format("piece \"{}\" is missing and {} at once, {}", piece.text, what, when),
                 "take the surface out, or correct the presence"));
  });
}

void place_and_piece_agree(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    for (std::size_t i = 0; i < visit.findings.places.size(); ++i) {
      const PlaceFinding& finding = visit.findings.places[i];
      const auto look = [&](std::optional<Filled> filled, Moment moment, const char* when) {
        if (filled != Filled::empty) return;
        for (const Fitting* fitting : fittings_in(loaded.record, finding.place, visit, moment)) {
          if (!present(loaded, visit, fitting->piece, moment)) continue;
          found.push_back(
              error_at(loaded.where(visit.id.text, "place-finding", i),
                       fmt::format("place \"{}\" is empty {}, and piece \"{}\" is in it",
                                   finding.place.text, when, fitting->piece.text),
                       "correct the finding of the place or of the piece"));
        }
      };
      look(finding.found, Moment::found, "as found");
      look(finding.left, Moment::left, "as left");
    }
  }
}

void surface_total(const LoadedRecord& loaded, Diagnostics& found) {
  each_state(loaded, [&](const FindingPlace& where, const PieceId& piece, const PieceState& state,
                         const char* when) {
    base::Decimal sum;
    for (const SurfaceShare& share : state.surface)
      sum = sum + share.share.value;
    if (sum <= base::Decimal(100, 0)) return;
    found.push_back(error_at(
        where.location(),
        fmt::format("the surface of piece \"{}\" makes {} per cent {}, expected at most 100",
                    piece.text, sum.text(), when),
        "correct the shares; what is not determined is left over"));
  });
}

void surface_state_twice(const LoadedRecord& loaded, Diagnostics& found) {
  each_state(loaded, [&](const FindingPlace& where, const PieceId& piece, const PieceState& state,
                         const char* when) {
    std::set<SurfaceState> seen;
    for (const SurfaceShare& share : state.surface) {
      if (seen.insert(share.state).second) continue;
      found.push_back(error_at(where.location(),
                               fmt::format("the surface of piece \"{}\" names \"{}\" twice {}",
                                           piece.text, word_of(share.state), when),
                               "add the two shares together"));
    }
  });
}

void untouched_grows(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    for (std::size_t i = 0; i < visit.findings.pieces.size(); ++i) {
      const PieceFinding& finding = visit.findings.pieces[i];
      if (!finding.found || !finding.left || finding.found->surface.empty()) continue;
      base::Decimal known;
      for (const SurfaceShare& share : finding.found->surface)
        known = known + share.share.value;
      // What was not determined as found may turn out to be untouched.
      const base::Decimal most =
          share_of(*finding.found, SurfaceState::untouched) + (base::Decimal(100, 0) - known);
      const base::Decimal after = share_of(*finding.left, SurfaceState::untouched);
      if (after <= most) continue;
      found.push_back(error_at(
          loaded.where(visit.id.text, "piece-finding", i),
          fmt::format("the untouched surface of piece \"{}\" grows from {} to {} per cent",
                      finding.piece.text, most.text(), after.text()),
          "what was washed is \"cleaned\", what came to light was \"untouched\" before too"));
    }
  }
}

void defects_hold_corrosion(const LoadedRecord& loaded, Diagnostics& found) {
  each_state(loaded, [&](const FindingPlace& where, const PieceId& piece, const PieceState& state,
                         const char* when) {
    if (!state.corroded || !state.appearance_defects) return;
    if (state.corroded->value <= state.appearance_defects->value) return;
    found.push_back(error_at(
        where.location(),
        fmt::format("piece \"{}\" is corroded on {} per cent and has defects on {} per cent {}",
                    piece.text, state.corroded->value.text(),
                    state.appearance_defects->value.text(), when),
        "corroded area counts among the defects: the second is never less than the first"));
  });
}

void finding_twice(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    std::set<std::string> seen;
    const auto look = [&](const std::string& id, const char* element, std::size_t i) {
      if (seen.insert(id).second) return;
      found.push_back(
          error_at(loaded.where(visit.id.text, element, i),
                   fmt::format("\"{}\" has a second finding in visit \"{}\"", id, visit.id.text),
                   "put both into one"));
    };
    const Findings& findings = visit.findings;
    for (std::size_t i = 0; i < findings.pieces.size(); ++i)
      look(findings.pieces[i].piece.text, "piece-finding", i);
    for (std::size_t i = 0; i < findings.places.size(); ++i)
      look(findings.places[i].place.text, "place-finding", i);
  }
}

void fault_graded(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    for (const Fault& fault : visit.findings.faults) {
      const bool only_mended = !fault.as_left || put_right(fault);
      if (fault.found || !only_mended) continue;
      found.push_back(
          error_at(loaded.where(fault.id.text),
                   fmt::format("fault \"{}\" was there neither as found nor as left", fault.name),
                   "grade it in <found>, in <left>, or in both"));
    }
  }
}

void fault_stays(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    for (const Fault& fault : visit.findings.faults) {
      const bool stays = severity_at(fault, Moment::left).has_value();
      if (!visit.hand_back || !stays || !fault.why_it_stays.empty()) continue;
      found.push_back(
          warning_at(loaded.where(fault.id.text),
                     fmt::format("fault \"{}\" stays, and nothing says why", fault.name),
                     "write <why-it-stays>"));
    }
  }
}

void test_reading(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    for (std::size_t i = 0; i < visit.findings.tests.size(); ++i) {
      const Test& test = visit.findings.tests[i];
      for (const TestResult* result : {&test.before, &test.after}) {
        if (!is_written(*result)) continue;
        const bool done = result->kind == TestResult::Kind::done;
        const bool empty = !result->reading && result->words.empty() && !result->verdict;
        const bool unitless = result->reading && test.unit.empty();
        if (done ? !empty && !unitless : !result->reading) continue;
        const std::string why = !done   ? "has a reading, and was not made"
                                : empty ? "was made, and gives no reading and no words"
                                        : "has a reading without a unit";
        found.push_back(error_at(loaded.where(visit.id.text, "test", i),
                                 fmt::format("test \"{}\" {}", test.what, why),
                                 unitless && done ? "write <unit>, or put the reading into <words>"
                                                  : "correct the outcome or the reading"));
      }
    }
  }
}

void looked_and_entered(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    std::set<LookedFor> seen;
    for (std::size_t i = 0; i < visit.findings.looked_for.size(); ++i) {
      const Look& look = visit.findings.looked_for[i];
      const base::Location where = loaded.where(visit.id.text, "looked-for", i);
      if (!seen.insert(look.what).second) {
        found.push_back(error_at(
            where, fmt::format("looking for {} stands twice in the visit", word_of(look.what)),
            "put both into one"));
      }
      const std::string there = entered(loaded.record, visit, look.what);
      if (look.found != Looked::none || there.empty()) continue;
      found.push_back(
          error_at(where,
                   fmt::format("looked for {} and found none, and \"{}\" is entered",
                               word_of(look.what), there),
                   "write <found>some</found>, or take out what was entered by mistake"));
    }
  }
}

void load_limit(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Visit& visit : loaded.record.visits) {
    for (std::size_t i = 0; i < visit.findings.tests.size(); ++i) {
      const Test& test = visit.findings.tests[i];
      for (const TestResult* result : {&test.before, &test.after}) {
        if (result->kind != TestResult::Kind::not_safe_to_test || result->load_limit) continue;
        found.push_back(error_at(
            loaded.where(visit.id.text, "test", i),
            fmt::format("test \"{}\" was not safe to make, and no load limit is given", test.what),
            "write <load-limit> in newtons; 0 when it must not be loaded at all"));
      }
    }
  }
}

}  // namespace winchbook::recordfile
