#include "report/ledger_words.h"

#include <algorithm>
#include <array>
#include <utility>

#include "record/enum_words.h"
#include "report/dating_words.h"

namespace winchbook::report {
namespace {

using assess::originality::Finding;
using assess::originality::PieceRow;
using assess::originality::Side;
using assess::originality::Standing;
using document::Sign;
using document::Text;

struct StandingRow {
  Standing standing;
  Sign sign;
};

constexpr std::array<StandingRow, 9> kStandings{{
    {Standing::original, Sign::original},
    {Standing::same_maker, Sign::same_maker},
    {Standing::service_spare, Sign::same_maker},
    {Standing::life, Sign::other},
    {Standing::another_maker, Sign::other},
    {Standing::bench, Sign::other},
    {Standing::missing, Sign::missing},
    {Standing::left_empty, Sign::missing},
    {Standing::not_determined, Sign::undetermined},
}};

const StandingRow& of(Standing standing) {
  return *std::find_if(kStandings.begin(), kStandings.end(),
                       [&](const StandingRow& row) { return row.standing == standing; });
}

}  // namespace

Text standing_words(const Telling& telling, Standing standing, bool changed) {
  const StandingRow& row = of(standing);
  Text text;
  text.parts.emplace_back(document::SignRun{row.sign});
  document::Run words{telling.words.say("standing." + std::string(base::word_of(standing)))};
  words.bold = changed;
  text.parts.emplace_back(std::move(words));
  return text;
}

/// The state of three quarters of a surface or more; a surface without such a state is mixed.
std::string surface_words(const Telling& telling, const Side& side) {
  if (!side.makers_surface) return telling.words.say("surface.not-the-makers");
  if (side.surface.empty()) return telling.words.say("surface.not-examined");
  const auto most =
      std::max_element(side.surface.begin(), side.surface.end(),
                       [](const auto& a, const auto& b) { return a.share < b.share; });
  const std::string state =
      telling.words.say("surface." + std::string(record::word_of(most->state)));
  const base::Decimal three_quarters(75, 0);
  return most->share.value < three_quarters ? telling.words.say("surface.mixed") : state;
}

std::string row_name(const Telling& telling, const PieceRow& row) {
  if (row.seats < 2) return row.name;
  return telling.words.say("ledger.name-and-count",
                           {{"name", row.name}, {"count", telling.words.spelled(row.seats)}});
}

/// The piece in this row, when its marks do not agree with the others'.
const assess::dating::Suspect* suspect_of(const Telling& telling, const PieceRow& row) {
  return row.found.piece ? telling.assessment.dating.suspect(*row.found.piece) : nullptr;
}

/// What the dating proposes is told beside the record's own answer, which stands.
void add_proposal(const Telling& telling, const assess::dating::Suspect& suspect, Text& words) {
  words.parts.emplace_back(document::LineEnd{});
  words.parts.emplace_back(document::Run{
      .text = telling.words.say(suspect.already_open ? "ledger.marks-disagree"
                                                     : "ledger.proposed-not-determined"),
      .italic = true});
}

/// The reasons for what the dating proposes, a sentence for each piece.
std::string proposals(const Telling& telling) {
  std::vector<std::string> reasons;
  for (const auto& suspect : telling.assessment.dating.suspects)
    reasons.push_back(disagreement(telling, suspect));
  return joined(reasons);
}

/// A long ledger goes by assembly, in the record's order.
void start_assembly(const Telling& telling, const std::string& assembly, document::Table& table) {
  document::Row row;
  const std::string name = assembly.empty() ? telling.words.say("ledger.no-assembly")
                                            : telling.words.capitalised(assembly);
  document::Run words{name};
  words.bold = true;
  row.cells.push_back({Text{{std::move(words)}, {}}, static_cast<int>(table.columns.size())});
  row.names_group = true;
  table.rows.push_back(std::move(row));
}

Text key_to_signs(const Telling& telling) {
  Text text;
  const auto add = [&](Sign sign, const char* key) {
    text.parts.emplace_back(document::SignRun{sign});
    text.parts.emplace_back(document::Run{telling.words.say(key) + "   "});
  };
  add(Sign::original, "key.original");
  add(Sign::same_maker, "key.same-maker");
  add(Sign::other, "key.other");
  add(Sign::missing, "key.missing");
  add(Sign::undetermined, "key.not-determined");
  text.parts.emplace_back(document::LineEnd{});
  text.parts.emplace_back(document::Run{telling.words.say("key.letters")});
  return text;
}

bool says_anything_of_parts(const Telling& telling) {
  const assess::VisitAssessment* last = telling.assessment.last();
  if (last == nullptr) return false;
  const auto& rows = last->originality.rows;
  return std::any_of(rows.begin(), rows.end(), [](const PieceRow& row) {
    return row.found.standing != Standing::not_determined ||
           row.left.standing != Standing::not_determined || !row.found.surface.empty() ||
           !row.left.surface.empty();
  });
}

std::string ledger_answer(const Telling& telling, const Finding& finding) {
  if (!finding.assembled.empty())
    return telling.words.say("ledger.assembled", {{"count", finding.reels}});
  const auto& found = finding.found;
  const auto& left = finding.left;
  if (found.not_determined == found.places_for) return "";
  const bool same = found.original == left.original;
  if (same && found.original == found.places_for) {
    return telling.words.say(
        "ledger.answer-all",
        {{"places", telling.words.spelled(found.places_for)}, {"count", found.places_for}});
  }
  return telling.words.say(same ? "ledger.answer-same" : "ledger.answer",
                           {{"found", telling.words.spelled(found.original, true)},
                            {"places", telling.words.spelled(found.places_for)},
                            {"left", telling.words.spelled(left.original, true)},
                            {"count", found.original}});
}

}  // namespace winchbook::report
