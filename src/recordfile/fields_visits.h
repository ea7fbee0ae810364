#pragma once

#include "record/record.h"
#include "recordfile/fields_findings.h"
#include "recordfile/fields_pieces.h"

// The stays at the bench (fields.h).
namespace winchbook::recordfile {

void fields(auto& io, Of<record::Caution> auto& caution) {
  io.need("label", caution.label);
  io.need("words", caution.words);
}

void fields(auto& io, Of<record::Wishes> auto& wishes) {
  io.may("use", wishes.use, record::Use::not_determined);
  io.may("words", wishes.words);
  io.many("ranking", wishes.ranking);
}

void fields(auto& io, Of<record::Agreement> auto& agreement) {
  io.id(agreement.id);
  io.need("on", agreement.on);
  io.may("how", agreement.how);
  io.may("with", agreement.with);
  io.many("may-be-done", agreement.may_be_done);
  io.many("must-stay", agreement.must_stay);
  io.many("piece-must-stay", agreement.pieces_must_stay);
  io.many("piece-may-leave", agreement.pieces_may_leave);
  io.may("cost-limit", agreement.cost_limit);
  io.may_group("estimate", [&](auto& estimate) {
    estimate.may("low", agreement.estimate_low);
    estimate.may("high", agreement.estimate_high);
  });
  io.may("note", agreement.note);
}

void fields(auto& io, Of<record::StripStep> auto& step) {
  io.id(step.id);
  io.may("on", step.on);
  io.need("what", step.what);
  io.many("piece", step.pieces);
  io.many("place", step.places);
  io.may("orientation", step.orientation);
  io.may("tool", step.tool);
  io.may("spring-loose", step.spring_loose, false);
  io.may("caution", step.caution);
  io.many("photo", step.photos);
}

void fields(auto& io, Of<record::Cleaning> auto& cleaning) {
  io.may("on", cleaning.on);
  io.many("piece", cleaning.pieces);
  io.may("material", cleaning.material);
  io.need("method", cleaning.method);
  io.may("minutes", cleaning.minutes);
  io.need("what", cleaning.what);
  io.may("against-warning", cleaning.against_warning);
  io.may("caution", cleaning.caution);
  io.may("way-back", cleaning.way_back);
  io.may("loss", cleaning.loss);
}

void fields(auto& io, Of<record::Work> auto& work) {
  io.need("what", work.what);
  io.many("piece", work.pieces);
  io.may("by", work.by);
  io.may("on", work.on);
  io.may("hours", work.hours);
  io.may("parts-cost", work.parts_cost);
  io.may("way-back", work.way_back);
  io.may("caution", work.caution);
}

void fields(auto& io, Of<record::TrayLine> auto& line) {
  io.need("piece", line.piece);
  io.may("on", line.on);
  io.may("taken-off", line.taken_off, 0);
  io.may("found-loose", line.found_loose, 0);
  io.may("refitted", line.refitted, 0);
  io.may("bagged", line.bagged, 0);
  io.may("to-owner", line.to_owner, 0);
  io.may("kept-by-bench", line.kept_by_bench, 0);
  io.may("lost", line.lost, 0);
  io.may("scrapped", line.scrapped, 0);
}

void fields(auto& io, Of<record::CourseCost> auto& cost) {
  io.need("course", cost.course);
  io.may("low", cost.low);
  io.may("high", cost.high);
  io.may("effect", cost.effect);
}

void fields(auto& io, Of<record::Advice> auto& advice) {
  io.may("on", advice.on);
  io.may("advised", advice.advised);
  io.may("because", advice.because);
  io.many("course-cost", advice.courses);
  io.may("chosen", advice.chosen);
  io.may("chosen-by", advice.chosen_by);
  io.may("chosen-on", advice.chosen_on);
  io.may("chosen-because", advice.chosen_because);
}

void fields(auto& io, Of<record::DragWasher> auto& washer) {
  io.need("piece", washer.piece);
  io.need("keyed", washer.keyed);
  io.may("inside", washer.inside);
  io.may("outside", washer.outside);
  io.may("thickness", washer.thickness);
}

void fields(auto& io, Of<record::DragStack> auto& drag) {
  io.may("on", drag.on);
  io.many("washer", drag.washers);
  io.may("greased", drag.greased);
  io.may("setting", drag.setting);
  io.may("spool-full", drag.spool_full);
  io.may("spool-empty", drag.spool_empty);
  io.may("line-strength", drag.line_strength);
}

void fields(auto& io, Of<record::CareAdvice> auto& care) {
  io.may("on", care.on);
  io.may("drag-low", care.drag_low);
  io.may("drag-high", care.drag_high);
  io.may("line", care.line);
  io.many("fish", care.fish);
  io.many("keep", care.keep);
  io.many("caution", care.cautions);
}

void fields(auto& io, Of<record::HandBack> auto& hand_back) {
  io.need("on", hand_back.on);
  io.may("to", hand_back.to);
  io.many("bag", hand_back.bags);
  io.may("note", hand_back.note);
}

void fields(auto& io, Of<record::Visit> auto& visit) {
  io.id(visit.id);
  io.may("number", visit.number);
  io.need("taken-in", visit.taken_in);
  io.may("owner", visit.owner);
  io.may("brought-by", visit.brought_by);
  io.many("restorer", visit.restorers);
  io.may("arrived", visit.arrived);
  io.may("wishes", visit.wishes);
  io.many("agreement", visit.agreements);
  io.may("promised-by", visit.promised_by);
  io.many("waiting-for", visit.waiting_for);
  io.may("findings", visit.findings);
  io.may_group("strip-down", [&](auto& plan) { plan.many("step", visit.strip_down); });
  io.many("cleaning", visit.cleaning);
  io.many("work", visit.work);
  io.may_group("tray", [&](auto& tray) { tray.many("line", visit.tray); });
  io.may("advice", visit.advice);
  io.may("drag", visit.drag);
  io.many("not-put-right", visit.not_put_right);
  io.may("care", visit.care);
  io.may("hand-back", visit.hand_back);
  io.may("next-service", visit.next_service);
  io.may("review-by", visit.review_by);
  io.may("summary", visit.summary);
  if constexpr (std::decay_t<decltype(io)>::kReads) {
    int number = 0;
    for (auto& step : visit.strip_down)
      step.number = ++number;
  }
}

}  // namespace winchbook::recordfile
