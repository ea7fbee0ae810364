#include <utility>

#include "recordfile/read_sections.h"

namespace winchbook::recordfile {

using namespace record;  // NOLINT: the whole file turns elements into these

namespace {

std::optional<PieceState> read_piece_state(const Element& element) {
  if (!element) return std::nullopt;
  PieceState state;
  state.presence = element.word("presence", Presence::not_examined);
  for (const Element& share : element.all("surface")) {
    state.surface.push_back(
        {share.word("state", SurfaceState::untouched), share.quantity<base::Percent>("share")});
  }
  state.corroded = element.maybe<base::Percent>("corroded");
  state.appearance_defects = element.maybe<base::Percent>("appearance-defects");
  state.note = element.words("note");
  state.photos = element.refs<PhotoId>("photo");
  return state;
}

Fault read_fault(const Element& one) {
  Fault fault;
  fault.id = one.id<FaultId>();
  fault.piece = one.maybe_ref<PieceId>("piece");
  fault.kind = one.word("kind", FaultKind::other);
  fault.name = one.text("name");
  fault.size = one.maybe<base::Millimetres>("size");
  fault.found = one.maybe_word<Severity>("found");
  fault.left = one.maybe_word<Severity>("left");
  fault.what = one.words("what");
  fault.why_it_stays = one.words("why-it-stays");
  fault.photos = one.refs<PhotoId>("photo");
  return fault;
}

TestResult read_test_result(const Element& element) {
  TestResult result;
  result.kind = element.word("outcome", TestResult::Kind::not_tested);
  result.reading = element.maybe_decimal("reading");
  result.reading_high = element.maybe_decimal("reading-high");
  result.words = element.text("words");
  result.verdict = element.maybe_word<Verdict>("verdict");
  result.load_limit = element.maybe<base::Newtons>("load-limit");
  result.on = element.maybe_date("on");
  return result;
}

}  // namespace

Findings read_findings(const Element& element) {
  Findings findings;
  findings.found_on = element.maybe_date("found-on");
  findings.left_on = element.maybe_date("left-on");
  findings.by = element.maybe_ref<PersonId>("by");
  for (const Element& one : element.all("piece-finding")) {
    findings.pieces.push_back({one.ref<PieceId>("piece"), read_piece_state(one.child("found")),
                               read_piece_state(one.child("left"))});
  }
  for (const Element& one : element.all("place-finding")) {
    findings.places.push_back({one.ref<PlaceId>("place"), one.word("found", Filled::not_examined),
                               one.word("left", Filled::not_examined), one.words("note")});
  }
  for (const Element& one : element.all("fault"))
    findings.faults.push_back(read_fault(one));
  for (const Element& one : element.all("test")) {
    findings.tests.push_back({one.text("what"), one.text("unit"),
                              read_test_result(one.child("before")),
                              read_test_result(one.child("after")), one.words("note")});
  }
  for (const Element& one : element.all("flag")) {
    findings.flags.push_back({one.word("kind", Flag::Kind::hazard), one.text("name"),
                              one.words("what"), one.refs<PieceId>("piece")});
  }
  findings.note = element.words("note");
  return findings;
}

}  // namespace winchbook::recordfile
