#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "base/result.h"
#include "photo/exif.h"
#include "photo/print_size.h"

/// A camera's file made ready for printing: a program of its own, so that a file that breaks a
/// decoder breaks nothing else.
namespace winchbook::picture {

enum class Space { grey, rgb, cmyk };

/// Samples by rows from the top, left to right, the samples of a pixel one behind the other.
struct Raster {
  photo::Size size;
  Space space = Space::rgb;
  bool alpha = false;         ///< one sample more in each pixel: how much it covers
  int sample_bytes = 1;       ///< 1, or 2 in this machine's byte order
  bool ink_inverted = false;  ///< CMYK in which 255 is no ink, as Adobe's programs write it
  std::vector<unsigned char> samples = {};

  [[nodiscard]] int channels() const {
    return (space == Space::grey ? 1 : space == Space::rgb ? 3 : 4) + (alpha ? 1 : 0);
  }
  [[nodiscard]] std::size_t row_bytes() const {
    return static_cast<std::size_t>(size.width) * static_cast<std::size_t>(channels()) *
           static_cast<std::size_t>(sample_bytes);
  }
  [[nodiscard]] unsigned char* row(int y) {
    return samples.data() + static_cast<std::size_t>(y) * row_bytes();
  }
  [[nodiscard]] const unsigned char* row(int y) const {
    return samples.data() + static_cast<std::size_t>(y) * row_bytes();
  }
  /// Makes room for all samples.
  void allocate() { samples.resize(row_bytes() * static_cast<std::size_t>(size.height)); }
};

/// A camera's file as it was read.
struct Picture {
  Raster raster;
  std::string icc_profile;  ///< its colour profile (ICC.1), empty when it has none
  photo::ExifFacts exif;    ///< its orientation is 1 when the decoder has turned it already
};

/// Lays what covers only in part over white paper; afterwards there is no alpha.
void lay_over_white(Raster& raster);

/// An error whose message begins with "the photograph".
[[nodiscard]] base::Diagnostic refuse(const std::string& message, std::string hint,
                                      std::string rule);
[[nodiscard]] base::Diagnostic cut_short();
[[nodiscard]] base::Diagnostic damaged(const std::string& why);
/// The fault of a decoder that says it has no memory left, or else of a damaged file.
[[nodiscard]] base::Diagnostic fault_of_decoder(const std::string& said);

/// A size that nobody photographs; nothing when it is one to be decoded.
[[nodiscard]] base::Diagnostics fault_of_size(long long width, long long height);

}  // namespace winchbook::picture
