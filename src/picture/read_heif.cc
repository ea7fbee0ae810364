#include <libheif/heif.h>

#include <cstdint>
#include <cstring>
#include <memory>
#include <vector>

#include "picture/colour.h"
#include "picture/read.h"

namespace winchbook::picture {
namespace {

struct FreeContext {
  void operator()(heif_context* context) const { heif_context_free(context); }
};
struct ReleaseHandle {
  void operator()(const heif_image_handle* handle) const { heif_image_handle_release(handle); }
};
struct ReleaseImage {
  void operator()(const heif_image* image) const { heif_image_release(image); }
};
struct FreeColours {
  void operator()(heif_color_profile_nclx* colours) const { heif_nclx_color_profile_free(colours); }
};
using Context = std::unique_ptr<heif_context, FreeContext>;
using Handle = std::unique_ptr<heif_image_handle, ReleaseHandle>;
using Image = std::unique_ptr<heif_image, ReleaseImage>;
using Colours = std::unique_ptr<heif_color_profile_nclx, FreeColours>;

base::Diagnostic fault(const heif_error& error) {
  switch (error.code) {
    case heif_error_Unsupported_feature:
    case heif_error_Unsupported_filetype:
      return refuse("is coded in a way that is not read here (" + std::string(error.message) + ")",
                    "save it as JPEG", "photo-coding");
    case heif_error_Memory_allocation_error:
      return fault_of_decoder("no memory");
    default:
      break;
  }
  const std::string_view said = error.message;
  if (said.find("End of data") != std::string_view::npos ||
      said.find("end of data") != std::string_view::npos) {
    return cut_short();
  }
  return fault_of_decoder(error.message);
}

/// Primaries and curve told by numbers (ITU-T H.273) as a profile; empty for sRGB, or when they are
/// not told. Error: brightness beyond what paper has (PQ, HLG).
base::Result<std::string> profile_of_numbers(const heif_image_handle* handle) {
  heif_color_profile_nclx* numbers = nullptr;
  if (heif_image_handle_get_nclx_color_profile(handle, &numbers).code != heif_error_Ok) {
    return std::string();
  }
  const Colours colours(numbers);
  if (colours->transfer_characteristics == heif_transfer_characteristic_ITU_R_BT_2100_0_PQ ||
      colours->transfer_characteristics == heif_transfer_characteristic_ITU_R_BT_2100_0_HLG) {
    return refuse("is brighter than paper can be (HDR)", "save it as a plain JPEG", "photo-colour");
  }
  if (colours->color_primaries == heif_color_primaries_ITU_R_BT_709_5 ||
      colours->color_primaries == heif_color_primaries_unspecified) {
    return std::string();
  }
  const auto pair = [](float x, float y) { return Chromaticity{double{x}, double{y}}; };
  return profile_with_srgb_curve(
      {pair(colours->color_primary_white_x, colours->color_primary_white_y),
       pair(colours->color_primary_red_x, colours->color_primary_red_y),
       pair(colours->color_primary_green_x, colours->color_primary_green_y),
       pair(colours->color_primary_blue_x, colours->color_primary_blue_y)});
}

base::Result<std::string> profile_of(const heif_image_handle* handle) {
  const std::size_t length = heif_image_handle_get_raw_color_profile_size(handle);
  if (length == 0) return profile_of_numbers(handle);
  std::string profile(length, '\0');
  if (heif_image_handle_get_raw_color_profile(handle, profile.data()).code != heif_error_Ok) {
    return std::string();
  }
  return profile;
}

/// Exif data stand behind four bytes that say how far (ISO/IEC 23008-12, A.2.1).
photo::ExifFacts exif_of(const heif_image_handle* handle) {
  constexpr std::size_t kOffset = 4;
  heif_item_id id = 0;
  if (heif_image_handle_get_list_of_metadata_block_IDs(handle, "Exif", &id, 1) != 1) return {};
  std::string data(heif_image_handle_get_metadata_size(handle, id), '\0');
  if (data.size() < kOffset ||
      heif_image_handle_get_metadata(handle, id, data.data()).code != heif_error_Ok) {
    return {};
  }
  std::size_t begin = 0;
  for (std::size_t i = 0; i < kOffset; ++i)
    begin = begin << 8U | static_cast<unsigned char>(data[i]);
  begin += kOffset;
  if (begin >= data.size()) return {};
  photo::ExifFacts facts = photo::read_exif(std::string_view(data).substr(begin));
  facts.orientation = 1;
  return facts;
}

base::Result<Raster> pixels_of(const heif_image_handle* handle) {
  const bool alpha = heif_image_handle_has_alpha_channel(handle) != 0;
  heif_image* decoded = nullptr;
  const heif_error error = heif_decode_image(
      handle, &decoded, heif_colorspace_RGB,
      alpha ? heif_chroma_interleaved_RGBA : heif_chroma_interleaved_RGB, nullptr);
  if (error.code != heif_error_Ok) return fault(error);
  const Image image(decoded);
  Raster raster;
  raster.size = {heif_image_get_width(image.get(), heif_channel_interleaved),
                 heif_image_get_height(image.get(), heif_channel_interleaved)};
  if (auto faults = fault_of_size(raster.size.width, raster.size.height); !faults.empty()) {
    return faults;
  }
  raster.alpha = alpha;
  raster.allocate();
  int stride = 0;
  const std::uint8_t* plane =
      heif_image_get_plane_readonly(image.get(), heif_channel_interleaved, &stride);
  if (plane == nullptr) return damaged("it has no pixels");
  for (int y = 0; y < raster.size.height; ++y) {
    std::memcpy(raster.row(y), plane + static_cast<std::ptrdiff_t>(y) * stride, raster.row_bytes());
  }
  lay_over_white(raster);
  return raster;
}

}  // namespace

base::Result<Picture> read_heif(std::string_view bytes) {
  const Context context(heif_context_alloc());
  if (!context) return fault_of_decoder("no memory");
  heif_context_set_maximum_image_size_limit(context.get(), photo::kMostCameraSide);
  heif_context_set_max_decoding_threads(context.get(), 0);
  const heif_error error = heif_context_read_from_memory_without_copy(context.get(), bytes.data(),
                                                                      bytes.size(), nullptr);
  if (error.code != heif_error_Ok) return fault(error);
  heif_image_handle* primary = nullptr;
  const heif_error found = heif_context_get_primary_image_handle(context.get(), &primary);
  if (found.code != heif_error_Ok) return fault(found);
  const Handle handle(primary);
  if (auto faults = fault_of_size(heif_image_handle_get_width(handle.get()),
                                  heif_image_handle_get_height(handle.get()));
      !faults.empty()) {
    return faults;
  }
  auto profile = profile_of(handle.get());
  if (!profile) return profile.faults();
  auto raster = pixels_of(handle.get());
  if (!raster) return raster.faults();
  return Picture{std::move(raster).value(), std::move(profile).value(), exif_of(handle.get())};
}

}  // namespace winchbook::picture
