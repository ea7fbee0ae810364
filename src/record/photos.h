#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "record/words.h"

namespace winchbook::record {

enum class Stage {
  as_found,
  strip_down,
  cleaning,
  work,
  fitting,
  test,
  as_left,
  history,
  document
};

/// The camera's own file, kept elsewhere; its absence only warns.
struct Original {
  std::string file;
  std::string sha256;
};

/// A photograph: the print-size JPEG beside the record.
struct Photo {
  PhotoId id;
  std::string file;    ///< relative to the reel's folder: "photos/foot.jpg"
  std::string sha256;  ///< of the file's bytes, 64 lower-case hexadecimal digits
  int width = 0;       ///< pixels as stored
  int height = 0;
  std::optional<Original> original;
  std::optional<base::EdtfDate> taken;
  std::optional<PersonId> by;
  Stage stage = Stage::as_found;
  std::optional<VisitId> visit;
  std::vector<PieceId> pieces;
  std::optional<PhotoId>
      pair_of;  ///< on the as-left photograph: its as-found fellow from the same place
  Words caption;
  Words alternative;   ///< what a reader who cannot see it is told; empty: the caption serves
  std::string scale;   ///< "rule in millimetres", "one division is 5 mm"; empty: none
  std::string rights;  ///< whose it is, if lent; empty: the bench's own
  std::vector<PersonId> shows;  ///< people who can be recognised in it; withheld with them
  std::optional<Withheld> withheld;
  std::string salt;
};

}  // namespace winchbook::record
