#pragma once

#include <array>
#include <optional>
#include <string>

#include "assess/dating/dating.h"
#include "assess/originality/originality.h"
#include "base/enum_words.h"
#include "record/record.h"

namespace winchbook::assess {

/// When it was made: one answer for every page and reply. What the marks and the materials leave
/// comes first; where they say nothing, what the bench wrote.
struct Made {
  enum class By { nobody, marks, bench };

  By by = By::nobody;
  bool settled = true;   ///< false: no year fits all pieces, and nothing says which must go
  bool certain = false;  ///< by the marks: no end is soft; by the bench: it wrote so
  dating::DaySpan days;  ///< an end that is not there is not known
  std::optional<base::EdtfDate> written = {};  ///< by the bench: in its own words
};

[[nodiscard]] Made made(const record::Record& record, const dating::Finding& dating);

/// Which reel it is: one answer for every title, caption and stand-first.
struct Identity {
  enum class Maker { not_known, attributed, made_by };

  std::string name;  ///< as its people call it: "Aunt Effie's reel"
  Maker how = Maker::not_known;
  std::string maker;   ///< empty when not known, whatever else was written
  std::string place;   ///< of the maker; empty when not known
  std::string model;   ///< empty when not known
  std::string serial;  ///< empty: none was read
  int reels = 1;       ///< from at least how many it is put together; 1: as far as is known, one
  Made made;

  [[nodiscard]] bool assembled() const { return reels > 1; }
  /// What a stranger calls it: the model, else its own name.
  [[nodiscard]] const std::string& in_trade() const { return model.empty() ? name : model; }
  /// Whether model and serial say more than its own name does.
  [[nodiscard]] bool trade_says_more() const {
    return !serial.empty() || (!model.empty() && model != name);
  }
};

[[nodiscard]] constexpr auto enum_words(Identity::Maker /*list*/) {
  using enum Identity::Maker;
  return std::to_array<base::EnumWord<Identity::Maker>>({
      {not_known, "not-known"},
      {attributed, "attributed"},
      {made_by, "made-by"},
  });
}

/// A maker counts as known when the bench named one and did not leave it open; one that is only
/// attributed stays so. `originality` is that of the visit being told, or null.
[[nodiscard]] Identity identity(const record::Record& record, const dating::Finding& dating,
                                const originality::Finding* originality);

}  // namespace winchbook::assess
