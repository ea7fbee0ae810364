#include "daybook/entries/handback.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "assess/tray/tray.h"
#include "daybook/open_visit.h"
#include "daybook/reading.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

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

void leave_as_found(Draft& draft, const OpenVisit& open, base::Day on) {
  bool any = false;
  for (const record::PieceFinding& finding : open.visit->findings.pieces) {
    if (!finding.found || finding.left) continue;
    const record::Piece* piece = record::find(draft.record(), finding.piece);
    if (piece == nullptr || piece->now.kind != record::Whereabouts::Kind::fitted) continue;
    add_state(draft, finding_of(draft, open.element, finding.piece), *finding.found, false);
    any = true;
  }
  const pugi::xml_node findings = open.element.child("findings");
  if (any && !findings.child("left-on")) draft.add(findings, "left-on", base::iso_text(on));
}

void add_care(Draft& draft, pugi::xml_node visit, const HandbackRequest& request) {
  if (request.line.empty() && request.drag.empty() && request.fish.empty() &&
      request.keep.empty() && request.cautions.empty()) {
    return;
  }
  const pugi::xml_node care = draft.need(visit, "care");
  if (!request.drag.empty()) {
    const Reading drag = read_reading(request.drag, "N");
    draft.set(care, "drag-low", drag.low.empty() ? drag.words : drag.low);
    if (!drag.high.empty()) draft.set(care, "drag-high", drag.high);
  }
  if (!request.line.empty()) draft.set(care, "line", request.line);
  for (const std::string& one : request.fish)
    draft.add_words(care, "fish", one);
  for (const std::string& one : request.keep)
    draft.add_words(care, "keep", one);
  for (const std::string& one : request.cautions)
    add_caution(draft, care, one, "Use");
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

Change hand_back(HandbackRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, request.on);
    if (!open) return open.faults();
    std::string to;
    if (!request.to.empty()) {
      const auto person = record::find_person(draft.record(), request.to);
      if (!person) return person.faults();
      to = person.value()->id.text;
    } else if (open->visit->brought_by) {
      to = open->visit->brought_by->text;
    }
    leave_as_found(draft, *open, request.on);
    for (const std::string& one : request.not_put_right)
      draft.add_words(open->element, "not-put-right", one);
    add_care(draft, open->element, request);
    const pugi::xml_node hand_back = draft.add(open->element, "hand-back");
    draft.add(hand_back, "on", base::iso_text(request.on));
    if (!to.empty()) draft.add_ref(hand_back, "to", to);
    const auto bags = request.bags.empty() ? bags_in_use(draft.record()) : request.bags;
    for (const std::string& bag : bags)
      draft.add(hand_back, "bag", bag);
    draft.add_words(hand_back, "note", request.note);
    if (!request.next_service.empty())
      draft.set(open->element, "next-service", request.next_service);
    if (!request.review_by.empty()) draft.set(open->element, "review-by", request.review_by);
    if (!request.summary.empty() && !open->element.child("summary")) {
      draft.add_words(open->element, "summary", request.summary);
    }
    std::string sentence = fmt::format("handed back {}", base::iso_text(request.on));
    if (!to.empty()) sentence += " to " + to;
    if (!bags.empty())
      sentence += fmt::format(", with {} bag{}", bags.size(), bags.size() == 1 ? "" : "s");
    return Said{std::move(sentence), what_is_missing(draft, *open->visit)};
  };
}

}  // namespace winchbook::daybook
