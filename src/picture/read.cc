#include "picture/read.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace winchbook::picture {
namespace {

struct Signature {
  std::string_view bytes;
  std::size_t offset;
  std::string_view what;
};

/// What a photograph is taken for by mistake.
constexpr auto kOthers = std::to_array<Signature>({
    {"ftyp", 4, "a video"},
    {"RIFF", 0, "a sound or a video"},
    {"\x1A\x45\xDF\xA3", 0, "a video"},
    {"GIF8", 0, "a GIF"},
    {"BM", 0, "a BMP"},
    {"%PDF", 0, "a PDF"},
    {"PK\x03\x04", 0, "an archive of files"},
});

/// The brands of still pictures (ISO/IEC 23008-12, annex B), and those of AVIF.
constexpr auto kHeifBrands = std::to_array<std::string_view>(
    {"heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "mif2", "msf1"});
constexpr auto kAvifBrands = std::to_array<std::string_view>({"avif", "avis"});

bool has(std::string_view bytes, const Signature& one) {
  return bytes.substr(std::min(one.offset, bytes.size()), one.bytes.size()) == one.bytes;
}

/// True when the file is of ISO's media format and its first brand is one of these.
template <class Brands> bool has_brand(std::string_view bytes, const Brands& brands) {
  constexpr std::size_t kBrand = 8;
  if (bytes.size() < kBrand + 4 || bytes.substr(4, 4) != "ftyp") return false;
  return std::find(brands.begin(), brands.end(), bytes.substr(kBrand, 4)) != brands.end();
}

}  // namespace

base::Result<Kind> kind_of(std::string_view bytes) {
  if (bytes.empty()) {
    return refuse("is empty (0 bytes)", "copy it again from the camera", "photo-empty");
  }
  if (bytes.starts_with("\xFF\xD8\xFF")) return Kind::jpeg;
  if (bytes.starts_with("\x89PNG\r\n\x1A\n")) return Kind::png;
  if (has(bytes, {"RIFF", 0, {}}) && has(bytes, {"WEBP", 8, {}})) return Kind::webp;
  if (has_brand(bytes, kHeifBrands)) return Kind::heic;
  if (has_brand(bytes, kAvifBrands)) return Kind::avif;
  using namespace std::string_view_literals;
  for (const std::string_view tiff : {"II*\0"sv, "MM\0*"sv, "II+\0"sv, "MM\0+"sv}) {
    if (bytes.starts_with(tiff)) return Kind::tiff;
  }
  for (const Signature& one : kOthers) {
    if (!has(bytes, one)) continue;
    return refuse("is " + std::string(one.what) + ", expected a JPEG, PNG, HEIC, WebP or TIFF",
                  "choose a photograph, or save one from it", "photo-kind");
  }
  return refuse("is no picture that is known here, expected a JPEG, PNG, HEIC, WebP or TIFF",
                "save it as JPEG; renaming does not change what it is", "photo-kind");
}

std::string_view ending_of(Kind kind) {
  switch (kind) {
    case Kind::jpeg:
      return "jpg";
    case Kind::png:
      return "png";
    case Kind::heic:
      return "heic";
    case Kind::avif:
      return "avif";
    case Kind::webp:
      return "webp";
    case Kind::tiff:
      return "tif";
  }
  return {};
}

base::Result<Picture> read(Kind kind, std::string_view bytes) {
  switch (kind) {
    case Kind::jpeg:
      return read_jpeg(bytes);
    case Kind::png:
      return read_png(bytes);
    case Kind::heic:
    case Kind::avif:
      return read_heif(bytes);
    case Kind::webp:
      return read_webp(bytes);
    case Kind::tiff:
      return read_tiff(bytes);
  }
  return damaged("nobody knows what it is");
}

}  // namespace winchbook::picture
