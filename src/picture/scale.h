#pragma once

#include "picture/raster.h"

namespace winchbook::picture {

/// The size of a stored picture once it stands upright.
[[nodiscard]] photo::Size upright_size(photo::Size stored, int orientation);

/// Makes a grey or rgb raster of 8 bits smaller, in the proportions of light (samples are taken out
/// of sRGB's curve and put back into it), by Mitchell and Netravali's filter. A raster that has the
/// size already is given back as it is. Error: no memory for it.
[[nodiscard]] base::Result<Raster> scaled(Raster raster, photo::Size to);

/// Turns a raster upright: `orientation` is Exif's, 1 to 8 (CIPA DC-008, tag 274).
[[nodiscard]] Raster turned_upright(Raster raster, int orientation);

}  // namespace winchbook::picture
