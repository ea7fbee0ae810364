#include "knowledge/stock.h"

#include <fmt/format.h>

#include <charconv>
#include <optional>
#include <sstream>
#include <utility>

#include "base/edtf_date.h"
#include "base/measure.h"
#include "base/words_of_text.h"
#include "knowledge/valid_file.h"
#include "tabular/rows.h"
#include "xml/rows.h"

namespace winchbook::knowledge {
namespace {

using base::Diagnostics;
using base::Dimension;

constexpr std::uintmax_t kMostStockBytes = std::uintmax_t{16} << 20U;
constexpr int kMostOfOne = 100'000;

/// Nothing said: nothing holds it.
std::optional<Turns> turns_from(std::string_view word) {
  return word.empty() ? Turns::freely : base::value_of<Turns>(word);
}

/// A bare figure with the row's unit behind it; anything else as it stands.
std::string with_unit(std::string_view field, std::string_view unit) {
  std::string text(field);
  const bool bare = field.find_first_not_of("0123456789./ ") == std::string_view::npos;
  if (!field.empty() && bare && !unit.empty()) text += " " + std::string(unit);
  return text;
}

/// Reads the fields of one washer, whichever kind of file they come from.
class WasherReader {
 public:
  explicit WasherReader(base::Location where) : where_(std::move(where)) {}

  double length(std::string_view name, std::string_view field, std::string_view unit) {
    const auto measure = base::parse_measure(with_unit(field, unit), Dimension::length);
    if (measure && measure->value > 0) return measure->value;
    const std::string hint = measure ? std::string() : measure.faults().front().hint;
    tell(measure         ? fmt::format("{}: \"{}\" is not above zero", name, field)
         : field.empty() ? fmt::format("{} is missing", name)
                         : fmt::format("{}: {}", name, measure.faults().front().message),
         hint, "stock-length");
    return 0;
  }

  Turns held(std::string_view word) {
    const auto turns = turns_from(word);
    if (turns) return *turns;
    tell(fmt::format("held: \"{}\" is not free, gear or sleeve", word),
         "write free when nothing holds it, gear when it has ears, sleeve when it has flats",
         "stock-held");
    return Turns::freely;
  }

  int count(std::string_view field) {
    if (field.empty()) return 1;
    int number = 0;
    const auto read = std::from_chars(field.data(), field.data() + field.size(), number);
    if (read.ec == std::errc() && read.ptr == field.data() + field.size() && number >= 0 &&
        number <= kMostOfOne) {
      return number;
    }
    tell(fmt::format("count: \"{}\" is not a whole number of washers", field), "write 3",
         "stock-count");
    return 0;
  }

  std::optional<StockReport> report(const std::string& field) {
    if (base::trimmed(field).empty()) return std::nullopt;
    std::vector<std::string> parts;
    for (const std::string_view part : base::parts_of(field, ','))
      parts.emplace_back(base::trimmed(part));
    const bool whole = parts.size() == 3 && !parts[0].empty() && !parts[2].empty() &&
                       base::EdtfDate::parse(parts[1]);
    if (whole) return StockReport{parts[0], parts[1], parts[2]};
    tell(fmt::format("report: \"{}\" is not a laboratory, a day and a number", field),
         "write \"Fell Laboratory, 2026-05-02, 4471\"", "stock-report");
    return std::nullopt;
  }

  void sense(const StockWasher& washer) {
    if (washer.outside > 0 && washer.inside >= washer.outside) {
      tell(fmt::format("the inside ({:.4g} mm) is not smaller than the outside ({:.4g} mm)",
                       washer.inside, washer.outside),
           "measure again; the two may be exchanged", "stock-inside");
    }
  }

  void need(std::string_view name, std::string_view field) {
    if (field.empty()) tell(fmt::format("{} is missing", name), {}, "stock-length");
  }

  [[nodiscard]] const Diagnostics& faults() const { return faults_; }
  [[nodiscard]] int line() const { return where_.line; }

 private:
  void tell(std::string message, std::string hint, std::string rule) {
    faults_.push_back(base::error_at(where_, std::move(message), std::move(hint), std::move(rule)));
  }

