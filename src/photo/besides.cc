#include "photo/besides.h"

#include <fmt/format.h>
#include <utility>

#include <cstddef>

namespace winchbook::photo {
namespace {

constexpr unsigned kStart = 0xD8;
constexpr unsigned kEnd = 0xD9;
constexpr unsigned kScan = 0xDA;
constexpr unsigned kApp0 = 0xE0;
constexpr unsigned kApp15 = 0xEF;
constexpr unsigned kComment = 0xFE;

/// Reads from marker to marker.
class Segments {
 public:
  explicit Segments(std::string_view jpeg) : jpeg_(jpeg) {}

  /// What is kept once besides() came to the end; empty when it did not.
  [[nodiscard]] const std::string& kept() const { return kept_; }

  std::vector<std::string> besides() {
    if (jpeg_.size() < 4 || byte(0) != 0xFF || byte(1) != kStart) return {};
    std::string kept(jpeg_.substr(0, 2));
    for (at_ = 2; at_ + 2 <= jpeg_.size();) {
      if (byte(at_) != 0xFF) {
        besides_.emplace_back("bytes between its segments");
        return std::move(besides_);
      }
      const unsigned marker = byte(at_ + 1);
      if (marker == 0xFF) {  // a fill byte
        ++at_;
      } else if (marker == kEnd) {
        const std::size_t more = jpeg_.size() - at_ - 2;
        if (more > 0) besides_.push_back(fmt::format("{} bytes behind its end", more));
        kept_ = std::move(kept) + std::string(jpeg_.substr(at_, 2));
        return std::move(besides_);
      } else if (!segment(marker, kept)) {
        return std::move(besides_);
      }
    }
    return std::move(besides_);
  }

 private:
  [[nodiscard]] unsigned byte(std::size_t at) const {
    return static_cast<unsigned char>(jpeg_[at]);
  }

  /// False when it is cut short.
  bool segment(unsigned marker, std::string& kept) {
    if (at_ + 4 > jpeg_.size()) return false;
    const std::size_t length = std::size_t{byte(at_ + 2)} * 256 + byte(at_ + 3);
    if (length < 2 || at_ + 2 + length > jpeg_.size()) return false;
    const std::string_view inside = jpeg_.substr(at_ + 4, length - 2);
    const std::size_t before = besides_.size();
    if (marker == kComment) besides_.emplace_back("a comment");
    if (marker >= kApp0 && marker <= kApp15 && !belongs_to_picture(marker, inside))
      besides_.push_back(fmt::format("application segment {}", marker - kApp0));
    const std::size_t begin = at_;
    at_ += 2 + length;
    if (marker == kScan) skip_scan();
    if (besides_.size() == before) kept += jpeg_.substr(begin, at_ - begin);
    return true;
  }

  static bool belongs_to_picture(unsigned marker, std::string_view inside) {
    using namespace std::string_view_literals;  // NOLINT: zero bytes stand in them
    if (marker == kApp0) {
      constexpr std::size_t kBare = 14;  // without a thumbnail
      return inside.starts_with("JFIF\0"sv) && inside.size() == kBare && inside[12] == '\0' &&
             inside[13] == '\0';
    }
    if (marker == kApp0 + 2) return inside.starts_with("ICC_PROFILE\0"sv);
    constexpr std::size_t kAdobe = 12;
    return marker == kApp0 + 14 && inside.starts_with("Adobe"sv) && inside.size() == kAdobe;
  }

  /// To the next marker: not a stuffed zero byte, nor a restart.
  void skip_scan() {
    while (at_ + 2 <= jpeg_.size()) {
      const unsigned next = byte(at_ + 1);
      const bool restart = next >= 0xD0 && next <= 0xD7;
      if (byte(at_) == 0xFF && next != 0 && next != 0xFF && !restart) return;
      ++at_;
    }
  }

  std::string_view jpeg_;
  std::size_t at_ = 0;
  std::vector<std::string> besides_;
  std::string kept_;
};

}  // namespace

std::vector<std::string> besides_the_picture(std::string_view jpeg) {
  return Segments(jpeg).besides();
}

std::string bare_picture(std::string_view jpeg) {
  Segments segments(jpeg);
  static_cast<void>(segments.besides());
  return segments.kept();
}

}  // namespace winchbook::photo
