#pragma once

#include <string_view>
#include <vector>

#include "base/result.h"
#include "daybook/draft.h"
#include "forms/form.h"

namespace winchbook::daybook {

/// What is told of some pieces: a method, a sentence, an adaptation.
struct Told {
  std::vector<record::PieceId> pieces;  ///< what the sentence names is looked for besides
  std::string_view text;
  bool done_already = false;  ///< it happened before anybody asked: it is entered, with its caution
};

/// What can hurt whoever does it, before anything else is asked. Errors of rule "hazard" for work
/// that makes dust of what may hold what no eye can see: no reason lifts them, only a laboratory's
/// report on the piece, or that it is new and who supplied it. Warnings of rule "caution", in the
/// words of the catalogue, for each act that has its own (flame, solder, a wheel …).
[[nodiscard]] base::Diagnostics hazards_in(const Draft& draft, const record::Visit& visit,
                                           const Told& told);

/// Warnings for pieces that are about to be handled and may hold what no eye can see.
[[nodiscard]] base::Diagnostics hazards_of(const Draft& draft, const record::Visit& visit,
                                           const std::vector<record::PieceId>& pieces);

/// A material that the care table does not know, with the one that may be meant (rule "material").
[[nodiscard]] base::Diagnostics doubtful_material(const Draft& draft, std::string_view material);

/// A supplier whom nobody can ask clears nothing (rule "command-supplier").
[[nodiscard]] base::Diagnostics faults_of_supplier(std::string_view supplier);

/// --done-already.
[[nodiscard]] forms::Field done_already_field(bool& done_already);

}  // namespace winchbook::daybook
