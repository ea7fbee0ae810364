#pragma once

#include <array>
#include <optional>
#include <string>

#include "base/decimal.h"
#include "base/edtf_date.h"
#include "base/enum_words.h"

namespace winchbook::assess::value {

/// What a price is the price of.
enum class Basis {
  hammer,   ///< the hammer price, without the buyer's premium
  premium,  ///< what the buyer paid at auction, premium and all
  asking,   ///< asked, not paid: never counts
  privately,
  dealer,
};

[[nodiscard]] constexpr auto enum_words(Basis /*list*/) {
  return std::to_array<base::EnumWord<Basis>>({
      {Basis::hammer, "hammer"},
      {Basis::premium, "premium"},
      {Basis::asking, "asking"},
      {Basis::privately, "private"},
      {Basis::dealer, "dealer"},
  });
}

/// What a price depends on besides maker, model and date; a better reel has the smaller word
/// number.
enum class Trait { surface, structure, working, completeness, originality, box };

[[nodiscard]] constexpr auto enum_words(Trait /*list*/) {
  return std::to_array<base::EnumWord<Trait>>({
      {Trait::surface, "surface"},
      {Trait::structure, "structure"},
      {Trait::working, "working"},
      {Trait::completeness, "completeness"},
      {Trait::originality, "originality"},
      {Trait::box, "box"},
  });
}
constexpr int kTraits = 6;

/// A reel's state as prices see it. Axes are word numbers, 0 best to 3; originality is in tens of
/// points below 100 (0 best to 10); box is 0 with its box, 1 without. Empty: not told.
struct State {
  std::array<std::optional<double>, kTraits> traits;

  [[nodiscard]] const std::optional<double>& operator[](Trait trait) const {
    return traits.at(static_cast<std::size_t>(trait));
  }
  std::optional<double>& operator[](Trait trait) {
    return traits.at(static_cast<std::size_t>(trait));
  }
};

/// A recorded sale, as a fact.
struct Sale {
  int line = 0;  ///< of the file, or 0 for one of the record's own
  base::EdtfDate date;
  base::Money price;
  Basis basis = Basis::hammer;
  std::optional<base::Decimal> fees;  ///< the buyer's, on top of a hammer price or within a premium
  std::string venue;
  std::string maker;
  std::string model;
  std::string kind;
  State state;
  std::string notes;
  std::string source;
  std::string not_used;  ///< the bench's own reason for leaving it out; empty: it may count
};

}  // namespace winchbook::assess::value
