#include "app/test.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

#include "app/open_visit.h"
#include "base/decimal.h"
#include "base/measure.h"

namespace winchbook::app {
namespace {

struct UsualTest {
  std::string_view word;
  std::string_view what;
  std::string_view unit;
};

constexpr auto kUsual = std::to_array<UsualTest>({
    {"turns", "Turns freely", ""},
    {"free-spool", "Free spool, one measured flick", "s"},
    {"float", "Spool end float", "mm"},
    {"click", "Click", ""},
    {"anti-reverse", "Anti-reverse", ""},
    {"drag", "Drag at the line, from loose to hard down", "N"},
    {"line-guide", "Travel of the line guide", "mm"},
});

/// A reading as the record holds it: figures in a unit, or words.
struct Reading {
  std::string low;
  std::string high;
  std::string unit;
  std::string words;
};

bool is_number(const std::string& text) {
  return static_cast<bool>(base::Decimal::parse(text));
}

/// "22" of 22.000, "4.45" of 4.4482: as finely as a bench measures.
std::string rounded(double value) {
  std::string text = fmt::format("{:.2f}", value);
  while (text.ends_with('0'))
    text.pop_back();
  if (text.ends_with('.')) text.pop_back();
  return text;
}

/// A figure in newtons or millimetres when its unit can be reckoned into one.
std::optional<Reading> reckoned(const std::string& figure, const std::string& unit) {
  using base::Dimension;
  const std::string text = figure + " " + unit;
  for (const auto& [dimension, inside] :
       {std::pair{Dimension::force, "N"}, std::pair{Dimension::length, "mm"}}) {
    const auto measure = base::parse_measure(text, dimension);
    if (!measure) continue;
    const bool as_it_is = unit == inside;
    return Reading{as_it_is ? figure : rounded(measure->value), {}, inside, {}};
  }
  return std::nullopt;
}

Reading read_one(const std::string& figure, const std::string& unit) {
  if (auto known = reckoned(figure, unit)) return *known;
  return {figure, {}, unit, {}};
}

/// "9 s", "3 to 22 N", "silent".
Reading read_reading(std::string text, const std::string& unit) {
  const std::size_t last = text.find_last_of("0123456789");
  if (last == std::string::npos) return {{}, {}, {}, text};
  const std::size_t behind = text.find_first_not_of(' ', last + 1);
  const std::string own = behind == std::string::npos ? unit : text.substr(behind);
  const std::string figures = text.substr(0, last + 1);
  const std::size_t to = figures.find(" to ");
  const std::string low = figures.substr(0, to);
  if (!is_number(low)) return {{}, {}, {}, std::move(text)};
  Reading reading = read_one(low, own);
  if (to != std::string::npos) {
    const std::string high = figures.substr(to + 4);
    if (!is_number(high)) return {{}, {}, {}, std::move(text)};
    reading.high = read_one(high, own).low;
  }
  return reading;
}

/// The test of this visit that is meant, or a new one.
pugi::xml_node test_of(Draft& draft, pugi::xml_node visit, const std::string& what,
                       const std::string& unit) {
  const pugi::xml_node findings = draft.need(visit, "findings");
  for (const pugi::xml_node test : findings.children("test")) {
    if (what == test.child("what").text().get()) return test;
  }
  const pugi::xml_node test = draft.add(findings, "test");
  draft.add(test, "what", what);
  draft.add_if(test, "unit", unit);
  for (const char* half : {"before", "after"})
    draft.add(draft.add(test, half), "outcome", "not-tested");
  return test;
}

std::string outcome_of(const TestRequest& request) {
  if (request.not_safe) return "not-safe-to-test";
  return request.not_tested ? "not-tested" : "done";
}

/// What a unit already there says of the new one.
base::Diagnostics fault_of_unit(pugi::xml_node test, const Reading& reading) {
  const std::string there = test.child("unit").text().get();
  if (reading.unit.empty() || there == reading.unit) return {};
  return {base::error(fmt::format("the test \"{}\" is read in {}, and this reading is in {}",
                                  test.child("what").text().get(),
                                  there.empty() ? "words" : "\"" + there + "\"", reading.unit),
                      "read it as before, or give the test another name", "command-unit")};
}

}  // namespace

std::string test_words() {
  std::string words;
  for (const UsualTest& one : kUsual)
    words += (words.empty() ? "" : ", ") + std::string(one.word);
  return words;
}

Change test(TestRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, request.on);
    if (!open) return open.faults();
    const auto usual = std::find_if(kUsual.begin(), kUsual.end(),
                                    [&](const UsualTest& one) { return one.word == request.what; });
    const bool is_usual = usual != kUsual.end();
    const std::string what(is_usual ? usual->what : request.what);
    const std::string unit(request.unit.empty() && is_usual ? usual->unit : request.unit);
    const Reading reading = read_reading(request.reading, unit);
    const pugi::xml_node test = test_of(draft, open->element, what, reading.unit);
    if (auto faults = fault_of_unit(test, reading); !faults.empty()) return faults;

    const pugi::xml_node half = draft.need(test, request.after ? "after" : "before");
    draft.empty(half);
    draft.add(half, "outcome", outcome_of(request));
    draft.add_if(half, "reading", reading.low);
    draft.add_if(half, "reading-high", reading.high);
    draft.add_if(half, "words", reading.words);
    draft.add_if(half, "verdict", request.verdict);
    if (!request.load_limit.empty()) {
      draft.add(half, "load-limit", read_reading(request.load_limit, "N").low);
    }
    draft.add(half, "on", base::iso_text(request.on));
    draft.add_words(test, "note", request.note);
    std::string told = request.not_safe     ? "not safe to test"
                       : request.not_tested ? "not tested"
                                            : request.reading;
    if (!reading.low.empty() && told.find(reading.low) == std::string::npos) {
      told += fmt::format(", kept as {} {}", reading.low, reading.unit);
    }
    return Said{fmt::format("{}, {}: {}", what, request.after ? "as left" : "as found", told), {}};
  };
}

}  // namespace winchbook::app
