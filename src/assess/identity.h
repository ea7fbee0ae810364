#pragma once

#include <string>

#include "record/record.h"

namespace winchbook::assess {

/// Which reel it is: one answer for every title, caption and stand-first.
struct Identity {
  enum class Maker { not_known, attributed, made_by };

  std::string name;  ///< as its people call it: "Aunt Effie's reel"
  Maker how = Maker::not_known;
  std::string maker;   ///< empty when not known, whatever else was written
  std::string place;   ///< of the maker; empty when not known
  std::string model;   ///< empty when not known
  std::string serial;  ///< empty: none was read

  /// What a stranger calls it: the model, else its own name.
  [[nodiscard]] const std::string& in_trade() const { return model.empty() ? name : model; }
  /// Whether model and serial say more than its own name does.
  [[nodiscard]] bool trade_says_more() const {
    return !serial.empty() || (!model.empty() && model != name);
  }
};

/// A maker counts as known when the bench named one and did not leave it open; one that is only
/// attributed stays so.
[[nodiscard]] Identity identity(const record::Record& record);

}  // namespace winchbook::assess
