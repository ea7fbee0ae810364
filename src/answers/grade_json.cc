#include "answers/grade.h"
#include "answers/grade_words.h"
#include "json/json.h"
#include "record/moments.h"

namespace winchbook::answers {
namespace {

using json::Json;
namespace originality = assess::originality;
namespace condition = assess::condition;

Json figure(base::Ratio share) {
  return static_cast<double>(share.rounded(10000)) / 100.0;
}

Json range(const base::RatioRange& of) {
  return json::range(figure(of.low), figure(of.high));
}

using json::list;
using json::or_null;

template <class Tag> Json id(const std::optional<record::Id<Tag>>& of) {
  return or_null(of, [](const auto& one) { return one.text; });
}

double points(const base::Percent& of) {
  return of.value.approximate();
}

Json index_of(const originality::Index& index) {
  return {{"found", or_null(index.found, range)}, {"left", or_null(index.left, range)}};
}

Json reasons_of(const std::vector<originality::Reason>& reasons) {
  return list(reasons, [](originality::Reason reason) { return Json(term(reason).word); });
}

Json side(const originality::Side& of) {
  return {{"standing", term(of.standing).word},
          {"piece", id(of.piece)},
          {"surface_states",
           list(of.surface,
                [](const record::SurfaceShare& share) {
                  return Json{{"state", term(share.state).word}, {"percent", points(share.share)}};
                })},
          {"surface_weighed", of.surface_weighed},
          {"original", range(of.original)},
          {"untouched_surface", range(of.surface_points)},
          {"right_for_model", range(of.right_for_model)},
          {"reasons", reasons_of(of.reasons)}};
}

Json row(const record::Record& record, const originality::PieceRow& of) {
  return {{"number", of.number},
          {"place", of.place.text},
          {"name", of.name},
          {"assembly", or_null(of.assembly)},
          {"seats", of.seats},
          {"weighed", of.weighed},
          {"weight", figure(of.weight)},
          {"found", side(of.found)},
          {"left", side(of.left)},
          {"changed", of.changed},
          {"letter", or_null(of.letter)},
          {"fitting", id(of.fitting)},
          {"reasons", reasons_of(of.reasons)},
          {"because", plain_text(record, of.evidence.because)},
          {"marks", list(of.marks, [](const record::MarkingId& mark) { return Json(mark.text); })}};
}

Json change(const originality::Index& index, const originality::Change& of) {
  return list(originality::printed(index, of, 10000), [](const originality::PrintedShare& share) {
    return Json{{"row", share.row},
                {"low", static_cast<double>(share.low) / 100.0},
                {"high", static_cast<double>(share.high) / 100.0}};
  });
}

Json ends(const originality::Ends& of) {
  return json::range(figure(of.at_low), figure(of.at_high));
}

Json way_back(const originality::WayBack& way) {
  return {{"original_restored", or_null(way.original_restored, range)},
          {"untouched_surface_restored", or_null(way.untouched_surface_restored, range)},
          {"fully", way.fully},
          {"in_part", way.in_part},
          {"never", way.never},
          {"not_determined", way.not_determined},
          {"nothing_there", way.nothing_there},
          {"returns", list(way.returns,
                           [](const originality::Return& back) {
                             return Json{{"row", back.row},
                                         {"fitting", id(back.fitting)},
                                         {"old_piece", id(back.old_piece)},
                                         {"outcome", term(back.outcome).word},
                                         {"reason", term(back.because).word},
                                         {"degree", or_null(back.degree, points)},
                                         {"reel_altered", back.reel_altered},
                                         {"original", ends(back.original)},
                                         {"untouched_surface", ends(back.untouched_surface)}};
                           })},
          {"surface_losses", list(way.surface_losses, [](const originality::SurfaceLoss& loss) {
             return Json{
                 {"row", loss.row}, {"lost", ends(loss.lost)}, {"recovered", ends(loss.recovered)}};
           })}};
}

Json counts(const originality::Counts& of) {
  return {
      {"seats", of.places_for}, {"original", of.original}, {"not_determined", of.not_determined},
      {"life", of.life},        {"missing", of.missing},   {"other", of.other}};
}

Json originality_of(const record::Record& record, const originality::Finding& of) {
  return {
      {"original", index_of(of.original)},
      {"untouched_surface", index_of(of.untouched_surface)},
      {"right_for_model", index_of(of.right_for_model)},
      {"assembled", list(of.assembled,
                         [](const originality::Assembled& mixed) {
                           const bool found = mixed.when == record::Moment::found;
                           return Json{{"when", found ? "found" : "left"},
                                       {"at_least_reels", mixed.at_least_reels},
                                       {"largest_share", range(mixed.largest_share)}};
                         })},
      {"counts", {{"found", counts(of.found)}, {"left", counts(of.left)}}},
      {"rows", list(of.rows, [&](const originality::PieceRow& one) { return row(record, one); })},
      {"change",
       {{"original", change(of.original, of.original_change)},
        {"untouched_surface", change(of.untouched_surface, of.untouched_surface_change)},
        {"right_for_model", change(of.right_for_model, of.right_for_model_change)}}},
      {"way_back", way_back(of.way_back)},
      {"loose_not_refitted",
       list(of.loose_not_refitted, [](const record::PieceId& piece) { return Json(piece.text); })},
      {"places_not_entered",
       list(of.places_not_entered, [](const record::PlaceId& place) { return Json(place.text); })}};
}

template <class Axis> Json words_of(const condition::WordRange& range, const Axis& words) {
  return json::range(words.at(static_cast<std::size_t>(range.worst)).word,
                     words.at(static_cast<std::size_t>(range.best)).word);
}

Json readings(const condition::Readings& of, const knowledge::ConditionRules& rules) {
  return {{"finish_left",
           {{"word", words_of(of.finish_left.word, rules.surface.words)},
            {"position", range(of.finish_left.position)},
            {"share", or_null(of.finish_left.share, range)}}},
          {"structure",
           {{"word", words_of(of.structure.word, rules.structure)},
            {"position", range(of.structure.position)},
            {"examined", of.structure.examined},
            {"unsafe", of.structure.unsafe},
            {"weakening", of.structure.weakening},
            {"blemish", of.structure.blemish}}},
          {"working",
           {{"word", words_of(of.working.word, rules.working)},
            {"position", range(of.working.position)},
            {"tests", of.working.tests},
            {"as_made", of.working.as_made},
            {"with_care", of.working.with_care},
            {"in_part", of.working.in_part},
            {"not_working", of.working.not_working},
            {"not_safe_to_test", of.working.not_safe_to_test},
            {"not_tested", of.working.not_tested}}},
          {"completeness",
           {{"word", words_of(of.completeness.word, rules.completeness.words)},
            {"position", range(of.completeness.position)},
            {"share", or_null(of.completeness.share, range)},
            {"seats", of.completeness.seats},
            {"filled", of.completeness.filled},
            {"empty", of.completeness.empty},
            {"not_examined", of.completeness.not_examined},
            {"loose", of.completeness.loose}}}};
}

Json faults(const record::Visit& visit) {
  const auto severity = [](const std::optional<record::Severity>& of) {
    return or_null(of, [](record::Severity one) { return term(one).word; });
  };
  return list(visit.findings.faults, [&](const record::Fault& fault) {
    return Json{{"id", fault.id.text},
                {"name", fault.name},
                {"piece", id(fault.piece)},
                {"found", severity(fault.found)},
                {"left", severity(record::severity_at(fault, record::Moment::left))},
                {"put_right", record::put_right(fault)}};
  });
}

Json condition_of(const Graded& graded, const record::Visit& visit, const condition::Finding& of) {
  const auto& rules = graded.knowledge->condition;
  return {
      {"area_basis", term(of.area_basis).word},
      {"found", readings(of.found, rules)},
      {"left", readings(of.left, rules)},
      {"faults", faults(visit)},
      {"restored", list(of.restored,
                        [](const condition::Restored& one) {
                          return Json{{"piece", one.piece.text},
                                      {"state", term(one.state).word},
                                      {"found", one.found},
                                      {"left", one.left}};
                        })},
      {"empty_places",
       list(of.empty,
            [](const condition::Empty& one) {
              return Json{{"place", one.place.text}, {"found", one.found}, {"left", one.left}};
            })},
      {"corrosion", list(of.corrosion, [](const condition::Corrosion& one) {
         return Json{
             {"piece", one.piece.text},
             {"protection",
              {{"found", or_null(one.protection_found)}, {"left", or_null(one.protection_left)}}},
             {"appearance",
              {{"found", or_null(one.appearance_found)}, {"left", or_null(one.appearance_left)}}}};
       })}};
}

}  // namespace

Json identity_as_json(const assess::Identity& reel) {
  return {{"name", reel.name},
          {"maker", or_null(reel.maker)},
          {"maker_is", base::word_of(reel.how)},
          {"model", or_null(reel.model)},
          {"serial", or_null(reel.serial)},
          {"at_least_reels", reel.reels}};
}

std::string grade_as_json(const Graded& graded) {
  const record::Record& record = graded.loaded.record;
  Json reel = identity_as_json(graded.assessment.identity);
  reel["kind"] = record::word_of(record.reel.kind);
  Json all{{"reel", std::move(reel)}};
  all["visits"] = list(graded.assessment.visits, [&](const assess::VisitAssessment& answer) {
    const record::Visit& visit = *find(record, answer.visit);
    return Json{{"visit", visit.id.text},
                {"taken_in", json::date(visit.taken_in)},
                {"handed_back", visit.hand_back ? json::date(visit.hand_back->on) : Json(nullptr)},
                {"originality", originality_of(record, answer.originality)},
                {"condition", condition_of(graded, visit, answer.condition)}};
  });
  return json::answer("grade", all);
}

}  // namespace winchbook::answers
