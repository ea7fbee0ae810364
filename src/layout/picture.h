#pragma once

#include "document/document.h"
#include "layout/frame.h"

namespace winchbook::layout {

/// The largest whole picture of the photograph in a box of this size, at its top left.
[[nodiscard]] Rect fitted(const document::Photograph& photograph, Length width, Length height);

/// The photograph in `box`, with a thin rule round it when its own border is too light to be seen.
void add_picture(const document::Photograph& photograph, Rect box, TagId tag,
                 const Setting& setting, Frame& frame);

/// Pixels an inch when the photograph is printed this wide.
[[nodiscard]] int resolution_at(const document::Photograph& photograph, Length width);

}  // namespace winchbook::layout
