#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "base/files.h"
#include "knowledge/knowledge.h"
#include "record/record.h"

namespace winchbook::bench_test {

/// The knowledge that ships with the program.
inline const knowledge::Knowledge& shipped() {
  static const knowledge::Knowledge knowledge = [] {
    const base::RealFiles files;
    auto loaded = knowledge::load({files, WINCHBOOK_SOURCE_DIR});
    if (!loaded) {
      for (const auto& fault : loaded.faults())
        MESSAGE(base::to_string(fault));
    }
    REQUIRE(bool(loaded));
    return std::move(loaded).value();
  }();
  return knowledge;
}

inline base::EdtfDate date(const char* text) {
  return base::EdtfDate::parse(text).value();
}

inline base::Percent percent(int hundredths) {
  return {base::Decimal(hundredths, 2)};
}

inline base::Decimal decimal(const char* text) {
  return base::Decimal::parse(text).value();
}

inline record::Words words(const char* text) {
  return {{record::Plain{text}}};
}

using Surface = std::vector<std::pair<record::SurfaceState, int>>;  // share in whole percent

inline record::PieceState state(const Surface& surface,
                                record::Presence presence = record::Presence::fitted) {
  record::PieceState one;
  one.presence = presence;
  for (const auto& [what, share] : surface) {
    one.surface.push_back({what, {base::Decimal(share, 0)}});
  }
  return one;
}

/// A record put together a line at a time, as a bench would: places, what sat in them, and what one
/// visit (June 2026) changed.
class ReelOnBench {
 public:
  record::Record record;

  ReelOnBench() {
    record.reel.kind = record::ReelKind::multiplier;
    record::Visit visit;
    visit.id = {"visit"};
    visit.taken_in = date("2026-03-03");
    visit.hand_back = record::HandBack{date("2026-06-19"), {}, {}, {}};
    record.visits.push_back(visit);
  }

  record::Visit& visit() { return record.visits.back(); }

  record::Place& place(const std::string& id, const char* weight, int quantity = 1) {
    record::Place one;
    one.id = {id};
    one.name = "the " + id;
    one.kind = "somewhere-else";
    one.quantity = quantity;
    one.weight = decimal(weight);
    record.places.push_back(one);
    return record.places.back();
  }

  /// A piece by this maker, original, right for the model.
  record::Piece& piece(const std::string& id, int count = 1) {
    record::Piece one;
    one.id = {id};
    one.name = "piece " + id;
    one.count = count;
    one.made_by.answer = record::MadeBy::this_maker;
    one.of_this_reel.answer = record::OfThisReel::yes;
    one.pattern.answer = record::Pattern::right;
    one.now.kind = record::Whereabouts::Kind::fitted;
    record.pieces.push_back(one);
    return record.pieces.back();
  }

  record::Piece& bench_piece(const std::string& id, int count = 1) {
    record::Piece& one = piece(id, count);
    one.made_by.answer = record::MadeBy::bench;
    one.of_this_reel.answer = record::OfThisReel::no;
    return one;
  }

  record::Piece& donor_piece(const std::string& id, const std::string& donor, int count = 1) {
    record::Piece& one = piece(id, count);
    one.of_this_reel.answer = record::OfThisReel::no;
    one.donor = record::DonorId{donor};
    return one;
  }

  /// It sat there when the reel came.
  record::Fitting& sits(const std::string& piece, const std::string& place) {
    record::Fitting one;
    one.id = {"fitting-" + std::to_string(record.fittings.size() + 1)};
    one.piece = {piece};
    one.place = {place};
    one.by = record::ByMaker{};
    record.fittings.push_back(one);
    return record.fittings.back();
  }

  /// The bench took it out for good in this visit.
  void take_out(const std::string& piece) {
    for (record::Fitting& fitting : record.fittings) {
      if (fitting.piece.text == piece) fitting.removed_in = visit().id;
    }
    now(piece, record::Whereabouts::Kind::bagged);
  }

  /// The bench put it in, in this visit; `instead_of` goes into a bag.
  record::Fitting& fit(const std::string& piece, const std::string& place,
                       const std::string& instead_of = {}, int degree = 100) {
    if (!instead_of.empty()) take_out(instead_of);
    record::Fitting& one = sits(piece, place);
    one.by = record::ByBench{};
    one.visit = visit().id;
    if (!instead_of.empty()) one.instead_of = record::PieceId{instead_of};
    one.way_back = record::WayBack{{base::Decimal(degree, 0)}, words("as far as that")};
    return one;
  }

  void now(const std::string& piece, record::Whereabouts::Kind kind) {
    for (record::Piece& one : record.pieces) {
      if (one.id.text == piece) one.now.kind = kind;
    }
  }

