#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/decimal.h"
#include "base/edtf_date.h"
#include "record/findings.h"

namespace winchbook::record {

enum class Use { fish, show, fish_and_show, sell, keep, not_determined };

/// The six things the owner ranks.
enum class Matter { memory, originality, value, use, way_back, cost };

struct Wishes {
  Use use = Use::not_determined;
  Prose words;
  std::vector<Matter> ranking;  ///< the most important first; empty: not asked
};

/// What was agreed, when, and how: one entry of a dated log.
struct Agreement {
  AgreementId id;
  base::EdtfDate on;
  std::string how;  ///< in person, by letter, by telephone; empty: nobody wrote it
  std::optional<PersonId> with;
  std::vector<Words> may_be_done;
  std::vector<Words> must_stay;
  std::vector<PieceId> pieces_must_stay;
  std::vector<PieceId> pieces_may_leave;  ///< leave to keep or scrap these
  std::optional<base::Money> cost_limit;
  std::optional<base::Money> estimate_low;
  std::optional<base::Money> estimate_high;
  Words note;
};

/// A caution that stands beside the work it warns about.
struct Caution {
  std::string label;  ///< "SPRINGS"
  Words words;
};

/// One step of taking it apart.
struct StripStep {
  StepId id;
  int number = 1;
  std::optional<base::EdtfDate> on;  ///< the day it was done; empty: not written, or not done yet
  Words what;
  std::vector<PieceId> pieces;  ///< what comes off
  std::vector<PlaceId> places;  ///< of a step taken over from another reel: what will come off
  Words orientation;            ///< which way up, which face out
  std::string tool;
  bool spring_loose = false;  ///< a spring comes free in this step
  std::optional<Caution> caution;
  std::vector<PhotoId> photos;
};

struct Cleaning {
  std::optional<base::EdtfDate> on;
  std::vector<PieceId> pieces;
  std::string material;  ///< empty: that of the pieces
  std::string method;
  std::optional<base::Minutes> minutes;
  Words what;
  Words against_warning;  ///< the reason given when it was done in spite of a warning
  std::optional<Caution> caution;
  std::optional<WayBack> way_back;
  Words loss;  ///< finish that came away; empty: none that could be measured
};

struct Work {
  Words what;
  std::vector<PieceId> pieces;
  std::optional<PersonId> by;
  std::optional<base::EdtfDate> on;
  std::optional<base::Hours> hours;
  std::optional<base::Money> parts_cost;
  std::optional<WayBack> way_back;
  std::optional<Caution> caution;
};

/// The tray: how many of a piece came off or lay loose, and where every one went.
struct TrayLine {
  PieceId piece;
  std::optional<base::EdtfDate> on;  ///< the day of the last entry about it
  int taken_off = 0;
  int found_loose = 0;
  int refitted = 0;
  int bagged = 0;
  int to_owner = 0;
  int kept_by_bench = 0;
  int lost = 0;
  int scrapped = 0;
};

enum class Course { keep_as_found, clean_for_show, make_it_fish, rebuild_to_fish };

struct CourseCost {
  Course course = Course::keep_as_found;
  std::optional<base::Money> low;
  std::optional<base::Money> high;
  Words effect;  ///< what it does to originality and value
};

/// What the bench advised and what the owner chose.
struct Advice {
  std::optional<base::EdtfDate> on;  ///< the day it was advised
  std::optional<Course> advised;
  Words because;
  std::vector<CourseCost> courses;
  std::optional<Course> chosen;
  std::optional<PersonId> chosen_by;
  std::optional<base::EdtfDate> chosen_on;
  Words chosen_because;
};

/// How a washer of the stack is held.
enum class Keyed { to_gear, to_sleeve, free };

struct DragWasher {
  PieceId piece;
  Keyed keyed = Keyed::free;
  std::optional<base::Millimetres> inside;
  std::optional<base::Millimetres> outside;
  std::optional<base::Millimetres> thickness;
};

/// The drag as it was put together, from the gear outwards.
struct DragStack {
  std::optional<base::EdtfDate> on;  ///< the day it was put together or measured
  std::vector<DragWasher> washers;
  std::optional<bool> greased;                   ///< empty: nobody wrote it
  std::optional<base::Newtons> setting;          ///< at the line, spool full
  std::optional<base::Millimetres> spool_full;   ///< across the wound line, spool full
  std::optional<base::Millimetres> spool_empty;  ///< across the core, or the last line on it
  std::optional<base::Newtons> line_strength;    ///< of the line it is set for, unknotted
};

/// How it may be used, for the family and the care card.
struct CareAdvice {
  std::optional<base::EdtfDate> on;
  std::optional<base::Newtons> drag_low;
  std::optional<base::Newtons> drag_high;
  std::string line;         ///< which line and how much
  std::vector<Words> fish;  ///< to fish it
  std::vector<Words> keep;  ///< to keep it
  std::vector<Caution> cautions;
};

struct HandBack {
  base::EdtfDate on;
  std::optional<PersonId> to;
  std::vector<std::string> bags;  ///< as labelled, in order
  Words note;
};

/// One stay at the bench.
struct Visit {
  VisitId id;
  std::string number;  ///< the bench's own number of the job: "26-014"; empty: it gives none
  base::EdtfDate taken_in;
  std::optional<PersonId> owner;  ///< whose it is, as was said when it came
  std::optional<PersonId> brought_by;
  std::vector<PersonId> restorers;
  Words arrived;  ///< how it came: in a biscuit tin, in pieces
  Wishes wishes;
  std::vector<Agreement> agreements;  ///< earliest first
  std::optional<base::EdtfDate> promised_by;
  std::vector<std::string> waiting_for;
  Findings findings;
  std::vector<StripStep> strip_down;
  std::vector<Cleaning> cleaning;
  std::vector<Work> work;
  std::vector<TrayLine> tray;
  std::optional<Advice> advice;
  std::optional<DragStack> drag;
  std::vector<Words> not_put_right;  ///< remaining, besides the faults left in `findings`
  std::optional<CareAdvice> care;
  std::optional<HandBack> hand_back;  ///< empty: it is still at the bench
  std::optional<base::EdtfDate> next_service;
  std::optional<base::EdtfDate> review_by;
  Words summary;  ///< the visit in a sentence or two
};

}  // namespace winchbook::record
