#include <webp/decode.h>
#include <webp/demux.h>

#include <cstdint>
#include <memory>

#include "picture/read.h"

namespace winchbook::picture {
namespace {

struct DeleteDemuxer {
  void operator()(WebPDemuxer* demuxer) const { WebPDemuxDelete(demuxer); }
};

/// The contents of a chunk of the container; empty when there is none.
std::string chunk_of(const WebPDemuxer* demuxer, const char* name) {
  WebPChunkIterator chunk;
  if (WebPDemuxGetChunk(demuxer, name, 1, &chunk) == 0) return {};
  std::string bytes(reinterpret_cast<const char*>(chunk.chunk.bytes), chunk.chunk.size);  // NOLINT
  WebPDemuxReleaseChunkIterator(&chunk);
  return bytes;
}

/// The Exif chunk is a TIFF structure; some write JPEG's "Exif" before it.
photo::ExifFacts exif_of(std::string_view chunk) {
  constexpr std::string_view kHead{"Exif\0\0", 6};
  if (chunk.starts_with(kHead)) chunk.remove_prefix(kHead.size());
  return photo::read_exif(chunk);
}

base::Diagnostic fault(VP8StatusCode status) {
  switch (status) {
    case VP8_STATUS_NOT_ENOUGH_DATA:
      return cut_short();
    case VP8_STATUS_OUT_OF_MEMORY:
      return fault_of_decoder("no memory");
    case VP8_STATUS_UNSUPPORTED_FEATURE:
      return refuse("is coded in a way that is not read here", "save it as JPEG", "photo-coding");
    default:
      return damaged("its samples cannot be decoded");
  }
}

}  // namespace

base::Result<Picture> read_webp(std::string_view bytes) {
  const auto* data = reinterpret_cast<const std::uint8_t*>(bytes.data());  // NOLINT
  WebPDecoderConfig config;
  if (WebPInitDecoderConfig(&config) == 0) return fault_of_decoder("no memory");
  const VP8StatusCode head = WebPGetFeatures(data, bytes.size(), &config.input);
  if (head != VP8_STATUS_OK) return fault(head);
  if (config.input.has_animation != 0) {
    return refuse("moves (an animated WebP)", "save one of its pictures as JPEG", "photo-kind");
  }
  if (auto faults = fault_of_size(config.input.width, config.input.height); !faults.empty()) {
    return faults;
  }
  const WebPData whole{data, bytes.size()};
  const std::unique_ptr<WebPDemuxer, DeleteDemuxer> demuxer(WebPDemux(&whole));
  if (!demuxer) return cut_short();
  Picture picture;
  picture.icc_profile = chunk_of(demuxer.get(), "ICCP");
  picture.exif = exif_of(chunk_of(demuxer.get(), "EXIF"));
  Raster& raster = picture.raster;
  raster.size = {config.input.width, config.input.height};
  raster.alpha = config.input.has_alpha != 0;
  raster.allocate();
  config.output.colorspace = raster.alpha ? MODE_RGBA : MODE_RGB;
  config.output.is_external_memory = 1;
  config.output.u.RGBA = {raster.samples.data(), static_cast<int>(raster.row_bytes()),
                          raster.samples.size()};
  const VP8StatusCode status = WebPDecode(data, bytes.size(), &config);
  WebPFreeDecBuffer(&config.output);
  if (status != VP8_STATUS_OK) return fault(status);
  lay_over_white(raster);
  return picture;
}

}  // namespace winchbook::picture
