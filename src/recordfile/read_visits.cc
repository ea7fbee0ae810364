#include <utility>

#include "recordfile/read_sections.h"

namespace winchbook::recordfile {

using namespace record;  // NOLINT: the whole file turns elements into these

namespace {

std::optional<Caution> read_caution(const Element& parent) {
  const Element element = parent.child("caution");
  if (!element) return std::nullopt;
  return Caution{element.text("label"), element.words("words")};
}

Wishes read_wishes(const Element& element) {
  Wishes wishes;
  wishes.use = element.word("use", Use::not_determined);
  wishes.words = element.child("words").paragraphs();
  for (const Element& one : element.all("ranking")) {
    if (const auto matter = one.as_word<Matter>()) wishes.ranking.push_back(*matter);
  }
  return wishes;
}

Agreement read_agreement(const Element& one) {
  Agreement agreement;
  agreement.id = one.id<AgreementId>();
  agreement.on = one.date("on");
  agreement.how = one.text("how");
  agreement.with = one.maybe_ref<PersonId>("with");
  agreement.may_be_done = one.all_words("may-be-done");
  agreement.must_stay = one.all_words("must-stay");
  agreement.pieces_must_stay = one.refs<PieceId>("piece-must-stay");
  agreement.pieces_may_leave = one.refs<PieceId>("piece-may-leave");
  agreement.cost_limit = one.maybe_money("cost-limit");
  agreement.estimate_low = one.child("estimate").maybe_money("low");
  agreement.estimate_high = one.child("estimate").maybe_money("high");
  agreement.note = one.words("note");
  return agreement;
}

StripStep read_step(const Element& one, int number) {
  StripStep step;
  step.id = one.id<StepId>();
  step.number = number;
  step.what = one.words("what");
  step.pieces = one.refs<PieceId>("piece");
  step.orientation = one.words("orientation");
  step.tool = one.text("tool");
  step.spring_loose = one.yes("spring-loose");
  step.caution = read_caution(one);
  step.photos = one.refs<PhotoId>("photo");
  return step;
}

Cleaning read_cleaning(const Element& one) {
  Cleaning cleaning;
  cleaning.pieces = one.refs<PieceId>("piece");
  cleaning.material = one.text("material");
  cleaning.method = one.text("method");
  cleaning.minutes = one.maybe<base::Minutes>("minutes");
  cleaning.what = one.words("what");
  cleaning.against_warning = one.words("against-warning");
  cleaning.caution = read_caution(one);
  cleaning.way_back = read_way_back(one);
  cleaning.loss = one.words("loss");
  return cleaning;
}

Work read_work(const Element& one) {
  Work work;
  work.what = one.words("what");
  work.pieces = one.refs<PieceId>("piece");
  work.by = one.maybe_ref<PersonId>("by");
  work.on = one.maybe_date("on");
  work.hours = one.maybe<base::Hours>("hours");
  work.parts_cost = one.maybe_money("parts-cost");
  work.way_back = read_way_back(one);
  work.caution = read_caution(one);
  return work;
}

TrayLine read_tray_line(const Element& one) {
  TrayLine line;
  line.piece = one.ref<PieceId>("piece");
  line.taken_off = one.whole("taken-off", 0);
  line.found_loose = one.whole("found-loose", 0);
  line.refitted = one.whole("refitted", 0);
  line.bagged = one.whole("bagged", 0);
  line.to_owner = one.whole("to-owner", 0);
  line.kept_by_bench = one.whole("kept-by-bench", 0);
  line.lost = one.whole("lost", 0);
  line.scrapped = one.whole("scrapped", 0);
  return line;
}

std::optional<Advice> read_advice(const Element& element) {
  if (!element) return std::nullopt;
  Advice advice;
  advice.advised = element.maybe_word<Course>("advised");
  advice.because = element.words("because");
  for (const Element& one : element.all("course-cost")) {
    advice.courses.push_back({one.word("course", Course::keep_as_found), one.maybe_money("low"),
                              one.maybe_money("high"), one.words("effect")});
  }
  advice.chosen = element.maybe_word<Course>("chosen");
  advice.chosen_by = element.maybe_ref<PersonId>("chosen-by");
  advice.chosen_on = element.maybe_date("chosen-on");
  advice.chosen_because = element.words("chosen-because");
  return advice;
}

std::optional<DragStack> read_drag(const Element& element) {
  if (!element) return std::nullopt;
  DragStack drag;
  for (const Element& one : element.all("washer")) {
    drag.washers.push_back({one.ref<PieceId>("piece"), one.word("keyed", Keyed::free),
                            one.maybe<base::Millimetres>("inside"),
                            one.maybe<base::Millimetres>("outside"),
                            one.maybe<base::Millimetres>("thickness")});
  }
  drag.greased = element.yes("greased");
  drag.setting = element.maybe<base::Newtons>("setting");
  drag.spool_full = element.maybe<base::Millimetres>("spool-full");
  drag.spool_empty = element.maybe<base::Millimetres>("spool-empty");
  drag.line_strength = element.maybe<base::Newtons>("line-strength");
  return drag;
}

std::optional<CareAdvice> read_care(const Element& element) {
  if (!element) return std::nullopt;
  CareAdvice care;
  care.drag_low = element.maybe<base::Newtons>("drag-low");
  care.drag_high = element.maybe<base::Newtons>("drag-high");
  care.line = element.text("line");
  care.fish = element.all_words("fish");
  care.keep = element.all_words("keep");
  for (const Element& one : element.all("caution")) {
    care.cautions.push_back({one.text("label"), one.words("words")});
  }
  return care;
}

std::optional<HandBack> read_hand_back(const Element& element) {
  if (!element) return std::nullopt;
  return HandBack{element.date("on"), element.maybe_ref<PersonId>("to"), element.texts("bag"),
                  element.words("note")};
}

Visit read_visit(const Element& one) {
  Visit visit;
  visit.id = one.id<VisitId>();
  visit.number = one.text("number");
  visit.taken_in = one.date("taken-in");
  visit.brought_by = one.maybe_ref<PersonId>("brought-by");
  visit.restorers = one.refs<PersonId>("restorer");
  visit.arrived = one.words("arrived");
  visit.wishes = read_wishes(one.child("wishes"));
  for (const Element& entry : one.all("agreement"))
    visit.agreements.push_back(read_agreement(entry));
  visit.promised_by = one.maybe_date("promised-by");
  visit.waiting_for = one.texts("waiting-for");
  visit.findings = read_findings(one.child("findings"));
  int number = 0;
  for (const Element& step : one.child("strip-down").all("step")) {
    visit.strip_down.push_back(read_step(step, ++number));
  }
  for (const Element& entry : one.all("cleaning"))
    visit.cleaning.push_back(read_cleaning(entry));
  for (const Element& entry : one.all("work"))
    visit.work.push_back(read_work(entry));
  for (const Element& line : one.child("tray").all("line"))
    visit.tray.push_back(read_tray_line(line));
  visit.advice = read_advice(one.child("advice"));
  visit.drag = read_drag(one.child("drag"));
  visit.not_put_right = one.all_words("not-put-right");
  visit.care = read_care(one.child("care"));
  visit.hand_back = read_hand_back(one.child("hand-back"));
  visit.next_service = one.maybe_date("next-service");
  visit.review_by = one.maybe_date("review-by");
  visit.summary = one.words("summary");
  return visit;
}

}  // namespace

void read_visits(const Element& section, Record& record) {
  for (const Element& one : section.all("visit"))
    record.visits.push_back(read_visit(one));
}

}  // namespace winchbook::recordfile