  record::PieceFinding& seen(const std::string& piece, const Surface& found, const Surface& left) {
    visit().findings.pieces.push_back({{piece}, state(found), state(left)});
    return visit().findings.pieces.back();
  }
};

/// The same numbers on every machine.
class Dice {
 public:
  explicit Dice(unsigned seed) : engine_(seed) {}
  int below(int bound) { return static_cast<int>(engine_() % static_cast<unsigned>(bound)); }
  bool one_in(int bound) { return below(bound) == 0; }
  template <class Things> void shuffle(Things& things) {
    for (std::size_t i = things.size(); i > 1; --i) {
      std::swap(things[i - 1], things[static_cast<std::size_t>(below(static_cast<int>(i)))]);
    }
  }

 private:
  std::mt19937 engine_;
};

inline Surface any_surface(Dice& dice) {
  Surface surface;
  int left = 100;
  while (left > 0 && !dice.one_in(4)) {
    const int share = 1 + dice.below(left);
    surface.emplace_back(static_cast<record::SurfaceState>(dice.below(8)), share);
    left -= share;
  }
  return surface;
}

/// A reel with anything that can befall one: several seats, wrong, missing, loose and undetermined
/// pieces, donors, consumables, places the maker left empty; and a bench that changes some of it
/// and writes what it likes about surfaces.
inline ReelOnBench any_reel(unsigned seed) {
  Dice dice(seed);
  ReelOnBench reel;
  const int places = 1 + dice.below(9);
  for (int i = 0; i < places; ++i) {
    const std::string n = std::to_string(i);
    record::Place& place = reel.place("p" + n, dice.one_in(5) ? "2.5" : "3", 1 + dice.below(5));
    place.consumable = dice.one_in(7);
    place.may_be_empty = dice.one_in(7);
    const std::string id = place.id.text;
    int free = place.quantity;
    for (int k = 0; free > 0 && !dice.one_in(5); ++k) {
      const int count = 1 + dice.below(dice.one_in(9) ? free + 1 : free);
      const std::string name = "old" + n + "-" + std::to_string(k);
      record::Piece& piece = reel.piece(name, count);
      piece.of_this_reel.answer = static_cast<record::OfThisReel>(dice.below(3));
      piece.made_by.answer = static_cast<record::MadeBy>(dice.below(5));
      piece.pattern.answer = static_cast<record::Pattern>(dice.below(5));
      if (dice.one_in(6)) piece.donor = record::DonorId{"d" + std::to_string(dice.below(3))};
      const bool loose = dice.one_in(8);
      if (loose) {
        reel.fit(name, id).instead_of.reset();
      } else {
        reel.sits(name, id);
      }
      if (!dice.one_in(4)) {
        record::PieceFinding& seen = reel.seen(name, any_surface(dice), any_surface(dice));
        seen.found->presence = loose            ? record::Presence::loose
                               : dice.one_in(9) ? record::Presence::missing
                                                : record::Presence::fitted;
        if (dice.one_in(5)) seen.left.reset();
      }
      if (!loose && dice.one_in(3)) {
        const std::string fresh = "new" + n + "-" + std::to_string(k);
        record::Piece& other =
            dice.one_in(2) ? reel.bench_piece(fresh, count) : reel.donor_piece(fresh, "d1", count);
        other.of_this_reel.answer =
            static_cast<record::OfThisReel>(dice.below(3));  // whatever is written
        reel.fit(fresh, id, name, dice.below(101));
        reel.now(name, static_cast<record::Whereabouts::Kind>(dice.below(8)));
        if (dice.one_in(3)) reel.record.fittings.back().instead_of.reset();
        reel.seen(fresh, any_surface(dice), any_surface(dice));
      } else if (!loose && dice.one_in(8)) {
        reel.take_out(name);
      }
      free -= count;
    }
    if (free > 0 && dice.one_in(2)) {
      reel.visit().findings.places.push_back({{id},
                                              {},
                                              static_cast<record::Filled>(dice.below(4)),
                                              static_cast<record::Filled>(dice.below(4)),
                                              {}});
    }
  }
  return reel;
}

/// The same record with everything entered in another order; ids and what they mean stay.
inline record::Record shuffled(const record::Record& record, unsigned seed) {
  Dice dice(seed);
  record::Record other = record;
  dice.shuffle(other.places);
  dice.shuffle(other.pieces);
  dice.shuffle(other.fittings);
  dice.shuffle(other.life);
  dice.shuffle(other.donors);
  for (record::Visit& visit : other.visits) {
    dice.shuffle(visit.findings.pieces);
    dice.shuffle(visit.findings.places);
    dice.shuffle(visit.findings.faults);
    dice.shuffle(visit.findings.tests);
    for (record::PieceFinding& finding : visit.findings.pieces) {
      if (finding.found) dice.shuffle(finding.found->surface);
      if (finding.left) dice.shuffle(finding.left->surface);
    }
  }
  return other;
}

}  // namespace winchbook::bench_test
