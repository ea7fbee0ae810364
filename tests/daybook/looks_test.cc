#include "daybook/looks.h"

#include <doctest/doctest.h>

#include "daybook/entries/clean.h"
#include "daybook/entries/grade_set.h"
#include "daybook/entries/mark.h"
#include "daybook/entries/strip.h"
#include "daybook/entries/work.h"
#include "support/on_disk.h"

namespace winchbook::daybook {
namespace {

/// A place that is only listed.
void list_screws(OpenBench& bench) {
  std::string bytes = bench.now();
  bytes.insert(bytes.find("</places>"),
               "<place id=\"pl-tail-screws\"><name>Tail screws</name><kind>plate-screw</kind>"
               "</place>");
  bench.put(bytes);
}

}  // namespace

TEST_CASE("none of something is entered in one word, and refused beside what is entered") {
  OpenBench bench("winchbook-looks");
  REQUIRE(bench.typed(grade_set_job(), {{"--fault", "none"}, {"--by", "ines"}}));
  CHECK(says(bench.now(), "<what>faults</what>"));
  CHECK(says(bench.now(), "<by ref=\"ines\"/>"));
  const auto marks = bench.typed(mark_job(), {{"--none", ""}});
  REQUIRE_FALSE(marks);
  CHECK(marks.faults().front().rule == "looked-for");
  CHECK(marks.faults().front().of == base::FaultOf::command);
}

TEST_CASE("a fault entered after none was found makes it some") {
  OpenBench bench("winchbook-looks-some");
  REQUIRE(bench.typed(grade_set_job(), {{"--fault", "none"}}));
  CHECK(says(bench.now(), "<found>none</found>"));
  REQUIRE(bench.typed(
      grade_set_job(),
      {{"--fault", "crack"}, {"--fault-name", "crack"}, {"--found-severity", "unsafe"}}));
  CHECK_FALSE(says(bench.now(), "<found>none</found>"));
  CHECK(says(bench.now(), "<found>some</found>"));
}

TEST_CASE("a place of the list gets its piece at the first entry that names it") {
  OpenBench bench("winchbook-named-parts");
  list_screws(bench);
  REQUIRE(bench.typed(clean_job(), {{"PARTS", "tail screws"}, {"--method", "damp cloth"}}));
  CHECK(says(bench.now(), "<piece id=\"tail-screws\">"));
  CHECK(says(bench.now(), "<answer>not-known</answer>"));
}

TEST_CASE("how many are named is how many belong in a place of the list") {
  OpenBench bench("winchbook-named-count");
  list_screws(bench);
  REQUIRE(bench.typed(strip_job(), {{"WHAT", "Draw the screws."}, {"--off", "tail screws: 4"}}));
  CHECK(says(bench.now(), "<quantity>4</quantity>"));
  CHECK(says(bench.now(), "<count>4</count>"));
  CHECK(says(bench.now(), "<taken-off>4</taken-off>"));
}

TEST_CASE("a day that has not come is objected to, and one beyond a week is an error") {
  OpenBench bench("winchbook-days");
  const auto work = [&](const char* today, bool meant) {
    Typed typed{{"WHAT", "Oiled."}, {"--today", today}};
    if (meant) typed.emplace_back("--future", "");
    return bench.typed(work_job(), typed);
  };
  const auto soon = work("2026-05-30", false);
  REQUIRE_FALSE(soon);
  CHECK(soon.faults().front().rule == "future-day");
  CHECK(work("2026-05-30", true));
  const auto far_off = work("2026-05-24", true);
  REQUIRE_FALSE(far_off);
  CHECK(far_off.faults().front().rule == "command-day");
  CHECK(work("2026-06-01", false));
  // Somebody who is there is asked.
  const auto asked = bench.typed(work_job(), {{"WHAT", "Oiled again."}, {"--today", "2026-05-30"}},
                                 [](const base::Diagnostics&, const std::string&) {
                                   return std::optional<std::string>("yes");
                                 });
  CHECK(asked);
}

}  // namespace winchbook::daybook
