#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "daybook/entry.h"
#include "daybook/evidence.h"
#include "record/reel.h"

namespace winchbook::daybook {

/// The hand that winds as made, as found and as left: "right, left, left"; "right" for all three.
struct TypedHands {
  record::Hand made = record::Hand::not_determined;
  record::Hand found = record::Hand::not_determined;
  record::Hand left = record::Hand::not_determined;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, TypedHands& into);

/// What the reel is; what is empty is not said. The evidence and the certainty are the maker's or
/// the date's, so only one of the two is given with them.
struct IdentifyRequest : Entry {
  std::string name;  ///< what the documents call it
  std::string model;
  std::optional<record::Brake> brake;
  std::string maker;
  std::optional<record::MakerStatement::Kind> maker_kind;
  std::string maker_place;
  std::string still_trading;  ///< "yes", "no"
  std::string sold_by;
  std::optional<TypedHands> hand;
  std::string how_converted;
  std::optional<base::EdtfDate> made;
  std::optional<record::Certainty> certainty;
  Evidence evidence;
  std::string box_and_papers;
  std::string cover;         ///< a photograph as named
  std::string own_interest;  ///< the bench's own interest in the reel
  std::string terms;         ///< the bench's, for goods that nobody collects
};

/// Writes it into the record; what is there already is set anew.
[[nodiscard]] base::Result<Said> identify(const IdentifyRequest& request, Draft& draft);

[[nodiscard]] forms::Job identify_job();

}  // namespace winchbook::daybook
