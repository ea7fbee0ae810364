#pragma once

#include <array>
#include <set>

#include "base/enum_words.h"
#include "record/record.h"

namespace winchbook::assess {

/// What somebody may have entered, each named by the word with which a message asks for it
/// (`needs` in shared/words/). A page that tells one of them without its entry tells an untruth.
enum class Entered {
  arrival,         ///< a stay at the bench, with its first day
  brought_by,      ///< who brought it
  receiver,        ///< to whom it was handed back
  arrived,         ///< how it came, in words
  wish,            ///< what the owner wants with it
  must_stay,       ///< what must stay as it is
  agreement,       ///< what was agreed, on its day
  cost,            ///< a limit, an estimate, hours, or what was bought
  promise,         ///< for when it is promised
  brake,           ///< its brake
  maker,           ///< who made it, or to whom it is attributed
  serial,          ///< its number, as read
  hand,            ///< which hand winds it
  date,            ///< anything that dates it: a mark, a written year, a material, a statement
  mark,            ///< a mark, as read
  no_marks,        ///< looked for marks, and found none
  photograph,      ///< a photograph
  no_photographs,  ///< that none was taken
  story,           ///< its story
  life,            ///< what happened to it before it came here
  custody,         ///< who had it
  part,            ///< a part of which anything is written
  standing,        ///< whose a part is
  found,           ///< the state of a part, as it came
  surface,         ///< what became of a part's surface
  fault,           ///< a named fault
  no_faults,       ///< looked for faults, and found none
  fault_stays,     ///< a fault that is not put right
  fault_mended,    ///< a fault that was put right
  remaining,       ///< what could not be put right, in words
  no_remaining,    ///< that nothing is left to put right
  test,            ///< a test made, at either end of the stay
  tested_twice,    ///< the same test made before and after
  step,            ///< a step of taking it apart
  closed_tray,     ///< where each thing went that came off or lay loose
  cleaning,        ///< a cleaning
  warned,          ///< a reason given for cleaning in spite of a warning
  work,            ///< other work
  fitting,         ///< a part that the bench put in
  donor,           ///< what gave a part
  bag,             ///< a bag with something in it
  parted,          ///< a part kept, scrapped, lost or given to the owner
  no_parted,       ///< that nothing was kept, scrapped or lost
  content,         ///< a thing that came with it
  no_contents,     ///< that nothing came with it
  no_loose,        ///< that nothing lay loose in it
  advice,          ///< what the bench advises
  decision,        ///< what the owner chose
  ranking,         ///< what matters most to the owner
  drag,            ///< the drag as it was put together
  care,            ///< how it is to be used and kept
  next_service,    ///< when a bench should see it again
  hand_back,       ///< that it was handed back, with the day
  earlier_visit,   ///< an earlier stay, told in a sentence
  interest,        ///< the bench's own interest in the reel
  no_serial,       ///< looked for a number, and found none
  with_it,         ///< what came with it: a thing, or a few words
  examined,        ///< a state, a fault or a test: somebody looked
  treatment,       ///< a cleaning, other work, or a part put in
  counsel,         ///< advice, a decision, or how it is to be used
};

[[nodiscard]] constexpr auto enum_words(Entered /*list*/) {
  using enum Entered;
  return std::to_array<base::EnumWord<Entered>>({
      {arrival, "arrival"},
      {brought_by, "brought-by"},
      {receiver, "receiver"},
      {arrived, "arrived"},
      {wish, "wish"},
      {must_stay, "must-stay"},
      {agreement, "agreement"},
      {cost, "cost"},
      {promise, "promise"},
      {brake, "brake"},
      {maker, "maker"},
      {serial, "serial"},
      {hand, "hand"},
      {date, "date"},
      {mark, "mark"},
      {no_marks, "no-marks"},
      {photograph, "photograph"},
      {no_photographs, "no-photographs"},
      {story, "story"},
      {life, "life"},
      {custody, "custody"},
      {part, "part"},
      {standing, "standing"},
      {found, "found"},
      {surface, "surface"},
      {fault, "fault"},
      {no_faults, "no-faults"},
      {fault_stays, "fault-stays"},
      {fault_mended, "fault-mended"},
      {remaining, "remaining"},
      {no_remaining, "no-remaining"},
      {test, "test"},
      {tested_twice, "tested-twice"},
      {step, "step"},
      {closed_tray, "closed-tray"},
      {cleaning, "cleaning"},
      {warned, "warned"},
      {work, "work"},
      {fitting, "fitting"},
      {donor, "donor"},
      {bag, "bag"},
      {parted, "parted"},
      {no_parted, "no-parted"},
      {content, "content"},
      {no_contents, "no-contents"},
      {no_loose, "no-loose"},
      {advice, "advice"},
      {decision, "decision"},
      {ranking, "ranking"},
      {drag, "drag"},
      {care, "care"},
      {next_service, "next-service"},
      {hand_back, "hand-back"},
      {earlier_visit, "earlier-visit"},
      {interest, "interest"},
      {no_serial, "no-serial"},
      {with_it, "with-it"},
      {examined, "examined"},
      {treatment, "treatment"},
      {counsel, "counsel"},
  });
}

/// What was entered of the reel, and of one stay at the bench.
[[nodiscard]] std::set<Entered> entered(const record::Record& record, const record::Visit& visit);

}  // namespace winchbook::assess
