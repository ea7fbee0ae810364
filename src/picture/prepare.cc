#include "picture/prepare.h"

#include <memory>
#include <utility>

#include "picture/colour.h"
#include "picture/jpeg_fault.h"
#include "picture/read.h"
#include "picture/scale.h"
#include "picture/write_jpeg.h"

namespace winchbook::picture {
namespace {

/// What a JPEG must be to be printed as it is, but for what it says besides.
struct JpegHead {
  photo::Size size;
  photo::ExifFacts exif;
  bool right = false;
};

base::Result<JpegHead> head_of(std::string_view jpeg) {
  const auto source = std::make_unique<photo::JpegSource>();
  if (!source->read_header(jpeg)) return fault_of(*source);
  const jpeg_decompress_struct& info = source->info;
  if (auto faults = fault_of_size(info.image_width, info.image_height); !faults.empty()) {
    return faults;
  }
  JpegHead head{{static_cast<int>(info.image_width), static_cast<int>(info.image_height)},
                source->exif()};
  const bool colours = info.num_components == 1 || info.num_components == 3;
  const Space space = info.num_components == 1 ? Space::grey : Space::rgb;
  head.right = colours && head.exif.orientation == 1 && !head.exif.adobe_rgb &&
               photo::fits_print(head.size) && is_srgb(source->icc_profile(), space);
  return head;
}

/// A JPEG that is right, without what it says besides.
base::Result<Prepared> prepare_right(std::string_view bytes, const JpegHead& head) {
  auto jpeg = without_remarks(bytes);
  if (!jpeg) return jpeg.faults();
  Prepared prepared{
      std::move(jpeg).value(),
      {head.size, photo::Made::without_remarks, "jpg", head.size, false, false, head.exif.taken}};
  if (is_bare(bytes)) {
    prepared.jpeg = bytes;
    prepared.answer.made = photo::Made::as_it_was;
  }
  return prepared;
}

}  // namespace

base::Result<Prepared> prepare(std::string_view bytes) {
  const auto kind = kind_of(bytes);
  if (!kind) return kind.faults();
  if (*kind == Kind::jpeg) {
    const auto head = head_of(bytes);
    if (!head) return head.faults();
    if (head->right) return prepare_right(bytes, *head);
  }
  auto read_in = read(*kind, bytes);
  if (!read_in) return read_in.faults();
  Picture picture = std::move(read_in).value();
  Prepared prepared;
  prepared.answer.ending = ending_of(*kind);
  prepared.answer.camera_size = picture.raster.size;
  prepared.answer.taken = picture.exif.taken;
  if (picture.icc_profile.empty() && picture.exif.adobe_rgb) {
    picture.icc_profile = adobe_rgb_profile();
  }
  auto coloured = in_srgb(std::move(picture.raster), picture.icc_profile);
  if (!coloured) return coloured.faults();
  prepared.answer.recoloured = coloured->recoloured;
  prepared.answer.profile_unusable = coloured->profile_unusable;
  const int orientation = picture.exif.orientation;
  const photo::Size upright = upright_size(coloured->raster.size, orientation);
  prepared.answer.size = photo::print_size(upright);
  auto smaller =
      scaled(std::move(coloured.value().raster), upright_size(prepared.answer.size, orientation));
  if (!smaller) return smaller.faults();
  auto jpeg = write_jpeg(turned_upright(std::move(smaller).value(), orientation));
  if (!jpeg) return jpeg.faults();
  prepared.jpeg = std::move(jpeg).value();
  return prepared;
}

}  // namespace winchbook::picture
