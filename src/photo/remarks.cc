#include "photo/remarks.h"

#include <cstddef>

namespace winchbook::photo {

std::string remarks_in(std::string_view jpeg) {
  constexpr unsigned kApp1 = 0xE1;
  constexpr unsigned kApp13 = 0xED;
  constexpr unsigned kComment = 0xFE;
  constexpr unsigned kScan = 0xDA;
  const auto byte = [&](std::size_t at) { return static_cast<unsigned char>(jpeg[at]); };
  std::string remarks;
  for (std::size_t at = 2; at + 4 <= jpeg.size() && byte(at) == 0xFF;) {
    const unsigned marker = byte(at + 1);
    if (marker == 0xFF) {  // a fill byte
      ++at;
      continue;
    }
    const std::size_t length = std::size_t{byte(at + 2)} * 256 + byte(at + 3);
    if (marker == kScan || length < 2) break;
    if (marker == kApp1 || marker == kApp13 || marker == kComment) {
      for (const char sign : jpeg.substr(at + 4, length - 2)) {
        if (sign != '\0') remarks += sign;
      }
      remarks += '\n';
    }
    at += 2 + length;
  }
  return remarks;
}

}  // namespace winchbook::photo
