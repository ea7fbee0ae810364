#include "picture/raster.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <cstring>
#include <utility>

#include "base/words_of_text.h"

namespace winchbook::picture {
namespace {

constexpr const char* kCopyAgain = "copy it again from the camera or the backup";

/// Sample × cover + white × (1 − cover), rounded, for samples of type T.
template <class T> void lay_row_over_white(unsigned char* row, int width, int channels) {
  constexpr std::uint64_t kWhite = static_cast<T>(~T{0});
  const auto colours = static_cast<std::size_t>(channels - 1);
  const auto* from = row;
  auto* to = row;
  for (int x = 0; x < width; ++x) {
    T cover = 0;
    std::memcpy(&cover, from + colours * sizeof(T), sizeof(T));
    for (std::size_t i = 0; i < colours; ++i) {
      T sample = 0;
      std::memcpy(&sample, from + i * sizeof(T), sizeof(T));
      const auto laid = static_cast<T>(
          (std::uint64_t{sample} * cover + kWhite * (kWhite - cover) + kWhite / 2) / kWhite);
      std::memcpy(to + i * sizeof(T), &laid, sizeof(T));
    }
    from += (colours + 1) * sizeof(T);
    to += colours * sizeof(T);
  }
}

}  // namespace

void lay_over_white(Raster& raster) {
  if (!raster.alpha) return;
  const std::size_t with = raster.row_bytes();
  const int channels = raster.channels();
  raster.alpha = false;
  const std::size_t without = raster.row_bytes();
  for (int y = 0; y < raster.size.height; ++y) {
    unsigned char* row = raster.samples.data() + static_cast<std::size_t>(y) * with;
    if (raster.sample_bytes == 2) {
      lay_row_over_white<std::uint16_t>(row, raster.size.width, channels);
    } else {
      lay_row_over_white<std::uint8_t>(row, raster.size.width, channels);
    }
    std::memmove(raster.row(y), row, without);
  }
  raster.samples.resize(without * static_cast<std::size_t>(raster.size.height));
}

base::Diagnostic refuse(const std::string& message, std::string hint, std::string rule) {
  return base::error("the photograph " + message, std::move(hint), std::move(rule));
}

base::Diagnostic cut_short() {
  return refuse("is cut short", kCopyAgain, "photo-truncated");
}

base::Diagnostic damaged(const std::string& why) {
  return refuse(fmt::format("is damaged ({})", why), kCopyAgain, "photo-damaged");
}

base::Diagnostic fault_of_decoder(const std::string& said) {
  if (base::in_small_letters(said).find("memory") != std::string::npos) {
    return refuse("needs more memory than it may have", "save it smaller, or as a plain JPEG",
                  "photo-large");
  }
  return damaged(said);
}

base::Diagnostics fault_of_size(long long width, long long height) {
  if (width <= 0 || height <= 0) return {damaged("it has no pixels")};
  const bool large =
      std::max(width, height) > photo::kMostCameraSide || width * height > photo::kMostCameraPixels;
  if (!large) return {};
  return {refuse(
      fmt::format("is {} × {} pixels, expected at most {} on a side and {} million "
                  "in all",
                  width, height, photo::kMostCameraSide, photo::kMostCameraPixels / 1'000'000),
      "save it smaller: 2000 pixels on the longer side print well", "photo-large")};
}

}  // namespace winchbook::picture
