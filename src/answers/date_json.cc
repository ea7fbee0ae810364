#include "answers/date.h"
#include "answers/date_words.h"
#include "json/json.h"

namespace winchbook::answers {
namespace {

using json::Json;
namespace dating = assess::dating;

using json::date;
using json::list;
using json::or_null;

Json piece(const record::PieceId& of) {
  return or_null(of.text);
}

Json span(const dating::DaySpan& of) {
  return {{"not_before", date(of.first)}, {"not_after", date(of.last)}};
}

Json years(const std::optional<dating::YearRange>& of) {
  return of ? json::range(of->first, of->last) : Json(nullptr);
}

void add_end(Json& to, const char* name, const std::optional<dating::WindowEnd>& end) {
  to[name] = end ? date(end->day) : Json(nullptr);
  to[std::string(name) + "_kind"] = end ? term(end->firmness).word : "none";
}

Json end_of(const std::optional<dating::End>& end, dating::EndUse use) {
  if (!end) return nullptr;
  return {{"day", date(end->day)},
          {"kind", term(end->firmness).word},
          {"from", term(end->basis).word},
          {"use", term(use).word}};
}

Json evidence_of(const Graded& graded, std::size_t i) {
  const record::Record& record = graded.loaded.record;
  const dating::Finding& finding = graded.assessment.dating;
  const dating::Evidence& evidence = finding.evidence[i];
  const dating::Use& use = finding.uses[i];
  const record::Marking* mark = evidence.marking ? find(record, *evidence.marking) : nullptr;
  const bool told = mark != nullptr && record::told(mark->text) != nullptr;
  std::string because = evidence.because;
  if (because.empty() && mark != nullptr && mark->says)
    because = plain_text(record, mark->says->because);
  return {{"grounds", term(evidence.grounds).word},
          {"piece", piece(evidence.piece)},
          {"mark", mark != nullptr ? Json(mark->id.text) : Json(nullptr)},
          {"text", told ? Json(*record::told(mark->text)) : Json(nullptr)},
          {"what", evidence.what},
          {"not_before", end_of(evidence.not_before, use.not_before)},
          {"not_after", end_of(evidence.not_after, use.not_after)},
          {"left_out",
           use.left_out == dating::LeftOut::no ? Json(nullptr) : Json(term(use.left_out).word)},
          {"because", because},
          {"source", evidence.source}};
}

Json step_of(const dating::Step& step) {
  return {{"evidence", step.evidence},
          {"side", term(step.side).word},
          {"tier", term(step.tier).word},
          {"before", span(step.before)},
          {"after", span(step.after)}};
}

Json conflict_of(const dating::Conflict& conflict) {
  return {{"tier", term(conflict.tier).word},
          {"fewest_pieces", conflict.pieces},
          {"ways",
           list(conflict.alternatives,
                [](const dating::Alternative& way) {
                  return Json{{"must_go", list(way.must_go, piece)}, {"agreed", span(way.agreed)}};
                })},
          {"ways_in_all", conflict.alternatives_in_all}};
}

Json suspect_of(const dating::Suspect& suspect) {
  return {{"piece", suspect.piece.text},          {"propose", "not-determined"},
          {"tier", term(suspect.tier).word},      {"one_of_several", suspect.one_of_several},
          {"already_open", suspect.already_open}, {"own", span(suspect.own)},
          {"others", span(suspect.others)},       {"evidence", suspect.evidence}};
}

Json warning_of(const dating::Warning& warning) {
  return {
      {"kind", term(warning.kind).word},
      {"evidence", or_null(warning.evidence)},
      {"side", warning.side ? Json(term(*warning.side).word) : Json(nullptr)},
      {"words", warning.words.empty() ? std::string(term(warning.kind).spoken) : warning.words}};
}

Json piece_of(const dating::PieceWindow& window) {
  return {{"piece", piece(window.piece)},
          {"left_out", window.left_out == dating::LeftOut::no ? Json(nullptr)
                                                              : Json(term(window.left_out).word)},
          {"agrees_with_itself", !window.all.empty()},
          {"hard", span(window.hard)},
          {"all", span(window.all)},
          {"evidence", window.evidence}};
}

Json made_as_json(const assess::Made& made) {
  using By = assess::Made::By;
  if (made.by == By::nobody) return nullptr;
  return {{"by", made.by == By::marks ? "marks" : "bench"},
          {"settled", made.settled},
          {"certain", made.certain},
          {"not_before", date(made.days.first)},
          {"not_after", date(made.days.last)},
          {"written", made.written ? date(*made.written) : Json(nullptr)}};
}

}  // namespace

std::string date_as_json(const Graded& graded) {
  const dating::Finding& finding = graded.assessment.dating;
  Json all{{"reel", identity_as_json(graded.assessment.identity)},
           {"made", made_as_json(graded.assessment.identity.made)}};
  add_end(all, "not_before", finding.window.not_before);
  add_end(all, "not_after", finding.window.not_after);
  all["attributed"] = finding.attributed;
  all["range50"] = years(finding.range50);
  all["range90"] = years(finding.range90);
  all["steps"] = list(finding.steps, step_of);
  all["warnings"] = list(finding.warnings, warning_of);
  all["conflicts"] = list(finding.conflicts, conflict_of);
  all["suspects"] = list(finding.suspects, suspect_of);
  all["pieces"] = list(finding.pieces, piece_of);
  all["evidence"] = Json::array();
  for (std::size_t i = 0; i < finding.evidence.size(); ++i)
    all["evidence"].push_back(evidence_of(graded, i));
  all["profile"] = list(finding.profile, [](const auto& year) {
    return Json{{"year", year.first}, {"share", year.second}};
  });
  all["assumptions"] = list(dating::kProfileAssumptions, [](const dating::ProfileAssumption& one) {
    return Json{{"word", one.word}, {"reason", one.reason}};
  });
  return json::answer("date", all);
}

}  // namespace winchbook::answers
