#pragma once

#include <optional>
#include <string>
#include <vector>

#include "assess/condition/condition.h"
#include "assess/identity.h"
#include "assess/originality/originality.h"
#include "assess/value/value.h"
#include "base/ratio.h"
#include "document/document.h"
#include "record/record.h"

/// What a page tells, in the one form in which it is compared: made from the very values that its
/// words were made of, never asked for again.
namespace winchbook::report {

using FactList = std::vector<document::Fact>;

/// "56.93-64.85", in hundredths of a point; "none" where no figure is given.
[[nodiscard]] document::Fact told_share(std::string id,
                                        const std::optional<base::RatioRange>& share);
/// An index as found and as left: ID.found and ID.left.
[[nodiscard]] FactList told_index(const std::string& id, const assess::originality::Index& index);
/// Maker, model, serial and how many reels it is put together from.
[[nodiscard]] FactList told_identity(const assess::Identity& reel);
/// What its people call it.
[[nodiscard]] document::Fact told_name(const assess::Identity& reel);
/// "marks 1934-01-01/1958-12-31", "bench 1947/1948", "none-fits"; nothing where nobody says.
[[nodiscard]] FactList told_made(const assess::Made& made);
/// The same of a window that is drawn or told by itself, and the years that hold half and nine
/// tenths.
[[nodiscard]] FactList told_dating(const assess::dating::Finding& dating);
/// Axis 0 to 3 as found or as left: "most", or "half-most" while it is open.
[[nodiscard]] document::Fact told_state(std::size_t axis, std::string_view when,
                                        const assess::condition::WordRange& word);
/// How many parts are the maker's own, as found and as left; of an assembled reel from how many it
/// is.
[[nodiscard]] FactList told_counts(const assess::originality::Finding& finding);
/// Whose the parts in a row are, as found and as left.
[[nodiscard]] FactList told_standing(const assess::originality::PieceRow& row);
/// "89-180 130 GBP", rounded as it is told; "none" without a figure.
[[nodiscard]] document::Fact told_value(std::string id, const assess::value::Estimate& estimate,
                                        const std::string& currency);
/// A course's word; "none" for no course.
[[nodiscard]] document::Fact told_course(std::string id,
                                         const std::optional<record::Course>& course);

}  // namespace winchbook::report
