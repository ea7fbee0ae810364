#include "daybook/entries/handback.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "assess/tray/tray.h"
#include "daybook/looks.h"
#include "daybook/open_visit.h"

namespace winchbook::daybook {
namespace {

forms::Form form(HandbackRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("--to", "to whom", request.to),
      field("--bag", "a bag that goes with it", request.bags),
      flag("--all-bags", "every bag that holds a part goes with it", request.all_bags),
      field("--note", "a note", request.note),
      field("--summary", "the visit in a sentence or two", request.summary),
      field("--next-service", "when it should be seen again: 2029", request.next_service),
      field("--review-by", "when its use should be thought over again", request.review_by),
      field("--not-put-right", "what could not be put right; as often as needed; or none",
            request.not_put_right),
      field("--kept", "none, when no part was kept, scrapped or lost", request.kept).of({kNone}),
      field("--drag", "how hard the drag may be set, at the line: \"8 to 14 N\"", request.drag),
      field("--line", "which line, and how much", request.line),
      field("--fish", "advice for fishing it; as often as needed", request.fish),
      field("--keep", "advice for keeping it; as often as needed", request.keep),
      field("--caution", "a caution in use: \"The crack: watch it\"; as often as needed",
            request.cautions),
  };
}

/// Every bag that holds a piece and has not gone back yet, in the order of the pieces.
std::vector<std::string> bags_in_use(const record::Record& record) {
  std::vector<std::string> bags;
  const auto gone = [&](const std::string& bag) {
    return std::any_of(record.visits.begin(), record.visits.end(), [&](const record::Visit& one) {
      return one.hand_back &&
             std::count(one.hand_back->bags.begin(), one.hand_back->bags.end(), bag) > 0;
    });
  };
  for (const record::Piece& piece : record.pieces) {
    if (piece.now.kind != record::Whereabouts::Kind::bagged || piece.now.bag.empty()) continue;
    if (std::count(bags.begin(), bags.end(), piece.now.bag) == 0 && !gone(piece.now.bag)) {
      bags.push_back(piece.now.bag);
    }
  }
  return bags;
}

/// Adds sentences as they were typed; a blank one says nothing.
void add_words(std::vector<record::Words>& into, const std::vector<std::string>& typed,
               const Draft& draft) {
  for (const std::string& one : typed) {
    if (record::Words words = draft.words(one); !words.empty()) into.push_back(std::move(words));
  }
}

/// What could not be put right, and what went elsewhere: what is named, or none.
base::Diagnostics add_not_put_right(const HandbackRequest& request, Draft& draft,
                                    record::Visit& visit) {
  const std::string none(kNone);
  if (request.not_put_right == std::vector<std::string>{none}) {
    auto faults = look_for_none(draft, visit, record::LookedFor::remaining, request.on);
    if (!faults.empty()) return faults;
  } else {
    add_words(visit.not_put_right, request.not_put_right, draft);
  }
  if (request.kept != none) return {};
  return look_for_none(draft, visit, record::LookedFor::parted, request.on);
}

void add_care(const HandbackRequest& request, const Draft& draft, record::Visit& visit) {
  if (request.line.empty() && !request.drag && request.fish.empty() && request.keep.empty() &&
      request.cautions.empty()) {
    return;
  }
  record::CareAdvice& care = visit.care ? *visit.care : visit.care.emplace();
  care.on = date_of(request.on);
  if (request.drag) {
    care.drag_low = request.drag->low;
    if (request.drag->high) care.drag_high = request.drag->high;
  }
  if (!request.line.empty()) care.line = request.line;
  add_words(care.fish, request.fish, draft);
  add_words(care.keep, request.keep, draft);
  for (const forms::Labelled& one : request.cautions)
    care.cautions.push_back(caution_of(draft, one, "Use"));
}

base::Diagnostics what_is_missing(const Draft& draft, const record::Visit& visit) {
  base::Diagnostics doubts;
  for (const assess::tray::PieceAccount& one :
       assess::tray::account(draft.record(), visit).pieces) {
    if (one.unaccounted() == 0) continue;
    doubts.push_back(base::warning_at(
        {}, fmt::format("{}: {} not accounted for", one.name, one.unaccounted()),
        "winchbook undo takes the hand-back back; winchbook tray tells the rest", "tray"));
  }
  return doubts;
}

}  // namespace

base::Result<Said> hand_back(const HandbackRequest& request, Draft& draft) {
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  record::Visit& visit = **open;
  const auto to = person_of(draft.record(), request.to);
  if (!to) return to.faults();
  if (auto faults = add_not_put_right(request, draft, visit); !faults.empty()) return faults;
  add_care(request, draft, visit);
  const auto bags = request.all_bags ? bags_in_use(draft.record()) : request.bags;
  visit.hand_back = {date_of(request.on), *to, bags, draft.words(request.note)};
  if (request.next_service) visit.next_service = request.next_service;
  if (request.review_by) visit.review_by = request.review_by;
  if (visit.summary.empty()) visit.summary = draft.words(request.summary);
  std::string sentence = fmt::format("handed back {}", base::iso_text(request.on));
  if (*to) sentence += " to " + (*to)->text;
  if (!bags.empty())
    sentence += fmt::format(", with {} bag{}", bags.size(), bags.size() == 1 ? "" : "s");
  return Said{std::move(sentence), what_is_missing(draft, visit)};
}

forms::Job handback_job() {
  return entry_job<HandbackRequest>(form, hand_back);
}

}  // namespace winchbook::daybook
