#include <algorithm>
#include <set>
#include <utility>

#include "record/moments.h"
#include "report/bench_words.h"
#include "report/bench_work.h"
#include "report/care_words.h"
#include "report/hazards.h"
#include "report/ledger_words.h"
#include "report/sections.h"
#include "report/statement.h"
#include "report/told.h"

namespace winchbook::report {
namespace {

using assess::fitting::Span;
using assess::fitting::Use;
using document::Chapter;
using document::HalfBlock;
using document::Subhead;
using knowledge::Lubricant;

constexpr double kLabels = 66;  // points

/// One panel of the folded sheet: short blocks under subheads.
class Panel {
 public:
  explicit Panel(const Telling& telling) : telling_(telling) {}

  /// Stands before what is added next; nothing under it, no head.
  void head(const char* key) { head_ = key; }
  void say(std::string words) {
    if (!words.empty()) add(note_paragraph(std::move(words)));
  }
  void say(const std::vector<record::Words>& sentences) {
    for (const record::Words& one : sentences)
      add(note_paragraph(telling_.text(one)));
  }
  void fact(const char* key, std::string words) {
    if (words.empty()) return;
    facts_.facts.push_back({telling_.words.say(key), document::plain(std::move(words))});
  }
  /// Sets the facts gathered since the last time.
  void set_facts() {
    if (facts_.facts.empty()) return;
    facts_.label_width = kLabels;
    add(std::exchange(facts_, {}));
  }
  void add(HalfBlock block) {
    if (head_ != nullptr)
      blocks_.emplace_back(Subhead{telling_.words.say(std::exchange(head_, nullptr))});
    blocks_.emplace_back(std::move(block));
  }
  [[nodiscard]] std::vector<HalfBlock> take() {
    set_facts();
    return std::move(blocks_);
  }

