#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/enum_words.h"
#include "knowledge/makers.h"
#include "knowledge/marks.h"

/// Reading a stamp as typed into what the tables say of it. It stands here because `winchbook
/// lookup` and the dating of a record read the same stamps; weighing them is the question of
/// dating. Letters among figures, broken commas and short years are taken for what they most likely
/// are only where that is told, and never where two years would be possible.
namespace winchbook::knowledge {

/// What a part of a stamp was read as.
enum class ReadAs {
  us_patent,
  us_patent_date,
  us_design,
  us_reissue,
  gb_design,
  gb_patent,
  mark,
  address,
  country,
  material,
  finish,
  fastener,
  maker,   ///< a row of a maker file
  serial,  ///< a serial number of a maker file
};

/// The kinds of `winchbook lookup`.
[[nodiscard]] constexpr auto enum_words(ReadAs /*list*/) {
  return std::to_array<base::EnumWord<ReadAs>>({
      {ReadAs::us_patent, "us-patent"},
      {ReadAs::us_patent_date, "us-patent-date"},
      {ReadAs::us_design, "us-design"},
      {ReadAs::us_reissue, "us-reissue"},
      {ReadAs::gb_design, "gb-design"},
      {ReadAs::gb_patent, "gb-patent"},
      {ReadAs::mark, "mark"},
      {ReadAs::address, "address"},
      {ReadAs::country, "country"},
      {ReadAs::material, "material"},
      {ReadAs::finish, "finish"},
      {ReadAs::fastener, "fastener"},
      {ReadAs::maker, "maker"},
      {ReadAs::serial, "serial"},
  });
}

/// One thing that a stamp says.
struct Reading {
  ReadAs as = ReadAs::mark;
  std::string what;       ///< "US patent 2,185,170"
  std::size_t begin = 0;  ///< bytes of the text it was read from
  std::size_t end = 0;
  MarkBound bound;                    ///< basis and source are those of `what`
  std::vector<std::string> reasons;   ///< sentences: how the ends were come by
  std::vector<std::string> warnings;  ///< doubts, lower case, without a full stop
  std::vector<std::string> assumed;   ///< what was taken for what: "O taken for 0 in 2,18O,170"
};

/// All that a stamp says, in the order of its text. `faults` are what cannot be (an impossible
/// date, a number beyond the table, number and date that disagree), each with its column on line 1;
/// nothing that a fault touches is among the readings.
struct Readings {
  std::vector<Reading> readings;
  base::Diagnostics faults;
};

/// Reads a stamp, a moulding, a label, as somebody typed it; lines may be parted by line breaks or
/// " / ". Pure. `maker` is the one whose piece it is, when that is known: his file's rows are
/// looked for by name, address, model and mark; without him those of all `makers` by name and
/// address alone.
[[nodiscard]] Readings recognise(const Marks& marks, const std::vector<Maker>& makers,
                                 std::string_view text, const Maker* maker = nullptr);

/// Reads a text that is known to be of one kind: a bare number, a date, a material's name.
[[nodiscard]] Readings recognise_as(const Marks& marks, const std::vector<Maker>& makers, ReadAs as,
                                    std::string_view text);

}  // namespace winchbook::knowledge
