#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "answers/figures.h"
#include "answers/telling.h"
#include "assess/fitting/seat.h"
#include "base/result.h"
#include "forms/form.h"
#include "library/library.h"

namespace winchbook::answers {

/// A seat to find washers for.
struct SeatRequest {
  assess::fitting::Seat seat;
  double caliper = 0.1;         ///< ± of the stock's figures, mm
  std::string stack;            ///< a list or a file (knowledge::read_stack); empty: not given
  std::filesystem::path stock;  ///< empty: none, the stack alone is judged
  std::string material;         ///< the one to look for; empty: any
  assess::fitting::Wanted wanted;
};

/// What is typed of a seat and of the washers wanted for it.
struct SeatTyped {
  TypedLength bore;
  TypedLength sleeve;
  TypedLength depth;
  TypedLength flats;
  TypedLength post;
  TypedLength spacer;
  TypedLength housing;
  std::optional<forms::MeasuredFromZero<base::Dimension::length>> sunk;
  forms::MeasuredFromZero<base::Dimension::length> tolerance{{0.1}};
  std::string stack;
  std::filesystem::path stock;
  assess::fitting::Turns held = assess::fitting::Turns::freely;
  bool metal = false;
  std::optional<int> count;  ///< empty: the stack's friction washers
  TypedLength thickness;
  std::string material;
  bool json = false;
};

/// From --bore to --json.
[[nodiscard]] forms::Form seat_form(SeatTyped& typed);

/// What was found.
struct SeatAnswer {
  SeatRequest request;
  const knowledge::DragKnowledge* knowledge = nullptr;  ///< the library's
  std::optional<assess::fitting::StackFinding> stack;
  std::vector<assess::fitting::Candidate> candidates;  ///< the best first
  std::size_t of_other_materials = 0;                  ///< washers of the stock not looked at
};

/// Reads the stack and the stock, and judges them. With a stack and no thickness or count wanted,
/// those of the stack's friction washers are. Error when bore or sleeve is missing, the seat cannot
/// be (fault_of), or a file is wrong.
[[nodiscard]] base::Result<SeatAnswer> find_seat(library::Library& library, const SeatTyped& typed);

/// The candidates in sentences, with what to do and what not.
[[nodiscard]] Blocks seat_told(const SeatAnswer& answer, const words::Catalogue& words);

/// The answer as JSON that keeps schemas/seat.schema.json.
[[nodiscard]] std::string seat_as_json(const SeatAnswer& answer);

}  // namespace winchbook::answers
