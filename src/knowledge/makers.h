#pragma once

#include <array>
#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/edtf_date.h"
#include "base/enum_words.h"
#include "base/result.h"
#include "knowledge/marks.h"
#include "knowledge/source.h"

namespace winchbook::knowledge {

/// What a row of a maker file is about.
enum class MakerRowSort {
  name,     ///< a form of the name
  address,  ///< where the maker was
  model,    ///< the years in which it was in the list
  mark,     ///< anything else that is struck or moulded: "40-T 3"
  feature,  ///< a form of a part that is seen, not read: "gear cap domed, no name"
};

[[nodiscard]] constexpr auto enum_words(MakerRowSort /*list*/) {
  return std::to_array<base::EnumWord<MakerRowSort>>({
      {MakerRowSort::name, "name"},
      {MakerRowSort::address, "address"},
      {MakerRowSort::model, "model"},
      {MakerRowSort::mark, "mark"},
      {MakerRowSort::feature, "feature"},
  });
}

/// One thing the bench knows of a maker's work, and what it says of the year.
struct MakerRow {
  MakerRowSort sort = MakerRowSort::name;
  std::string word;                ///< "gear-cap-flat"; unique in the file
  std::string name;                ///< as it is told: "gear cap flat-topped, with the name"
  std::vector<std::string> forms;  ///< phrases by which it is known, folded; none for a feature
  std::string part;                ///< the kind of place it sits on ("gear-cap"); may be empty
  std::string model;               ///< it holds for this model only; empty: for all
  MarkBound bound;
};

/// A serial number whose date is known.
struct SeenSerial {
  std::int64_t number = 0;
  base::EdtfDate date;
  std::string because;
};

/// Serial numbers of one prefix, rising with the years.
struct SerialRun {
  std::string prefix;  ///< "H", folded
  std::vector<SeenSerial> seen;
  std::string source;
};

/// A maker as the bench knows him: `shared/makers/*.xml`, or a file of the bench's own.
struct Maker {
  std::string word;  ///< "harroway": the file's own name
  std::string name;  ///< "Harroway Reel Works", as records write it
  std::string place;
  std::vector<MakerRow> rows;
  std::vector<SerialRun> serials;
  std::string note;
};

/// The maker of that name, without regard to case, or null.
[[nodiscard]] const Maker* find_maker(const std::vector<Maker>& makers, std::string_view name);

/// What a serial number of a run says: not before the last seen number at or below it, not after
/// the first at or above it, both soft.
[[nodiscard]] MarkBound bound_of(const SerialRun& run, std::int64_t number);

/// Reads `shared/makers/*.xml`, by name of file, each validated by
/// `schemas/knowledge-1.xsd`; `more` are further maker files of the bench.
[[nodiscard]] base::Result<std::vector<Maker>> load_makers(
    const Source& source, const std::vector<std::filesystem::path>& more = {});

}  // namespace winchbook::knowledge
