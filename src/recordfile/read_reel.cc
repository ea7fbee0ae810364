#include <utility>

#include "recordfile/read_sections.h"

namespace winchbook::recordfile {

using namespace record;  // NOLINT: the whole file turns elements into these

namespace {

MakerStatement read_maker(const Element& element) {
  MakerStatement maker;
  maker.kind = element.word("kind", MakerStatement::Kind::not_determined);
  maker.name = element.text("name");
  maker.place = element.text("place");
  maker.still_trading = element.yes("still-trading");
  maker.certainty = element.maybe_word<Certainty>("certainty");
  maker.grounds = read_evidence(element.child("grounds"));
  return maker;
}

HandHistory read_hand(const Element& element) {
  HandHistory hand;
  hand.made = element.word("made", Hand::not_determined);
  hand.found = element.word("found", Hand::not_determined);
  hand.left = element.word("left", Hand::not_determined);
  hand.how_converted = element.words("how-converted");
  return hand;
}

}  // namespace

Evidence read_evidence(const Element& element) {
  return {element.words("because"), element.refs<MarkingId>("marking"),
          element.refs<PhotoId>("photo"), element.refs<PersonId>("told-by")};
}

void read_reel(const Element& section, Record& record) {
  Reel& reel = record.reel;
  reel.name = section.text("name");
  reel.model = section.text("model");
  reel.kind = section.word("kind", ReelKind::multiplier);
  reel.brake = section.word("brake", Brake::not_determined);
  reel.maker = read_maker(section.child("maker"));
  reel.sold_by = section.text("sold-by");
  reel.serial = section.text("serial");
  reel.hand = read_hand(section.child("hand"));
  for (const Element& size : section.all("size")) {
    reel.sizes.push_back({size.text("what"), size.quantity<base::Millimetres>("length")});
  }
  reel.weight = section.maybe<base::Grams>("weight");
  reel.gear_ratio = section.maybe_decimal("gear-ratio");
  if (const Element capacity = section.child("capacity")) {
    reel.capacity = LineCapacity{capacity.maybe_decimal("length").value_or(base::Decimal{}),
                                 capacity.quantity<base::Millimetres>("line-diameter"),
                                 capacity.text("source")};
  }
  if (const Element made = section.child("made")) {
    reel.made = WrittenDate{made.date("date"), made.word("certainty", Certainty::possible),
                            read_evidence(made)};
  }
  reel.box_and_papers = section.words("box-and-papers");
  reel.cover = section.maybe_ref<PhotoId>("cover");
}

}  // namespace winchbook::recordfile
