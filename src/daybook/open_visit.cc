#include "daybook/open_visit.h"

#include <fmt/format.h>

#include <algorithm>

#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

/// The surface as found; when it was cleaned, what was untouched counts as cleaned.
std::vector<record::SurfaceShare> surface_of(const record::PieceState& found, bool cleaned) {
  using record::SurfaceState;
  std::vector<record::SurfaceShare> surface;
  for (record::SurfaceShare share : found.surface) {
    if (cleaned && share.state == SurfaceState::untouched) share.state = SurfaceState::cleaned;
    const auto same = std::find_if(surface.begin(), surface.end(),
                                   [&](const auto& one) { return one.state == share.state; });
    if (same == surface.end()) {
      surface.push_back(share);
    } else {
      same->share.value = same->share.value + share.share.value;
    }
  }
  return surface;
}

}  // namespace

base::Result<record::Visit*> open_visit(Draft& draft, base::Day on) {
  if (draft.record().visits.empty()) {
    return base::error("the reel was not taken in yet",
                       "begin with winchbook intake, or add a <visit> to the record", "visit");
  }
  record::Visit& visit = draft.record().visits.back();
  const base::Location where = draft.loaded().where(visit.id.text);
  if (visit.hand_back) {
    return base::error_at(where,
                          fmt::format("the reel was handed back {}", visit.hand_back->on.text()),
                          "a new visit is begun with winchbook intake --again", "visit");
  }
  const auto first = visit.taken_in.earliest();
  if (first && on < *first) {
    return base::of_command(base::error_at(where,
                                           fmt::format("{} is before the reel was taken in {}",
                                                       base::iso_text(on), visit.taken_in.text()),
                                           "correct the day given with --on", "command-day"));
  }
  return &visit;
}

record::PieceFinding& finding_of(record::Visit& visit, const record::PieceId& piece) {
  auto& all = visit.findings.pieces;
  const auto there =
      std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.piece == piece; });
  if (there != all.end()) return *there;
  return all.emplace_back(record::PieceFinding{piece, {}, {}});
}

record::TrayLine& tray_line_of(record::Visit& visit, const record::PieceId& piece) {
  const auto there = std::find_if(visit.tray.begin(), visit.tray.end(),
                                  [&](const auto& one) { return one.piece == piece; });
  if (there != visit.tray.end()) return *there;
  record::TrayLine line;
  line.piece = piece;
  return visit.tray.emplace_back(line);
}

record::Caution caution_of(const Draft& draft, const forms::Labelled& typed, const char* label) {
  return {typed.label.empty() ? label : typed.label, draft.words(typed.words)};
}

record::WayBack way_back_of(const Draft& draft, const forms::Degree& typed) {
  return {typed.degree, draft.words(typed.words)};
}

record::PieceState state_left(const record::PieceState& found, bool cleaned) {
  record::PieceState left;
  left.presence = found.presence;
  left.surface = surface_of(found, cleaned);
  left.corroded = found.corroded;
  left.appearance_defects = found.appearance_defects;
  return left;
}

base::Result<std::vector<record::PhotoId>> photos_of(const record::Record& record,
                                                     const std::vector<std::string>& said) {
  std::vector<record::PhotoId> photos;
  base::Diagnostics faults;
  for (const std::string& one : said) {
    const auto photo = record::find_photo(record, one);
    if (photo) {
      photos.push_back(photo.value()->id);
    } else {
      faults.insert(faults.end(), photo.faults().begin(), photo.faults().end());
    }
  }
  if (!faults.empty()) return faults;
  return photos;
}

base::EdtfDate date_of(base::Day day) {
  return base::EdtfDate::parse(base::iso_text(day)).value();
}

}  // namespace winchbook::daybook
