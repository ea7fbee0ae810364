#pragma once

#include "record/record.h"
#include "recordfile/fields_of.h"

// The bench, the reel, its people and their story, its photographs and its value (fields.h).
namespace winchbook::recordfile {

void fields(auto& io, Of<record::Evidence> auto& evidence) {
  io.may("because", evidence.because);
  io.many("marking", evidence.markings);
  io.many("photo", evidence.photos);
  io.many("told-by", evidence.told_by);
}

void fields(auto& io, Of<record::Bench> auto& bench) {
  io.need("name", bench.name);
  io.need("place", bench.place);
  io.may_lines("address", bench.address);
  io.may("contact", bench.contact);
  io.many("restorer", bench.restorers);
  io.may("own-interest", bench.own_interest);
  io.may("terms", bench.terms);
}

void fields(auto& io, Of<record::MakerStatement> auto& maker) {
  io.need("kind", maker.kind);
  io.may("name", maker.name);
  io.may("place", maker.place);
  io.may("still-trading", maker.still_trading);
  io.may("certainty", maker.certainty);
  io.may("grounds", maker.grounds);
}

void fields(auto& io, Of<record::HandHistory> auto& hand) {
  io.may("made", hand.made, record::Hand::not_determined);
  io.may("found", hand.found, record::Hand::not_determined);
  io.may("left", hand.left, record::Hand::not_determined);
  io.may("how-converted", hand.how_converted);
}

void fields(auto& io, Of<record::Size> auto& size) {
  io.need("what", size.what);
  io.need("length", size.size);
}

void fields(auto& io, Of<record::LineCapacity> auto& capacity) {
  io.need("length", capacity.metres);
  io.need("line-diameter", capacity.line_diameter);
  io.may("source", capacity.source);
}

void fields(auto& io, Of<record::WrittenDate> auto& made) {
  io.need("date", made.date);
  io.may("certainty", made.certainty);
  fields(io, made.evidence);
}

void fields(auto& io, Of<record::Reel> auto& reel) {
  io.need("name", reel.name);
  io.may("model", reel.model);
  io.need("kind", reel.kind);
  io.may("brake", reel.brake, record::Brake::not_determined);
  io.may("maker", reel.maker);
  io.may("sold-by", reel.sold_by);
  io.may("serial", reel.serial);
  io.may("hand", reel.hand);
  io.many("size", reel.sizes);
  io.may("weight", reel.weight);
  io.may("gear-ratio", reel.gear_ratio);
  io.may("capacity", reel.capacity);
  io.may("made", reel.made);
  io.may("box-and-papers", reel.box_and_papers);
  io.may("cover", reel.cover);
}

void fields(auto& io, Of<record::Person> auto& person) {
  io.id(person.id);
  io.need("name", person.name);
  io.may_told("short-name", person.short_name);
  io.need("stand-in", person.stand_in);
  io.may("who", person.who);
  io.may("address", person.address);
  io.may("contact", person.contact);
  io.may("lived", person.lived);
  io.may("named-to", person.named_to, record::NamedTo::owner);
  io.may("salt", person.salt);
}

void fields(auto& io, Of<record::CustodyStep> auto& step) {
  io.id(step.id);
  io.may("held", step.held, record::Held::both);
  io.need("holder", step.holder);
  io.may("from", step.from);
  io.may("until", step.until);
  io.may("how", step.how);
  io.need("source", step.source);
  io.may("certainty", step.certainty);
  io.many("photo", step.photos);
}

void fields(auto& io, Of<record::CustodyGap> auto& gap) {
  io.id(gap.id);
  io.may("from", gap.from);
  io.may("until", gap.until);
  io.may("what", gap.what);
}

void fields(auto& io, Of<record::Story> auto& story) {
  io.may("title", story.title);
  io.may("answer", story.answer);
  io.many("p", story.paragraphs);
  io.may("told-by", story.told_by);
  io.may("approved-on", story.approved_on);
}

void fields(auto& io, Of<record::LifeEvent> auto& event) {
  io.id(event.id);
  io.need("kind", event.kind);
  io.need("title", event.title);
  io.may("date-as-told", event.date_as_told);
  io.may("date", event.date);
  io.may("by", event.by);
  io.need("what", event.what);
  io.many("piece", event.pieces);
  io.need("source", event.source);
  io.may("certainty", event.certainty);
  io.may("keep-because", event.keep_because);
  io.many("must-stay", event.must_stay);
  io.many("photo", event.photos);
}

void fields(auto& io, Of<record::Original> auto& original) {
  io.need("file", original.file);
  io.need("sha256", original.sha256);
}

void fields(auto& io, Of<record::Photo> auto& photo) {
  io.id(photo.id);
  // A withheld photograph has none of these four.
  io.may("file", photo.file);
  io.may("sha256", photo.sha256);
  io.may("width", photo.width, 0);
  io.may("height", photo.height, 0);
  io.may("original", photo.original);
  io.may("withheld", photo.withheld);
  io.may("taken", photo.taken);
  io.may("by", photo.by);
  io.need("stage", photo.stage);
  io.may("visit", photo.visit);
  io.many("piece", photo.pieces);
  io.may("pair-of", photo.pair_of);
  io.need("caption", photo.caption);
  io.may("alternative", photo.alternative);
  io.may("scale", photo.scale);
  io.may("rights", photo.rights);
  io.many("shows", photo.shows);
  io.may("salt", photo.salt);
}

void fields(auto& io, Of<record::Sale> auto& sale) {
  io.id(sale.id);
  io.need("on", sale.on);
  io.need("price", sale.price);
  io.need("included", sale.included);
  io.need("kind", sale.kind);
  io.may("with-premium", sale.with_premium, false);
  io.need("state", sale.state);
  io.may("originality", sale.originality);
  io.may("box", sale.box, false);
  io.need("source", sale.source);
  io.may("used", sale.used, true);
  io.may("excluded-because", sale.excluded_because);
}

void fields(auto& io, Of<record::Value> auto& value) {
  io.need("effective", value.effective);
  io.need("basis", value.basis);
  io.need("purpose", value.purpose);
  io.need("currency", value.currency);
  io.many("sale", value.sales);
  io.may("note", value.note);
}

}  // namespace winchbook::recordfile
