#include "picture/scale.h"

#include <cstring>
#include <utility>

// Its functions are compiled into this file alone.
#define STB_IMAGE_RESIZE_STATIC
#define STB_IMAGE_RESIZE_IMPLEMENTATION
#include <stb_image_resize.h>

namespace winchbook::picture {

photo::Size upright_size(photo::Size stored, int orientation) {
  return orientation >= 5 ? photo::Size{stored.height, stored.width} : stored;
}

base::Result<Raster> scaled(Raster raster, photo::Size to) {
  if (raster.size == to) return raster;
  Raster target{to, raster.space};
  target.allocate();
  const bool good =
      stbir_resize_uint8_generic(raster.samples.data(), raster.size.width, raster.size.height,
                                 static_cast<int>(raster.row_bytes()), target.samples.data(),
                                 to.width, to.height, static_cast<int>(target.row_bytes()),
                                 raster.channels(), STBIR_ALPHA_CHANNEL_NONE, 0, STBIR_EDGE_CLAMP,
                                 STBIR_FILTER_MITCHELL, STBIR_COLORSPACE_SRGB, nullptr) != 0;
  if (!good) return fault_of_decoder("no memory");
  return target;
}

Raster turned_upright(Raster raster, int orientation) {
  if (orientation <= 1 || orientation > 8) return raster;
  Raster target{upright_size(raster.size, orientation), raster.space};
  target.allocate();
  const auto pixel = static_cast<std::size_t>(raster.channels());
  const int right = raster.size.width - 1;
  const int bottom = raster.size.height - 1;
  for (int y = 0; y < target.size.height; ++y) {
    unsigned char* to = target.row(y);
    for (int x = 0; x < target.size.width; ++x, to += pixel) {
      // Where the stored row 0 and column 0 are seen, by the number: 1 top left, 2 top right,
      // 3 bottom right, 4 bottom left, 5 left top, 6 right top, 7 right bottom, 8 left bottom.
      const bool lies = orientation >= 5;
      const bool from_right =
          orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
      const bool from_bottom =
          orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
      const int column = lies ? y : x;
      const int row = lies ? x : y;
      const unsigned char* from =
          raster.row(from_bottom ? bottom - row : row) +
          static_cast<std::size_t>(from_right ? right - column : column) * pixel;
      std::memcpy(to, from, pixel);
    }
  }
  return target;
}

}  // namespace winchbook::picture