 private:
  const Telling& telling_;
  const char* head_ = nullptr;
  std::vector<HalfBlock> blocks_;
  document::Facts facts_;
};

const record::CareAdvice& care_of(const Telling& telling) {
  static const record::CareAdvice kNone;
  return telling.visit.care ? *telling.visit.care : kNone;
}

/// From and to as the bench advises; else what was set.
std::optional<Span> drag_range(const Telling& telling) {
  const record::CareAdvice& care = care_of(telling);
  if (care.drag_high) {
    const double high = care.drag_high->value.approximate();
    return Span{care.drag_low ? care.drag_low->value.approximate() : high, high};
  }
  if (telling.visit.drag && telling.visit.drag->setting) {
    const double set = telling.visit.drag->setting->value.approximate();
    return Span{set, set};
  }
  return std::nullopt;
}

std::string answer(const Telling& telling) {
  const Use use = telling.recorded->use;
  const std::string key = "care-card." + std::string(base::word_of(use));
  if (use != Use::fish) return telling.words.say(key);
  const auto range = drag_range(telling);
  if (!range) return telling.words.say(key);
  return telling.words.say("care-card.fish-at", {{"drag", pull_words(telling, *range)}});
}

std::string capacity(const Telling& telling) {
  const auto& holds = telling.recorded->line.holds;
  if (!holds) return "";
  const auto load = [&](const assess::fitting::LineLoad& one) {
    return telling.words.say("care-card.load-of",
                             {{"length", number_words(telling, one.length, 0)},
                              {"diameter", number_words(telling, one.diameter, 2)}});
  };
  std::vector<std::string> others;
  for (const auto& other : telling.recorded->line.others)
    others.push_back(load(other));
  if (others.empty()) return load(*holds) + ".";
  return telling.words.say("care-card.capacity",
                           {{"known", load(*holds)}, {"others", telling.words.list(others)}});
}

/// What it was pulled to and how it did; what it must not be loaded beyond.
std::string load_limit(const Telling& telling) {
  std::vector<std::string> sentences;
  for (const record::Test& test : telling.visit.findings.tests) {
    const bool safe = test.after.kind == record::TestResult::Kind::done;
    if (test.after.load_limit) {
      sentences.push_back(telling.words.say(
          safe ? "care-card.limit" : "care-card.limit-untested",
          {{"test", test.what},
           {"limit", newtons_words(telling, test.after.load_limit->value.approximate())}}));
    } else if (safe && test.unit == "N" && test.after.reading && !test.after.reading_high) {
      sentences.push_back(telling.words.say(
          "care-card.tried",
          {{"test", test.what}, {"result", test_reading(telling, test.after, test.unit)}}));
    } else if (test.after.kind == record::TestResult::Kind::not_safe_to_test) {
      sentences.push_back(telling.words.say("care-card.not-safe-to-test", {{"test", test.what}}));
    }
  }
  return joined(sentences);
}

std::string per_turn(const Telling& telling) {
  const auto& turn = telling.recorded->line.per_turn;
  if (!turn) return "";
  return telling.words.say("care-card.per-turn-is", {{"length", number_words(telling, *turn, 0)}});
}

Panel setting_panel(const Telling& telling) {
  Panel panel(telling);
  const auto range = drag_range(telling);
  panel.head("care-card.use");
  if (range) {
    panel.fact("care-card.at-the-line", pull_words(telling, *range));
    panel.fact("care-card.on-a-scale", scale_words(telling, *range));
  } else if (has_drag(telling)) {
    panel.fact("care-card.at-the-line", telling.words.say("care-card.not-measured"));
  }
  panel.fact("care-card.line", care_of(telling).line);
  panel.fact("care-card.spool-holds", capacity(telling));
  panel.fact("care-card.per-turn", per_turn(telling));
  panel.fact("care-card.load", load_limit(telling));
  panel.set_facts();
  panel.say(care_of(telling).fish);
  return panel;
}

/// The curve, or why there is none; and what else keeps the setting honest.
Panel curve_panel(const Telling& telling) {
  Panel panel(telling);
  if (!has_drag(telling)) return panel;
  panel.head("care-card.curve");
  if (auto chart = drag_chart(telling, ChartSize::small)) panel.add(std::move(*chart));
  panel.say(lacking_words(telling));
  panel.say(short_share_words(telling));
  return panel;
}

/// Where the bench wrote nothing, what holds for every reel (common practice).
void say_upkeep(const Telling& telling, Panel& panel) {
  if (!care_of(telling).keep.empty()) return panel.say(care_of(telling).keep);
  panel.say(telling.words.say(telling.recorded->use == Use::fish ? "care-card.after-fishing-is"
                                                                 : "care-card.keeping-is"));
}

void say_lubrication(const Telling& telling, Panel& panel) {
  const auto& parts = strip_of(telling).lubricated;
  const auto add = [&](const char* key, const char* how, const std::string& names) {
    if (!names.empty()) panel.fact(key, joined({names + ".", telling.words.say(how)}));
  };
  add("bench-assembly.oil-label", "care-card.oil-how",
      lubricated_words(telling, parts, Lubricant::oil));
  add("bench-assembly.grease-label", "care-card.grease-how",
      lubricated_words(telling, parts, Lubricant::grease));
  if (telling.visit.drag && telling.visit.drag->greased) {
    panel.fact("bench-assembly.washers",
               telling.words.say(*telling.visit.drag->greased ? "care-card.washers-greased"
                                                              : "care-card.washers-dry"));
  }
  panel.set_facts();
}

/// What must stay as it is: by agreement, and by what the reel's life added.
std::string must_stay(const Telling& telling) {
  std::vector<record::PieceId> pieces;
  std::set<record::PieceId> seen;
  const auto add = [&](const std::vector<record::PieceId>& more) {
    for (const record::PieceId& piece : more) {
      if (seen.insert(piece).second) pieces.push_back(piece);
    }
  };
  for (const record::Visit& visit : telling.record.visits) {
    for (const record::Agreement& agreement : visit.agreements)
      add(agreement.pieces_must_stay);
  }
  for (const record::LifeEvent& event : telling.record.life)
    add(event.must_stay);
  std::vector<std::string> told;
  for (const record::PieceId& piece : pieces)
    told.push_back(telling.piece_name(piece));
  const std::string names = telling.words.joined("join.semicolon", told);
  return names.empty() ? "" : telling.words.capitalised(names) + ".";
}

std::string bags(const Telling& telling) {
  if (!telling.visit.hand_back || telling.visit.hand_back->bags.empty()) return "";
  return telling.words.say(
      "care-card.bags-are",
      {{"count", telling.visit.hand_back->bags.size()},
       {"bags", telling.words.capitalised(telling.words.list(telling.visit.hand_back->bags))}});
}

void say_originals(const Telling& telling, Panel& panel) {
  const assess::VisitAssessment* last = telling.assessment.last();
  if (last != nullptr && !last->originality.rows.empty())
    panel.fact("care-card.original", ledger_answer(telling, last->originality));
  panel.fact("care-card.stays", must_stay(telling));
  panel.fact("care-card.bags", bags(telling));
}

void say_dates(const Telling& telling, Panel& panel) {
  panel.fact("care-card.service", next_service_words(telling));
  if (telling.visit.review_by)
    panel.fact("care-card.review",
               telling.words.capitalised(telling.words.date(*telling.visit.review_by)));
  panel.set_facts();
}

/// What never to do, loud: the bench's own warnings, the faults that are left, and what material
/// and dates ask for.
Panel never_panel(const Telling& telling) {
  Panel panel(telling);
  panel.head("care-card.never");
  for (const record::Caution& caution : care_of(telling).cautions)
    panel.add(telling.caution(caution));
  for (const record::Fault& fault : telling.visit.findings.faults) {
    if (record::severity_at(fault, record::Moment::left) != record::Severity::unsafe) continue;
    panel.add(document::Caution{
        telling.words.say("care-card.unsafe"),
        document::plain(telling.words.say("care-card.unsafe-is", {{"fault", fault.name}}))});
  }
  const bool fish = telling.recorded->use == Use::fish;
  for (document::Caution& caution : hazards_on_card(telling, fish))
    panel.add(std::move(caution));
  panel.say(telling.words.say(fish ? "care-card.never-fish" : "care-card.never-shelf"));
  return panel;
}

}  // namespace

// One sheet, printed on one side and folded across its middle with the print outside: a tent on a
// shelf, A6 in a tackle box after a second fold down the gutter. The upper half is the front and
// the lower the back: turned over its lower edge it reads upright, so nothing is set upside down.
std::optional<Chapter> tell_care_card(const Telling& telling) {
  if (telling.recorded == nullptr) return std::nullopt;
  const bool fish = telling.recorded->use == Use::fish;
  Chapter chapter = telling.chapter("care-card");
  chapter.title = titled(telling, reel_in_trade(telling));
  chapter.tells = told_identity(telling.assessment.identity);
  if (!fish) chapter.eyebrow = telling.words.say("care-card.shelf-eyebrow");
  chapter.stand_first = answer(telling);

  Panel upkeep(telling);
  upkeep.head(fish ? "care-card.after-fishing" : "care-card.keeping");
  say_upkeep(telling, upkeep);
  Panel originals(telling);
  originals.head("care-card.whole");
  say_originals(telling, originals);
  say_dates(telling, originals);

  document::Halves above;
  document::Halves below;
  above.above_fold = true;
  if (fish) {
    say_lubrication(telling, upkeep);
    above.left = setting_panel(telling).take();
    above.right = curve_panel(telling).take();
    Panel never = never_panel(telling);
    if (above.right.empty()) {
      above.right = originals.take();
    } else {
      // The curve has its place: what is to be kept follows under the rest.
      say_originals(telling, upkeep);
      say_dates(telling, never);
    }
    below.left = upkeep.take();
    below.right = never.take();
  } else {
    upkeep.say(care_of(telling).fish);
    above.left = upkeep.take();
    above.right = originals.take();
    below.left = never_panel(telling).take();
  }
  chapter.blocks.emplace_back(std::move(above));
  chapter.blocks.emplace_back(document::Fold{});
  chapter.blocks.emplace_back(std::move(below));
  return chapter;
}

}  // namespace winchbook::report
