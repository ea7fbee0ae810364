#pragma once

#include "record/record.h"
#include "recordfile/fields_reel.h"

// Places, pieces, what sat where, and the marks (fields.h).
namespace winchbook::recordfile {

void fields(auto& io, Of<record::Place> auto& place) {
  io.id(place.id);
  io.need("name", place.name);
  io.need("kind", place.kind);
  io.may("assembly", place.assembly);
  io.may("quantity", place.quantity, 1);
  io.may("weight", place.weight);
  io.may("consumable", place.consumable, false);
  io.may("may-be-empty", place.may_be_empty, false);
  io.may("captive-spring", place.captive_spring, false);
  io.may("exposed-area", place.exposed_area);
}

void fields(auto& io, Of<record::Donor> auto& donor) {
  io.id(donor.id);
  io.need("name", donor.name);
  io.may("same-maker", donor.same_maker, false);
  io.may("note", donor.note);
  io.may("acquired", donor.acquired);
  io.may("cost", donor.cost);
}

void fields(auto& io, Of<record::FinishLayer> auto& layer) {
  io.need("what", layer.what);
  io.may("by", layer.by, record::FinishBy::not_determined);
  io.may("when", layer.when);
  io.may("note", layer.note);
}

template <class Value>
concept SomeJudgement = Of<Value, record::Judgement<record::MadeBy>> ||
    Of<Value, record::Judgement<record::OfThisReel>> ||
    Of<Value, record::Judgement<record::Pattern>>;

void fields(auto& io, SomeJudgement auto& judgement) {
  io.need("answer", judgement.answer);
  io.may("certainty", judgement.certainty);
  fields(io, judgement.evidence);
  io.may("judged-by", judgement.judged_by);
  io.may("judged-on", judgement.judged_on);
}

void fields(auto& io, Of<record::Whereabouts> auto& now) {
  io.need("kind", now.kind);
  io.may("bag", now.bag);
  io.may("leave", now.leave);
  io.may("since", now.since);
  io.may("note", now.note);
}

void fields(auto& io, Of<record::LaboratoryReport> auto& report) {
  io.need("hazard", report.hazard);
  io.need("found", report.found);
  io.need("laboratory", report.laboratory);
  io.need("on", report.on);
  io.need("number", report.number);
}

void fields(auto& io, Of<record::Piece> auto& piece) {
  io.id(piece.id);
  io.need("name", piece.name);
  io.may("count", piece.count, 1);
  io.may("role", piece.role, record::PieceRole::part);
  io.may("material", piece.material, "not determined");
  io.many("finish", piece.finish);
  io.may("made-by", piece.made_by);
  io.may("maker-name", piece.maker_name);
  io.may("of-this-reel", piece.of_this_reel);
  io.may("pattern", piece.pattern);
  io.may("donor", piece.donor);
  io.may("fragment-of", piece.fragment_of);
  io.may("made", piece.made);
  io.may("weight", piece.weight);
  io.may("supplier", piece.supplier);
  io.many("tested", piece.tested);
  io.need("now", piece.now);
  io.may("note", piece.note);
}

void fields(auto& io, Of<record::Seat> auto& seat) {
  io.may("bore", seat.bore);
  io.may("outside", seat.outside);
  io.may("depth", seat.depth);
  io.may("note", seat.note);
}

void fields(auto& io, Of<record::WayBack> auto& way_back) {
  io.need("degree", way_back.degree);
  io.need("words", way_back.words);
}

void fields(auto& io, Of<record::Fitting> auto& fitting) {
  io.id(fitting.id);
  io.need("piece", fitting.piece);
  io.need("place", fitting.place);
  io.may("from", fitting.from);
  io.may("until", fitting.until);
  io.need("by", fitting.by);
  io.may("visit", fitting.visit);
  io.may("removed-in", fitting.removed_in);
  io.may("why", fitting.why);
  io.may("adaptation", fitting.adaptation);
  io.may("reel-altered", fitting.reel_altered, false);
  io.may("seat", fitting.seat);
  io.may("way-back", fitting.way_back);
  io.may("instead-of", fitting.instead_of);
  io.many("photo", fitting.photos);
  io.many("old-photo", fitting.old_photos);
}

void fields(auto& io, Of<record::MarkEnd> auto& end) {
  io.need("date", end.date);
  io.need("firmness", end.firmness);
}

void fields(auto& io, Of<record::MarkSays> auto& says) {
  io.may("not-before", says.not_before);
  io.may("not-after", says.not_after);
  io.may("because", says.because);
  io.may("source", says.source);
}

void fields(auto& io, Of<record::Marking> auto& marking) {
  io.id(marking.id);
  io.need("piece", marking.piece);
  io.may("where", marking.where);
  io.need_lines("text", marking.text);
  io.may("method", marking.method, record::MarkMethod::not_determined);
  io.may("whose", marking.whose, record::MarkOf::not_determined);
  io.may("state", marking.state, record::MarkState::not_determined);
  io.may("legibility", marking.legibility, record::Legibility::not_determined);
  io.may("person", marking.person);
  io.may("claims", marking.claims);
  io.may("cut", marking.cut);
  io.may("says", marking.says);
  io.may("note", marking.note);
  io.many("photo", marking.photos);
  io.may("salt", marking.salt);
}

}  // namespace winchbook::recordfile
