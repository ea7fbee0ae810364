#include <utility>

#include "recordfile/read_sections.h"

namespace winchbook::recordfile {

using namespace record;  // NOLINT: the whole file turns elements into these

void read_photos(const Element& section, Record& record) {
  for (const Element& one : section.all("photo")) {
    Photo photo;
    photo.id = one.id<PhotoId>();
    photo.file = one.text("file");
    photo.sha256 = one.text("sha256");
    photo.width = one.whole("width", 0);
    photo.height = one.whole("height", 0);
    if (const Element original = one.child("original")) {
      photo.original = Original{original.text("file"), original.text("sha256")};
    }
    if (one.child("withheld")) photo.withheld = Withheld{one.text("withheld")};
    photo.taken = one.maybe_date("taken");
    photo.by = one.maybe_ref<PersonId>("by");
    photo.stage = one.word("stage", Stage::document);
    photo.visit = one.maybe_ref<VisitId>("visit");
    photo.pieces = one.refs<PieceId>("piece");
    photo.pair_of = one.maybe_ref<PhotoId>("pair-of");
    photo.caption = one.words("caption");
    photo.alternative = one.words("alternative");
    photo.scale = one.text("scale");
    photo.rights = one.text("rights");
    photo.shows = one.refs<PersonId>("shows");
    photo.salt = one.text("salt");
    record.photos.push_back(std::move(photo));
  }
}

void read_value(const Element& section, Record& record) {
  Value value;
  value.effective = section.date("effective");
  value.basis = section.text("basis");
  value.purpose = section.text("purpose");
  value.currency = section.text("currency");
  for (const Element& one : section.all("sale")) {
    Sale sale;
    sale.id = one.id<SaleId>();
    sale.on = one.date("on");
    sale.price = one.maybe_money("price").value_or(base::Money{});
    sale.included = one.text("included");
    sale.kind = one.word("kind", SaleKind::other);
    sale.with_premium = one.yes("with-premium");
    sale.state = one.text("state");
    sale.originality = one.maybe<base::Percent>("originality");
    sale.box = one.yes("box");
    sale.source = one.text("source");
    sale.used = one.yes("used", true);
    sale.excluded_because = one.words("excluded-because");
    value.sales.push_back(std::move(sale));
  }
  value.note = section.words("note");
  record.value = std::move(value);
}

}  // namespace winchbook::recordfile
