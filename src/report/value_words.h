#pragma once

#include <optional>
#include <string>
#include <vector>

#include "assess/value/rounding.h"
#include "assess/value/value.h"
#include "report/telling.h"

namespace winchbook::report {

/// The estimate that is explained and drawn: the reel as left, or as found when only that is known.
[[nodiscard]] const assess::value::Estimate& explained(const Telling& telling);
/// "£116.05", in the currency of the question; `places` 0 leaves the pence out.
[[nodiscard]] std::string amount_words(const Telling& telling, double amount, int places = 2);
/// The same rounded to two figures.
[[nodiscard]] std::string rounded_words(const Telling& telling, double amount,
                                        assess::value::RoundPrice how);
/// "£86 to £140, most likely about £110"; empty when there is no figure.
[[nodiscard]] std::string range_words(const Telling& telling,
                                      const assess::value::Estimate& estimate);
/// "12 in a hundred" without the words: a share as a whole number.
[[nodiscard]] std::string hundredth_words(const Telling& telling, double share);
/// "surface"
[[nodiscard]] std::string trait_words(const Telling& telling, assess::value::Trait trait);
/// "surface, working and box"
[[nodiscard]] std::string trait_list(const Telling& telling,
                                     const std::vector<assess::value::Trait>& traits);
/// What is noted beside an estimate, in a sentence.
[[nodiscard]] std::string note_words(const Telling& telling,
                                     const assess::value::Estimate& estimate,
                                     assess::value::Note note);
/// Both ranges, or the refusal and why.
[[nodiscard]] std::string answer_words(const Telling& telling);
/// How far off the method was on the sales themselves; only when it was tried.
[[nodiscard]] std::string trial_words(const Telling& telling);
/// Why a sale does not count.
[[nodiscard]] std::string exclusion_words(const Telling& telling,
                                          const assess::value::Exclusion& exclusion);
/// "£480.00, with premium"
[[nodiscard]] std::string price_words(const Telling& telling, const assess::value::Sale& sale);

/// The sales as bars with the reel's range: each sale of a few, or how many lie in each band of
/// prices.
[[nodiscard]] document::ChartFigure sales_chart(const Telling& telling);
/// What its bars mean, for those who see it.
[[nodiscard]] document::SideNote sales_chart_key(const Telling& telling);

/// The four courses, each with its range and why; empty when there are too few sales for any.
[[nodiscard]] std::optional<document::Table> courses_value_table(const Telling& telling);

}  // namespace winchbook::report
