#include "layout/picture.h"

#include <algorithm>
#include <cstdint>

#include "layout/shapes.h"

namespace winchbook::layout {

Rect fitted(const document::Photograph& photograph, Length width, Length height) {
  const std::int64_t across = std::max(1, photograph.width);
  const std::int64_t down = std::max(1, photograph.height);
  // However long and thin it is, something of it is seen.
  constexpr Length kLeast = base::points(1);
  if (width.thousandths * down <= height.thousandths * across) {
    return {{}, {}, width, std::max(kLeast, base::scaled(width, down, across))};
  }
  return {{}, {}, std::max(kLeast, base::scaled(height, across, down)), height};
}

void add_picture(const document::Photograph& photograph, Rect box, TagId tag,
                 const Setting& setting, Frame& frame) {
  frame.items.emplace_back(ImageItem{photograph.id, box, tag});
  if (photograph.light_border) {
    frame.items.emplace_back(
        outlined_box(box, {base::points(0.35), setting.style.ink2}, kArtifact));
  }
}

int resolution_at(const document::Photograph& photograph, Length width) {
  constexpr std::int64_t kInch = 72'000;  // thousandths of a point
  return static_cast<int>(photograph.width * kInch / std::max(1, width.thousandths));
}

}  // namespace winchbook::layout
