#pragma once

#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/edit_draft.h"

namespace winchbook::daybook {

/// The visit that is going on.
struct OpenVisit {
  const record::Visit* visit = nullptr;
  pugi::xml_node element;
};

/// The last visit, to be written in on this day. Errors: there is none, the reel was handed back,
/// or the day is before it was taken in.
[[nodiscard]] base::Result<OpenVisit> open_visit(const Draft& draft, base::Day on);

/// The finding of a piece in a visit; added when there is none.
[[nodiscard]] pugi::xml_node finding_of(Draft& draft, pugi::xml_node visit,
                                        const record::PieceId& piece);

/// The tray line of a piece in a visit; added when there is none.
[[nodiscard]] pugi::xml_node tray_line_of(Draft& draft, pugi::xml_node visit,
                                          const record::PieceId& piece);

/// Adds to one of the line's counts.
void add_to_tray(Draft& draft, pugi::xml_node line, const char* name, int count);

/// Adds a caution written "Label: words"; a text without a label gets this one.
void add_caution(Draft& draft, pugi::xml_node parent, const std::string& text, const char* label);

/// Adds how fully a thing can be undone, written "100: Fully. The old one drops in."
void add_way_back(Draft& draft, pugi::xml_node parent, const std::string& text);

/// Adds what a surface is made of, the found one with what was untouched as cleaned.
void add_state(Draft& draft, pugi::xml_node finding, const record::PieceState& found, bool cleaned);

/// Adds a reference to each photograph that is named; all faults together.
[[nodiscard]] base::Diagnostics add_photos(Draft& draft, pugi::xml_node parent,
                                           const std::vector<std::string>& photos,
                                           const char* name = "photo");

}  // namespace winchbook::daybook
