#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/decimal.h"
#include "base/edtf_date.h"
#include "record/judgement.h"

namespace winchbook::record {

enum class ReelKind {
  multiplier,
  baitcaster,
  fixed_spool,
  closed_face,
  centrepin,
  sidecast,
  fly_reel,
  plain_winch,
  wooden_reel,
};

/// The brake that holds a running fish; apart from the kind.
enum class Brake { star, lever, click, front_drag, rear_drag, rim, none, not_determined };

/// Which hand winds.
enum class Hand { left, right, either, not_determined };

/// As it was made, as it came to the bench, as it left.
struct HandHistory {
  Hand made = Hand::not_determined;
  Hand found = Hand::not_determined;
  Hand left = Hand::not_determined;
  Words how_converted;  ///< empty when it never was
};

/// Who made it. The maker is told as a judgement: "made by", or "attributed, with grounds".
struct MakerStatement {
  enum class Kind { made_by, attributed, not_determined };
  Kind kind = Kind::not_determined;
  std::string name;                   ///< "Harroway Reel Works"
  std::string place;                  ///< "Port Ellery"
  std::optional<bool> still_trading;  ///< empty: nobody said
  Evidence grounds;
  std::optional<Certainty> certainty;
};

/// A measure of the whole reel: "plate diameter", 98.4 mm.
struct Size {
  std::string what;
  base::Millimetres size;
};

/// How much line the spool takes, as measured or as the maker says.
struct LineCapacity {
  base::Decimal metres;
  base::Millimetres line_diameter;
  std::string source;  ///< "measured", "the maker's leaflet"
};

/// When it was made as the bench wrote it, before any engine weighs the marks.
struct WrittenDate {
  base::EdtfDate date;
  std::optional<Certainty> certainty;
  Evidence evidence;
};

/// The reel as a thing with a name.
struct Reel {
  std::string name;   ///< what the documents call it: "The Ferry Skerry"
  std::string model;  ///< "Skerry No. 40"; empty when not determined
  ReelKind kind = ReelKind::multiplier;
  Brake brake = Brake::not_determined;
  MakerStatement maker;
  std::string sold_by;  ///< a retailer whose name it bears; empty when none
  std::string serial;   ///< as read; empty when none is seen
  HandHistory hand;
  std::vector<Size> sizes;
  std::optional<base::Grams> weight;
  std::optional<base::Decimal> gear_ratio;  ///< turns of the spool for one of the handle
  std::optional<LineCapacity> capacity;
  std::optional<WrittenDate> made;
  Words box_and_papers;  ///< what came with it, in words; the things themselves are pieces
  std::optional<PhotoId> cover;
};

}  // namespace winchbook::record
