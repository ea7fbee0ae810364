#include "base/measure.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <optional>

#include "base/words_of_text.h"

namespace winchbook::base {
namespace {

constexpr double kPoundMass = 453.59237;         // g, exact
constexpr double kGravity = 9.80665;             // m/s², exact
constexpr double kPoundForce = 4.4482216152605;  // N, exact
constexpr double kInch = 25.4;                   // mm, exact

struct Unit {
  std::string_view spelled;  ///< as people type it, small letters, without dots and spaces
  Dimension dimension;
  double factor;
};

constexpr std::array kUnits{
    Unit{"mm", Dimension::length, 1},
    Unit{"cm", Dimension::length, 10},
    Unit{"m", Dimension::length, 1000},
    Unit{"in", Dimension::length, kInch},
    Unit{"\"", Dimension::length, kInch},
    Unit{"inch", Dimension::length, kInch},
    Unit{"inches", Dimension::length, kInch},
    Unit{"thou", Dimension::length, kInch / 1000},
    Unit{"ft", Dimension::length, 12 * kInch},
    Unit{"yd", Dimension::length, 36 * kInch},
    Unit{"yds", Dimension::length, 36 * kInch},
    Unit{"yards", Dimension::length, 36 * kInch},
    Unit{"n", Dimension::force, 1},
    Unit{"kn", Dimension::force, 1000},
    Unit{"lbf", Dimension::force, kPoundForce},
    Unit{"ozf", Dimension::force, kPoundForce / 16},
    Unit{"kgf", Dimension::force, kGravity},
    Unit{"gf", Dimension::force, kGravity / 1000},
    Unit{"g", Dimension::mass, 1},
    Unit{"kg", Dimension::mass, 1000},
    Unit{"oz", Dimension::mass, kPoundMass / 16},
    Unit{"lb", Dimension::mass, kPoundMass},
    Unit{"lbs", Dimension::mass, kPoundMass},
    Unit{"nm", Dimension::torque, 1},
    Unit{"ncm", Dimension::torque, 0.01},
    Unit{"nmm", Dimension::torque, 0.001},
    Unit{"lbfin", Dimension::torque, kPoundForce* kInch / 1000},
    Unit{"inlbf", Dimension::torque, kPoundForce* kInch / 1000},
    Unit{"lbfft", Dimension::torque, kPoundForce* kInch * 12 / 1000},
    Unit{"ftlbf", Dimension::torque, kPoundForce* kInch * 12 / 1000},
    Unit{"ozfin", Dimension::torque, kPoundForce / 16 * kInch / 1000},
    Unit{"inozf", Dimension::torque, kPoundForce / 16 * kInch / 1000},
    Unit{"kgfcm", Dimension::torque, kGravity / 100},
    Unit{"pa", Dimension::pressure, 1e-6},
    Unit{"kpa", Dimension::pressure, 1e-3},
    Unit{"mpa", Dimension::pressure, 1},
    Unit{"n/mm2", Dimension::pressure, 1},
    Unit{"bar", Dimension::pressure, 0.1},
    Unit{"psi", Dimension::pressure, kPoundForce / (kInch * kInch)},
};

constexpr std::array kDimensionNames{"a length", "a force", "a mass", "a torque", "a pressure"};
constexpr std::array kExamples{"22 mm, 2.2 cm, 0.875 in, 7/8 in, 300 yd",
                               "20 N, 4.5 lbf, 72 ozf, 2 kgf; lb, oz, kg and g are taken as a pull",
                               "250 g, 0.25 kg, 9 oz, 1 lb",
                               "1.2 N·m, 120 N·cm, 10 lbf·in, 9 kgf·cm",
                               "0.1 MPa, 100 kPa, 1 bar, 15 psi"};

const char* name_of(Dimension dimension) {
  return kDimensionNames.at(static_cast<std::size_t>(dimension));
}

/// Puts one plain spelling in the place of what keyboards and typesetters make of it.
std::string plain_signs(std::string_view text) {
  static constexpr std::array<std::pair<std::string_view, std::string_view>, 14> kSigns{{
      {"″", "\""},
      {"”", "\""},
      {"“", "\""},
      {"''", "\""},
      {"±", "+-"},
      {"+/-", "+-"},
      {"·", ""},
      {"⋅", ""},
      {"²", "2"},
      {"⁄", "/"},
      {"−", "-"},
      {"\u00a0", " "},
      {"\u202f", " "},
      {"\u2009", " "},
  }};
  std::string plain(text);
  for (const auto& [from, to] : kSigns) {
    for (std::size_t at = plain.find(from); at != std::string::npos;
         at = plain.find(from, at + to.size())) {
      plain.replace(at, from.size(), to);
    }
  }
  return plain;
}

/// Reads digits at the front, at most one point among them; moves `text` past them.
std::optional<double> plain_number(std::string_view& text) {
  const auto length = std::min(text.find_first_not_of("0123456789."), text.size());
  double value = 0;
  const char* end = text.data() + length;
  const auto read = std::from_chars(text.data(), end, value, std::chars_format::fixed);
  if (length == 0 || read.ec != std::errc() || read.ptr != end) return std::nullopt;
  text.remove_prefix(length);
  return value;
}

/// "22.5", "7/8", "1 7/8" or "1-7/8"; moves `text` past it.
std::optional<double> figure(std::string_view& text) {
  const bool negative = text.starts_with('-');
  if (negative) text.remove_prefix(1);
  auto whole = plain_number(text);
  if (!whole) return std::nullopt;
  const auto divided = [&](double numerator) -> std::optional<double> {
    text.remove_prefix(1);
    const auto denominator = plain_number(text);
    if (!denominator || *denominator <= 0) return std::nullopt;
    return numerator / *denominator;
  };
  if (text.starts_with('/')) {
    whole = divided(*whole);
  } else if (text.size() > 1 && (text.front() == ' ' || text.front() == '-')) {
    std::string_view rest = trimmed(text.substr(1));
    const auto numerator = plain_number(rest);
    if (numerator && rest.starts_with('/')) {
      text = rest;
      const auto part = divided(*numerator);
      whole = part ? std::optional(*whole + *part) : std::nullopt;
    }
  }
  if (!whole) return std::nullopt;
  return negative ? -*whole : *whole;
}

/// Small letters without the dots, dashes and spaces that people put between the parts of a unit.
std::string spelled(std::string_view unit) {
  std::string plain;
  for (const char c : unit) {
    if (c == '.' || c == '-' || c == ' ' || c == '*') continue;
    plain += in_small_letters(c);
  }
  return plain;
}

Diagnostic not_a_figure(std::string_view text, Dimension wanted) {
  if (text.find(',') != std::string_view::npos) {
    return error(
        fmt::format("\"{}\" has a comma in it", text),
        "write a point before the decimals and nothing between thousands: 22.5 mm, 1200 mm",
        "measure-comma");
  }
  return error(fmt::format("\"{}\" is not {}", text, name_of(wanted)),
               fmt::format("write a figure and its unit: {}", units_of(wanted)), "measure-figure");
}

struct Read {
  double value = 0;
  std::string assumed;
};

Result<Read> in_unit(double value, std::string_view unit, std::string_view text, Dimension wanted) {
  const std::string plain = spelled(unit);
  if (plain.empty()) {
    return error(fmt::format("\"{}\" has no unit: it could mean more than one thing", text),
                 fmt::format("write its unit: {}", units_of(wanted)), "measure-unit");
  }
  const auto* known = std::find_if(kUnits.begin(), kUnits.end(),
                                   [&](const Unit& one) { return one.spelled == plain; });
  if (known == kUnits.end()) {
    return error(fmt::format("there is no unit \"{}\"", trimmed(unit)),
                 fmt::format("write {}: {}", name_of(wanted), units_of(wanted)), "measure-unit");
  }
  if (known->dimension == wanted) return Read{value * known->factor, {}};
  if (wanted == Dimension::force && known->dimension == Dimension::mass) {
    const double pull = value * known->factor / 1000 * kGravity;
    return Read{pull, fmt::format("\"{}\" is taken as a pull, the weight of that mass: {:.3g} N",
                                  trimmed(text), pull)};
  }
  return error(fmt::format("\"{}\" is {}, and {} is wanted", text, name_of(known->dimension),
                           name_of(wanted)),
               fmt::format("write {}", units_of(wanted)), "measure-unit");
}

}  // namespace

std::string units_of(Dimension dimension) {
  return kExamples.at(static_cast<std::size_t>(dimension));
}

Result<Measure> parse_measure(std::string_view text, Dimension wanted) {
  constexpr std::size_t kMostBytes = 100;
  if (text.size() > kMostBytes) return not_a_figure(text.substr(0, kMostBytes), wanted);
  const std::string plain = plain_signs(text);
  const std::size_t sign = plain.find("+-");
  std::string_view first = trimmed(std::string_view(plain).substr(0, sign));
  const auto value = figure(first);
  if (!value || first.starts_with(',')) return not_a_figure(text, wanted);
  if (sign == std::string::npos) {
    auto read = in_unit(*value, first, text, wanted);
    if (!read) return read.faults();
    return Measure{read->value, 0, read->assumed};
  }
  std::string_view second = trimmed(std::string_view(plain).substr(sign + 2));
  const auto tolerance = figure(second);
  if (!tolerance || *tolerance < 0 || second.starts_with(',')) return not_a_figure(text, wanted);
  // "22 ± 0.05 mm" has one unit for both.
  auto read = in_unit(*value, trimmed(first).empty() ? second : first, text, wanted);
  if (!read) return read.faults();
  auto spread = in_unit(*tolerance, second, text, wanted);
  if (!spread) return spread.faults();
  return Measure{read->value, spread->value, read->assumed};
}

}  // namespace winchbook::base
