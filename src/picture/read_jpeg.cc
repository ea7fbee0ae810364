#include <memory>

#include "picture/jpeg_fault.h"
#include "picture/read.h"

namespace winchbook::picture {
namespace {

/// False when libjpeg gave up.
bool read_rows(photo::JpegSource& source, unsigned char* samples, std::size_t row_bytes) {
  if (setjmp(source.give_up) != 0) return false;  // NOLINT(cert-err52-cpp)
  jpeg_start_decompress(&source.info);
  while (source.info.output_scanline < source.info.output_height) {
    unsigned char* row = samples + source.info.output_scanline * row_bytes;
    jpeg_read_scanlines(&source.info, &row, 1);
  }
  jpeg_finish_decompress(&source.info);
  return true;
}

}  // namespace

base::Result<Picture> read_jpeg(std::string_view bytes) {
  const auto source = std::make_unique<photo::JpegSource>();
  if (!source->read_header(bytes)) return fault_of(*source);
  jpeg_decompress_struct& info = source->info;
  if (auto faults = fault_of_size(info.image_width, info.image_height); !faults.empty()) {
    return faults;
  }
  Picture picture;
  picture.exif = source->exif();
  picture.icc_profile = source->icc_profile();
  Raster& raster = picture.raster;
  raster.size = {static_cast<int>(info.image_width), static_cast<int>(info.image_height)};
  switch (info.num_components) {
    case 1:
      raster.space = Space::grey;
      info.out_color_space = JCS_GRAYSCALE;
      break;
    case 3:
      info.out_color_space = JCS_RGB;
      break;
    case 4:
      raster.space = Space::cmyk;
      raster.ink_inverted = info.saw_Adobe_marker != FALSE;
      info.out_color_space = JCS_CMYK;
      break;
    default:
      return refuse("has " + std::to_string(info.num_components) +
                        " colour components, expected 1 (grey), 3 (colour) or 4 (ink)",
                    "save it as RGB", "photo-coding");
  }
  raster.allocate();
  if (!read_rows(*source, raster.samples.data(), raster.row_bytes())) return fault_of(*source);
  return picture;
}

}  // namespace winchbook::picture
