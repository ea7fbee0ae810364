#include "photo/exif.h"

#include <cstddef>
#include <cstdint>

namespace winchbook::photo {
namespace {

constexpr std::uint32_t kOrientation = 0x0112;
constexpr std::uint32_t kGpsDirectory = 0x8825;
constexpr std::size_t kEntrySize = 12;

/// Numbers out of a TIFF structure; 0 beyond its end.
class Tiff {
 public:
  explicit Tiff(std::string_view bytes) : bytes_(bytes), little_(bytes.substr(0, 2) == "II") {}

  [[nodiscard]] bool is_tiff() const {
    return (little_ || bytes_.substr(0, 2) == "MM") && number(2, 2) == 42;
  }
  [[nodiscard]] std::uint32_t number(std::size_t at, std::size_t size) const {
    if (at > bytes_.size() || size > bytes_.size() - at) return 0;
    std::uint32_t value = 0;
    for (std::size_t i = 0; i < size; ++i) {
      const auto byte = static_cast<unsigned char>(bytes_[at + (little_ ? size - 1 - i : i)]);
      value = value << 8U | byte;
    }
    return value;
  }

 private:
  std::string_view bytes_;
  bool little_;
};

}  // namespace

ExifFacts read_exif(std::string_view bytes) {
  ExifFacts facts;
  const Tiff tiff(bytes);
  if (!tiff.is_tiff()) return facts;
  const std::size_t directory = tiff.number(4, 4);
  const std::uint32_t entries = tiff.number(directory, 2);
  for (std::uint32_t i = 0; i < entries; ++i) {
    const std::size_t entry = directory + 2 + i * kEntrySize;
    if (entry + kEntrySize > bytes.size()) break;
    const std::uint32_t tag = tiff.number(entry, 2);
    if (tag == kGpsDirectory) facts.has_gps = true;
    if (tag != kOrientation) continue;
    const std::uint32_t told = tiff.number(entry + 8, 2);
    if (told >= 1 && told <= 8) facts.orientation = static_cast<int>(told);
  }
  return facts;
}

}  // namespace winchbook::photo
