#include "daybook/entries/test.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "daybook/hazards.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"

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
    {"end-float", "Spool end float", "mm"},
    {"click", "Click", ""},
    {"check", "Check", ""},
    {"anti-reverse", "Anti-reverse", ""},
    {"drag", "Drag at the line", "N"},
    {"line-guide", "Travel of the line guide", "mm"},
});

/// "turns, free-spool, …".
std::string usual_words() {
  std::string words;
  for (const UsualTest& one : kUsual)
    words += (words.empty() ? "" : ", ") + std::string(one.word);
  return words;
}

forms::Form form(TestRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  const auto gives = [&request] {
    return !request.before && !request.after && !request.not_safe && !request.not_tested;
  };
  return {
      field("WHAT", "what is tested: a usual one (" + usual_words() + "), or your own words",
            request.what)
          .asks("What is tested?"),
      field("--before", "what it gave as the reel came: \"9 s\", \"3 to 22 N\", \"slips\"",
            request.before)
          .asks("What did the test give?", gives),
      field("--after", "what it gave as the reel left", request.after),
      field("--unit", "the unit, where the reading names none", request.unit),
      field("--words", "words beside the figures: \"slips\"", request.words),
      field("--verdict", "how it works: as-made, with-care, in-part or not-working",
            request.verdict),
      flag("--left", "as the reel left, with --not-safe or --not-tested", request.left),
      flag("--not-safe", "not safe to test", request.not_safe),
      flag("--not-tested", "not tested", request.not_tested),
      field("--load-limit", "with --not-safe: never load it beyond this, \"10 N\"",
            request.load_limit)
          .asks("Never load it beyond how much (10 N)?", [&request] { return request.not_safe; }),
      field("--note", "a note", request.note),
  };
}

/// The test of this visit that is meant, or a new one.
record::Test& test_of(record::Visit& visit, const std::string& what, const std::string& unit) {
  auto& tests = visit.findings.tests;
  const auto there = std::find_if(tests.begin(), tests.end(),
                                  [&](const record::Test& one) { return one.what == what; });
  if (there != tests.end()) return *there;
  return tests.emplace_back(record::Test{what, unit, {}, {}, {}});
}

/// What a unit already there says of the new one.
base::Diagnostics fault_of_unit(const record::Test& test, const Reading& reading) {
  if (reading.unit.empty() || test.unit == reading.unit) return {};
  return {base::of_command(
      base::error(fmt::format("the test \"{}\" is read in {}, and this reading is in {}", test.what,
                              test.unit.empty() ? "words" : "\"" + test.unit + "\"", reading.unit),
                  "read it as before, or give the test another name", "command-unit"))};
}

record::TestResult result_of(const TestRequest& request, const Reading& reading) {
  using Kind = record::TestResult::Kind;
  record::TestResult result;
  result.kind = request.not_safe     ? Kind::not_safe_to_test
                : request.not_tested ? Kind::not_tested
                                     : Kind::done;
  result.reading = reading.low;
  result.reading_high = reading.high;
  result.words = request.words.empty() && !reading.low ? reading.typed : request.words;
  result.verdict = request.verdict;
  if (request.load_limit) result.load_limit = request.load_limit->newtons;
  result.on = date_of(request.on);
  return result;
}

/// A reading in newtons over what the reel must never be loaded beyond.
base::Diagnostics over_the_limit(const record::Record& record, const record::TestResult& result,
                                 const std::string& unit) {
  const auto& most = result.reading_high ? result.reading_high : result.reading;
  if (!most || unit != "N") return {};
  for (const record::Visit& visit : record.visits) {
    for (const record::Test& test : visit.findings.tests) {
      for (const record::TestResult* one : {&test.before, &test.after}) {
        if (!one->load_limit || !(one->load_limit->value < *most)) continue;
        return {base::warning_at(
            {},
            fmt::format("{} N is more than the {} N beyond which this reel is never loaded ({})",
                        most->text(), one->load_limit->value.text(), test.what),
            "a test of force stops at the limit that was set first", "caution")};
      }
    }
  }
  return {};
}

/// What it gave, in a few words: as it was typed, and as it is kept where that differs.
std::string told_of(const TestRequest& request, const Reading& reading) {
  std::string told = request.not_safe     ? "not safe to test"
                     : request.not_tested ? "not tested"
                                          : reading.typed;
  if (request.load_limit) {
    told += fmt::format(", never over {} N", request.load_limit->newtons.value.text());
  }
  if (reading.low && told.find(reading.low->text()) == std::string::npos) {
    told += fmt::format(", kept as {} {}", reading.low->text(), reading.unit);
  }
  return told;
}

}  // namespace

base::Result<Said> test(const TestRequest& request, Draft& draft) {
  if (request.before && request.after) {
    return base::of_command(base::error("--before and --after are both given",
                                        "enter one after the other", "command-test"));
  }
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  const auto usual = std::find_if(kUsual.begin(), kUsual.end(),
                                  [&](const UsualTest& one) { return one.word == request.what; });
  const bool is_usual = usual != kUsual.end();
  const std::string what(is_usual ? usual->what : request.what);
  const std::string unit(request.unit.empty() && is_usual ? usual->unit : request.unit);
  const Reading reading =
      reckoned(request.after ? *request.after : request.before.value_or(Reading{}), unit);
  record::Test& test = test_of(**open, what, reading.unit.empty() ? request.unit : reading.unit);
  if (auto faults = fault_of_unit(test, reading); !faults.empty()) return faults;

  const bool left = request.left || request.after;
  (left ? test.after : test.before) = result_of(request, reading);
  draft.put(test.note, request.note);
  base::Diagnostics warnings =
      over_the_limit(draft.record(), left ? test.after : test.before, test.unit);
  const auto hazards = hazards_in(draft, **open, {{}, what + ". " + request.note, true});
  warnings.insert(warnings.end(), hazards.begin(), hazards.end());
  return Said{
      fmt::format("{}, {}: {}", what, left ? "as left" : "as found", told_of(request, reading)),
      std::move(warnings)};
}

forms::Job test_job() {
  return entry_job<TestRequest>(form, test);
}

}  // namespace winchbook::daybook
