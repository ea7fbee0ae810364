#include "picture/write_jpeg.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <memory>

#include "picture/jpeg_fault.h"

namespace winchbook::picture {
namespace {

constexpr int kQuality = 90;

/// libjpeg writing to memory, and where to go when it gives up.
struct Target {
  jpeg_compress_struct info{};
  jpeg_error_mgr errors{};
  std::jmp_buf give_up{};
  std::array<char, JMSG_LENGTH_MAX> said{};
  unsigned char* bytes = nullptr;
  unsigned long length = 0;  // NOLINT(google-runtime-int): libjpeg's

  Target();
  Target(const Target&) = delete;
  Target& operator=(const Target&) = delete;
  ~Target() {
    jpeg_destroy_compress(&info);
    std::free(bytes);  // NOLINT(cppcoreguidelines-no-malloc): libjpeg's
  }
  [[nodiscard]] std::string take() const {
    return {reinterpret_cast<const char*>(bytes), static_cast<std::size_t>(length)};  // NOLINT
  }
};

void on_error(j_common_ptr info) {
  Target& target = *static_cast<Target*>(info->client_data);
  target.errors.format_message(info, target.said.data());
  std::longjmp(target.give_up, 1);  // NOLINT(cert-err52-cpp): the only way out of libjpeg
}

void ignore_message(j_common_ptr /*info*/, int /*level*/) {}

Target::Target() {
  info.err = jpeg_std_error(&errors);
  errors.error_exit = on_error;
  errors.emit_message = ignore_message;
  info.client_data = this;
}

/// False when libjpeg gave up.
bool encode(Target& target, const Raster& raster) {
  if (setjmp(target.give_up) != 0) return false;  // NOLINT(cert-err52-cpp)
  jpeg_create_compress(&target.info);
  jpeg_mem_dest(&target.info, &target.bytes, &target.length);
  target.info.image_width = static_cast<JDIMENSION>(raster.size.width);
  target.info.image_height = static_cast<JDIMENSION>(raster.size.height);
  target.info.input_components = raster.channels();
  target.info.in_color_space = raster.space == Space::grey ? JCS_GRAYSCALE : JCS_RGB;
  jpeg_set_defaults(&target.info);
  jpeg_set_quality(&target.info, kQuality, TRUE);
  target.info.optimize_coding = TRUE;
  target.info.dct_method = JDCT_ISLOW;
  jpeg_start_compress(&target.info, TRUE);
  while (target.info.next_scanline < target.info.image_height) {
    // libjpeg does not write to the rows, but does not say so
    auto* row = const_cast<unsigned char*>(  // NOLINT(cppcoreguidelines-pro-type-const-cast)
        raster.row(static_cast<int>(target.info.next_scanline)));
    jpeg_write_scanlines(&target.info, &row, 1);
  }
  jpeg_finish_compress(&target.info);
  return true;
}

/// Reads every coefficient; null when libjpeg gave up.
jvirt_barray_ptr* read_coefficients(photo::JpegSource& source) {
  if (setjmp(source.give_up) != 0) return nullptr;  // NOLINT(cert-err52-cpp)
  return jpeg_read_coefficients(&source.info);
}

bool finish(photo::JpegSource& source) {
  if (setjmp(source.give_up) != 0) return false;  // NOLINT(cert-err52-cpp)
  jpeg_finish_decompress(&source.info);
  return true;
}

bool write_coefficients(Target& target, photo::JpegSource& source, jvirt_barray_ptr* coefficients) {
  if (setjmp(target.give_up) != 0) return false;  // NOLINT(cert-err52-cpp)
  jpeg_create_compress(&target.info);
  jpeg_mem_dest(&target.info, &target.bytes, &target.length);
  jpeg_copy_critical_parameters(&source.info, &target.info);
  target.info.optimize_coding = TRUE;
  jpeg_write_coefficients(&target.info, coefficients);
  jpeg_finish_compress(&target.info);
  return true;
}

/// Segments that say what the picture is, and nothing else: tables, one baseline frame, JFIF
/// without a small picture, Adobe's colour transform.
bool says_only_the_picture(unsigned marker, std::string_view data) {
  constexpr unsigned kBaseline = 0xC0;
  constexpr unsigned kHuffmanTables = 0xC4;
  constexpr unsigned kQuantisationTables = 0xDB;
  constexpr unsigned kRestartInterval = 0xDD;
  constexpr unsigned kJfif = 0xE0;
  constexpr unsigned kAdobe = 0xEE;
  constexpr std::size_t kJfifLength = 14;
  constexpr std::size_t kAdobeLength = 12;
  using namespace std::string_view_literals;
  if (marker == kJfif) return data.size() == kJfifLength && data.starts_with("JFIF\0"sv);
  if (marker == kAdobe) return data.size() == kAdobeLength && data.starts_with("Adobe");
  return marker == kBaseline || marker == kHuffmanTables || marker == kQuantisationTables ||
         marker == kRestartInterval;
}

}  // namespace

base::Result<std::string> write_jpeg(const Raster& raster) {
  const auto target = std::make_unique<Target>();
  if (!encode(*target, raster)) return fault_of_decoder(target->said.data());
  return target->take();
}

base::Result<std::string> without_remarks(std::string_view jpeg) {
  const auto source = std::make_unique<photo::JpegSource>();
  if (!source->read_header(jpeg)) return fault_of(*source);
  jvirt_barray_ptr* coefficients = read_coefficients(*source);
  if (coefficients == nullptr) return fault_of(*source);
  const auto target = std::make_unique<Target>();
  if (!write_coefficients(*target, *source, coefficients)) {
    return fault_of_decoder(target->said.data());
  }
  if (!finish(*source)) return fault_of(*source);
  return target->take();
}

bool is_bare(std::string_view jpeg) {
  constexpr unsigned kScan = 0xDA;
  const auto byte = [&](std::size_t at) { return static_cast<unsigned char>(jpeg[at]); };
  std::size_t at = 2;
  for (unsigned marker = 0; marker != kScan;) {
    if (at + 4 > jpeg.size() || byte(at) != 0xFF) return false;
    marker = byte(at + 1);
    const std::size_t length = std::size_t{byte(at + 2)} * 256 + byte(at + 3);
    if (length < 2 || length > jpeg.size() - at - 2) return false;
    if (marker != kScan && !says_only_the_picture(marker, jpeg.substr(at + 4, length - 2))) {
      return false;
    }
    at += 2 + length;
  }
  // Within the one scan 0xFF is followed by 0, or by a restart marker; the end marker ends the
  // file.
  while (at + 1 < jpeg.size()) {
    at = std::min(jpeg.find('\xFF', at), jpeg.size());
    if (at + 1 >= jpeg.size()) return false;
    const unsigned next = byte(at + 1);
    if (next == 0xD9) return at + 2 == jpeg.size();
    if (next != 0 && (next < 0xD0 || next > 0xD7)) return false;
    at += 2;
  }
  return false;
}

}  // namespace winchbook::picture
