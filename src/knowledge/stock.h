#pragma once

#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/enum_words.h"
#include "base/result.h"
#include "base/words_of_text.h"
#include "knowledge/source.h"

namespace winchbook::knowledge {

/// What a member of the stack turns with.
enum class Turns { with_gear, with_sleeve, freely };

[[nodiscard]] constexpr auto enum_words(Turns /*list*/) {
  return std::to_array<base::EnumWord<Turns>>({
      {Turns::with_gear, "gear"},
      {Turns::with_sleeve, "sleeve"},
      {Turns::freely, "free"},
  });
}

/// One washer of a stack, in order from the gear's floor outwards.
struct StackWasher {
  std::string material;
  Turns turns = Turns::freely;
  double thickness = 0;  ///< mm; 0: not measured
};

/// A laboratory's report on a washer: "Fell Laboratory, 2026-05-02, 4471".
struct StockReport {
  std::string laboratory;
  std::string on;  ///< the day, as EDTF
  std::string number;
};

/// One row of a stock file.
struct StockWasher {
  int line = 0;  ///< of the file, to find it again
  std::string donor;
  std::string material;
  double outside = 0;  ///< mm
  double inside = 0;
  double thickness = 0;
  Turns turns = Turns::freely;        ///< ears: with the gear; flats: with the sleeve
  std::optional<double> flats;        ///< across the flats of its hole, mm
  std::string price;                  ///< as written, with its currency
  std::string supplier;               ///< it is new material: who supplied it
  std::optional<StockReport> report;  ///< a laboratory found no asbestos in it
  int count = 1;

  /// Something says that it holds no asbestos; no eye can.
  [[nodiscard]] bool is_cleared() const { return base::says_something(supplier) || report; }
};

/// Reads a bench's stock of washers: CSV (RFC 4180; columns donor, material, outside, inside,
/// thickness, and if wanted held, flats, price, count, unit, supplier, report) or XML
/// (`schemas/stock-1.xsd`), told apart by the first byte. A length carries its unit ("22 mm", "7/8
/// in"), or the row's `unit` column gives it. `held` is free, gear (ears) or sleeve (flats); left
/// out, free. All faults with their lines.
[[nodiscard]] base::Result<std::vector<StockWasher>> read_stock(const Source& source,
                                                                const std::filesystem::path& file);

/// Reads a stack: a list such as "red fibre free 1.3 mm, steel gear 0.9 mm", from the gear's floor
/// outwards, or the CSV file of that name with the columns material, held, thickness. A thickness
/// may be left out.
[[nodiscard]] base::Result<std::vector<StackWasher>> read_stack(const Source& source,
                                                                std::string_view list_or_file);

}  // namespace winchbook::knowledge
