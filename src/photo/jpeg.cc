#include "photo/jpeg.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <csetjmp>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <optional>
#include <utility>
#include <vector>

// jpeglib.h needs size_t and FILE declared before it.
#include <jpeglib.h>

#include "photo/exif.h"

namespace winchbook::photo {
namespace {

using base::Diagnostic;

constexpr int kMostScans = 100;

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

/// libjpeg's state, and where to go when it gives up.
struct Decoder {
  jpeg_decompress_struct info{};
  jpeg_error_mgr errors{};
  jpeg_progress_mgr progress{};
  std::jmp_buf give_up{};
  std::array<char, JMSG_LENGTH_MAX> said{};
  bool too_many_scans = false;
};

Decoder& decoder_of(j_common_ptr info) {
  return *static_cast<Decoder*>(info->client_data);
}

void on_error(j_common_ptr info) {
  Decoder& decoder = decoder_of(info);
  decoder.errors.format_message(info, decoder.said.data());
  std::longjmp(decoder.give_up, 1);  // NOLINT(cert-err52-cpp): the only way out of libjpeg
}

/// A warning means that the picture is not what was saved.
void on_message(j_common_ptr info, int level) {
  if (level < 0) on_error(info);
}

/// For what is read between two guarded stretches: a bad profile is no profile.
void ignore_message(j_common_ptr /*info*/, int /*level*/) {}

void on_progress(j_common_ptr info) {
  Decoder& decoder = decoder_of(info);
  if (decoder.info.input_scan_number <= kMostScans) return;
  decoder.too_many_scans = true;
  std::longjmp(decoder.give_up, 1);  // NOLINT(cert-err52-cpp)
}

void prepare(Decoder& decoder, std::string_view bytes) {
  jpeg_create_decompress(&decoder.info);
  decoder.progress.progress_monitor = on_progress;
  decoder.info.progress = &decoder.progress;
  jpeg_save_markers(&decoder.info, JPEG_APP0 + 1, 0xFFFF);
  jpeg_save_markers(&decoder.info, JPEG_APP0 + 2, 0xFFFF);
  // libjpeg-turbo declares the bytes const; the plain library does not write to them either.
  jpeg_mem_src(&decoder.info, reinterpret_cast<const unsigned char*>(bytes.data()),  // NOLINT
               static_cast<unsigned long>(bytes.size()));                            // NOLINT
  jpeg_read_header(&decoder.info, TRUE);
}

/// False when libjpeg gave up; nothing with a destructor may live in here.
bool read_header(Decoder& decoder, std::string_view bytes) {
  if (setjmp(decoder.give_up) != 0) return false;  // NOLINT(cert-err52-cpp)
  prepare(decoder, bytes);
  return true;
}

bool read_rows(Decoder& decoder, unsigned char* row) {
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

Diagnostic damaged(const Decoder& decoder) {
  if (decoder.too_many_scans) {
    return refuse(fmt::format("the photograph is stored in more than {} passes", kMostScans),
                  "save it again as a plain JPEG", "photo-damaged");
  }
  const std::string_view said = decoder.said.data();
  if (said.find("Premature end") != std::string_view::npos ||
      said.find("No more bytes") != std::string_view::npos) {
    return cut_short();
  }
  return refuse(fmt::format("the photograph is damaged ({})", said),
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

std::string_view exif_of(const jpeg_decompress_struct& info) {
  constexpr std::string_view kHead{"Exif\0\0", 6};
  for (auto marker = info.marker_list; marker != nullptr; marker = marker->next) {
    const std::string_view data(reinterpret_cast<const char*>(marker->data),
                                marker->data_length);  // NOLINT
    if (marker->marker == JPEG_APP0 + 1 && data.substr(0, kHead.size()) == kHead) {
      return data.substr(kHead.size());
    }
  }
  return {};
}

std::string icc_of(jpeg_decompress_struct& info) {
  unsigned char* data = nullptr;
  unsigned int length = 0;
  if (jpeg_read_icc_profile(&info, &data, &length) == FALSE) return {};
  const std::unique_ptr<unsigned char, decltype(&std::free)> owner(data, &std::free);
  return {reinterpret_cast<const char*>(data), length};  // NOLINT
}

JpegFacts facts_of(jpeg_decompress_struct& info) {
  const ExifFacts exif = read_exif(exif_of(info));
  JpegFacts facts;
  facts.width = static_cast<int>(info.image_width);
  facts.height = static_cast<int>(info.image_height);
  facts.colour = info.num_components == 1 ? Colour::grey : Colour::rgb;
  facts.orientation = static_cast<Orientation>(exif.orientation);
  facts.tells_where_taken = exif.has_gps;
  facts.icc_profile = icc_of(info);
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
  const auto decoder = std::make_unique<Decoder>();
  decoder->info.err = jpeg_std_error(&decoder->errors);
  decoder->errors.error_exit = on_error;
  decoder->errors.emit_message = on_message;
  decoder->info.client_data = decoder.get();
  const std::unique_ptr<jpeg_decompress_struct, decltype(&jpeg_destroy_decompress)> end(
      &decoder->info, &jpeg_destroy_decompress);
  if (!read_header(*decoder, bytes)) return damaged(*decoder);
  if (auto fault = fault_of_header(decoder->info)) return *fault;
  decoder->errors.emit_message = ignore_message;
  JpegFacts facts = facts_of(decoder->info);
  decoder->errors.emit_message = on_message;
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
