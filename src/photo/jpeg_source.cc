#include "photo/jpeg_source.h"

#include <cstdlib>
#include <memory>

namespace winchbook::photo {
namespace {

constexpr unsigned kMostRemark = 0xFFFF;

JpegSource& source_of(j_common_ptr info) {
  return *static_cast<JpegSource*>(info->client_data);
}

void on_error(j_common_ptr info) {
  JpegSource& source = source_of(info);
  source.errors.format_message(info, source.said.data());
  std::longjmp(source.give_up, 1);  // NOLINT(cert-err52-cpp): the only way out of libjpeg
}

/// A warning means that the picture is not what was saved.
void on_message(j_common_ptr info, int level) {
  if (level < 0) on_error(info);
}

/// For what is read between two guarded stretches: a bad profile is no profile.
void ignore_message(j_common_ptr /*info*/, int /*level*/) {}

void on_progress(j_common_ptr info) {
  JpegSource& source = source_of(info);
  if (source.info.input_scan_number <= kMostScans) return;
  source.too_many_scans = true;
  std::longjmp(source.give_up, 1);  // NOLINT(cert-err52-cpp)
}

}  // namespace

JpegSource::JpegSource() {
  info.err = jpeg_std_error(&errors);
  errors.error_exit = on_error;
  errors.emit_message = on_message;
  info.client_data = this;
}

bool JpegSource::read_header(std::string_view bytes) {
  if (setjmp(give_up) != 0) return false;  // NOLINT(cert-err52-cpp)
  jpeg_create_decompress(&info);
  progress.progress_monitor = on_progress;
  info.progress = &progress;
  jpeg_save_markers(&info, JPEG_APP0 + 1, kMostRemark);
  jpeg_save_markers(&info, JPEG_APP0 + 2, kMostRemark);
  // libjpeg-turbo declares the bytes const; the plain library does not write to them either.
  jpeg_mem_src(&info, reinterpret_cast<const unsigned char*>(bytes.data()),  // NOLINT
               static_cast<unsigned long>(bytes.size()));                    // NOLINT
  jpeg_read_header(&info, TRUE);
  return true;
}

JpegSource::GaveUp JpegSource::why() const {
  if (too_many_scans) return GaveUp::too_many_scans;
  const std::string_view what = said.data();
  const bool ended = what.find("Premature end") != std::string_view::npos ||
                     what.find("No more bytes") != std::string_view::npos;
  return ended ? GaveUp::cut_short : GaveUp::damaged;
}

ExifFacts JpegSource::exif() const {
  constexpr std::string_view kHead{"Exif\0\0", 6};
  for (auto* marker = info.marker_list; marker != nullptr; marker = marker->next) {
    const std::string_view data(reinterpret_cast<const char*>(marker->data),  // NOLINT
                                marker->data_length);
    if (marker->marker == JPEG_APP0 + 1 && data.starts_with(kHead)) {
      return read_exif(data.substr(kHead.size()));
    }
  }
  return {};
}

std::string JpegSource::icc_profile() {
  errors.emit_message = ignore_message;
  unsigned char* data = nullptr;
  unsigned int length = 0;
  const bool there = jpeg_read_icc_profile(&info, &data, &length) != FALSE;
  errors.emit_message = on_message;
  if (!there) return {};
  const std::unique_ptr<unsigned char, decltype(&std::free)> owner(data, &std::free);
  return {reinterpret_cast<const char*>(data), length};  // NOLINT
}

}  // namespace winchbook::photo
