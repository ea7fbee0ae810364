#pragma once

#include "recordfile/record_file.h"
#include "recordfile/rules.h"

namespace winchbook::recordfile {

using base::Diagnostics;

// One function for each row of the table in rules.cc, which says what it means.

// rules_fittings.cc
void piece_in_two_places(const LoadedRecord& loaded, Diagnostics& found);
void place_overfull(const LoadedRecord& loaded, Diagnostics& found);
void fitting_order(const LoadedRecord& loaded, Diagnostics& found);
void fitting_visit(const LoadedRecord& loaded, Diagnostics& found);
void bench_fitting(const LoadedRecord& loaded, Diagnostics& found);
void old_piece(const LoadedRecord& loaded, Diagnostics& found);
void whereabouts(const LoadedRecord& loaded, Diagnostics& found);
void bag_label(const LoadedRecord& loaded, Diagnostics& found);
void leave_given(const LoadedRecord& loaded, Diagnostics& found);
void fragment(const LoadedRecord& loaded, Diagnostics& found);
void certainty_told(const LoadedRecord& loaded, Diagnostics& found);
void original_elsewhere(const LoadedRecord& loaded, Diagnostics& found);
void mark_window(const LoadedRecord& loaded, Diagnostics& found);
void serial_marked(const LoadedRecord& loaded, Diagnostics& found);

// rules_visits.cc
void hand_back_after_arrival(const LoadedRecord& loaded, Diagnostics& found);
void visits_apart(const LoadedRecord& loaded, Diagnostics& found);
void agreements_in_order(const LoadedRecord& loaded, Diagnostics& found);
void agreement_kept(const LoadedRecord& loaded, Diagnostics& found);
void cost_limit(const LoadedRecord& loaded, Diagnostics& found);
void service_after(const LoadedRecord& loaded, Diagnostics& found);
void findings_dates(const LoadedRecord& loaded, Diagnostics& found);
void tray_account(const LoadedRecord& loaded, Diagnostics& found);
void bags_returned(const LoadedRecord& loaded, Diagnostics& found);
void spring_caution(const LoadedRecord& loaded, Diagnostics& found);
void ranking(const LoadedRecord& loaded, Diagnostics& found);
void range_order(const LoadedRecord& loaded, Diagnostics& found);

// rules_findings.cc
void missing_and_graded(const LoadedRecord& loaded, Diagnostics& found);
void place_and_piece_agree(const LoadedRecord& loaded, Diagnostics& found);
void surface_total(const LoadedRecord& loaded, Diagnostics& found);
void surface_state_twice(const LoadedRecord& loaded, Diagnostics& found);
void untouched_grows(const LoadedRecord& loaded, Diagnostics& found);
void defects_hold_corrosion(const LoadedRecord& loaded, Diagnostics& found);
void finding_twice(const LoadedRecord& loaded, Diagnostics& found);
void fault_graded(const LoadedRecord& loaded, Diagnostics& found);
void fault_stays(const LoadedRecord& loaded, Diagnostics& found);
void test_reading(const LoadedRecord& loaded, Diagnostics& found);
void looked_and_entered(const LoadedRecord& loaded, Diagnostics& found);
void load_limit(const LoadedRecord& loaded, Diagnostics& found);

// rules_people.cc
void custody_order(const LoadedRecord& loaded, Diagnostics& found);
void keep_because(const LoadedRecord& loaded, Diagnostics& found);
void story_approved(const LoadedRecord& loaded, Diagnostics& found);
void salt_drawn(const LoadedRecord& loaded, Diagnostics& found);
void salt_kept_secret(const LoadedRecord& loaded, Diagnostics& found);

// rules_photos.cc
void pair_stage(const LoadedRecord& loaded, Diagnostics& found);
void photo_file_twice(const LoadedRecord& loaded, Diagnostics& found);
void photo_path(const LoadedRecord& loaded, Diagnostics& found);
void sale_excluded(const LoadedRecord& loaded, Diagnostics& found);
void sale_date(const LoadedRecord& loaded, Diagnostics& found);

}  // namespace winchbook::recordfile
