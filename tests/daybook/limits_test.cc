#include "daybook/limits.h"

#include <doctest/doctest.h>

#include <string>

#include "daybook/entries/agree.h"
#include "daybook/entries/clean.h"
#include "daybook/entries/strip.h"
#include "daybook/entries/tray.h"
#include "daybook/entries/work.h"
#include "support/on_disk.h"

namespace winchbook::daybook {
namespace {

constexpr base::Day kDay{2026, 6, 1};

WorkRequest worked(const std::string& what, const std::string& part = "",
                   const std::string& leave = "") {
  WorkRequest request;
  request.on = kDay;
  request.what = what;
  if (!part.empty()) request.parts = {part};
  request.agreed = leave;
  return request;
}

void agreed(OpenBench& bench, const std::string& must_stay, const std::string& id) {
  AgreeRequest request;
  request.on = kDay;
  request.id = id;
  request.how = "in person";
  request.must_stay = {must_stay};
  bench.edited(request, agree);
}

}  // namespace

TEST_CASE("a hole is a hole by any of its words, and what was left undone breaks nothing") {
  OpenBench bench("winchbook-limits-hole");
  agreed(bench, "No new hole, and none made larger.", "ag-hole");
  for (const char* what : {"Drilled out the pillar.", "The pillar was bored and bushed.",
                           "Reamed the bush by hand.", "Made a new hole beside it."}) {
    CAPTURE(what);
    CHECK(says(bench.refused(worked(what), work), "it was agreed 2026-06-01: No new hole"));
  }
  for (const char* what : {"No hole was bored and no thread was cut.", "Cleaned the oil hole.",
                           "Marking blue bore along the whole tooth.", "Polished nothing.",
                           "Turned without drilling."}) {
    CAPTURE(what);
    CHECK(bench.edited(worked(what), work).warnings.empty());
  }
}

TEST_CASE(
    "an agreement that allows it lets it be done and is told; the one that forbids it does not") {
  OpenBench bench("winchbook-limits-leave");
  agreed(bench, "no polish", "ag-shine");
  AgreeRequest allows;
  allows.on = kDay;
  allows.id = "ag-leave";
  allows.how = "by letter";
  allows.may_be_done = {"Polish the foot."};
  bench.edited(allows, agree);
  CHECK(says(bench.refused(worked("Polished the foot."), work), "no polish"));
  CHECK(says(bench.refused(worked("Polished the foot.", "", "ag-shine"), work),
             "the one that forbids it"));
  CHECK(says(bench.refused(worked("Polished the foot.", "", "ag-none"), work), "ag-none"));
  CHECK(says(printed(bench.edited(worked("Polished the spool.", "", "ag-leave"), work).warnings),
             "allowed by ag-leave"));
}

TEST_CASE("a part that must stay may be cleaned and come off, but not be altered or go") {
  OpenBench bench("winchbook-limits-part");
  CHECK(says(bench.refused(worked("Filed the edge.", "foot"), work), "Foot must stay as it is"));
  CHECK(bench.edited(worked("Wiped it.", "foot"), work).warnings.empty());
  CleanRequest wheel;
  wheel.on = kDay;
  wheel.parts = {"foot"};
  wheel.method = "polished on a wheel";
  CHECK(says(bench.refused(wheel, clean), "Foot must stay as it is"));
  StripRequest step;
  step.on = kDay;
  step.what = "Draw the foot.";
  step.off = {"foot"};
  CHECK(says(printed(bench.edited(step, strip).warnings), "it goes back into its place"));
  TrayRequest away;
  away.on = kDay;
  away.to_owner = {"foot"};
  CHECK(says(bench.refused(away, tray), "Foot must stay"));
}

TEST_CASE("a part that a limit names in words must stay, too") {
  OpenBench bench("winchbook-limits-named");
  agreed(bench, "This pinion stays.", "ag-pinion");
  StripRequest step;
  step.on = kDay;
  step.what = "Lift the pinion.";
  step.off = {"pinion-new"};
  bench.edited(step, strip);
  TrayRequest bag;
  bag.on = kDay;
  bag.bagged = {"pinion-new"};
  bag.bag = "bag 2";
  CHECK(says(bench.refused(bag, tray), "by the agreement \"ag-pinion\""));
}

}  // namespace winchbook::daybook
