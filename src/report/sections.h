#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "document/document.h"
#include "report/telling.h"

namespace winchbook::report {

/// Turns its part of the assessment into a chapter; nothing when there is nothing to tell.
using TellSection = std::optional<document::Chapter> (*)(const Telling&);

[[nodiscard]] bool knows_section(std::string_view id);
/// Whether the section tells of drag and line, which are reckoned for those that do.
[[nodiscard]] bool tells_drag_and_line(std::string_view id);
/// Whether it tells what is between the owner and the bench: nobody else gets it.
[[nodiscard]] bool is_owners_only(std::string_view id);
/// "story, dating, …", as a message lists them.
[[nodiscard]] std::string section_names();
/// The section's teller; null when there is none of that name.
[[nodiscard]] TellSection find_section(std::string_view id);

std::optional<document::Chapter> tell_account(const Telling& telling);
std::optional<document::Chapter> tell_room(const Telling& telling);
std::optional<document::Chapter> tell_story(const Telling& telling);
std::optional<document::Chapter> tell_dating(const Telling& telling);
std::optional<document::Chapter> tell_how_it_came(const Telling& telling);
std::optional<document::Chapter> tell_first_ledger(const Telling& telling);
/// The first ledger of a small job: its table alone.
std::optional<document::Chapter> tell_parts(const Telling& telling);
std::optional<document::Chapter> tell_life(const Telling& telling);
std::optional<document::Chapter> tell_second_ledger(const Telling& telling);
/// The work of a job in which nothing was fitted.
std::optional<document::Chapter> tell_work(const Telling& telling);
std::optional<document::Chapter> tell_before_and_after(const Telling& telling);
std::optional<document::Chapter> tell_not_put_right(const Telling& telling);
std::optional<document::Chapter> tell_advice(const Telling& telling);
/// The answer in a sentence, and what, for what and when it was asked.
std::optional<document::Chapter> tell_value(const Telling& telling);
/// The value in short, for a document of another purpose.
std::optional<document::Chapter> tell_value_note(const Telling& telling);
/// The sales it rests on, each with its way to the figure.
std::optional<document::Chapter> tell_value_sales(const Telling& telling);
/// What it leaves out, assumes and does not claim; lines to sign on.
std::optional<document::Chapter> tell_value_limits(const Telling& telling);
std::optional<document::Chapter> tell_care(const Telling& telling);
std::optional<document::Chapter> tell_other_photographs(const Telling& telling);
std::optional<document::Chapter> tell_custody(const Telling& telling);
/// Ruled lines for those who come after.
std::optional<document::Chapter> tell_later(const Telling& telling);
std::optional<document::Chapter> tell_seal(const Telling& telling);
/// The seal in a few lines: code, fingerprint, how to check.
std::optional<document::Chapter> tell_seal_note(const Telling& telling);

/// The collector statement: what the reel is, its figures, marks, faults and custody.
std::optional<document::Chapter> tell_statement_identity(const Telling& telling);
/// Every part, with its weight and how sure it is.
std::optional<document::Chapter> tell_statement_first_ledger(const Telling& telling);
/// What happened between the maker and this bench, named and not told.
std::optional<document::Chapter> tell_statement_life(const Telling& telling);
/// Every part that was put in, the tests, the treatment and the way back.
std::optional<document::Chapter> tell_statement_second_ledger(const Telling& telling);
/// The charts, each apart.
std::optional<document::Chapter> tell_statement_figures(const Telling& telling);
/// Pairs of the same place, and the marks.
std::optional<document::Chapter> tell_statement_photographs(const Telling& telling);
std::optional<document::Chapter> tell_statement_seal(const Telling& telling);

/// The intake receipt, two copies: what was taken in and what was agreed about it.
std::optional<document::Chapter> tell_intake_owner(const Telling& telling);
std::optional<document::Chapter> tell_intake_bench(const Telling& telling);
/// The hand-back receipt, two copies: what went back, and what was told over the counter. Nothing
/// before the hand-back.
std::optional<document::Chapter> tell_hand_back_owner(const Telling& telling);
std::optional<document::Chapter> tell_hand_back_bench(const Telling& telling);

/// Tags to tie on: the reel, its tray, and each thing that came with it.
std::optional<document::Chapter> tell_reel_tags(const Telling& telling);
/// A label a bag with what lies in it; six to be written on while there is none.
std::optional<document::Chapter> tell_bag_labels(const Telling& telling);
/// A card a step, to be photographed before it; twelve without words while no step is written.
std::optional<document::Chapter> tell_step_cards(const Telling& telling);

/// The bench sheet: the steps of taking it apart, or the places to strip where none is written.
std::optional<document::Chapter> tell_bench_sheet(const Telling& telling);
/// The steps backwards, oil and grease, and what was not taken apart.
std::optional<document::Chapter> tell_bench_assembly(const Telling& telling);
/// Seats, the stack in its order, the faces that rub, and the curve.
std::optional<document::Chapter> tell_bench_drag(const Telling& telling);
/// Tests to make, with room to write before and after, and ruled lines for a pencil.
std::optional<document::Chapter> tell_bench_tests(const Telling& telling);
/// The card for the tackle box, or for the shelf of a reel that is not fished.
std::optional<document::Chapter> tell_care_card(const Telling& telling);

}  // namespace winchbook::report
