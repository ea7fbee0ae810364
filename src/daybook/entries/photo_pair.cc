#include "daybook/entries/photo_pair.h"

#include <fmt/format.h>

#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using record::Photo;
using record::Stage;

forms::Form form(PhotoPairRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("FOUND", "the photograph taken as found", request.found).must(),
      field("LEFT", "the one taken as left, from the same place", request.left).must(),
  };
}

base::Diagnostics fault_of_stage(const Draft& draft, const Photo& photo, Stage expected) {
  if (photo.stage == expected) return {};
  return {base::error_at(draft.loaded().where(photo.id.text),
                         fmt::format("photograph \"{}\" is {}, expected {}", photo.id.text,
                                     record::word_of(photo.stage), record::word_of(expected)),
                         "name the one taken as found first, then the one taken as left",
                         "pair-stage")};
}

}  // namespace

base::Result<Said> photo_pair(const PhotoPairRequest& request, Draft& draft) {
  const auto before = record::find_photo(draft.record(), request.found);
  if (!before) return before.faults();
  const auto after = record::find_photo(draft.record(), request.left);
  if (!after) return after.faults();
  const Photo& first = *before.value();
  const Photo& second = *after.value();
  if (auto faults = fault_of_stage(draft, first, Stage::as_found); !faults.empty()) return faults;
  if (auto faults = fault_of_stage(draft, second, Stage::as_left); !faults.empty()) return faults;
  const bool so_already = second.pair_of && *second.pair_of == first.id;
  for (Photo& photo : draft.record().photos) {
    const bool one_of_them = &photo == &second || (photo.pair_of && *photo.pair_of == first.id);
    if (so_already || !one_of_them) continue;
    if (photo.pair_of) {
      return base::error_at(draft.loaded().where(photo.id.text),
                            fmt::format("photographs \"{}\" and \"{}\" are a pair already",
                                        photo.pair_of->text, photo.id.text),
                            "take <pair-of> out of the record by hand first", "pair-stage");
    }
    photo.pair_of = first.id;
  }
  return Said{fmt::format("a pair: {} as found, {} as left", first.id.text, second.id.text), {}};
}

forms::Job photo_pair_job() {
  return entry_job<PhotoPairRequest>(form, photo_pair);
}

}  // namespace winchbook::daybook
