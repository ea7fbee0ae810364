#include <utility>

#include "recordfile/read_sections.h"

namespace winchbook::recordfile {

using namespace record;  // NOLINT: the whole file turns elements into these

void read_bench(const Element& section, Record& record) {
  Bench& bench = record.bench;
  bench.name = section.text("name");
  bench.place = section.text("place");
  bench.address = section.lines("address");
  bench.contact = section.text("contact");
  bench.restorers = section.refs<PersonId>("restorer");
  bench.own_interest = section.words("own-interest");
  bench.terms = section.words("terms");
}

void read_people(const Element& section, Record& record) {
  for (const Element& one : section.all("person")) {
    Person person;
    person.id = one.id<PersonId>();
    person.name = one.maybe_text("name");
    const MaybeText short_name = one.maybe_text("short-name");
    if (const std::string* words = told(short_name)) person.short_name = *words;
    person.stand_in = one.text("stand-in");
    person.who = one.words("who");
    person.address = one.optional_text("address");
    person.contact = one.optional_text("contact");
    person.lived = one.maybe_date("lived");
    person.named_to = one.word("named-to", NamedTo::owner);
    person.salt = one.text("salt");
    record.people.push_back(std::move(person));
  }
}

void read_custody(const Element& section, Record& record) {
  for (const Element& one : section.all("")) {
    if (one.name() == "gap") {
      record.custody.emplace_back(CustodyGap{one.id<CustodyId>(), one.maybe_date("from"),
                                             one.maybe_date("until"), one.words("what")});
      continue;
    }
    CustodyStep step;
    step.id = one.id<CustodyId>();
    step.held = one.word("held", Held::both);
    step.holder = one.ref<PersonId>("holder");
    step.from = one.maybe_date("from");
    step.until = one.maybe_date("until");
    step.how = one.words("how");
    step.source = one.text("source");
    step.certainty = one.word("certainty", Certainty::certain);
    step.photos = one.refs<PhotoId>("photo");
    record.custody.emplace_back(std::move(step));
  }
}

void read_story(const Element& section, Record& record) {
  Story story;
  story.title = section.text("title");
  story.answer = section.words("answer");
  story.paragraphs = section.paragraphs();
  story.told_by = section.maybe_ref<PersonId>("told-by");
  story.approved_on = section.maybe_date("approved-on");
  record.story = std::move(story);
}

void read_life(const Element& section, Record& record) {
  for (const Element& one : section.all("event")) {
    LifeEvent event;
    event.id = one.id<LifeEventId>();
    event.kind = one.word("kind", LifeEventKind::other);
    event.title = one.text("title");
    event.date_as_told = one.text("date-as-told");
    event.date = one.maybe_date("date");
    event.by = one.maybe_ref<PersonId>("by");
    event.what = one.child("what").paragraphs();
    event.pieces = one.refs<PieceId>("piece");
    event.source = one.text("source");
    event.certainty = one.maybe_word<Certainty>("certainty");
    event.keep_because = one.words("keep-because");
    event.must_stay = one.refs<PieceId>("must-stay");
    event.photos = one.refs<PhotoId>("photo");
    record.life.push_back(std::move(event));
  }
}

}  // namespace winchbook::recordfile
