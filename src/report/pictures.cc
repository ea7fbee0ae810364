#include "report/pictures.h"

#include <algorithm>
#include <set>

namespace winchbook::report {
namespace {

using record::Photo;
using record::PhotoId;
using record::Record;
using record::Stage;
using record::Visit;

constexpr std::size_t kMostPairs = 8;
constexpr std::size_t kPairsOfStatement = 2;
constexpr std::size_t kMarksOfStatement = 6;

/// Photographs not yet spoken for, taken one chapter after the other.
class Album {
 public:
  Album(const Record& record, const Visit& visit) : record_(record), visit_(visit) {}

  void keep_apart(const PhotoId& id) { taken_.insert(id); }

  [[nodiscard]] const Photo* photo(const PhotoId& id) const {
    const Photo* found = find(record_, id);
    return found != nullptr && !found->withheld ? found : nullptr;
  }

  /// Up to `most` photographs, in record order, that `wanted` says yes to.
  template <class Wanted> std::vector<const Photo*> take(std::size_t most, Wanted wanted) {
    std::vector<const Photo*> out;
    for (const Photo& photo : record_.photos) {
      if (out.size() == most) break;
      if (photo.withheld || taken_.contains(photo.id) || !wanted(photo)) continue;
      taken_.insert(photo.id);
      out.push_back(&photo);
    }
    return out;
  }

  [[nodiscard]] bool of_this_visit(const Photo& photo) const {
    return !photo.visit || *photo.visit == visit_.id;
  }

 private:
  const Record& record_;
  const Visit& visit_;
  std::set<PhotoId> taken_;
};

std::vector<PairOfPictures> pairs_of(const Record& record, Album& album) {
  std::vector<PairOfPictures> pairs;
  for (const Photo& photo : record.photos) {
    if (!photo.pair_of || photo.withheld || pairs.size() == kMostPairs) continue;
    pairs.push_back({album.photo(*photo.pair_of), &photo});
    album.keep_apart(photo.id);
    album.keep_apart(*photo.pair_of);
  }
  return pairs;
}

/// The pictures of the parts themselves stand in the ledger, small; the first of each is enough.
void keep_part_pictures(const Record& record, const Visit& visit, Album& album) {
  for (const record::Fitting& fitting : record.fittings) {
    if (fitting.visit != visit.id) continue;
    if (!fitting.photos.empty()) album.keep_apart(fitting.photos.front());
    if (!fitting.old_photos.empty()) album.keep_apart(fitting.old_photos.front());
  }
}

const Photo* cover_of(const Record& record, const Album& album,
                      const std::vector<PairOfPictures>& pairs) {
  if (record.reel.cover) {
    if (const Photo* chosen = album.photo(*record.reel.cover)) return chosen;
  }
  if (!pairs.empty()) return pairs.front().left;
  for (const Stage stage : {Stage::as_left, Stage::as_found}) {
    for (const Photo& photo : record.photos) {
      if (photo.stage == stage && !photo.withheld) return &photo;
    }
  }
  return nullptr;
}

bool in_life(const Record& record, const Photo& photo) {
  const auto shows = [&](const record::LifeEvent& event) {
    return std::find(event.photos.begin(), event.photos.end(), photo.id) != event.photos.end();
  };
  return photo.stage == Stage::history ||
         std::any_of(record.life.begin(), record.life.end(), shows);
}

bool shows_mark(const Record& record, const Photo& photo) {
  return std::any_of(
      record.markings.begin(), record.markings.end(), [&](const record::Marking& mark) {
        return std::find(mark.photos.begin(), mark.photos.end(), photo.id) != mark.photos.end();
      });
}

bool at_the_bench(Stage stage) {
  return stage == Stage::strip_down || stage == Stage::cleaning || stage == Stage::work ||
         stage == Stage::fitting || stage == Stage::test;
}

void number_them(const std::vector<std::string>& sections, PicturePlan& plan) {
  int next = 1;
  const auto number = [&](const Photo* photo) {
    if (photo != nullptr && plan.numbers.try_emplace(photo->id, next).second) ++next;
  };
  for (const std::string& section : sections) {
    if (section == "before-and-after" || section == "statement-photographs") {
      for (const PairOfPictures& pair : plan.pairs) {
        number(pair.found);
        number(pair.left);
      }
    }
    for (const Photo* photo : plan.of(section))
      number(photo);
  }
}

}  // namespace

const std::vector<const Photo*>& PicturePlan::of(std::string_view section) const {
  static const std::vector<const Photo*> kNone;
  const auto found = in_section.find(section);
  return found == in_section.end() ? kNone : found->second;
}

int PicturePlan::number(const PhotoId& id) const {
  const auto found = numbers.find(id);
  return found == numbers.end() ? 0 : found->second;
}

PicturePlan plan_pictures(const Record& record, const Visit& visit,
                          const std::vector<std::string>& sections) {
  const auto has = [&](std::string_view section) {
    return std::find(sections.begin(), sections.end(), section) != sections.end();
  };
  PicturePlan plan;
  Album album(record, visit);
  if (has("second-ledger")) keep_part_pictures(record, visit, album);
  std::vector<PairOfPictures> pairs = pairs_of(record, album);
  plan.cover = cover_of(record, album, pairs);
  if (has("before-and-after")) {
    plan.pairs = pairs;
  } else if (has("work") && !pairs.empty()) {
    plan.in_section["work"] = {pairs.front().found};
  }
  if (plan.cover != nullptr) album.keep_apart(plan.cover->id);
  if (has("statement-identity") && plan.cover != nullptr) {
    auto& pictures = plan.in_section["statement-identity"];
    pictures = album.take(1, [&](const Photo& photo) {
      return photo.stage == Stage::as_left && album.of_this_visit(photo);
    });
    pictures.insert(pictures.begin(), plan.cover);
  }
  if (has("statement-photographs")) {
    plan.in_section["statement-photographs"] = album.take(
        kMarksOfStatement, [&](const Photo& photo) { return shows_mark(record, photo); });
    pairs.resize(std::min(pairs.size(), kPairsOfStatement));
    plan.pairs = std::move(pairs);
  }
  if (has("story")) {
    plan.in_section["story"] =
        album.take(2, [&](const Photo& photo) { return in_life(record, photo); });
  }
  if (has("how-it-came")) {
    plan.in_section["how-it-came"] = album.take(2, [&](const Photo& photo) {
      return photo.stage == Stage::as_found && album.of_this_visit(photo);
    });
  }
  if (has("second-ledger")) {
    plan.in_section["second-ledger"] = album.take(1, [&](const Photo& photo) {
      return at_the_bench(photo.stage) && album.of_this_visit(photo);
    });
  }
  if (has("bench-sheet")) {
    auto& pictures = plan.in_section["bench-sheet"];
    for (const record::StripStep& step : visit.strip_down) {
      for (const PhotoId& id : step.photos) {
        if (const Photo* photo = album.photo(id)) pictures.push_back(photo);
      }
    }
  }
  if (has("other-photographs")) {
    plan.in_section["other-photographs"] =
        album.take(record.photos.size(), [](const Photo&) { return true; });
  }
  number_them(sections, plan);
  return plan;
}

}  // namespace winchbook::report
