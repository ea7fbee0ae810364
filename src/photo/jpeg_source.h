#pragma once

#include <array>
#include <csetjmp>
#include <cstdio>
#include <string>
#include <string_view>

// jpeglib.h needs size_t and FILE declared before it.
#include <jpeglib.h>

#include "photo/exif.h"

namespace winchbook::photo {

/// More passes than this no camera writes; a file of thousands is meant to stop its reader.
inline constexpr int kMostScans = 100;

/// libjpeg reading from memory, and where to go when it gives up. A function that sets `give_up`
/// may hold nothing with a destructor. A warning counts as an error: the picture is then not what
/// was saved.
struct JpegSource {
  enum class GaveUp { too_many_scans, cut_short, damaged };

  jpeg_decompress_struct info{};
  jpeg_error_mgr errors{};
  jpeg_progress_mgr progress{};
  std::jmp_buf give_up{};
  std::array<char, JMSG_LENGTH_MAX> said{};
  bool too_many_scans = false;

  JpegSource();
  JpegSource(const JpegSource&) = delete;
  JpegSource& operator=(const JpegSource&) = delete;
  ~JpegSource() { jpeg_destroy_decompress(&info); }

  /// Reads the header; false when libjpeg gave up.
  [[nodiscard]] bool read_header(std::string_view bytes);
  /// Why it gave up; what it said is in `said`.
  [[nodiscard]] GaveUp why() const;
  /// What its Exif data say; read after the header.
  [[nodiscard]] ExifFacts exif() const;
  /// Its colour profile; empty when it has none that is whole.
  [[nodiscard]] std::string icc_profile();
};

}  // namespace winchbook::photo
