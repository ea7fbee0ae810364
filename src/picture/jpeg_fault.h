#pragma once

#include "base/result.h"
#include "photo/jpeg_source.h"

namespace winchbook::picture {

/// Why libjpeg gave up, told of the photograph.
[[nodiscard]] base::Diagnostic fault_of(const photo::JpegSource& source);

}  // namespace winchbook::picture
