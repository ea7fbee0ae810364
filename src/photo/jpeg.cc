#include "photo/jpeg.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

#include "photo/jpeg_source.h"

namespace winchbook::photo {
namespace {

using base::Diagnostic;

Diagnostic refuse(std::string message, std::string hint, std::string rule) {
  return base::error(std::move(message), std::move(hint), std::move(rule));
}

struct Signature {
  std::string_view bytes;
  std::size_t offset;
  std::string_view kind;
};

constexpr auto kSignatures = std::to_array<Signature>({
    {"\x89PNG\r\n\x1A\n", 0, "a PNG"},
    {"GIF8", 0, "a GIF"},
    {"II*", 0, "a TIFF"},
    {"MM", 0, "a TIFF"},
    {"WEBP", 8, "a WebP"},
    {"ftyp", 4, "a HEIF or AVIF"},
    {"BM", 0, "a BMP"},
    {"%PDF", 0, "a PDF"},
});

std::optional<Diagnostic> fault_of_kind(std::string_view bytes) {
  if (bytes.empty()) {
    return refuse("the photograph is empty (0 bytes)", "copy it again from the camera",
                  "photo-empty");
  }
  if (bytes.substr(0, 3) == "\xFF\xD8\xFF") return std::nullopt;
  std::string_view kind = "not a picture this program knows";
  for (const Signature& one : kSignatures) {
    if (bytes.substr(std::min(one.offset, bytes.size()), one.bytes.size()) == one.bytes) {
      kind = one.kind;
      break;
    }
  }
  return refuse(fmt::format("the photograph is {}, expected a JPEG", kind),
                "save it as JPEG; renaming does not change what it is", "photo-kind");
}

/// False when libjpeg gave up; nothing with a destructor may live in here.
bool read_rows(JpegSource& decoder, unsigned char* row) {
  if (setjmp(decoder.give_up) != 0) return false;  // NOLINT(cert-err52-cpp)
  jpeg_start_decompress(&decoder.info);
  while (decoder.info.output_scanline < decoder.info.output_height) {
    jpeg_read_scanlines(&decoder.info, &row, 1);
  }
  jpeg_finish_decompress(&decoder.info);
  return true;
}

Diagnostic cut_short() {
  return refuse("the photograph is cut short", "copy it again from the camera or the backup",
                "photo-truncated");
}

Diagnostic damaged(const JpegSource& decoder) {
  switch (decoder.why()) {
    case JpegSource::GaveUp::too_many_scans:
      return refuse(fmt::format("the photograph is stored in more than {} passes", kMostScans),
                    "save it again as a plain JPEG", "photo-damaged");
    case JpegSource::GaveUp::cut_short:
      return cut_short();
    case JpegSource::GaveUp::damaged:
      break;
  }
  return refuse(fmt::format("the photograph is damaged ({})", decoder.said.data()),
                "copy it again from the camera or the backup", "photo-damaged");
}

std::optional<Diagnostic> fault_of_header(const jpeg_decompress_struct& info) {
  const auto width = static_cast<long long>(info.image_width);
  const auto height = static_cast<long long>(info.image_height);
  if (std::max(width, height) > kMostPixelsOnASide || width * height > kMostPixels) {
    return refuse(
        fmt::format("the photograph is {} × {} pixels, expected at most {} on a side and {} "
                    "million in all",
                    width, height, kMostPixelsOnASide, kMostPixels / 1'000'000),
        "save it smaller: 2000 pixels on the longer side print well", "photo-large");
  }
  if (info.arith_code != FALSE) {
    return refuse("the photograph uses arithmetic coding, which PDF cannot hold",
                  "save it again as a plain JPEG", "photo-coding");
  }
  if (info.num_components != 1 && info.num_components != 3) {
    return refuse(
        fmt::format("the photograph has {} colour components, expected 1 (grey) or 3 (colour)",
                    info.num_components),
        "save it as RGB", "photo-coding");
  }
  return std::nullopt;
}

JpegFacts facts_of(JpegSource& source) {
  const jpeg_decompress_struct& info = source.info;
  const ExifFacts exif = source.exif();
  JpegFacts facts;
  facts.width = static_cast<int>(info.image_width);
  facts.height = static_cast<int>(info.image_height);
  facts.colour = info.num_components == 1 ? Colour::grey : Colour::rgb;
  facts.orientation = static_cast<Orientation>(exif.orientation);
  facts.tells_where_taken = exif.has_gps;
  facts.icc_profile = source.icc_profile();
  return facts;
}

/// A JPEG ends with its end marker (ITU-T T.81, B.1.1.3); a few bytes behind it do no harm.
bool has_end(std::string_view bytes) {
  constexpr std::size_t kMostBehind = 4096;
  const std::size_t end = bytes.rfind("\xFF\xD9");
  return end != std::string_view::npos && bytes.size() - end <= kMostBehind;
}

enum class Depth { header, all_rows };

base::Result<JpegFacts> look(std::string_view bytes, Depth depth) {
  if (auto fault = fault_of_kind(bytes)) return *fault;
  if (bytes.size() > kMostBytes) {
    return refuse(fmt::format("the photograph is longer than {} MB", kMostBytes >> 20U),
                  "save it smaller: 2000 pixels on the longer side print well", "photo-large");
  }
  const auto decoder = std::make_unique<JpegSource>();
  if (!decoder->read_header(bytes)) return damaged(*decoder);
  if (auto fault = fault_of_header(decoder->info)) return *fault;
  JpegFacts facts = facts_of(*decoder);
  if (!has_end(bytes)) return cut_short();
  if (depth == Depth::header) return facts;
  std::vector<unsigned char> row(static_cast<std::size_t>(facts.width) * 4);
  if (!read_rows(*decoder, row.data())) return damaged(*decoder);
  return facts;
}

}  // namespace

base::Result<JpegFacts> inspect(std::string_view bytes) {
  return look(bytes, Depth::header);
}

base::Result<JpegFacts> decode(std::string_view bytes) {
  return look(bytes, Depth::all_rows);
}

}  // namespace winchbook::photo
