#pragma once

#include <optional>
#include <string>
#include <vector>

#include "answers/telling.h"
#include "assess/fitting/line.h"
#include "forms/job.h"

namespace winchbook::answers {

/// What is asked about the line of a reel; metres and millimetres.
struct LineRequest {
  std::optional<assess::fitting::LineLoad> known;  ///< a load that is known to fill the spool
  std::optional<double> diameter;                  ///< of the line to put on
  std::optional<double> length;                    ///< of it, when backing goes under it
  std::optional<double> backing;                   ///< diameter of the backing
  std::optional<double> wound;                     ///< diameter of the wound line, spool full
  std::optional<double> empty;                     ///< the same, spool empty
  double ratio = 1;
};

/// What was reckoned; a part is empty where it was not asked.
struct LineAnswer {
  LineRequest request;
  std::optional<double> capacity;       ///< m of the line to put on
  std::optional<double> backing;        ///< m of backing under it
  bool too_much = false;                ///< the wanted length alone is more than the spool holds
  std::optional<double> retrieve_full;  ///< mm for one turn of the handle
  std::optional<double> retrieve_empty;
};

/// Reckons what was asked.
[[nodiscard]] LineAnswer reckon_line(LineRequest request);
/// In sentences with the formulas.
[[nodiscard]] Blocks line_told(const LineAnswer& answer, const words::Catalogue& words);
/// As JSON that keeps schemas/line.schema.json: m and mm.
[[nodiscard]] std::string line_as_json(const LineAnswer& answer);

[[nodiscard]] forms::Job line_job();

}  // namespace winchbook::answers
