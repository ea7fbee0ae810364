#include "daybook/open_visit.h"

#include <fmt/format.h>

#include <algorithm>

#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
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

record::PlaceFinding& finding_of(record::Visit& visit, const record::PlaceId& place) {
  auto& all = visit.findings.places;
  const auto there =
      std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.place == place; });
  if (there != all.end()) return *there;
  record::PlaceFinding fresh;
  fresh.place = place;
  return all.emplace_back(std::move(fresh));
}

record::TrayLine& tray_line_of(record::Visit& visit, const record::PieceId& piece, base::Day on) {
  const auto there = std::find_if(visit.tray.begin(), visit.tray.end(),
                                  [&](const auto& one) { return one.piece == piece; });
  record::TrayLine& line = there == visit.tray.end() ? visit.tray.emplace_back() : *there;
  line.piece = piece;
  line.on = date_of(on);
  return line;
}

record::Caution caution_of(const Draft& draft, const forms::Labelled& typed, const char* label) {
  return {typed.label.empty() ? label : typed.label, draft.words(typed.words)};
}

record::WayBack way_back_of(const Draft& draft, const forms::Degree& typed) {
  return {typed.degree, draft.words(typed.words)};
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

base::Result<std::optional<record::PersonId>> person_of(const record::Record& record,
                                                        const std::string& said) {
  if (said.empty()) return std::optional<record::PersonId>();
  const auto person = record::find_person(record, said);
  if (!person) return person.faults();
  return std::optional(person.value()->id);
}

base::EdtfDate date_of(base::Day day) {
  return base::EdtfDate::parse(base::iso_text(day)).value();
}

}  // namespace winchbook::daybook