  base::Location where_;
  Diagnostics faults_;
};

/// Gives the text of a field by its name.
template <class Field> StockWasher washer_from(const Field& field, WasherReader& reader) {
  StockWasher washer;
  washer.line = reader.line();
  washer.donor = field("donor");
  washer.material = field("material");
  reader.need("donor", washer.donor);
  reader.need("material", washer.material);
  const std::string unit = field("unit");
  washer.outside = reader.length("outside", field("outside"), unit);
  washer.inside = reader.length("inside", field("inside"), unit);
  washer.thickness = reader.length("thickness", field("thickness"), unit);
  washer.turns = reader.held(field("held"));
  if (!field("flats").empty()) washer.flats = reader.length("flats", field("flats"), unit);
  washer.price = field("price");
  washer.supplier = field("supplier");
  washer.report = reader.report(field("report"));
  washer.count = reader.count(field("count"));
  reader.sense(washer);
  return washer;
}

void add(Diagnostics& all, const Diagnostics& more) {
  all.insert(all.end(), more.begin(), more.end());
}

/// The same for a washer of a stack.
template <class Field> StackWasher stack_washer_from(const Field& field, WasherReader& reader) {
  StackWasher washer;
  washer.material = field("material");
  washer.turns = reader.held(field("held"));
  const std::string thickness = field("thickness");
  if (!thickness.empty()) washer.thickness = reader.length("thickness", thickness, field("unit"));
  return washer;
}

/// What `make` makes of every row, or all that is wrong with them.
template <class Washer, class Make>
base::Result<std::vector<Washer>> from_csv(const std::string& bytes, const std::string& file,
                                           const tabular::Table& table, const Make& make) {
  std::vector<Washer> washers;
  Diagnostics faults;
  const auto tell = [&](const Diagnostics& wrong) { add(faults, wrong); };
  std::istringstream in(bytes);
  tabular::each_row(
      in, file, table,
      [&](const tabular::Header& header, const tabular::Row& row) {
        WasherReader reader({file, row.line, 0});
        washers.push_back(make(
            [&](std::string_view name) { return std::string(header.field(row, name)); }, reader));
        tell(reader.faults());
      },
      tell);
  if (!faults.empty()) return faults;
  return washers;
}

base::Result<std::vector<StockWasher>> stock_from_csv(const std::string& bytes,
                                                      const std::string& file) {
  return from_csv<StockWasher>(
      bytes, file,
      {"stock file",
       {"donor", "material", "outside", "inside", "thickness"},
       "donor, material, outside, inside, thickness, held, flats, price, count, unit, supplier, "
       "report"},
      [](const auto& field, WasherReader& reader) { return washer_from(field, reader); });
}

base::Result<std::vector<StackWasher>> stack_from_csv(const std::string& bytes,
                                                      const std::string& file) {
  return from_csv<StackWasher>(
      bytes, file, {"stack file", {"material", "held"}, "material, held, thickness, unit", false},
      [](const auto& field, WasherReader& reader) { return stack_washer_from(field, reader); });
}

base::Result<std::vector<StockWasher>> stock_from_xml(const Source& source, std::string bytes,
                                                      std::string file) {
  const auto document = valid_document(source, std::move(file), std::move(bytes), "stock-1.xsd");
  if (!document) return document.faults();
  Diagnostics faults;
  std::vector<StockWasher> stock;
  xml::for_each_row(*document, "washer", [&](const xml::Row& row) {
    WasherReader reader(row.where);
    stock.push_back(washer_from([&](std::string_view name) { return row[name]; }, reader));
    add(faults, reader.faults());
  });
  if (!faults.empty()) return faults;
  return stock;
}

/// "red fibre free 1.3 mm": the material runs up to the word that says how it is held.
base::Result<StackWasher> stack_washer(std::string_view entry) {
  const auto fault = [&](std::string_view message) {
    return base::of_command(
        base::error(fmt::format("stack: \"{}\" {}", entry, message),
                    "write each washer as material, then gear, sleeve or free, then its "
                    "thickness: \"red fibre free 1.3 mm, steel gear 0.9 mm\"",
                    "command-stack"));
  };
  for (const std::string_view word : {"free", "gear", "sleeve"}) {
    const std::size_t at = entry.find(" " + std::string(word));
    if (at == std::string_view::npos) continue;
    const std::size_t end = at + 1 + word.size();
    if (end < entry.size() && entry[end] != ' ') continue;
    StackWasher washer{std::string(base::trimmed(entry.substr(0, at))), *turns_from(word), 0};
    const std::string_view thickness = base::trimmed(entry.substr(end));
    if (!thickness.empty()) {
      const auto measure = base::parse_measure(thickness, Dimension::length);
      if (!measure) return measure.faults();
      if (measure->value <= 0) return fault("has no thickness");
      washer.thickness = measure->value;
    }
    return washer;
  }
  return fault("does not say how it is held");
}

}  // namespace

base::Result<std::vector<StockWasher>> read_stock(const Source& source,
                                                  const std::filesystem::path& file) {
  auto bytes = source.files().read(file, kMostStockBytes);
  if (!bytes) return bytes.faults();
  const std::size_t first = bytes->find_first_not_of("\xEF\xBB\xBF \t\r\n");
  if (first != std::string::npos && (*bytes)[first] == '<') {
    return stock_from_xml(source, std::move(bytes).value(), file.string());
  }
  return stock_from_csv(*bytes, file.string());
}

base::Result<std::vector<StackWasher>> read_stack(const Source& source,
                                                  std::string_view list_or_file) {
  const std::filesystem::path file(list_or_file);
  constexpr std::size_t kMostName = 255;
  if (list_or_file.size() < kMostName && source.files().exists(file)) {
    const auto bytes = source.files().read(file, kMostStockBytes);
    if (!bytes) return bytes.faults();
    return stack_from_csv(*bytes, file.string());
  }
  std::vector<StackWasher> stack;
  std::vector<std::string_view> entries = base::parts_of(list_or_file, ',');
  if (entries.back().empty()) entries.pop_back();
  for (const std::string_view entry : entries) {
    auto washer = stack_washer(base::trimmed(entry));
    if (!washer) return washer.faults();
    stack.push_back(std::move(washer).value());
  }
  return stack;
}

}  // namespace winchbook::knowledge
