#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <string>
#include <string_view>

#include "record/enum_words.h"
#include "recordfile/rules_list.h"

namespace winchbook::recordfile {

using namespace record;  // NOLINT: the rules speak of nothing else
using base::error_at;

namespace {

/// True when a path, read as text, could lead out of the folder or means another thing on another
/// machine.
bool leads_out(std::string_view path) {
  if (path.empty() || path.front() == '/' || path.find('\\') != std::string_view::npos ||
      path.find(':') != std::string_view::npos) {
    return true;
  }
  for (std::size_t begin = 0; begin <= path.size();) {
    const std::size_t end = std::min(path.find('/', begin), path.size());
    if (path.substr(begin, end - begin) == "..") return true;
    begin = end + 1;
  }
  return false;
}

}  // namespace

void pair_stage(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Photo& photo : loaded.record.photos) {
    const Photo* fellow = photo.pair_of ? find(loaded.record, *photo.pair_of) : nullptr;
    if (fellow == nullptr) continue;
    if (photo.stage == Stage::as_left && fellow->stage == Stage::as_found) continue;
    found.push_back(error_at(
        loaded.where(photo.id.text),
        fmt::format(
            "photographs \"{}\" ({}) and \"{}\" ({}) are no pair, expected as-found and as-left",
            fellow->id.text, word_of(fellow->stage), photo.id.text, word_of(photo.stage)),
        "write <pair-of> on the photograph taken as left, naming the one taken as found"));
  }
}

void photo_file_twice(const LoadedRecord& loaded, Diagnostics& found) {
  std::map<std::string, PhotoId> seen;
  for (const Photo& photo : loaded.record.photos) {
    if (photo.file.empty()) continue;
    const auto [first, fresh] = seen.emplace(photo.file, photo.id);
    if (fresh) continue;
    found.push_back(error_at(loaded.where(photo.id.text),
                             fmt::format("photographs \"{}\" and \"{}\" are the same file \"{}\"",
                                         first->second.text, photo.id.text, photo.file),
                             "use one photograph and refer to it twice"));
  }
}

void photo_path(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Photo& photo : loaded.record.photos) {
    if (photo.withheld || !leads_out(photo.file)) continue;
    found.push_back(
        error_at(loaded.where(photo.id.text),
                 fmt::format("photograph path \"{}\" leaves the reel's folder", photo.file),
                 "copy the file into photos/ and write its path from the reel's folder"));
  }
}

void sale_excluded(const LoadedRecord& loaded, Diagnostics& found) {
  if (!loaded.record.value) return;
  for (const Sale& sale : loaded.record.value->sales) {
    if (sale.used || !sale.excluded_because.empty()) continue;
    found.push_back(
        error_at(loaded.where(sale.id.text),
                 fmt::format("sale \"{}\" does not count, and nothing says why", sale.id.text),
                 "write <excluded-because>"));
  }
}

void sale_date(const LoadedRecord& loaded, Diagnostics& found) {
  if (!loaded.record.value) return;
  for (const Sale& sale : loaded.record.value->sales) {
    if (!sale.used || !surely_before(loaded.record.value->effective, sale.on)) continue;
    found.push_back(
        error_at(loaded.where(sale.id.text),
                 fmt::format("sale \"{}\" of {} is later than the day of the value, {}",
                             sale.id.text, sale.on.text(), loaded.record.value->effective.text()),
                 "exclude the sale, or correct a date"));
  }
}

}  // namespace winchbook::recordfile
