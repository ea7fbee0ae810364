#include "app/shown.h"

#include <fmt/format.h>

#include <stdexcept>
#include <string>
#include <utility>

#include "library/photographs.h"
#include "photo/besides.h"
#include "photo/jpeg.h"
#include "seal/digest.h"

namespace winchbook::app {

using base::Diagnostics;
using base::Result;

Result<Shown> shown_to(library::Library& library, record::Reader reader,
                       const recordfile::LoadedRecord& full) {
  auto withheld = recordfile::withhold(full, reader);
  if (!withheld) return withheld.faults();
  auto record = library.record_of(full.file, withheld->bytes);
  if (!record) {
    throw std::logic_error("the withheld edition is no record: " +
                           base::to_string(record.faults().front()));
  }
  record.value().folder = full.folder;
  return Shown{std::move(record).value(), std::move(withheld).value()};
}

Result<std::vector<pdf::Jpeg>> read_photographs(library::Library& library,
                                                const recordfile::LoadedRecord& full,
                                                const recordfile::LoadedRecord& shown,
                                                record::Reader reader) {
  std::vector<pdf::Jpeg> photographs;
  Diagnostics faults;
  for (std::size_t i = 0; i < full.record.photos.size(); ++i) {
    const record::Photo& photo = full.record.photos[i];
    if (photo.withheld) continue;
    if (auto fault = library::fault_of_place(library.files(), full.folder, photo.file)) {
      fault->where = full.where(photo.id.text);
      faults.push_back(std::move(*fault));
      continue;
    }
    auto bytes = library.files().read(full.folder / photo.file, photo::kMostBytes);
    const bool same = bytes && seal::hex(seal::fingerprint(*bytes)) == photo.sha256;
    const auto facts = same ? photo::inspect(*bytes) : Result<photo::JpegFacts>(Diagnostics{});
    if (!facts) {
      faults.push_back(
          base::error_at(full.where(photo.id.text),
                         "photograph \"" + photo.file + "\" is not there or not as it was recorded",
                         "run winchbook check to see what is wrong with it", "photo-changed"));
      continue;
    }
    if (shown.record.photos[i].withheld) continue;
    // To anybody else than the owner goes the picture alone.
    if (reader != record::Reader::owner) bytes = photo::bare_picture(*bytes);
    if (bytes->empty()) {
      faults.push_back(base::error_at(
          full.where(photo.id.text),
          fmt::format("photograph \"{}\" is cut short, and what it carries cannot be told",
                      photo.file),
          "take it in anew with winchbook photo add", "photo-changed"));
      continue;
    }
    photographs.push_back({shown.record.photos[i].id.text, std::move(bytes).value(), facts->width,
                           facts->height, facts->colour == photo::Colour::grey ? 1 : 3,
                           static_cast<int>(facts->orientation), false, facts->icc_profile});
  }
  if (!faults.empty()) return faults;
  return photographs;
}

}  // namespace winchbook::app
