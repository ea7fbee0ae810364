#include <array>
#include <utility>

#include "report/bench_words.h"
#include "report/bench_work.h"
#include "report/care_words.h"
#include "report/sections.h"
#include "report/table_columns.h"

namespace winchbook::report {
namespace {

using document::Chapter;
using document::Column;

constexpr double kRoomForPencil = 22.5;
constexpr int kLines = 8;

struct StandardTest {
  const char* key;
  const char* unit;
};

/// What every bench tries on every reel (common practice).
constexpr std::array kStandard{
    StandardTest{"bench-tests.turns", ""},      StandardTest{"bench-tests.free-spool", "s"},
    StandardTest{"bench-tests.click", ""},      StandardTest{"bench-tests.anti-reverse", ""},
    StandardTest{"bench-tests.drag-slip", "N"}, StandardTest{"bench-tests.line-guide", "mm"},
};

document::Row row_of(std::string what, std::string unit, std::string left) {
  document::Row row;
  row.cells = {{document::plain(std::move(what))},
               {document::plain(std::move(unit))},
               {document::plain(std::move(left))},
               {{}},
               {{}}};
  return row;
}

/// "…; never over 4 N" where the reel is not to be loaded further.
std::string what_of(const Telling& telling, const record::Test& test) {
  const auto& limit = test.after.load_limit;
  if (!limit) return test.what;
  return telling.words.say(
      "bench-tests.limited",
      {{"test", test.what}, {"limit", newtons_words(telling, limit->value.approximate())}});
}

document::Table tests(const Telling& telling) {
  document::Table table =
      table_of(telling, {{"bench-tests.head.test", {Column::Align::words, 0, true}},
                         {"test.unit", {Column::Align::words, 33}},
                         {"bench-tests.head.recorded", {Column::Align::words, 90}},
                         {"bench-tests.head.before", {Column::Align::words, 84}},
                         {"bench-tests.head.after", {Column::Align::words, 84}}});
  table.least_row = kRoomForPencil;
  const auto& recorded = telling.visit.findings.tests;
  for (const record::Test& test : recorded) {
    table.rows.push_back(
        row_of(what_of(telling, test), test.unit, test_reading(telling, test.after)));
  }
  if (recorded.empty()) {
    const std::string ratchet = ratchet_word(telling);
    for (const StandardTest& test : kStandard) {
      const std::string what = telling.words.say(test.key, {{"ratchet", ratchet}});
      table.rows.push_back(row_of(telling.words.capitalised(what), test.unit, ""));
    }
  }
  table.below = document::plain(telling.words.say("bench-tests.below"));
  table.summary = telling.words.say("bench-tests.summary");
  return table;
}

}  // namespace

std::optional<Chapter> tell_bench_tests(const Telling& telling) {
  Chapter chapter = telling.chapter("bench-tests");
  chapter.stand_first = telling.words.say("bench-tests.answer");
  chapter.blocks.emplace_back(tests(telling));
  document::RuledLines lines;
  lines.labels = {telling.words.say("bench-tests.pencil")};
  lines.lines_each = kLines;
  chapter.blocks.emplace_back(std::move(lines));
  return chapter;
}

}  // namespace winchbook::report
