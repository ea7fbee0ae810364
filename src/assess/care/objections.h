#pragma once

#include <optional>
#include <string>
#include <vector>

#include "assess/care/care.h"

namespace winchbook::assess::care {

/// How some pieces are to be cleaned, together.
struct Question {
  const record::Record& record;
  const record::Visit& visit;
  std::vector<const record::Piece*> pieces;
  std::string method;
  std::optional<base::Minutes> minutes;
};

/// One thing that the care table says, and all the pieces of which it says it.
struct Objection {
  Judged judged;
  std::vector<const record::Piece*> pieces;
};

/// What the care table says of it, the worst first. A piece that is not off in the tray goes into a
/// bath with what is fitted beside it.
[[nodiscard]] std::vector<Objection> objections(const knowledge::CareTable& table,
                                                const Question& asked);

}  // namespace winchbook::assess::care
