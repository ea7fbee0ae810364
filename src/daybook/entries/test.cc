#include "daybook/entries/test.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "daybook/open_visit.h"
#include "daybook/reading.h"

namespace winchbook::daybook {
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
  return {base::of_command(
      base::of_command(base::error(fmt::format("the test \"{}\" is read in {}, and this reading is in {}",
                              test.child("what").text().get(),
                              there.empty() ? "words" : "\"" + there + "\"", reading.unit),
                  "read it as before, or give the test another name", "command-unit")))};
}

/// "20" of "20 N", "2 kg" or "20"; empty when it is no force.
std::string newtons(const std::string& text) {
  const auto reading = read_reading(text, "N");
  return reading.unit == "N" && reading.words.empty() && reading.high.empty() ? reading.low : "";
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
    Reading reading = read_reading(request.reading, unit);
    if (!request.words.empty()) reading.words = request.words;
    const pugi::xml_node test =
        test_of(draft, open->element, what, reading.unit.empty() ? request.unit : reading.unit);
    if (auto faults = fault_of_unit(test, reading); !faults.empty()) return faults;

    const std::string limit = newtons(request.load_limit);
    if (limit.empty() != request.load_limit.empty()) {
      return base::of_command(
          base::of_command(base::error(fmt::format("the load limit \"{}\" is no force", request.load_limit),
                      "write it as \"20 N\" or \"2 kg\"", "command-load")));
    }
    const pugi::xml_node half = draft.need(test, request.after ? "after" : "before");
    draft.empty(half);
    draft.add(half, "outcome", outcome_of(request));
    draft.add_if(half, "reading", reading.low);
    draft.add_if(half, "reading-high", reading.high);
    draft.add_if(half, "words", reading.words);
    draft.add_if(half, "verdict", request.verdict);
    draft.add_if(half, "load-limit", limit);
    draft.add(half, "on", base::iso_text(request.on));
    draft.add_words(test, "note", request.note);
    std::string told = request.not_safe     ? "not safe to test"
                       : request.not_tested ? "not tested"
                                            : request.reading;
    if (!limit.empty()) told += fmt::format(", never over {} N", limit);
    if (!reading.low.empty() && told.find(reading.low) == std::string::npos) {
      told += fmt::format(", kept as {} {}", reading.low, reading.unit);
    }
    return Said{fmt::format("{}, {}: {}", what, request.after ? "as left" : "as found", told), {}};
  };
}

}  // namespace winchbook::daybook
