#pragma once

#include <string>
#include <vector>

#include "answers/telling.h"
#include "base/result.h"
#include "knowledge/care.h"
#include "library/library.h"

namespace winchbook::answers {

/// One cell of the care table.
struct CareCell {
  const knowledge::Substance* substance = nullptr;
  const knowledge::CareMethod* method = nullptr;  ///< null: the table does not know it
  const knowledge::CareRow* row = nullptr;        ///< null: not known
  std::string said = {};                          ///< the method as it was typed, when not known
  bool hazardous = false;                         ///< work on the substance can hurt somebody

  [[nodiscard]] const std::string& method_name() const {
    return method == nullptr ? said : method->name;
  }
};

/// What the table says before anything is touched. The cells point into the library's table.
struct CareAnswer {
  std::vector<CareCell> cells;
  bool whole_row = false;  ///< no method was named: every method is told
  std::string not_known;   ///< what is said of a cell without a row
  std::string leave_it;    ///< the same, where work on the substance can hurt somebody
};

/// "hard rubber hot water", "steel wool on nickel plate", or a material alone. Error of rule
/// "lookup-care" when it names no material that the table knows.
[[nodiscard]] base::Result<CareAnswer> look_up_care(library::Library& library,
                                                    const std::string& text);

/// A verdict with its reason and source for each cell; methods of one verdict and reason together.
[[nodiscard]] Blocks care_told(const CareAnswer& answer, const words::Catalogue& words);

/// The answer as JSON that keeps schemas/care.schema.json.
[[nodiscard]] std::string care_as_json(const CareAnswer& answer);

}  // namespace winchbook::answers
