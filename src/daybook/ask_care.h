#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "base/decimal.h"
#include "base/diagnostic.h"
#include "base/result.h"
#include "library/world.h"
#include "record/record.h"

namespace winchbook::daybook {

/// How some pieces are to be cleaned, together.
struct CareQuestion {
  const record::Record& record;
  const record::Visit& visit;
  std::vector<const record::Piece*> pieces;
  std::string method;
  std::optional<base::Minutes> minutes;
};

/// What the care table says of it, the worst first: errors of rule "care" for what harms, warnings
/// for what is to be minded or not known. An empty function asks nobody.
using AskCare = std::function<base::Diagnostics(const CareQuestion&)>;

/// Reads the table, and gives the one who answers from it. A piece that is not off in the tray goes
/// into a bath with what is fitted beside it.
[[nodiscard]] base::Result<AskCare> care_asker(const library::World& world);

}  // namespace winchbook::daybook
