#pragma once

#include <doctest/doctest.h>

#include <random>
#include <string>
#include <vector>

#include "assess/dating/dating.h"
#include "record/record.h"

namespace winchbook::dating_test {

using namespace assess::dating;  // NOLINT: the room under test
using base::Day;
using record::EndFirmness;

inline base::EdtfDate date(const std::string& text) {
  return base::EdtfDate::parse(text).value();
}

/// Days of an EDTF interval: "1930/1947", "1943/..", "../1971".
inline DaySpan span(const std::string& text) {
  const base::EdtfDate interval = date(text);
  return {interval.earliest(), interval.latest()};
}

/// "1930-01-01/1947-12-31", ".." where there is no end.
inline std::string text(const DaySpan& span) {
  const auto end = [](const std::optional<Day>& day) {
    return day ? base::iso_text(*day) : std::string("..");
  };
  return end(span.first) + "/" + end(span.last);
}

/// A record of pieces of this reel, and evidence about them.
struct Case {
  record::Record record;
  std::vector<Evidence> evidence;

  record::Piece& piece(const std::string& id,
                       record::OfThisReel original = record::OfThisReel::yes) {
    record::Piece one;
    one.id = {id};
    one.name = id;
    one.of_this_reel.answer = original;
    record.pieces.push_back(one);
    return record.pieces.back();
  }

  Evidence& says(const std::string& piece, const std::string& interval,
                 EndFirmness first = EndFirmness::hard, EndFirmness last = EndFirmness::hard) {
    const DaySpan days = span(interval);
    Evidence one;
    one.piece = {piece};
    one.marking = record::MarkingId{"mark-" + std::to_string(evidence.size() + 1)};
    if (days.first) one.not_before = End{*days.first, first, Basis::bench};
    if (days.last) one.not_after = End{*days.last, last, Basis::bench};
    evidence.push_back(one);
    return evidence.back();
  }

  Evidence& softly(const std::string& piece, const std::string& interval) {
    return says(piece, interval, EndFirmness::soft, EndFirmness::soft);
  }

  Evidence& claims(const std::string& piece, const std::string& interval) {
    Evidence& one = softly(piece, interval);
    one.grounds = Grounds::claim;
    return one;
  }

  [[nodiscard]] Finding weighed() const { return weigh(record, evidence); }
};

inline bool warns(const Finding& finding, Warning::Kind kind) {
  for (const Warning& warning : finding.warnings) {
    if (warning.kind == kind) return true;
  }
  return false;
}

/// The same numbers on every machine.
class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  int below(int bound) { return static_cast<int>(engine_() % static_cast<unsigned>(bound)); }

 private:
  std::mt19937 engine_;
};

inline DaySpan any_span(Dice& dice) {
  const int first = 1900 + dice.below(60);
  const int last = first + dice.below(30);
  DaySpan span{Day{first, 1, 1}, Day{last, 12, 31}};
  if (dice.below(6) == 0) span.first.reset();
  if (dice.below(6) == 0) span.last.reset();
  return span;
}

}  // namespace winchbook::dating_test
