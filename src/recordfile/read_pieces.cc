#include <utility>

#include "recordfile/read_sections.h"

namespace winchbook::recordfile {

using namespace record;  // NOLINT: the whole file turns elements into these

namespace {

template <class Answer> Judgement<Answer> read_judgement(const Element& element) {
  Judgement<Answer> judgement;
  judgement.answer = element.word("answer", Answer::not_determined);
  judgement.certainty = element.maybe_word<Certainty>("certainty");
  judgement.evidence = read_evidence(element);
  judgement.judged_by = element.maybe_ref<PersonId>("judged-by");
  judgement.judged_on = element.maybe_date("judged-on");
  return judgement;
}

FittedBy read_fitted_by(const Element& element) {
  if (const auto person = element.maybe_ref<PersonId>("person")) return *person;
  const std::string answer = element.text("answer");
  if (answer == "maker") return ByMaker{};
  if (answer == "bench") return ByBench{};
  return ByNobodyKnown{};
}

Whereabouts read_whereabouts(const Element& element) {
  Whereabouts now;
  now.kind = element.word("kind", Whereabouts::Kind::not_known);
  now.bag = element.text("bag");
  now.leave = element.maybe_ref<AgreementId>("leave");
  now.since = element.maybe_date("since");
  now.note = element.words("note");
  return now;
}

Piece read_piece(const Element& one) {
  Piece piece;
  piece.id = one.id<PieceId>();
  piece.name = one.text("name");
  piece.count = one.whole("count", 1);
  piece.role = one.word("role", PieceRole::part);
  piece.material = one.text("material");
  for (const Element& layer : one.all("finish")) {
    piece.finish.push_back({layer.text("what"), layer.word("by", FinishBy::not_determined),
                            layer.maybe_date("when"), layer.words("note")});
  }
  piece.made_by = read_judgement<MadeBy>(one.child("made-by"));
  piece.maker_name = one.text("maker-name");
  piece.born_here = read_judgement<BornHere>(one.child("born-here"));
  piece.pattern = read_judgement<Pattern>(one.child("pattern"));
  piece.donor = one.maybe_ref<DonorId>("donor");
  piece.fragment_of = one.maybe_ref<PieceId>("fragment-of");
  piece.made = one.maybe_date("made");
  piece.weight = one.maybe<base::Grams>("weight");
  piece.now = read_whereabouts(one.child("now"));
  piece.note = one.words("note");
  return piece;
}

Fitting read_fitting(const Element& one) {
  Fitting fitting;
  fitting.id = one.id<FittingId>();
  fitting.piece = one.ref<PieceId>("piece");
  fitting.place = one.ref<PlaceId>("place");
  fitting.from = one.maybe_date("from");
  fitting.until = one.maybe_date("until");
  fitting.by = read_fitted_by(one.child("by"));
  fitting.visit = one.maybe_ref<VisitId>("visit");
  fitting.removed_in = one.maybe_ref<VisitId>("removed-in");
  fitting.why = one.words("why");
  fitting.adaptation = one.words("adaptation");
  fitting.reel_altered = one.yes("reel-altered");
  if (const Element seat = one.child("seat")) {
    fitting.seat =
        Seat{seat.maybe<base::Millimetres>("bore"), seat.maybe<base::Millimetres>("outside"),
             seat.maybe<base::Millimetres>("depth"), seat.words("note")};
  }
  fitting.way_back = read_way_back(one);
  fitting.instead_of = one.maybe_ref<PieceId>("instead-of");
  fitting.photos = one.refs<PhotoId>("photo");
  fitting.old_photos = one.refs<PhotoId>("old-photo");
  return fitting;
}

std::optional<MarkEnd> read_mark_end(const Element& element) {
  if (!element) return std::nullopt;
  return MarkEnd{element.date("date"), element.word("firmness", EndFirmness::soft)};
}

Marking read_marking(const Element& one) {
  Marking marking;
  marking.id = one.id<MarkingId>();
  marking.piece = one.ref<PieceId>("piece");
  marking.where = one.text("where");
  marking.text = one.maybe_lines("text");
  marking.method = one.word("method", MarkMethod::other);
  marking.whose = one.word("whose", MarkOf::not_determined);
  marking.state = one.word("state", MarkState::not_determined);
  marking.legibility = one.word("legibility", Legibility::clear);
  marking.person = one.maybe_ref<PersonId>("person");
  marking.claims = one.maybe_date("claims");
  marking.cut = one.maybe_date("cut");
  if (const Element says = one.child("says")) {
    marking.says =
        MarkSays{read_mark_end(says.child("not-before")), read_mark_end(says.child("not-after")),
                 says.words("because"), says.text("source")};
  }
  marking.note = one.words("note");
  marking.photos = one.refs<PhotoId>("photo");
  marking.salt = one.text("salt");
  return marking;
}

}  // namespace

std::optional<WayBack> read_way_back(const Element& parent) {
  const Element element = parent.child("way-back");
  if (!element) return std::nullopt;
  return WayBack{element.quantity<base::Percent>("degree"), element.words("words")};
}

void read_places(const Element& section, Record& record) {
  for (const Element& one : section.all("place")) {
    Place place;
    place.id = one.id<PlaceId>();
    place.name = one.text("name");
    place.kind = one.text("kind");
    place.assembly = one.text("assembly");
    place.quantity = one.whole("quantity", 1);
    place.weight = one.maybe_decimal("weight");
    place.consumable = one.yes("consumable");
    place.may_be_empty = one.yes("may-be-empty");
    place.captive_spring = one.yes("captive-spring");
    place.exposed_area = one.maybe<base::SquareMillimetres>("exposed-area");
    record.places.push_back(std::move(place));
  }
}

void read_donors(const Element& section, Record& record) {
  for (const Element& one : section.all("donor")) {
    record.donors.push_back({one.id<DonorId>(), one.text("name"), one.yes("same-maker"),
                             one.words("note"), one.maybe_date("acquired"),
                             one.maybe_money("cost")});
  }
}

void read_pieces(const Element& section, Record& record) {
  for (const Element& one : section.all("piece"))
    record.pieces.push_back(read_piece(one));
}

void read_fittings(const Element& section, Record& record) {
  for (const Element& one : section.all("fitting"))
    record.fittings.push_back(read_fitting(one));
}

void read_markings(const Element& section, Record& record) {
  for (const Element& one : section.all("marking"))
    record.markings.push_back(read_marking(one));
}

}  // namespace winchbook::recordfile
