#include "catalogue/choose_seat.h"

#include <utility>

#include "answers/seat.h"
#include "daybook/entries/seat_choice.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::catalogue {
namespace {

/// The question, and what may be said of the washers that are chosen.
struct SeatRequest {
  answers::SeatTyped asked;
  daybook::SeatChoice choice;

  [[nodiscard]] bool has_record() const { return !choice.said.path.empty(); }
};

forms::Form form(SeatRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  daybook::SeatChoice& choice = request.choice;
  daybook::FitRequest& said = choice.said;
  // What else is wanted for a choice is told first.
  const auto can_choose = [&request] {
    return request.choice.line && request.has_record() && !request.choice.part.empty() &&
           !request.asked.stock.empty();
  };
  Form form = answers::seat_form(request.asked);
  append(
      form,
      {
          field("--record", "the reel's folder, or its record.xml", said.path),
          field("--part",
                "the part whose place is to be filled; so many as there are of it are wanted",
                choice.part),
          field("--choose",
                "write into the record that the washers of this line of the stock are fitted",
                choice.line),
          field("--name", "what they are called there", said.name),
          field("--why", "why they are fitted", said.why).asks("Why is it fitted?", can_choose),
          field("--way-back", "how far it can be undone: \"fully: They lift out.\"", said.way_back)
              .asks("How far can it be undone: \"fully: They lift out.\"?", can_choose),
          field("--label", "the label of the old part's bag: \"bag 3\"", said.bag)
              .asks("In which bag is the old part?", can_choose),
          field("--pattern", "right, running-change, service-spare, wrong or not-determined",
                said.pattern),
          field("--maker-name", "another maker's name", said.maker_name),
          field("--photo", "a photograph of the new part", said.photos),
          day_or_today("--on", "the day of the entry, as 2026-06-19; left out, today", said.on),
          day_or_today("--today", "what day it is, for a script; left out, by the clock",
                       said.today),
          flag("--dry-run", "print what would change, and write nothing", said.dry_run),
      });
  return form;
}

/// Which options want which.
base::Diagnostics wanting(const SeatRequest& request) {
  base::Diagnostics faults;
  const auto want = [&](bool there, const char* message, const char* cure) {
    if (!there) faults.push_back(base::of_command(base::error(message, cure, "command-missing")));
  };
  const daybook::SeatChoice& choice = request.choice;
  want(
      request.has_record() == !choice.part.empty(), "--record and --part go together",
      "name the reel's folder with --record, and with --part the part whose place is to be filled");
  want(request.has_record() || !choice.line, "--choose writes into a record, and none is named",
       "add --record and --part");
  want(!choice.line || !request.asked.stock.empty(), "--choose takes a line of the stock",
       "name the stock's file with --stock");
  return faults;
}

base::Result<forms::Outcome> seat(const SeatRequest& request, forms::Setting& setting) {
  if (auto faults = wanting(request); !faults.empty()) return faults;
  answers::SeatTyped asked = request.asked;
  std::string language(answers::kNoRecord);
  if (request.has_record()) {
    const auto loaded = setting.library.record(request.choice.said.path);
    if (!loaded) return loaded.faults();
    const auto part = record::find_part(loaded->record, request.choice.part);
    if (!part) return part.faults();
    language = loaded->record.language;
    // So many washers take the place of the part as there are of it.
    if (!asked.count)
      asked.count = part->piece == nullptr ? part->place->quantity : part->piece->count;
  }
  const auto answer = answers::find_seat(setting.library, asked);
  if (!answer) return answer.faults();
  if (!request.choice.line) {
    if (asked.json) return forms::Outcome{answers::seat_as_json(*answer), {}, {}};
    return answers::tell(setting, language, [&](const words::Catalogue& words) {
      return answers::seat_told(*answer, words);
    });
  }
  const daybook::JudgedSeat judged{answer->request.seat, answer->request.caliper,
                                   answer->request.wanted.count, answer->candidates};
  return daybook::write_entry(
      request.choice.said,
      [&](daybook::Draft& draft) { return daybook::fit_choice(judged, request.choice, draft); },
      setting);
}

}  // namespace

forms::Job seat_job() {
  return forms::job_of<SeatRequest>(form, seat);
}

}  // namespace winchbook::catalogue
