#include "catalogue/catalogue.h"

#include <array>

#include "answers/advise.h"
#include "answers/check.h"
#include "answers/date.h"
#include "answers/drag.h"
#include "answers/grade.h"
#include "answers/line.h"
#include "answers/lookup.h"
#include "answers/sales.h"
#include "answers/shelf.h"
#include "answers/tray.h"
#include "answers/value.h"
#include "app/issue.h"
#include "catalogue/asks_or_enters.h"
#include "catalogue/choose_seat.h"
#include "daybook/entries/agree.h"
#include "daybook/entries/clean.h"
#include "daybook/entries/custody.h"
#include "daybook/entries/decide.h"
#include "daybook/entries/donor.h"
#include "daybook/entries/enter_sale.h"
#include "daybook/entries/fit.h"
#include "daybook/entries/grade_set.h"
#include "daybook/entries/handback.h"
#include "daybook/entries/identify.h"
#include "daybook/entries/intake.h"
#include "daybook/entries/laboratory.h"
#include "daybook/entries/life.h"
#include "daybook/entries/mark.h"
#include "daybook/entries/measure.h"
#include "daybook/entries/part.h"
#include "daybook/entries/person.h"
#include "daybook/entries/photo_add.h"
#include "daybook/entries/photo_pair.h"
#include "daybook/entries/photo_watch.h"
#include "daybook/entries/story.h"
#include "daybook/entries/strip.h"
#include "daybook/entries/test.h"
#include "daybook/entries/tray.h"
#include "daybook/entries/undo.h"
#include "daybook/entries/work.h"

namespace winchbook::catalogue {
namespace {

using namespace answers;  // NOLINT: the rows name a job of each
using namespace daybook;  // NOLINT

constexpr std::array kRows{
    forms::Row{"check",
               "look a record over: is it whole, does it agree with itself and its photographs",
               check_job},
    forms::Row{
        "grade",
        "work out what is its maker's and in what state it is, as found and as left, with reasons",
        [] { return asks_or_enters(grade_job(), grade_set_job()); }},
    forms::Row{"date", "say when it was made, why, and which piece does not belong", date_job},
    forms::Row{"lookup", "look a mark, a material or a number up, without a record", lookup_job},
    forms::Row{"seat",
               "find the washers of your stock that fit a drag's seat, and how to adapt them",
               seat_job},
    forms::Row{"drag", "work out what a drag holds, new and worn in, over the spool's fill",
               drag_job},
    forms::Row{"line", "work out how much line goes on, the backing, and a turn of the handle",
               line_job},
    forms::Row{"sales", "look recorded sales over"},
    forms::Row{"sales check", "look a sales file over, row by row", sales_check_job},
    forms::Row{"sales add", "enter a sale into a reel's record", enter_sale_job},
    forms::Row{"sales for", "enter what the value in a reel's record is for", value_purpose_job},
    forms::Row{"value", "say what the reel is worth from recorded sales, or why not", value_job},
    forms::Row{"advise", "fish it or keep it: weigh the courses by what the owner ranks",
               [] { return asks_or_enters(advise_job(), decide_job()); }},
    forms::Row{"issue",
               "write a document for its reader: a keepsake for the family, a statement for a "
               "buyer",
               app::issue_job},
    forms::Row{"intake", "take a reel in: make its folder and its first record", intake_job},
    forms::Row{"agree", "write down what was agreed with the owner, and how", agree_job},
    forms::Row{"identify", "write down what the reel is: its maker, when it was made, and why",
               identify_job},
    forms::Row{"part", "add a part and its place, or set what is known of one", part_job},
    forms::Row{"person", "add somebody in the reel's life", person_job},
    forms::Row{"custody", "write down who had it, or that nobody knows", custody_job},
    forms::Row{"story",
               "write its story down, when its teller approved it, and what happened to it",
               story_job},
    forms::Row{"measure", "write measures down", measure_job},
    forms::Row{"mark", "write a mark down as it was read", mark_job},
    forms::Row{"strip", "enter a step of taking it apart: what comes off, which way round",
               strip_job},
    forms::Row{"clean", "enter how parts were cleaned", clean_job},
    forms::Row{"work", "enter work that was done", work_job},
    forms::Row{"donor", "add a reel that gives parts", donor_job},
    forms::Row{"laboratory", "enter a laboratory's report on what no eye can tell", laboratory_job},
    forms::Row{"fit", "enter a part that is not original, and where the old one is", fit_job},
    forms::Row{"tray", "tell what is off, back and unaccounted for, or enter where parts went",
               [] { return asks_or_enters(answers::tray_job(), daybook::tray_job()); }},
    forms::Row{"test", "enter what a test gave, as the reel came or as it left", test_job},
    forms::Row{"photo", "take photographs in, pair them, or watch a camera's folder"},
    forms::Row{"photo add", "take photographs in, made ready for printing", photo_add_job},
    forms::Row{"photo pair", "pair a photograph as found with one as left", photo_pair_job},
    forms::Row{"photo watch",
               "take each new picture of a camera's folder into the step entered last",
               photo_watch_job},
    forms::Row{"handback", "hand the reel back: bags, next service, advice", handback_job},
    forms::Row{"shelf", "find reels, fitted parts and unfinished jobs among all records",
               shelf_job},
    forms::Row{"undo", "bring the record back as it was before its last change", undo_job},
};

}  // namespace

std::span<const forms::Row> rows() {
  return kRows;
}

}  // namespace winchbook::catalogue
