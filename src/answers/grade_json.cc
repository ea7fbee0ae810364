#include <nlohmann/json.hpp>

#include "answers/grade.h"
#include "answers/grade_words.h"

namespace winchbook::answers {
namespace {

using Json = nlohmann::ordered_json;
namespace originality = assess::originality;
namespace condition = assess::condition;

Json figure(base::Ratio share) {
  return static_cast<double>(share.rounded(10000)) / 100.0;
}

Json range(const base::RatioRange& of) {
  return Json::array({figure(of.low), figure(of.high)});
}

template <class Value, class Tell>
Json or_null(const std::optional<Value>& value, const Tell& tell) {
  return value ? tell(*value) : Json(nullptr);
}

template <class Tag> Json id(const std::optional<record::Id<Tag>>& of) {
  return of ? Json(of->text) : Json(nullptr);
}

template <class Things, class Tell> Json list(const Things& things, const Tell& tell) {
  Json all = Json::array();
  for (const auto& thing : things) {
    all.push_back(tell(thing));
  }
  return all;
}

Json index_of(const originality::Index& index) {
  return {{"found", or_null(index.found, range)}, {"left", or_null(index.left, range)}};
}

Json reasons_of(const std::vector<originality::Reason>& reasons) {
  return list(reasons, [](originality::Reason reason) { return Json(term(reason).word); });
}

Json side(const originality::Side& of) {
  return {
      {"standing", term(of.standing).word},
      {"piece", id(of.piece)},
      {"surface",
       list(of.surface,
            [](const record::SurfaceShare& share) {
              return Json{{"state", term(share.state).word}, {"percent", share.share.value.text()}};
            })},
      {"surface-weighed", of.surface_weighed},
      {"born-here", range(of.born_here)},
      {"surface-points", range(of.surface_points)},
      {"right-for-model", range(of.right_for_model)},
      {"reasons", reasons_of(of.reasons)}};
}

Json row(const record::Record& record, const originality::PieceRow& of) {
  return {{"number", of.number},
          {"place", of.place.text},
          {"name", of.name},
          {"assembly", of.assembly.empty() ? Json(nullptr) : Json(of.assembly)},
          {"seats", of.seats},
          {"weighed", of.weighed},
          {"weight", figure(of.weight)},
          {"found", side(of.found)},
          {"left", side(of.left)},
          {"changed", of.changed},
          {"letter", of.letter ? Json(*of.letter) : Json(nullptr)},
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
  return Json::array({figure(of.at_low), figure(of.at_high)});
}

Json way_back(const originality::WayBack& way) {
  return {{"born-here-restored", or_null(way.born_here_restored, range)},
          {"surface-restored", or_null(way.surface_restored, range)},
          {"fully", way.fully},
          {"in-part", way.in_part},
          {"never", way.never},
          {"not-determined", way.not_determined},
          {"nothing-there", way.nothing_there},
          {"returns", list(way.returns,
                           [](const originality::Return& back) {
                             return Json{{"row", back.row},
                                         {"fitting", id(back.fitting)},
                                         {"old-piece", id(back.old_piece)},
                                         {"outcome", term(back.outcome).word},
                                         {"because", term(back.because).word},
                                         {"degree", back.degree ? Json(back.degree->value.text())
                                                                : Json(nullptr)},
                                         {"reel-altered", back.reel_altered},
                                         {"born-here", ends(back.born_here)},
                                         {"surface", ends(back.surface)}};
                           })},
          {"surface-losses", list(way.surface_losses, [](const originality::SurfaceLoss& loss) {
             return Json{
                 {"row", loss.row}, {"lost", ends(loss.lost)}, {"recovered", ends(loss.recovered)}};
           })}};
}

Json counts(const originality::Counts& of) {
  return {
      {"seats", of.places_for}, {"original", of.original}, {"not-determined", of.not_determined},
      {"life", of.life},        {"missing", of.missing},   {"other", of.other}};
}

Json originality_of(const record::Record& record, const originality::Finding& of) {
  return {
      {"born-here", index_of(of.born_here)},
      {"surface", index_of(of.surface)},
      {"right-for-model", index_of(of.right_for_model)},
      {"assembled", list(of.assembled,
                         [](const originality::Assembled& mixed) {
                           const bool found = mixed.when == record::Moment::found;
                           return Json{{"when", found ? "found" : "left"},
                                       {"at-least-reels", mixed.at_least_reels},
                                       {"largest-share", range(mixed.largest_share)}};
                         })},
      {"counts", {{"found", counts(of.found)}, {"left", counts(of.left)}}},
      {"rows", list(of.rows, [&](const originality::PieceRow& one) { return row(record, one); })},
      {"change",
       {{"born-here", change(of.born_here, of.born_here_change)},
        {"surface", change(of.surface, of.surface_change)},
        {"right-for-model", change(of.right_for_model, of.right_for_model_change)}}},
      {"way-back", way_back(of.way_back)},
      {"loose-not-refitted",
       list(of.loose_not_refitted, [](const record::PieceId& piece) { return Json(piece.text); })}};
}

template <class Axis> Json words_of(const condition::WordRange& range, const Axis& words) {
  return Json::array({words.at(static_cast<std::size_t>(range.worst)).word,
                      words.at(static_cast<std::size_t>(range.best)).word});
}

Json readings(const condition::Readings& of, const knowledge::ConditionRules& rules) {
  return {{"surface",
           {{"word", words_of(of.surface.word, rules.surface.words)},
            {"position", range(of.surface.position)},
            {"share", or_null(of.surface.share, range)}}},
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
            {"as-made", of.working.as_made},
            {"with-care", of.working.with_care},
            {"in-part", of.working.in_part},
            {"not", of.working.not_working},
            {"not-safe-to-test", of.working.not_safe_to_test},
            {"not-tested", of.working.not_tested}}},
          {"completeness",
           {{"word", words_of(of.completeness.word, rules.completeness.words)},
            {"position", range(of.completeness.position)},
            {"share", or_null(of.completeness.share, range)},
            {"seats", of.completeness.seats},
            {"filled", of.completeness.filled},
            {"empty", of.completeness.empty},
            {"not-examined", of.completeness.not_examined},
            {"loose", of.completeness.loose}}}};
}

Json faults(const record::Visit& visit) {
  const auto severity = [](const std::optional<record::Severity>& of) {
    return of ? Json(term(*of).word) : Json(nullptr);
  };
  return list(visit.findings.faults, [&](const record::Fault& fault) {
    return Json{{"id", fault.id.text},
                {"name", fault.name},
                {"piece", id(fault.piece)},
                {"found", severity(fault.found)},
                {"left", severity(fault.left)}};
  });
}

Json condition_of(const Graded& graded, const record::Visit& visit, const condition::Finding& of) {
  const auto rating = [](const std::optional<int>& value) {
    return value ? Json(*value) : Json(nullptr);
  };
  const auto& rules = graded.knowledge->condition;
  return {
      {"area-basis", term(of.area_basis).word},
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
      {"empty",
       list(of.empty,
            [](const condition::Empty& one) {
              return Json{{"place", one.place.text}, {"found", one.found}, {"left", one.left}};
            })},
      {"corrosion", list(of.corrosion, [&](const condition::Corrosion& one) {
         return Json{
             {"piece", one.piece.text},
             {"protection",
              {{"found", rating(one.protection_found)}, {"left", rating(one.protection_left)}}},
             {"appearance",
              {{"found", rating(one.appearance_found)}, {"left", rating(one.appearance_left)}}}};
       })}};
}

}  // namespace

std::string grade_as_json(const Graded& graded) {
  const record::Record& record = graded.loaded.record;
  Json all{{"reel",
            {{"name", record.reel.name},
             {"model", record.reel.model.empty() ? Json(nullptr) : Json(record.reel.model)},
             {"kind", record::word_of(record.reel.kind)}}}};
  all["visits"] = list(graded.assessment.visits, [&](const assess::VisitAssessment& answer) {
    const record::Visit& visit = *find(record, answer.visit);
    return Json{{"visit", visit.id.text},
                {"taken-in", visit.taken_in.text()},
                {"handed-back", visit.hand_back ? Json(visit.hand_back->on.text()) : Json(nullptr)},
                {"originality", originality_of(record, answer.originality)},
                {"condition", condition_of(graded, visit, answer.condition)}};
  });
  return all.dump(2) + "\n";
}

}  // namespace winchbook::answers
