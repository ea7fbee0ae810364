#include <algorithm>
#include <cstdint>
#include <utility>

#include "assess/tray/tray.h"
#include "record/enum_words.h"
#include "record/moments.h"
#include "report/bench_work.h"
#include "report/fitting_words.h"
#include "report/receipts.h"
#include "report/sections.h"

namespace winchbook::report {
namespace {

using document::Text;
using record::Piece;
using record::Visit;
using record::Whereabouts;
using Kind = Whereabouts::Kind;

/// Contents and spares that go back out of any bag, and what the note says of where they are.
std::vector<Text> with_it(const Telling& telling) {
  std::vector<Text> lines;
  for (const Piece& piece : telling.record.pieces) {
    const bool travels = piece.now.kind == Kind::with_reel || piece.now.kind == Kind::to_owner;
    const bool part = piece.role == record::PieceRole::part;
    if (part && piece.now.kind != Kind::to_owner) continue;
    const bool earlier =
        piece.now.since && base::surely_before(*piece.now.since, telling.visit.taken_in);
    if (!travels || (part && earlier)) continue;
    Text line = document::plain(name_and_count(telling, piece) + ".");
    if (!piece.now.note.empty()) {
      line.parts.emplace_back(document::Run{" "});
      append(line, telling.text(piece.now.note));
    }
    lines.push_back(std::move(line));
  }
  return lines;
}

/// Every bag that went back, in the order it was written down, with what lies in it.
void add_bags(const Telling& telling, ReceiptFacts& facts) {
  const auto& labels = telling.visit.hand_back->bags;
  for (const std::string& label : labels) {
    std::string held;
    for (const Piece& piece : telling.record.pieces) {
      if (piece.now.kind != Kind::bagged || piece.now.bag != label) continue;
      held += (held.empty() ? "" : "; ") + name_and_count(telling, piece);
    }
    if (held.empty()) {
      held = telling.words.say("hand-back.not-recorded");
    } else {
      held += ".";
    }
    facts.facts().facts.push_back(
        {telling.words.capitalised(label), document::plain(std::move(held))});
  }
}

std::string leave_words(const Telling& telling, const Piece& piece) {
  if (!piece.now.leave) return "";
  for (const Visit& visit : telling.record.visits) {
    for (const record::Agreement& one : visit.agreements) {
      if (one.id == *piece.now.leave)
        return telling.words.say("hand-back.with-leave", {{"date", telling.words.date(one.on)}});
    }
  }
  return "";
}

/// What does not go back: kept by the bench or scrapped with leave, lost.
std::vector<Text> stays_away(const Telling& telling) {
  std::vector<Text> lines;
  for (const assess::tray::StaysAway& one :
       assess::tray::stays_away(telling.record, telling.visit)) {
    const char* key = one.kind == Kind::lost       ? "hand-back.lost"
                      : one.kind == Kind::scrapped ? "hand-back.scrapped"
                                                   : "hand-back.kept";
    const std::string name = name_and_count(telling, *one.piece, one.count);
    const std::string leave = one.kind == Kind::lost ? "" : leave_words(telling, *one.piece);
    lines.push_back(document::plain(joined({telling.words.say(key, {{"name", name}}), leave})));
  }
  return lines;
}

/// What was put in, and where it came from.
std::vector<Text> fitted(const Telling& telling) {
  std::vector<Text> lines;
  const assess::VisitAssessment* last = telling.assessment.last();
  if (last == nullptr) return lines;
  for (const auto& lettered : last->originality.second_ledger) {
    const record::Fitting* fitting = find(telling.record, lettered.fitting);
    const Piece* piece = fitting == nullptr ? nullptr : find(telling.record, fitting->piece);
    if (piece == nullptr || fitting->visit != telling.visit.id) continue;
    lines.push_back(document::plain(telling.words.say(
        "hand-back.fitted-is",
        {{"name", name_and_count(telling, *piece)}, {"donor", donor_words(telling, *piece)}})));
  }
  return lines;
}

std::vector<Text> not_put_right(const Telling& telling) {
  std::vector<Text> lines;
  std::string faults;
  for (const record::Fault& fault : telling.visit.findings.faults) {
    const auto severity = record::severity_at(fault, record::Moment::left);
    if (!severity) continue;
    const std::string gravity =
        telling.words.say("severity." + std::string(record::word_of(*severity)));
    faults += (faults.empty() ? "" : "; ") +
              telling.words.say("receipt.fault", {{"name", fault.name}, {"gravity", gravity}});
  }
  if (!faults.empty()) {
    lines.push_back(document::plain(telling.words.say(
        "hand-back.faults-stay", {{"names", telling.words.capitalised(faults)}})));
  }
  for (const record::Words& one : telling.visit.not_put_right)
    lines.push_back(telling.text(one));
  return lines;
}

std::string tests(const Telling& telling) {
  std::string out;
  for (const record::Test& test : telling.visit.findings.tests) {
    if (test.after.kind == record::TestResult::Kind::not_tested) continue;
    out += (out.empty() ? "" : "; ") +
           telling.words.say(
               "hand-back.test",
               {{"test", test.what}, {"reading", test_reading(telling, test.after, test.unit)}});
  }
  return out.empty() ? out : out + ".";
}

std::string decision(const Telling& telling) {
  const auto& advice = telling.visit.advice;
  if (!advice || !advice->chosen) return "";
  const auto course = [&](record::Course one) {
    return telling.words.say("course." + std::string(record::word_of(one)));
  };
  const std::string who =
      advice->chosen_by ? telling.name(*advice->chosen_by) : telling.words.say("receipt.the-owner");
  const char* same = !advice->advised ? "none" : *advice->advised == *advice->chosen ? "yes" : "no";
  return telling.words.say(
      "hand-back.chose", {{"name", who},
                          {"course", course(*advice->chosen)},
                          {"date", advice->chosen_on ? telling.words.date(*advice->chosen_on) : ""},
                          {"dated", advice->chosen_on ? "yes" : "no"},
                          {"same", same},
                          {"advised", advice->advised ? course(*advice->advised) : ""}});
}

std::string sums_in_words(const Telling& telling, const std::vector<base::Money>& sums) {
  std::vector<std::string> words;
  for (const base::Money& sum : sums)
    words.push_back(telling.words.money(sum));
  return telling.words.list(words);
}

/// What was agreed last, and what the record has of hours and of what was bought.
std::string cost(const Telling& telling) {
  std::vector<std::string> said;
  if (const record::Agreement* agreed = assess::agreed_limit(telling.visit)) {
    said.push_back(telling.words.say("hand-back.agreed-cost",
                                     {{"sum", telling.words.money(*agreed->cost_limit)},
                                      {"date", telling.words.date(agreed->on)}}));
  }
  const assess::VisitAssessment* last = telling.assessment.last();
  const assess::Sums sums = last == nullptr ? assess::Sums{} : last->sums;
  if (base::Decimal() < sums.hours) {
    said.push_back(
        telling.words.say("hand-back.hours", {{"hours", telling.words.number(sums.hours)}}));
  }
  if (!sums.parts.empty()) {
    said.push_back(
        telling.words.say("hand-back.parts-cost", {{"sum", sums_in_words(telling, sums.parts)}}));
  }
  if (!sums.donors.empty()) {
    said.push_back(
        telling.words.say("hand-back.donors-cost", {{"sum", sums_in_words(telling, sums.donors)}}));
  }
  return joined(said);
}

std::string next(const Telling& telling) {
  const Visit& visit = telling.visit;
  const auto& words = telling.words;
  return joined(
      {visit.next_service
           ? words.say("hand-back.next-service", {{"date", words.date(*visit.next_service)}})
           : "",
       visit.review_by ? words.say("care.review-by", {{"date", words.date(*visit.review_by)}})
                       : ""});
}

/// How hard and with which line it may be fished; the care card has the rest.
std::string counsel(const Telling& telling) {
  const auto& words = telling.words;
  const auto& care = telling.visit.care;
  if (!care) return "";
  std::string drag;
  if (care->drag_high) {
    const std::string high = words.measure(care->drag_high->value, "N");
    drag = care->drag_low
               ? words.say("hand-back.drag",
                           {{"low", words.number(care->drag_low->value)}, {"high", high}})
               : words.say("hand-back.drag-most", {{"high", high}});
  }
  return joined({drag, care->line.empty() ? "" : words.say("care.line", {{"line", care->line}}),
                 care->fish.empty() && care->keep.empty() ? "" : words.say("hand-back.rest")});
}

/// What must not be asked of it, first; then what was said when it was handed over.
std::vector<document::Beside> cautions(const Telling& telling) {
  std::vector<document::Beside> out;
  std::string limits;
  for (const record::Test& test : telling.visit.findings.tests) {
    if (test.after.kind != record::TestResult::Kind::not_safe_to_test) continue;
    limits +=
        (limits.empty() ? "" : " ") +
        telling.words.say("hand-back.not-safe",
                          {{"test", test.what},
                           {"limited", test.after.load_limit ? "yes" : "no"},
                           {"limit", test.after.load_limit
                                         ? telling.words.measure(test.after.load_limit->value, "N")
                                         : ""}});
  }
  if (!limits.empty()) {
    out.emplace_back(
        document::Caution{telling.words.say("test.not-safe"), document::plain(limits)});
  }
  if (telling.visit.care) {
    for (const record::Caution& one : telling.visit.care->cautions)
      out.emplace_back(telling.caution(one));
  }
  if (auto hazards = hazards_by_name(telling)) out.emplace_back(std::move(*hazards));
  return out;
}

/// What came off and is not accounted for, by name, with the bench's reason for handing it back.
std::string unaccounted(const Telling& telling) {
  std::vector<std::string> names;
  for (const auto& line : assess::tray::account(telling.record, telling.visit).pieces) {
    const Piece* piece = find(telling.record, line.piece);
    if (line.unaccounted() != 0 && piece != nullptr)
      names.push_back(name_and_count(telling, *piece, line.unaccounted()));
  }
  return telling.words.say("hand-back.unaccounted-is", {{"names", telling.words.list(names)},
                                                        {"reason", telling.edition.unaccounted}});
}

document::Facts facts(const Telling& telling) {
  const auto& note = telling.visit.hand_back->note;
  ReceiptFacts facts(telling);
  facts.add("receipt.reel", reel_and_model(telling));
  std::vector<Text> with = with_it(telling);
  if (!note.empty()) with.push_back(telling.text(note));
  facts.add_lines("receipt.with-it", with, "receipt.nothing-with-it");
  add_bags(telling, facts);
  facts.add_lines("hand-back.stays-away", stays_away(telling), "hand-back.nothing-kept");
  if (!telling.edition.unaccounted.empty())
    facts.add("hand-back.unaccounted", unaccounted(telling));
  if (const auto put_in = fitted(telling); !put_in.empty())
    facts.add_lines("hand-back.fitted", put_in);
  facts.add_lines("hand-back.not-put-right", not_put_right(telling), "hand-back.all-put-right");
  facts.add_or_room("hand-back.tests", tests(telling));
  facts.add("hand-back.decision", decision(telling));
  facts.add_or_room("receipt.cost", cost(telling));
  facts.add("hand-back.next", next(telling));
  facts.add("hand-back.counsel", counsel(telling));
  return std::move(facts.facts());
}

std::optional<document::Chapter> tell(const Telling& telling, Copy copy) {
  const Visit& visit = telling.visit;
  if (!visit.hand_back) return std::nullopt;
  document::Chapter chapter = receipt_chapter(telling, "hand-back", copy);
  const auto& to = visit.hand_back->to;
  const std::string date = telling.words.date(visit.hand_back->on);
  const std::size_t bags = visit.hand_back->bags.size();
  chapter.stand_first = telling.words.say(
      "hand-back.answer", {{"who", to ? "named" : "nobody"},
                           {"name", to ? telling.name(*to) : ""},
                           {"date", date},
                           {"bags", bags},
                           {"number", telling.words.spelled(static_cast<std::int64_t>(bags))}});
  document::Facts told = facts(telling);
  told.beside = receipt_margin(telling, record::Stage::as_left, "receipt.received-by", to);
  for (document::Beside& caution : cautions(telling))
    told.beside.push_back(std::move(caution));
  chapter.blocks.emplace_back(std::move(told));
  chapter.blocks.emplace_back(
      receipt_signatures(telling, "hand-back.sign", "receipt.received-by", to));
  return chapter;
}

}  // namespace

std::optional<document::Chapter> tell_hand_back_owner(const Telling& telling) {
  return tell(telling, Copy::owner);
}

std::optional<document::Chapter> tell_hand_back_bench(const Telling& telling) {
  return tell(telling, Copy::bench);
}

}  // namespace winchbook::report
