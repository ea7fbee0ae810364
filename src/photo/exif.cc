#include "photo/exif.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <string>

namespace winchbook::photo {
namespace {

constexpr std::uint32_t kOrientation = 0x0112;
constexpr std::uint32_t kExifDirectory = 0x8769;
constexpr std::uint32_t kGpsDirectory = 0x8825;
constexpr std::uint32_t kDateTimeOriginal = 0x9003;
constexpr std::uint32_t kInteroperabilityDirectory = 0xA005;
constexpr std::uint32_t kInteroperabilityIndex = 0x0001;
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
  /// The text of an entry: four bytes or fewer stand in the entry itself.
  [[nodiscard]] std::string_view text(std::size_t entry) const {
    const std::size_t length = number(entry + 4, 4);
    const std::size_t at = length <= 4 ? entry + 8 : number(entry + 8, 4);
    if (at > bytes_.size() || length > bytes_.size() - at) return {};
    return bytes_.substr(at, length);
  }
  /// Calls see(tag, entry) for each entry of a directory that lies within the bytes.
  template <class See> void each_entry(std::size_t directory, const See& see) const {
    if (directory == 0) return;
    const std::uint32_t entries = number(directory, 2);
    for (std::uint32_t i = 0; i < entries; ++i) {
      const std::size_t entry = directory + 2 + i * kEntrySize;
      if (entry + kEntrySize > bytes_.size()) break;
      see(number(entry, 2), entry);
    }
  }

 private:
  std::string_view bytes_;
  bool little_;
};

/// "2026:03:06 14:02:11" as a day.
std::optional<base::Day> day_of(std::string_view text) {
  constexpr std::size_t kDay = 10;
  if (text.size() < kDay || text[4] != ':' || text[7] != ':') return std::nullopt;
  const std::string_view figures = text.substr(0, kDay);
  if (figures.find_first_not_of("0123456789:") != std::string_view::npos) return std::nullopt;
  std::string iso(text.substr(0, kDay));
  std::replace(iso.begin(), iso.end(), ':', '-');
  const auto day = base::parse_day(iso);
  if (!day || day->year == 0) return std::nullopt;
  return *day;
}

}  // namespace

ExifFacts read_exif(std::string_view bytes) {
  ExifFacts facts;
  const Tiff tiff(bytes);
  if (!tiff.is_tiff()) return facts;
  std::size_t exif = 0;
  std::size_t interoperability = 0;
  tiff.each_entry(tiff.number(4, 4), [&](std::uint32_t tag, std::size_t entry) {
    if (tag == kGpsDirectory) facts.has_gps = true;
    if (tag == kExifDirectory) exif = tiff.number(entry + 8, 4);
    if (tag != kOrientation) return;
    const std::uint32_t told = tiff.number(entry + 8, 2);
    if (told >= 1 && told <= 8) facts.orientation = static_cast<int>(told);
  });
  tiff.each_entry(exif, [&](std::uint32_t tag, std::size_t entry) {
    if (tag == kInteroperabilityDirectory) interoperability = tiff.number(entry + 8, 4);
    if (tag == kDateTimeOriginal) facts.taken = day_of(tiff.text(entry));
  });
  tiff.each_entry(interoperability, [&](std::uint32_t tag, std::size_t entry) {
    if (tag == kInteroperabilityIndex && tiff.text(entry).starts_with("R03"))
      facts.adobe_rgb = true;
  });
  return facts;
}

}  // namespace winchbook::photo
