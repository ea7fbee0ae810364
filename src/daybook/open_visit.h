#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/draft.h"
#include "forms/read_typed.h"

namespace winchbook::daybook {

/// The last visit, to be written in on this day. Errors: there is none, the reel was handed back,
/// or the day is before it was taken in.
[[nodiscard]] base::Result<record::Visit*> open_visit(Draft& draft, base::Day on);

/// The finding of a piece in a visit; added when there is none.
[[nodiscard]] record::PieceFinding& finding_of(record::Visit& visit, const record::PieceId& piece);

/// The finding of a place in a visit; added when there is none.
[[nodiscard]] record::PlaceFinding& finding_of(record::Visit& visit, const record::PlaceId& place);

/// The tray line of a piece in a visit, to be counted in on this day; added when there is none.
[[nodiscard]] record::TrayLine& tray_line_of(record::Visit& visit, const record::PieceId& piece,
                                             base::Day on);

/// A caution as it was typed; one without a label gets this one.
[[nodiscard]] record::Caution caution_of(const Draft& draft, const forms::Labelled& typed,
                                         const char* label);

/// How fully a thing can be undone, as it was typed.
[[nodiscard]] record::WayBack way_back_of(const Draft& draft, const forms::Degree& typed);

/// The photographs that are named; all faults together.
[[nodiscard]] base::Result<std::vector<record::PhotoId>> photos_of(
    const record::Record& record, const std::vector<std::string>& said);

/// The person who is named; nobody when nothing is.
[[nodiscard]] base::Result<std::optional<record::PersonId>> person_of(const record::Record& record,
                                                                      const std::string& said);

/// A day as a record holds it.
[[nodiscard]] base::EdtfDate date_of(base::Day day);

}  // namespace winchbook::daybook
