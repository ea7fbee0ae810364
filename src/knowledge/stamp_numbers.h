#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "base/result.h"
#include "knowledge/marks.h"
#include "knowledge/recognise.h"
#include "knowledge/stamp_dates.h"

namespace winchbook::knowledge {

/// "2,185,170".
[[nodiscard]] std::string with_commas(std::int64_t number);

/// What a number of a series says: not before the first day of the year in which it was given out,
/// hard; not after the right's longest term behind that year's end, soft. Without text positions.
[[nodiscard]] base::Result<Reading> reading_of_number(const NumberSeries& series,
                                                      std::int64_t number);

/// What a printed date of a US patent says: not before it, hard; not after 1 April 1927, when
/// numbers were asked for, or the end of its term, whichever is earlier, soft. A day on which no
/// patents were issued makes both soft, with a warning. A date before the office opened is a fault.
/// `numbered`: its number is known, so that 1927 says nothing.
[[nodiscard]] base::Result<Reading> reading_of_date(const Marks& marks, const StampDate& date,
                                                    bool numbered);

/// The sentence that says why a patent's number and its printed date cannot both be right; empty
/// when they agree.
[[nodiscard]] std::string disagreement(const NumberSeries& series, std::int64_t number,
                                       const StampDate& date);

/// What a GB patent number with its year, or of the continuous series, says. `year` is that behind
/// the stroke, of two or four figures; 0: there is none. `provisional`: an application's.
[[nodiscard]] base::Result<Reading> reading_of_gb_patent(const Marks& marks, std::int64_t number,
                                                         std::int64_t year, bool provisional);

}  // namespace winchbook::knowledge
