#include "report/dating_words.h"

#include <algorithm>
#include <array>
#include <utility>

namespace winchbook::report {
namespace {

namespace dating = assess::dating;
using dating::DaySpan;
using dating::EndUse;
using dating::Evidence;
using dating::Finding;
using dating::LeftOut;
using dating::Warning;
using record::Marking;

const Finding& finding_of(const Telling& telling) {
  return telling.assessment.dating;
}

const Marking* mark_of(const Telling& telling, const Evidence& evidence) {
  return evidence.marking ? find(telling.record, *evidence.marking) : nullptr;
}

std::string year(const base::Day& day) {
  return std::to_string(day.year);
}

std::string names(const Telling& telling, const std::vector<record::PieceId>& pieces) {
  std::vector<std::string> list;
  for (const record::PieceId& piece : pieces) {
    list.push_back(piece.empty() ? telling.words.say("dating.what-was-told")
                                 : telling.words.say("dating.the-piece",
                                                     {{"piece", telling.piece_name(piece)}}));
  }
  return telling.words.list(list);
}

const dating::Conflict* hard_conflict(const Finding& finding) {
  const auto found = std::find_if(finding.conflicts.begin(), finding.conflicts.end(),
                                  [](const auto& one) { return one.tier == dating::Tier::hard; });
  return found == finding.conflicts.end() ? nullptr : &*found;
}

/// What a bench made, and what an owner wrote on a box, would only stretch the axis.
bool far_from_the_reel(const Evidence& evidence, dating::LeftOut reason) {
  const bool of_the_bench =
      reason == dating::LeftOut::made_at_bench || reason == dating::LeftOut::put_in_by_bench;
  return of_the_bench ||
         (reason == dating::LeftOut::content && evidence.grounds == dating::Grounds::claim);
}

/// How many of the bars that are drawn count.
std::size_t speaking(const Finding& finding) {
  std::size_t count = 0;
  for (std::size_t i = 0; i < finding.uses.size(); ++i) {
    const dating::Use& use = finding.uses[i];
    const bool counts = use.not_before == EndUse::counts || use.not_after == EndUse::counts;
    if (counts && speaks_of_the_reel(finding, i)) ++count;
  }
  return count;
}

/// The window leaves at most this many years: "together they leave little room".
constexpr std::int64_t kLittleRoom = 5;

std::string leaning(const Telling& telling, const Finding& finding) {
  const auto& first = finding.window.not_before;
  const auto& last = finding.window.not_after;
  const bool little = first && last && last->day.year - first->day.year < kLittleRoom;
  const std::size_t count = speaking(finding);
  return telling.words.say(
      "dating.leaning", {{"count", count},
                         {"number", telling.words.spelled(static_cast<std::int64_t>(count), true)},
                         {"room", little ? "little" : "some"}});
}

std::string not_fitting(const Telling& telling, const Finding& finding) {
  std::vector<record::PieceId> pieces;
  for (const dating::Suspect& suspect : finding.suspects) {
    if (!suspect.one_of_several) pieces.push_back(suspect.piece);
  }
  if (pieces.empty()) return "";
  return telling.words.capitalised(telling.words.say(
      "dating.does-not-belong", {{"pieces", names(telling, pieces)}, {"count", pieces.size()}}));
}

struct DoubtRow {
  Warning::Kind kind;
  const char* key;
};

/// The doubts that a reader is told; the others are the bench's, and `winchbook date` tells them.
constexpr std::array<DoubtRow, 6> kDoubts{{
    {Warning::Kind::crossed_ends, "dating.doubt.crossed-ends"},
    {Warning::Kind::made_soft_in_part, "dating.doubt.made-soft-in-part"},
    {Warning::Kind::bench_against_table, "dating.doubt.bench-against-table"},
    {Warning::Kind::after_arrival, "dating.doubt.after-arrival"},
    {Warning::Kind::soft_gives_way, "dating.doubt.soft-gives-way"},
    {Warning::Kind::written_outside, "dating.doubt.written-outside"},
}};

}  // namespace

std::string quoted(const Telling& telling, const Marking& mark) {
  const std::string* text = record::told(mark.text);
  if (text == nullptr) return telling.words.say("mark.withheld");
  return telling.words.say("mark.quoted", {{"text", text->substr(0, text->find('\n'))}});
}

document::Text quoted_whole(const Telling& telling, const Marking& mark) {
  const std::string* text = record::told(mark.text);
  if (text == nullptr) return document::plain(telling.words.say("mark.withheld"));
  return document::in_lines(telling.words.say("mark.quoted", {{"text", *text}}));
}

std::string evidence_name(const Telling& telling, const Evidence& evidence) {
  if (const Marking* mark = mark_of(telling, evidence)) return quoted(telling, *mark);
  if (evidence.custody) return telling.words.say("dating.first-holder");
  std::string what = evidence.what.empty() ? telling.words.say("dating.made-then") : evidence.what;
  if (evidence.piece.empty()) return what;
  return telling.words.say("dating.what-of-piece",
                           {{"what", what}, {"piece", telling.piece_name(evidence.piece)}});
}

bool narrows(const Finding& finding, std::size_t i) {
  return std::any_of(finding.steps.begin(), finding.steps.end(),
                     [&](const dating::Step& step) { return step.evidence == i; });
}

bool speaks_of_the_reel(const Finding& finding, std::size_t i) {
  const Evidence& evidence = finding.evidence[i];
  if (far_from_the_reel(evidence, finding.uses[i].left_out)) return false;
  if (narrows(finding, i)) return true;
  const auto of_table = [](const std::optional<dating::End>& end) {
    return !end || end->basis == dating::Basis::table;
  };
  if (evidence.marking && !(of_table(evidence.not_before) && of_table(evidence.not_after)))
    return true;
  return std::any_of(finding.suspects.begin(), finding.suspects.end(), [&](const auto& suspect) {
    return std::find(suspect.evidence.begin(), suspect.evidence.end(), i) != suspect.evidence.end();
  });
}

document::Text evidence_because(const Telling& telling, const Evidence& evidence) {
  const Marking* mark = mark_of(telling, evidence);
  if (mark != nullptr && mark->says && !mark->says->because.empty())
    return telling.text(mark->says->because);
  if (!evidence.because.empty()) return document::plain(evidence.because);
  if (mark != nullptr) return telling.text(mark->note);
  return document::plain(evidence.source);
}

std::string why_left_out(const Telling& telling, std::size_t i) {
  const dating::Use& use = finding_of(telling).uses.at(i);
  if (use.left_out != LeftOut::no)
    return telling.words.say("dating.left-out." + std::string(base::word_of(use.left_out)));
  const auto lost = [](EndUse end) { return end != EndUse::counts && end != EndUse::undecided; };
  if (!lost(use.not_before) || !lost(use.not_after)) return "";
  const bool aside = use.not_before == EndUse::set_aside || use.not_after == EndUse::set_aside;
  return telling.words.say(aside ? "dating.left-out.set-aside" : "dating.left-out.gives-way");
}

std::string what_it_did(const Telling& telling, std::size_t i) {
  const Finding& finding = finding_of(telling);
  std::string left_out = why_left_out(telling, i);
  const Evidence& evidence = finding.evidence.at(i);
  if (!evidence.not_before && !evidence.not_after) return "";
  if (!left_out.empty()) return left_out;
  const auto sets = [&](const std::optional<dating::WindowEnd>& end) {
    return end && end->evidence == i;
  };
  const bool first = sets(finding.window.not_before);
  const bool last = sets(finding.window.not_after);
  if (first && last) return telling.words.say("dating.sets.both");
  if (first) return telling.words.say("dating.sets.first");
  if (last) return telling.words.say("dating.sets.last");
  return "";
}

std::string years_in_words(const Telling& telling, const DaySpan& days) {
  if (!days.first && !days.last) return "";
  const char* form = "between";
  if (!days.last) {
    form = "from";
  } else if (!days.first) {
    form = "until";
  } else if (days.last->year - days.first->year < 2) {
    form = days.last->year == days.first->year ? "one" : "two";
  }
  return telling.words.say("dating.years", {{"form", form},
                                            {"first", days.first ? year(*days.first) : ""},
                                            {"last", days.last ? year(*days.last) : ""}});
}

std::string no_year_fits(const Telling& telling) {
  const dating::Conflict* conflict = hard_conflict(finding_of(telling));
  if (conflict == nullptr || conflict->alternatives_in_all < 2) return "";
  std::string ways;
  for (const dating::Alternative& way : conflict->alternatives) {
    if (!ways.empty()) ways += telling.words.say("dating.or");
    ways += names(telling, way.must_go);
  }
  const std::size_t more = conflict->alternatives_in_all - conflict->alternatives.size();
  return telling.words.say("dating.no-year-fits", {{"ways", ways}, {"more", more}});
}

std::string made_years(const Telling& telling) {
  const assess::Made& made = telling.assessment.identity.made;
  if (!made.settled) return "";
  return made.written ? telling.words.date(*made.written) : years_in_words(telling, made.days);
}

std::string made_sentence(const Telling& telling) {
  const assess::Identity& reel = telling.assessment.identity;
  if (!reel.made.settled) return telling.words.say("statement.no-year");
  const std::string years = made_years(telling);
  if (years.empty()) return "";
  if (reel.made.by == assess::Made::By::bench) {
    return telling.words.say(
        "dating.by-the-bench",
        {{"date", years},
         {"sure", telling.record.reel.made->certainty
                      ? std::string(record::word_of(*telling.record.reel.made->certainty))
                      : "not-written"}});
  }
  return telling.words.say(reel.assembled() ? "dating.made-assembled" : "dating.made",
                           {{"years", years}, {"sure", reel.made.certain ? "certain" : "likely"}});
}

std::string dating_answer(const Telling& telling) {
  const Finding& finding = finding_of(telling);
  if (std::string none = no_year_fits(telling); !none.empty()) return none;
  if (telling.assessment.identity.made.by != assess::Made::By::marks) return "";
  const std::string made = made_sentence(telling);
  const std::string leans =
      finding.attributed
          ? telling.words.say("dating.attributed", {{"count", telling.record.markings.size()}})
          : leaning(telling, finding);
  return joined({made, leans, not_fitting(telling, finding)});
}

std::string disagreement(const Telling& telling, const dating::Suspect& suspect) {
  const std::string own = suspect.own.empty() ? telling.words.say("dating.two-things")
                                              : years_in_words(telling, suspect.own);
  return telling.words.say("dating.disagreement",
                           {{"piece", telling.piece_name(suspect.piece)},
                            {"own", own},
                            {"others", years_in_words(telling, suspect.others)}});
}

std::vector<std::string> dating_doubts(const Telling& telling) {
  const Finding& finding = finding_of(telling);
  std::vector<std::string> doubts;
  for (const dating::Suspect& suspect : finding.suspects)
    doubts.push_back(disagreement(telling, suspect));
  for (const Warning& warning : finding.warnings) {
    const auto row = std::find_if(kDoubts.begin(), kDoubts.end(),
                                  [&](const DoubtRow& one) { return one.kind == warning.kind; });
    if (row == kDoubts.end()) continue;
    const std::string name =
        warning.evidence ? evidence_name(telling, finding.evidence.at(*warning.evidence)) : "";
    doubts.push_back(telling.words.say(row->key, {{"mark", name}}));
  }
  return doubts;
}

}  // namespace winchbook::report
