#pragma once

#include "document/document.h"
#include "layout/frame.h"

namespace winchbook::layout {

/// The short code large, in main, with one frame line of its own leading.
[[nodiscard]] Frame set_seal_code(const document::Seal& seal, TagId parent, const Setting& setting);

/// The QR code of the seal as a figure of drawn squares for the side column, error correction M.
/// Modules are 3.9 points or more, whole hundredths; four modules stay white on each side, those at
/// the left standing in the page's margin so that the code's edge meets the column's.
/// The frame is as wide as the side column or, for a long payload, as the code.
/// Throws std::invalid_argument when the payload is too long for a QR code (2331 bytes).
[[nodiscard]] Frame set_qr_code(const document::Seal& seal, TagId parent, const Setting& setting);

}  // namespace winchbook::layout
