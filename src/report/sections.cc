#include "report/sections.h"

#include <algorithm>
#include <array>

namespace winchbook::report {
namespace {

enum class Tells {
  no_drag,
  drag_and_line,
  owners_only,  ///< what was advised, weighed, quoted and decided is between owner and bench
};

struct SectionRow {
  std::string_view id;
  TellSection tell;
  Tells tells = Tells::no_drag;
};

constexpr std::array kSections{
    SectionRow{"account", tell_account},
    SectionRow{"room", tell_room},
    SectionRow{"story", tell_story},
    SectionRow{"dating", tell_dating},
    SectionRow{"how-it-came", tell_how_it_came},
    SectionRow{"first-ledger", tell_first_ledger},
    SectionRow{"parts", tell_parts},
    SectionRow{"life", tell_life},
    SectionRow{"second-ledger", tell_second_ledger},
    SectionRow{"work", tell_work},
    SectionRow{"before-and-after", tell_before_and_after},
    SectionRow{"not-put-right", tell_not_put_right},
    SectionRow{"advice", tell_advice, Tells::owners_only},
    SectionRow{"value", tell_value},
    SectionRow{"value-note", tell_value_note},
    SectionRow{"value-sales", tell_value_sales},
    SectionRow{"value-limits", tell_value_limits},
    SectionRow{"care", tell_care},
    SectionRow{"other-photographs", tell_other_photographs},
    SectionRow{"custody", tell_custody},
    SectionRow{"later", tell_later},
    SectionRow{"seal", tell_seal},
    SectionRow{"seal-note", tell_seal_note},
    SectionRow{"statement-identity", tell_statement_identity},
    SectionRow{"statement-first-ledger", tell_statement_first_ledger},
    SectionRow{"statement-life", tell_statement_life},
    SectionRow{"statement-second-ledger", tell_statement_second_ledger},
    SectionRow{"statement-figures", tell_statement_figures},
    SectionRow{"statement-photographs", tell_statement_photographs},
    SectionRow{"statement-seal", tell_statement_seal},
    SectionRow{"intake-owner", tell_intake_owner},
    SectionRow{"intake-bench", tell_intake_bench},
    SectionRow{"hand-back-owner", tell_hand_back_owner},
    SectionRow{"hand-back-bench", tell_hand_back_bench},
    SectionRow{"reel-tags", tell_reel_tags},
    SectionRow{"bag-labels", tell_bag_labels},
    SectionRow{"step-cards", tell_step_cards},
    SectionRow{"bench-sheet", tell_bench_sheet},
    SectionRow{"bench-assembly", tell_bench_assembly},
    SectionRow{"bench-drag", tell_bench_drag, Tells::drag_and_line},
    SectionRow{"bench-tests", tell_bench_tests},
    SectionRow{"care-card", tell_care_card, Tells::drag_and_line},
};

const SectionRow* find_row(std::string_view id) {
  const auto* row = std::find_if(kSections.begin(), kSections.end(),
                                 [&](const SectionRow& one) { return one.id == id; });
  return row == kSections.end() ? nullptr : row;
}

}  // namespace

TellSection find_section(std::string_view id) {
  const SectionRow* row = find_row(id);
  return row == nullptr ? nullptr : row->tell;
}

bool tells_drag_and_line(std::string_view id) {
  const SectionRow* row = find_row(id);
  return row != nullptr && row->tells == Tells::drag_and_line;
}

bool is_owners_only(std::string_view id) {
  const SectionRow* row = find_row(id);
  return row != nullptr && row->tells == Tells::owners_only;
}

bool knows_section(std::string_view id) {
  return find_section(id) != nullptr;
}

std::string section_names() {
  std::string names;
  for (const SectionRow& row : kSections) {
    if (!names.empty()) names += ", ";
    names += row.id;
  }
  return names;
}

}  // namespace winchbook::report
