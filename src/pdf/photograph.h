#pragma once

#include <array>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "pdf/draw.h"
#include "pdf/haru.h"

namespace winchbook::pdf {

/// The matrix [a b c d e f] that sets the stored picture upright in the unit square, for an EXIF
/// orientation of 1 to 8 (CIPA DC-008, tag 274); any other number counts as 1. x runs right, y up.
[[nodiscard]] std::array<int, 6> upright(int orientation);

/// The photographs of one file; each is embedded when a page first shows it.
class Photographs {
 public:
  Photographs(const std::vector<Jpeg>& jpegs, Haru& haru) : jpegs_(jpegs), haru_(haru) {}

  /// A photograph as it was given, or null when there is none of that id.
  [[nodiscard]] const Jpeg* find(const std::string& id) const;
  /// Its resource name in content streams ("P0"). Error: four components without a colour profile,
  /// which an archival file cannot hold.
  [[nodiscard]] base::Result<std::string> name(const Jpeg& jpeg);
  /// Entries of the /XObject resources.
  [[nodiscard]] std::string resources() const;

 private:
  [[nodiscard]] std::string colour_space(const Jpeg& jpeg);

  const std::vector<Jpeg>& jpegs_;
  Haru& haru_;
  std::map<std::string, const Object*> embedded_;  ///< by id
  std::map<std::string, std::string> names_;
  std::map<std::string_view, const Object*> profiles_;  ///< by bytes
};

}  // namespace winchbook::pdf
