#include "daybook/open_visit.h"

#include <fmt/format.h>

#include <algorithm>

#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

pugi::xml_node child_that_points_at(pugi::xml_node parent, const char* name, const char* pointer,
                                    const std::string& id) {
  for (const pugi::xml_node child : parent.children(name)) {
    if (id == child.child(pointer).attribute("ref").value()) return child;
  }
  return {};
}

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

std::string trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(' ') - first + 1));
}

}  // namespace

base::Result<OpenVisit> open_visit(const Draft& draft, base::Day on) {
  const record::Visit* visit = record::last_visit(draft.record());
  if (visit == nullptr) {
    return base::error("the reel was not taken in yet",
                       "begin with winchbook intake, or add a <visit> to the record", "visit");
  }
  const base::Location where = draft.loaded().where(visit->id.text);
  if (visit->hand_back) {
    return base::error_at(where,
                          fmt::format("the reel was handed back {}", visit->hand_back->on.text()),
                          "a new visit is begun with winchbook intake --again", "visit");
  }
  const auto first = visit->taken_in.earliest();
  if (first && on < *first) {
    return base::error_at(where,
                          fmt::format("{} is before the reel was taken in {}", base::iso_text(on),
                                      visit->taken_in.text()),
                          "correct the day given with --on", "command-day");
  }
  return OpenVisit{visit, draft.visit()};
}

pugi::xml_node finding_of(Draft& draft, pugi::xml_node visit, const record::PieceId& piece) {
  const pugi::xml_node findings = draft.need(visit, "findings");
  if (auto there = child_that_points_at(findings, "piece-finding", "piece", piece.text)) {
    return there;
  }
  const pugi::xml_node added = draft.add(findings, "piece-finding");
  draft.add_ref(added, "piece", piece.text);
  return added;
}

pugi::xml_node tray_line_of(Draft& draft, pugi::xml_node visit, const record::PieceId& piece) {
  const pugi::xml_node tray = draft.need(visit, "tray");
  if (auto there = child_that_points_at(tray, "line", "piece", piece.text)) return there;
  const pugi::xml_node added = draft.add(tray, "line");
  draft.add_ref(added, "piece", piece.text);
  return added;
}

void add_to_tray(Draft& draft, pugi::xml_node line, const char* name, int count) {
  draft.set(line, name, std::to_string(line.child(name).text().as_int() + count));
}

void add_caution(Draft& draft, pugi::xml_node parent, const std::string& text, const char* label) {
  if (text.empty()) return;
  const pugi::xml_node caution = draft.add(parent, "caution");
  const std::size_t colon = text.find(':');
  const bool labelled = colon != std::string::npos && colon <= 24;
  draft.add(caution, "label", labelled ? trimmed(text.substr(0, colon)) : label);
  draft.add_words(caution, "words", labelled ? trimmed(text.substr(colon + 1)) : text);
}

void add_way_back(Draft& draft, pugi::xml_node parent, const std::string& text) {
  if (text.empty()) return;
  const pugi::xml_node way_back = draft.add(parent, "way-back");
  const std::size_t colon = text.find(':');
  draft.add(way_back, "degree", trimmed(text.substr(0, colon)));
  draft.add_words(way_back, "words",
                  colon == std::string::npos ? text : trimmed(text.substr(colon + 1)));
}

void add_state(Draft& draft, pugi::xml_node finding, const record::PieceState& found,
               bool cleaned) {
  const pugi::xml_node left = draft.add(finding, "left");
  draft.add(left, "presence", record::word_of(found.presence));
  for (const record::SurfaceShare& share : surface_of(found, cleaned)) {
    const pugi::xml_node surface = draft.add(left, "surface");
    draft.add(surface, "state", record::word_of(share.state));
    draft.add(surface, "share", share.share.value.text());
  }
  if (found.corroded) draft.add(left, "corroded", found.corroded->value.text());
  if (found.appearance_defects) {
    draft.add(left, "appearance-defects", found.appearance_defects->value.text());
  }
}

base::Diagnostics add_photos(Draft& draft, pugi::xml_node parent,
                             const std::vector<std::string>& photos, const char* name) {
  base::Diagnostics faults;
  for (const std::string& said : photos) {
    const auto photo = record::find_photo(draft.record(), said);
    if (!photo) {
      faults.insert(faults.end(), photo.faults().begin(), photo.faults().end());
      continue;
    }
    draft.add_ref(parent, name, photo.value()->id.text);
  }
  return faults;
}

}  // namespace winchbook::daybook
