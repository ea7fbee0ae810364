#include <png.h>

#include <algorithm>
#include <array>
#include <bit>
#include <csetjmp>
#include <cstring>
#include <memory>
#include <vector>

#include "picture/colour.h"
#include "picture/read.h"

namespace winchbook::picture {
namespace {

/// Anything that is not the picture itself may take so many bytes when unpacked.
constexpr png_alloc_size_t kMostOfAChunk = 8U << 20U;

/// libpng reading from memory, and where to go when it gives up. A function that sets `give_up` may
/// hold nothing with a destructor.
struct Source {
  png_structp png = nullptr;
  png_infop info = nullptr;
  std::string_view left;
  bool cut_short = false;
  std::array<char, 128> said{};
  std::jmp_buf give_up{};

  Source() = default;
  Source(const Source&) = delete;
  Source& operator=(const Source&) = delete;
  ~Source() { png_destroy_read_struct(&png, &info, nullptr); }
};

void on_error(png_structp png, png_const_charp message) {
  Source& source = *static_cast<Source*>(png_get_error_ptr(png));
  std::strncpy(source.said.data(), message, source.said.size() - 1);
  std::longjmp(source.give_up, 1);  // NOLINT(cert-err52-cpp): the only way out of libpng
}

void on_warning(png_structp /*png*/, png_const_charp /*message*/) {}

void give_bytes(png_structp png, png_bytep to, png_size_t length) {
  Source& source = *static_cast<Source*>(png_get_io_ptr(png));
  if (length > source.left.size()) {
    source.cut_short = true;
    png_error(png, "cut short");
  }
  std::memcpy(to, source.left.data(), length);
  source.left.remove_prefix(length);
}

/// Reads everything before the picture, and says how it is to be unpacked: 8 or 16 bits, grey or
/// rgb, with or without alpha. False when libpng gave up.
bool read_head(Source& source) {
  if (setjmp(source.give_up) != 0) return false;  // NOLINT(cert-err52-cpp)
  png_set_user_limits(source.png, photo::kMostCameraSide, photo::kMostCameraSide);
  png_set_chunk_malloc_max(source.png, kMostOfAChunk);
  png_set_read_fn(source.png, &source, give_bytes);
  png_read_info(source.png, source.info);
  png_set_expand(source.png);
  if (std::endian::native == std::endian::little) png_set_swap(source.png);
  png_set_interlace_handling(source.png);
  png_read_update_info(source.png, source.info);
  return true;
}

bool read_rows(Source& source, png_bytepp rows) {
  if (setjmp(source.give_up) != 0) return false;  // NOLINT(cert-err52-cpp)
  png_read_image(source.png, rows);
  png_read_end(source.png, source.info);
  return true;
}

base::Diagnostic fault(const Source& source) {
  return source.cut_short ? cut_short() : fault_of_decoder(source.said.data());
}

/// The size in the first chunk (PNG, 11.2.2), before libpng makes room for anything.
photo::Size size_in_head(std::string_view bytes) {
  constexpr std::size_t kWidth = 16;
  const auto number = [&](std::size_t at) {
    long long value = 0;
    for (std::size_t i = at; i < at + 4 && i < bytes.size(); ++i)
      value = value * 256 + static_cast<unsigned char>(bytes[i]);
    return static_cast<int>(std::min(value, 0x7FFF'FFFFLL));
  };
  return {number(kWidth), number(kWidth + 4)};
}

/// True for the gamma and primaries that PNG prescribes beside its sRGB chunk (PNG, 11.3.2.5): most
/// programs write them alone and mean sRGB.
bool means_srgb(const Source& source) {
  png_fixed_point gamma = 0;
  if (png_get_gAMA_fixed(source.png, source.info, &gamma) == 0) return true;
  constexpr png_fixed_point kGamma = 45455;
  if (gamma != kGamma) return false;
  std::array<png_fixed_point, 8> told{};
  constexpr std::array<png_fixed_point, 8> kPrimaries{31270, 32900, 64000, 33000,
                                                      30000, 60000, 15000, 6000};
  return png_get_cHRM_fixed(source.png, source.info, &told[0], &told[1], &told[2], &told[3],
                            &told[4], &told[5], &told[6], &told[7]) == 0 ||
         told == kPrimaries;
}

/// The colours' profile: iCCP, else sRGB, else gamma and primaries (PNG, 13.13).
std::string profile_of(const Source& source, Space space) {
  png_charp name = nullptr;
  int method = 0;
  png_bytep profile = nullptr;
  png_uint_32 length = 0;
  if (png_get_iCCP(source.png, source.info, &name, &method, &profile, &length) != 0) {
    return {reinterpret_cast<const char*>(profile), length};  // NOLINT
  }
  int intent = 0;
  if (png_get_sRGB(source.png, source.info, &intent) != 0 || means_srgb(source)) return {};
  double gamma = 0;
  if (png_get_gAMA(source.png, source.info, &gamma) == 0 || gamma <= 0) return {};
  if (space == Space::grey) return grey_profile_with_gamma(1 / gamma);
  Primaries primaries = kSrgbPrimaries;
  double wx = 0;
  double wy = 0;
  double rx = 0;
  double ry = 0;
  double gx = 0;
  double gy = 0;
  double bx = 0;
  double by = 0;
  if (png_get_cHRM(source.png, source.info, &wx, &wy, &rx, &ry, &gx, &gy, &bx, &by) != 0) {
    primaries = {{wx, wy}, {rx, ry}, {gx, gy}, {bx, by}};
  }
  return profile_with_gamma(primaries, 1 / gamma);
}

}  // namespace

base::Result<Picture> read_png(std::string_view bytes) {
  const photo::Size size = size_in_head(bytes);
  if (auto faults = fault_of_size(size.width, size.height); !faults.empty()) return faults;
  const auto source = std::make_unique<Source>();
  source->left = bytes;
  source->png = png_create_read_struct(PNG_LIBPNG_VER_STRING, source.get(), on_error, on_warning);
  if (source->png == nullptr) return fault_of_decoder("no memory");
  source->info = png_create_info_struct(source->png);
  if (source->info == nullptr) return fault_of_decoder("no memory");
  if (!read_head(*source)) return fault(*source);

  Picture picture;
  Raster& raster = picture.raster;
  raster.size = size;
  const int channels = png_get_channels(source->png, source->info);
  raster.space = channels <= 2 ? Space::grey : Space::rgb;
  raster.alpha = channels % 2 == 0;
  raster.sample_bytes = png_get_bit_depth(source->png, source->info) == 16 ? 2 : 1;
  picture.icc_profile = profile_of(*source, raster.space);
  raster.allocate();
  std::vector<png_bytep> rows(static_cast<std::size_t>(size.height));
  for (int y = 0; y < size.height; ++y)
    rows[static_cast<std::size_t>(y)] = raster.row(y);
  if (!read_rows(*source, rows.data())) return fault(*source);
  png_uint_32 length = 0;
  png_bytep exif = nullptr;
  if (png_get_eXIf_1(source->png, source->info, &length, &exif) != 0) {
    picture.exif = photo::read_exif({reinterpret_cast<const char*>(exif), length});  // NOLINT
  }
  lay_over_white(raster);
  return picture;
}

}  // namespace winchbook::picture
