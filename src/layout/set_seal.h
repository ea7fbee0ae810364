#pragma once

#include "document/document.h"
#include "layout/frame.h"

namespace winchbook::layout {

/// The short code large, in main, with one frame line of its own leading.
[[nodiscard]] Frame set_seal_code(const document::Seal& seal, TagId parent, const Setting& setting);

/// The QR code of the seal as one drawn figure for the side column, with error correction M, or L
/// where only that keeps it inside the column. A module is 3.9 points. The code's top left corner
/// is the frame's; of the four modules of white around it, those below belong to the frame, those
/// at the left and right are margin and gutter, and the caller leaves 15.6 points clear above. The
/// frame is as wide as the side column or, for a long payload, as the code. Throws
/// std::invalid_argument when the payload is empty or too long for any QR code.
[[nodiscard]] Frame set_qr_code(const document::Seal& seal, TagId parent, const Setting& setting);

/// Any other square code as one drawn figure, with error correction M and modules of that size; as
/// large as the code, the white around it is the caller's. Throws as above.
[[nodiscard]] Frame set_square_code(const std::string& payload, const std::string& alternative,
                                    Length module, TagId parent, const Setting& setting);

}  // namespace winchbook::layout
