#pragma once

#include <optional>
#include <string>
#include <vector>

#include "assess/fitting/recorded.h"
#include "assess/strip/strip.h"
#include "document/document.h"
#include "report/telling.h"

/// What the bench sheet and the care card share: parts in a row, springs, the drag and its curve.
namespace winchbook::report {

/// What is known of taking the reel apart; the visit's own.
[[nodiscard]] const assess::strip::Finding& strip_of(const Telling& telling);

/// A number with so many places, without noughts at its end.
[[nodiscard]] std::string number_words(const Telling& telling, double value, int places);
/// Newtons as a balance shows them: one place under 10, none above.
[[nodiscard]] std::string newtons_words(const Telling& telling, double newtons);
/// "8 to 14 N", or "12 N" where both ends read alike.
[[nodiscard]] std::string pull_words(const Telling& telling, const assess::fitting::Span& newtons);
/// The same on a scale in kilograms force and in pounds force: "0.8 to 1.4 kgf, 1.8 to 3.1 lbf".
[[nodiscard]] std::string scale_words(const Telling& telling, const assess::fitting::Span& newtons);

/// "Handle nut; yoke springs (2)": each part with its count where there are several.
[[nodiscard]] std::string parts_words(const Telling& telling,
                                      const std::vector<assess::strip::Part>& parts);
/// Those of the parts that take this lubricant, as `parts_words` has them; each name once.
[[nodiscard]] std::string lubricated_words(const Telling& telling,
                                           const std::vector<assess::strip::Part>& parts,
                                           knowledge::Lubricant lubricant);

/// A warning of all these springs; nothing when there are none.
[[nodiscard]] std::optional<document::Caution> spring_caution(
    const Telling& telling, const std::vector<assess::strip::Spring>& springs);

/// Whether the reel has a drag at all: by its brake, or by what was written down.
[[nodiscard]] bool has_drag(const Telling& telling);
/// The curve of the pull at the line over the spool's fill, with the range in which it may lie.
/// Nothing where a measure is missing. A small one is for a card: without the line's strength, and
/// with fewer words.
enum class ChartSize { full, small };
[[nodiscard]] std::optional<document::ChartFigure> drag_chart(const Telling& telling,
                                                              ChartSize size);
/// Which measures are missing for the curve, in a sentence; empty when none is.
[[nodiscard]] std::string lacking_words(const Telling& telling);
/// The share of the line's strength within which drags are set, beside this one's setting, and why
/// that is no rule; empty when the line's strength is not known.
[[nodiscard]] std::string share_words(const Telling& telling);
/// The same in one sentence, without the setting.
[[nodiscard]] std::string short_share_words(const Telling& telling);

}  // namespace winchbook::report
