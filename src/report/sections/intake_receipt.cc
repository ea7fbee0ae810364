#include <algorithm>
#include <array>
#include <utility>

#include "assess/with_the_reel.h"
#include "base/words_of_text.h"
#include "record/enum_words.h"
#include "report/receipts.h"
#include "report/sections.h"

namespace winchbook::report {
namespace {

using document::Text;
using record::Agreement;
using record::Piece;
using record::TrayLine;

/// More faults than these are counted: each has its line in the record.
constexpr std::size_t kMostFaults = 6;

/// What had been agreed by the day of the receipt.
std::vector<const Agreement*> agreements(const Telling& telling) {
  std::vector<const Agreement*> out;
  for (const Agreement& one : telling.visit.agreements) {
    if (known_by_then(telling, one.on)) out.push_back(&one);
  }
  return out;
}

bool named_in(const std::vector<record::PieceId>& pieces, const record::PieceId& piece) {
  return std::find(pieces.begin(), pieces.end(), piece) != pieces.end();
}

/// Line, box, papers, pouch, spare spool: each with whether it was original to the reel.
std::vector<Text> with_it(const Telling& telling) {
  std::vector<Text> lines;
  for (const Piece* piece : assess::came_with_it(telling.record, telling.visit)) {
    const std::string original(record::word_of(piece->of_this_reel.answer));
    lines.push_back(document::plain(telling.words.say(
        "receipt.content", {{"name", name_and_count(telling, *piece)}, {"original", original}})));
  }
  const record::Words& told = telling.record.reel.box_and_papers;
  if (lines.empty() && !told.empty()) lines.push_back(telling.text(told));
  return lines;
}

/// Parts that lay loose when it came: what a step of taking it apart brought to light came later.
std::vector<Text> loose_parts(const Telling& telling) {
  std::vector<Text> lines;
  for (const TrayLine& line : telling.visit.tray) {
    const Piece* piece = find(telling.record, line.piece);
    if (line.found_loose == 0 || piece == nullptr || piece->role != record::PieceRole::part)
      continue;
    const auto& steps = telling.visit.strip_down;
    const bool in_step = std::any_of(steps.begin(), steps.end(), [&](const auto& step) {
      return named_in(step.pieces, line.piece);
    });
    if (!in_step)
      lines.push_back(document::plain(name_and_count(telling, *piece, line.found_loose) + "."));
  }
  return lines;
}

/// "over half of the maker's finish; structure sound; …": the axes that have one word.
std::string axes(const Telling& telling) {
  const assess::VisitAssessment* last = telling.assessment.last();
  if (last == nullptr) return "";
  const auto& at = last->condition.found;
  struct Axis {
    const char* key = nullptr;
    std::array<const char*, 4> words{};
    assess::condition::WordRange word;
  };
  const std::array<Axis, 4> all{{
      {"surface", {"threequarters", "half", "quarter", "less"}, at.finish_left.word},
      {"structure", {"sound", "marked", "weakened", "unsafe"}, at.structure.word},
      {"working", {"asmade", "withcare", "inpart", "not"}, at.working.word},
      {"completeness", {"whole", "nearly", "part", "little"}, at.completeness.word},
  }};
  std::string out;
  for (const Axis& axis : all) {
    if (axis.word.best != axis.word.worst) continue;
    const char* word = axis.words.at(static_cast<std::size_t>(axis.word.best));
    out += (out.empty() ? "" : "; ") +
           telling.words.say(std::string("receipt.glance.") + axis.key, {{"word", word}});
  }
  return out.empty() ? out : telling.words.capitalised(out) + ".";
}

/// The named faults as found, the first few, and how many more.
std::string faults(const Telling& telling) {
  std::string out;
  std::size_t count = 0;
  for (const record::Fault& fault : telling.visit.findings.faults) {
    if (!fault.found) continue;
    if (++count > kMostFaults) continue;
    const std::string gravity =
        telling.words.say("severity." + std::string(record::word_of(*fault.found)));
    out += (out.empty() ? "" : "; ") +
           telling.words.say("receipt.fault", {{"name", fault.name}, {"gravity", gravity}});
  }
  if (count == 0) return "";
  if (count > kMostFaults)
    out += "; " + telling.words.say("statement.more", {{"count", count - kMostFaults}});
  return telling.words.say("receipt.faults", {{"names", out}});
}

/// Few words of what was found.
std::string at_a_glance(const Telling& telling) {
  const record::Findings& findings = telling.visit.findings;
  const bool looked = std::any_of(findings.pieces.begin(), findings.pieces.end(),
                                  [](const auto& one) { return one.found.has_value(); }) ||
                      !findings.faults.empty();
  if (!looked || !known_by_then(telling, findings.found_on)) return "";
  return joined({axes(telling), faults(telling)});
}

std::vector<Text> wanted(const Telling& telling) {
  const record::Wishes& wishes = telling.visit.wishes;
  std::vector<Text> lines;
  if (wishes.use != record::Use::not_determined) {
    lines.push_back(document::plain(
        telling.words.say("receipt.use." + std::string(record::word_of(wishes.use)))));
  }
  for (const record::Paragraph& one : wishes.words)
    lines.push_back(telling.text(one.words));
  return lines;
}

/// In words as they were agreed, and every part that those words do not name.
std::vector<Text> must_stay(const Telling& telling) {
  std::vector<Text> lines;
  std::string said;
  for (const Agreement* agreement : agreements(telling)) {
    for (const record::Words& one : agreement->must_stay) {
      lines.push_back(telling.text(one));
      said += base::in_small_letters(telling.plain(one)) + "\n";
    }
  }
  std::vector<record::PieceId> told;
  for (const Agreement* agreement : agreements(telling)) {
    for (const record::PieceId& id : agreement->pieces_must_stay) {
      const std::string name = telling.piece_name(id);
      // "Knob, turned from the handrail" is named by "the teak knob".
      if (said.find(base::in_small_letters(name.substr(0, name.find(',')))) != std::string::npos ||
          named_in(told, id))
        continue;
      told.push_back(id);
      lines.push_back(document::plain(telling.words.capitalised(name) + "."));
    }
  }
  return lines;
}

/// What may be done, then when and how each thing was agreed.
void add_agreed(const Telling& telling, ReceiptFacts& facts) {
  std::vector<Text> may;
  std::vector<Text> log;
  for (const Agreement* agreement : agreements(telling)) {
    for (const record::Words& one : agreement->may_be_done)
      may.push_back(telling.text(one));
    Text line = document::plain(telling.words.say(
        "receipt.agreed-on", {{"date", telling.words.date(agreement->on)},
                              {"how", agreement->how.empty() ? "none" : agreement->how}}));
    if (!agreement->note.empty()) {
      line.parts.emplace_back(document::Run{" "});
      append(line, telling.text(agreement->note));
    }
    log.push_back(std::move(line));
  }
  facts.add_lines("receipt.may-be-done", may);
  facts.add_lines("receipt.must-stay", must_stay(telling));
  facts.add_lines("receipt.agreed", log);
}

/// The last estimate and the last limit; the course that was chosen has an estimate, too.
std::string cost(const Telling& telling) {
  std::string estimate;
  std::string limit;
  for (const Agreement* one : agreements(telling)) {
    const std::string reckoned = cost_range(telling, one->estimate_low, one->estimate_high);
    if (!reckoned.empty()) estimate = reckoned;
    if (one->cost_limit) limit = telling.words.money(*one->cost_limit);
  }
  const auto& advice = telling.visit.advice;
  if (estimate.empty() && advice && advice->chosen && known_by_then(telling, advice->chosen_on)) {
    for (const record::CourseCost& course : advice->courses) {
      if (course.course == *advice->chosen) estimate = cost_range(telling, course.low, course.high);
    }
  }
  const auto& words = telling.words;
  return joined({estimate.empty() ? "" : words.say("receipt.cost.estimate", {{"sum", estimate}}),
                 limit.empty() ? "" : words.say("receipt.cost.limit", {{"sum", limit}})});
}

std::string ready(const Telling& telling) {
  const record::Visit& visit = telling.visit;
  const auto& words = telling.words;
  return joined(
      {visit.promised_by ? words.say("receipt.promised", {{"date", words.date(*visit.promised_by)}})
                         : "",
       visit.waiting_for.empty()
           ? ""
           : words.say("receipt.waiting-for", {{"what", words.list(visit.waiting_for)}})});
}

document::Facts facts(const Telling& telling) {
  ReceiptFacts facts(telling);
  facts.add("receipt.reel", reel_and_model(telling));
  facts.add_or_room("receipt.arrived", telling.text(telling.visit.arrived));
  facts.add_or_room("receipt.glance", at_a_glance(telling));
  facts.add_lines("receipt.with-it", with_it(telling), "receipt.nothing-with-it");
  facts.add_lines("receipt.loose", loose_parts(telling), "receipt.nothing-loose");
  facts.add_lines("receipt.wanted", wanted(telling));
  add_agreed(telling, facts);
  facts.add_or_room("receipt.cost", cost(telling));
  facts.add_or_room("receipt.ready", ready(telling));
  facts.add_or_room("receipt.not-collected", telling.text(telling.record.bench.terms));
  return std::move(facts.facts());
}

document::Chapter tell(const Telling& telling, Copy copy) {
  const record::Visit& visit = telling.visit;
  document::Chapter chapter = receipt_chapter(telling, "intake", copy);
  const std::string date = telling.words.date(visit.taken_in);
  const auto who = visit.brought_by ? visit.brought_by : assess::owner_of(telling.record, visit);
  const char* as = visit.brought_by ? "brought" : who ? "owner" : "nobody";
  chapter.stand_first = telling.words.say(
      "intake.answer", {{"who", as}, {"name", who ? telling.name(*who) : ""}, {"date", date}});
  document::Facts told = facts(telling);
  told.beside =
      receipt_margin(telling, record::Stage::as_found, "receipt.brought-by", visit.brought_by);
  if (known_by_then(telling, visit.findings.found_on)) {
    if (auto hazards = hazards_by_name(telling)) told.beside.emplace_back(std::move(*hazards));
  }
  chapter.blocks.emplace_back(std::move(told));
  chapter.blocks.emplace_back(
      receipt_signatures(telling, "intake.sign", "receipt.brought-by", visit.brought_by));
  return chapter;
}

}  // namespace

std::optional<document::Chapter> tell_intake_owner(const Telling& telling) {
  return tell(telling, Copy::owner);
}

std::optional<document::Chapter> tell_intake_bench(const Telling& telling) {
  return tell(telling, Copy::bench);
}

}  // namespace winchbook::report
