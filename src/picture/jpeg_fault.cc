#include "picture/jpeg_fault.h"

#include <fmt/format.h>

#include "picture/raster.h"

namespace winchbook::picture {

base::Diagnostic fault_of(const photo::JpegSource& source) {
  using GaveUp = photo::JpegSource::GaveUp;
  switch (source.why()) {
    case GaveUp::too_many_scans:
      return refuse(fmt::format("is stored in more than {} passes", photo::kMostScans),
                    "save it again as a plain JPEG", "photo-damaged");
    case GaveUp::cut_short:
      return cut_short();
    case GaveUp::damaged:
      break;
  }
  return fault_of_decoder(source.said.data());
}

}  // namespace winchbook::picture
