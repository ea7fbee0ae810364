#include "record/looked_for.h"

#include <algorithm>

namespace winchbook::record {
namespace {

bool is_of(const Photo& photo, const Visit& visit) {
  return photo.visit == visit.id;
}

std::string name_of(const Record& record, const PieceId& id) {
  const Piece* piece = find(record, id);
  return piece == nullptr ? id.text : piece->name;
}

/// Of the reel, whatever the visit.
std::string entered_of_reel(const Record& record, LookedFor what) {
  if (what == LookedFor::marks && !record.markings.empty()) return record.markings.front().id.text;
  if (what == LookedFor::serial) return record.reel.serial;
  if (what == LookedFor::life && !record.life.empty()) return record.life.front().title;
  if (what != LookedFor::contents) return {};
  const auto content =
      std::find_if(record.pieces.begin(), record.pieces.end(),
                   [](const Piece& one) { return one.role == PieceRole::content; });
  return content == record.pieces.end() ? std::string() : content->name;
}

std::string loose_in(const Record& record, const Visit& visit) {
  for (const TrayLine& line : visit.tray) {
    if (line.found_loose > 0) return name_of(record, line.piece);
  }
  for (const PieceFinding& one : visit.findings.pieces) {
    if (one.found && one.found->presence == Presence::loose) return name_of(record, one.piece);
  }
  return {};
}

std::string parted_in(const Record& record, const Visit& visit) {
  for (const TrayLine& line : visit.tray) {
    if (line.kept_by_bench + line.scrapped + line.lost > 0) return name_of(record, line.piece);
  }
  return {};
}

std::string photograph_of(const Record& record, const Visit& visit) {
  const auto photo = std::find_if(record.photos.begin(), record.photos.end(),
                                  [&](const Photo& one) { return is_of(one, visit); });
  return photo == record.photos.end() ? std::string() : photo->id.text;
}

}  // namespace

const Look* find_look(const Visit& visit, LookedFor what) {
  const auto& all = visit.findings.looked_for;
  const auto there =
      std::find_if(all.begin(), all.end(), [&](const Look& one) { return one.what == what; });
  return there == all.end() ? nullptr : &*there;
}

std::string entered(const Record& record, const Visit& visit, LookedFor what) {
  switch (what) {
    case LookedFor::marks:
    case LookedFor::serial:
    case LookedFor::life:
    case LookedFor::contents:
      return visit.id == record.visits.back().id ? entered_of_reel(record, what) : std::string();
    case LookedFor::faults:
      return visit.findings.faults.empty() ? std::string() : visit.findings.faults.front().name;
    case LookedFor::hazards:
      return visit.findings.flags.empty() ? std::string() : visit.findings.flags.front().name;
    case LookedFor::photographs:
      return photograph_of(record, visit);
    case LookedFor::loose_parts:
      return loose_in(record, visit);
    case LookedFor::parted:
      return parted_in(record, visit);
    case LookedFor::remaining:
      return visit.not_put_right.empty() ? std::string()
                                         : plain_text(record, visit.not_put_right.front());
    case LookedFor::box:
      return plain_text(record, record.reel.box_and_papers);
  }
  return {};
}

std::optional<Looked> looked_for(const Record& record, const Visit& visit, LookedFor what) {
  if (!entered(record, visit, what).empty()) return Looked::some;
  const Look* look = find_look(visit, what);
  return look == nullptr ? std::nullopt : std::optional(look->found);
}

}  // namespace winchbook::record
