#include "recordfile/rules.h"

#include <array>

#include "recordfile/rules_list.h"

namespace winchbook::recordfile {
namespace {

constexpr auto kRules = std::to_array<Rule>({
    {"piece-in-two-places", "a piece sits in one place at a time", piece_in_two_places},
    {"place-overfull", "a place holds no more pieces than its quantity", place_overfull},
    {"fitting-order", "a fitting does not end before it begins", fitting_order},
    {"fitting-visit", "a fitting made in a visit is dated within it", fitting_visit},
    {"bench-fitting", "what the bench fitted names its visit, its reason and its way back",
     bench_fitting},
    {"old-piece", "the old piece is another piece than the new one", old_piece},
    {"whereabouts", "where a piece is now agrees with its fittings", whereabouts},
    {"bag-label", "a bagged piece names its bag", bag_label},
    {"leave-given", "a piece the bench kept or scrapped was allowed to leave", leave_given},
    {"fragment", "a fragment belongs to another piece and is not fitted itself", fragment},
    {"certainty", "what is not determined has no certainty", certainty_told},
    {"original-elsewhere", "what a bench made or a donor gave is not original", original_elsewhere},
    {"mark-window", "what a mark says does not end before it begins", mark_window},
    {"serial-marked", "the serial number is among the marks", serial_marked},
    {"hand-back", "a reel is handed back after it was taken in", hand_back_after_arrival},
    {"visits-apart", "one visit ends before the next begins", visits_apart},
    {"agreements-in-order", "agreements stand earliest first", agreements_in_order},
    {"agreement-kept", "what must stay has stayed", agreement_kept},
    {"cost-limit", "parts cost no more than was agreed", cost_limit},
    {"service-after", "the next service and the review come after the hand-back", service_after},
    {"findings-dates", "the reel was examined while it was here", findings_dates},
    {"tray-account", "everything that came off is accounted for", tray_account},
    {"bags-returned", "every bag in use went back with the reel", bags_returned},
    {"spring-caution", "a step that frees a spring carries a caution", spring_caution},
    {"ranking", "the owner's ranking names each of the six things once", ranking},
    {"range-order", "the lower end of a range is not above the upper", range_order},
    {"missing-and-graded", "a missing piece has no surface", missing_and_graded},
    {"place-and-piece", "an empty place and a piece found in it do not agree",
     place_and_piece_agree},
    {"surface-total", "the shares of a surface make at most 100", surface_total},
    {"surface-state-twice", "a surface names each state once", surface_state_twice},
    {"untouched-grows", "an untouched surface does not grow", untouched_grows},
    {"defects-hold-corrosion", "corroded area is part of the area with defects",
     defects_hold_corrosion},
    {"finding-twice", "a piece or a place has one finding in a visit", finding_twice},
    {"fault-graded", "a fault was there when the reel came or when it left", fault_graded},
    {"fault-stays", "a fault that stays says why", fault_stays},
    {"test-reading", "a test that was made gives a reading with its unit, or words", test_reading},
    {"looked-for", "what was looked for and not found is not entered", looked_and_entered},
    {"load-limit", "what is not safe to test has a load limit", load_limit},
    {"custody-order", "custody stands earliest first", custody_order},
    {"keep-because", "what must stay from its life says why", keep_because},
    {"story-approved", "the story was approved by its teller", story_approved},
    {"salt-drawn", "what may be withheld later has a salt", salt_drawn},
    {"salt-kept-secret", "a salt does not stand beside what it withholds", salt_kept_secret},
    {"pair-stage", "a pair is one photograph as found and one as left", pair_stage},
    {"photo-file-twice", "a file is one photograph", photo_file_twice},
    {"photo-path", "a photograph lies in the reel's folder", photo_path},
    {"sale-excluded", "a sale that does not count says why", sale_excluded},
    {"sale-date", "a sale is not later than the day of the value", sale_date},
});

}  // namespace

std::span<const Rule> rules() {
  return kRules;
}

base::Diagnostics apply_rules(const LoadedRecord& loaded) {
  base::Diagnostics all;
  for (const Rule& rule : kRules) {
    base::Diagnostics found;
    rule.check(loaded, found);
    for (base::Diagnostic& one : found) {
      one.rule = rule.id;
      all.push_back(std::move(one));
    }
  }
  return all;
}

}  // namespace winchbook::recordfile
