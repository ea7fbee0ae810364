#include <tiffio.h>

#include <algorithm>
#include <array>
#include <cstdarg>
#include <cstdint>
#include <cstdio>
#include <cstring>
#include <memory>
#include <vector>

#include "picture/read.h"

namespace winchbook::picture {
namespace {

/// libtiff may ask for no more than this at once.
constexpr tmsize_t kMostAtOnce = tmsize_t{1} << 30U;
/// DNG's colours as the sensor saw them.
constexpr std::uint16_t kLinearRaw = 34892;

/// The file in memory, and what libtiff said first.
struct Source {
  std::string_view bytes;
  toff_t at = 0;
  std::string said;
};

Source& source_of(thandle_t handle) {
  return *static_cast<Source*>(handle);
}

tmsize_t give_bytes(thandle_t handle, void* to, tmsize_t length) {
  Source& source = source_of(handle);
  const std::size_t begin = std::min<std::size_t>(source.at, source.bytes.size());
  const std::size_t count = std::min<std::size_t>(
      static_cast<std::size_t>(std::max<tmsize_t>(length, 0)), source.bytes.size() - begin);
  std::memcpy(to, source.bytes.data() + begin, count);
  source.at += count;
  return static_cast<tmsize_t>(count);
}

tmsize_t take_no_bytes(thandle_t /*handle*/, void* /*from*/, tmsize_t /*length*/) {
  return -1;
}

toff_t seek(thandle_t handle, toff_t to, int from) {
  Source& source = source_of(handle);
  source.at = from == SEEK_SET ? to : from == SEEK_CUR ? source.at + to : source.bytes.size() + to;
  return source.at;
}

int close(thandle_t /*handle*/) {
  return 0;
}

toff_t size(thandle_t handle) {
  return source_of(handle).bytes.size();
}

// The two signatures are libtiff's.
int on_error(TIFF* /*tiff*/, void* user, const char* /*module*/, const char* format,
             va_list arguments) {
  std::string& said = static_cast<Source*>(user)->said;
  if (!said.empty()) return 1;
  std::array<char, 160> text{};
  std::vsnprintf(text.data(), text.size(), format, arguments);
  said = text.data();
  constexpr std::string_view kName = "photograph: ";
  if (said.starts_with(kName)) said.erase(0, kName.size());
  while (said.ends_with('.') || said.ends_with('\n'))
    said.pop_back();
  return 1;
}

int on_warning(TIFF* /*tiff*/, void* /*user*/, const char* /*module*/, const char* /*format*/,
               va_list /*arguments*/) {
  return 1;
}

base::Diagnostic fault(const Source& source) {
  for (const char* no_more : {"Read error", "not enough", "Not enough", "Can not read", "got "}) {
    if (source.said.find(no_more) != std::string::npos) return cut_short();
  }
  return fault_of_decoder(source.said.empty() ? "no picture in it" : source.said);
}

struct Close {
  void operator()(TIFF* tiff) const { TIFFClose(tiff); }
};
using Open = std::unique_ptr<TIFF, Close>;

Open opened(Source& source) {
  const std::unique_ptr<TIFFOpenOptions, decltype(&TIFFOpenOptionsFree)> options(
      TIFFOpenOptionsAlloc(), &TIFFOpenOptionsFree);
  if (!options) return {};
  TIFFOpenOptionsSetMaxSingleMemAlloc(options.get(), kMostAtOnce);
  TIFFOpenOptionsSetErrorHandlerExtR(options.get(), on_error, &source);
  TIFFOpenOptionsSetWarningHandlerExtR(options.get(), on_warning, nullptr);
  return Open(TIFFClientOpenExt("photograph", "rm", &source, give_bytes, take_no_bytes, seek, close,
                                size, nullptr, nullptr, options.get()));
}

std::uint32_t number(TIFF* tiff, std::uint32_t tag, std::uint32_t otherwise) {
  std::uint32_t value = otherwise;
  TIFFGetField(tiff, tag, &value);
  return value;
}

std::uint16_t small_number(TIFF* tiff, std::uint32_t tag, std::uint16_t otherwise) {
  std::uint16_t value = otherwise;
  TIFFGetFieldDefaulted(tiff, tag, &value);
  return value;
}

/// Why this sort of TIFF is no photograph to print; empty when it is one.
base::Diagnostics fault_of_sort(TIFF* tiff) {
  constexpr const char* kSave = "save it as JPEG, or as an RGB TIFF";
  const std::uint16_t colours = small_number(tiff, TIFFTAG_PHOTOMETRIC, PHOTOMETRIC_RGB);
  if ((number(tiff, TIFFTAG_SUBFILETYPE, 0) & FILETYPE_REDUCEDIMAGE) != 0 ||
      colours == PHOTOMETRIC_CFA || colours == kLinearRaw) {
    return {refuse("is a camera's raw file", "develop it and save it as JPEG", "photo-kind")};
  }
  if (colours == PHOTOMETRIC_SEPARATED) {
    return {refuse("is a TIFF in ink colours (CMYK)", kSave, "photo-colour")};
  }
  std::array<char, 1024> why{};
  if (colours == PHOTOMETRIC_CIELAB || colours == PHOTOMETRIC_ICCLAB ||
      colours == PHOTOMETRIC_LOGL || colours == PHOTOMETRIC_LOGLUV ||
      TIFFRGBAImageOK(tiff, why.data()) == 0) {
    const std::string said = why[0] == '\0' ? "its colours are measured" : why.data();
    return {
        refuse("is a TIFF of a sort that is not read here (" + said + ")", kSave, "photo-coding")};
  }
  return {};
}

/// Every pixel in the order of the file. libtiff gives colours laid over black where they are
/// transparent; here they are laid over white.
base::Result<Raster> pixels_of(TIFF* tiff, Source& source, photo::Size size) {
  std::array<char, 1024> why{};
  TIFFRGBAImage image;
  if (TIFFRGBAImageBegin(&image, tiff, 1, why.data()) == 0) return fault_of_decoder(why.data());
  const std::unique_ptr<TIFFRGBAImage, decltype(&TIFFRGBAImageEnd)> end(&image, &TIFFRGBAImageEnd);
  image.req_orientation = image.orientation;  // it is turned later, and wholly
  Raster raster{size, Space::rgb};
  const auto width = static_cast<std::size_t>(size.width);
  const auto height = static_cast<std::size_t>(size.height);
  std::vector<std::uint32_t> pixels(width * height);
  if (TIFFRGBAImageGet(&image, pixels.data(), image.width, image.height) == 0) {
    return fault(source);
  }
  raster.space = small_number(tiff, TIFFTAG_PHOTOMETRIC, PHOTOMETRIC_RGB) <= PHOTOMETRIC_MINISBLACK
                     ? Space::grey
                     : Space::rgb;
  raster.allocate();
  const bool clear = image.alpha != 0;
  unsigned char* to = raster.samples.data();
  for (const std::uint32_t pixel : pixels) {
    const std::uint32_t white = clear ? 255U - TIFFGetA(pixel) : 0U;
    const std::uint32_t colours[] = {TIFFGetR(pixel), TIFFGetG(pixel), TIFFGetB(pixel)};
    const int count = raster.space == Space::grey ? 1 : 3;
    for (int i = 0; i < count; ++i)
      *to++ = static_cast<unsigned char>(std::min(255U, colours[i] + white));
  }
  return raster;
}

}  // namespace

base::Result<Picture> read_tiff(std::string_view bytes) {
  Source source{bytes, 0, {}};
  const Open tiff = opened(source);
  if (!tiff) return fault(source);
  const std::uint32_t width = number(tiff.get(), TIFFTAG_IMAGEWIDTH, 0);
  const std::uint32_t height = number(tiff.get(), TIFFTAG_IMAGELENGTH, 0);
  if (auto faults = fault_of_size(width, height); !faults.empty()) return faults;
  if (auto faults = fault_of_sort(tiff.get()); !faults.empty()) return faults;
  auto raster = pixels_of(tiff.get(), source, {static_cast<int>(width), static_cast<int>(height)});
  if (!raster) return raster.faults();
  Picture picture{std::move(raster).value(), {}, photo::read_exif(bytes)};
  std::uint32_t length = 0;
  const void* profile = nullptr;
  if (TIFFGetField(tiff.get(), TIFFTAG_ICCPROFILE, &length, &profile) != 0 && profile != nullptr) {
    picture.icc_profile.assign(static_cast<const char*>(profile), length);
  }
  picture.exif.orientation = small_number(tiff.get(), TIFFTAG_ORIENTATION, ORIENTATION_TOPLEFT);
  return picture;
}

}  // namespace winchbook::picture
