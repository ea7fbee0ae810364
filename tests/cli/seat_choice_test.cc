#include "daybook/entries/seat_choice.h"

#include <doctest/doctest.h>

#include <filesystem>
#include <string>

#include "answers/seat.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;
using assess::fitting::Candidate;
using assess::fitting::Fit;

const fs::path kProject = WINCHBOOK_SOURCE_DIR;

/// The heirloom's seat, as its fitting gives it, and the bench's stock.
answers::SeatTyped heirloom_seat(const record::Seat& seat) {
  answers::SeatTyped typed;
  const auto length = [](const base::Millimetres& of) {
    return answers::TypedLength{{{of.value.approximate(), 0, {}}}};
  };
  typed.bore = length(*seat.outside);
  typed.sleeve = length(*seat.bore);
  typed.depth = length(*seat.depth);
  typed.stock = kProject / "demo" / "stock" / "washers.csv";
  typed.material = "leather";
  typed.count = 3;
  return typed;
}

}  // namespace

TEST_CASE("the heirloom's washers are the first that seat finds in its stock") {
  base::RealFiles files;
  library::Library library({files, kProject, "test"});
  const auto loaded = library.record(kProject / "demo" / "reels" / "skerry-40");
  REQUIRE(loaded);
  const record::Fitting* fitting = nullptr;
  for (const record::Fitting& one : loaded->record.fittings) {
    if (one.id.text == "fi-red") fitting = &one;
  }
  REQUIRE(fitting != nullptr);
  REQUIRE(fitting->seat);
  const auto answer = answers::find_seat(library, heirloom_seat(*fitting->seat));
  REQUIRE(answer);
  REQUIRE_FALSE(answer->candidates.empty());
  const Candidate& first = answer->candidates.front();
  CHECK(first.fit == Fit::after_trimming);
  CHECK(first.trim_outside == doctest::Approx(0.4));

  const auto& record = loaded->record;
  const record::Piece* washers = find(record, fitting->piece);
  REQUIRE(washers != nullptr);
  CHECK_FALSE(washers->supplier.empty());
  CHECK(first.washer.supplier == washers->supplier);
  const std::string told = record::plain_text(record, fitting->adaptation);
  CHECK(told.find("0.4 mm on the outside, from 23.8 to 23.4 mm") != std::string::npos);
  CHECK(adaptation_of(first).find("0.4 mm on the outside, from 23.8 to 23.4 mm") !=
        std::string::npos);
}

TEST_CASE("what is altered on a washer is told in a sentence") {
  Candidate candidate;
  candidate.washer.outside = 23.8;
  candidate.washer.inside = 7.3;
  candidate.fit = Fit::as_it_is;
  CHECK(adaptation_of(candidate) == "Not at all: they turn freely as they came.");
  candidate.fit = Fit::one_size_down;
  CHECK(adaptation_of(candidate) ==
        "Not at all: one size smaller than the seat, they turn freely as they came.");
  candidate.fit = Fit::after_trimming;
  candidate.open_inside = 0.2;
  CHECK(adaptation_of(candidate) ==
        "Opened 0.2 mm in the hole, from 7.3 to 7.5 mm. Outside and thickness as they came.");
  candidate.trim_outside = 0.4;
  CHECK(adaptation_of(candidate) ==
        "Trimmed 0.4 mm on the outside, from 23.8 to 23.4 mm, so that they turn freely. Opened 0.2 "
        "mm in the hole, from 7.3 to 7.5 mm. Thickness as they came.");
}

}  // namespace winchbook::daybook
