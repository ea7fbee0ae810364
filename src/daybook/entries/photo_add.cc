#include "daybook/entries/photo_add.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "daybook/entries/photo_step.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "record/find_named.h"
#include "seal/digest.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;
using base::Diagnostics;

/// A name for files: small letters, figures and hyphens.
std::string file_name_of(std::string_view text) {
  constexpr std::size_t kLongest = 48;
  std::string name;
  for (const char c : text.substr(0, kLongest)) {
    const bool capital = c >= 'A' && c <= 'Z';
    const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (capital || plain) {
      name += capital ? static_cast<char>(c - 'A' + 'a') : c;
    } else if (!name.empty() && name.back() != '-') {
      name += '-';
    }
  }
  while (name.ends_with('-'))
    name.pop_back();
  return name.empty() ? "photo" : name;
}

/// "as-found" for "found" and for "as-found"; nothing when there is no such stage.
std::optional<std::string> stage_word(const std::string& said) {
  for (const auto& one : record::enum_words(record::Stage{})) {
    if (one.word == said || one.word == "as-" + said) return std::string(one.word);
  }
  return std::nullopt;
}

base::Result<std::string> stage_of(const PhotoAddRequest& request) {
  const std::string said =
      request.stage.empty() && !request.step.empty() ? "strip-down" : request.stage;
  if (const auto word = stage_word(said)) return *word;
  return base::of_command(base::error(
      fmt::format("\"{}\" is no stage of the work", said),
      "one of found, left, strip-down, cleaning, work, fitting, test, history, document",
      "command-stage"));
}

/// Everything the elements of the photographs have in common, found in the record.
struct Common {
  std::string stage;
  std::string visit;  ///< empty: of no visit
  std::string caption;
  std::vector<std::string> pieces;
  std::string by;
  std::vector<std::string> shows;
  std::string pair_of;
  std::string step;
};

template <class Found> void keep(const Found& found, std::string& id, Diagnostics& faults) {
  if (found) {
    id = found.value()->id.text;
  } else {
    faults.insert(faults.end(), found.faults().begin(), found.faults().end());
  }
}

/// The visit, and what the step says.
Diagnostics look_at_step(const Draft& draft, const PhotoAddRequest& request, Common& common) {
  const bool of_the_work = common.stage != "history" && common.stage != "document";
  if (!of_the_work && request.step.empty()) return {};
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  common.visit = open->visit->id.text;
  if (request.step.empty()) return {};
  const auto step = find_step(*open->visit, request.step);
  if (!step) return step.faults();
  common.step = step.value()->id.text;
  if (common.caption.empty()) common.caption = in_plain_words(draft.record(), step.value()->what);
  if (common.pieces.empty()) {
    for (const record::PieceId& piece : step.value()->pieces)
      common.pieces.push_back(piece.text);
  }
  return {};
}

base::Result<Common> find_common(const Draft& draft, const PhotoAddRequest& request) {
  Common common;
  const auto stage = stage_of(request);
  if (!stage) return stage.faults();
  common.stage = *stage;
  common.caption = request.caption;
  Diagnostics faults;
  const auto pieces = record::find_pieces(draft.record(), request.parts);
  if (!pieces) return pieces.faults();
  for (const record::Piece* piece : *pieces)
    common.pieces.push_back(piece->id.text);
  if (!request.by.empty()) keep(record::find_person(draft.record(), request.by), common.by, faults);
  for (const std::string& person : request.shows)
    keep(record::find_person(draft.record(), person), common.shows.emplace_back(), faults);
  if (!request.pair_of.empty())
    keep(record::find_photo(draft.record(), request.pair_of), common.pair_of, faults);
  Diagnostics of_the_step = look_at_step(draft, request, common);
  faults.insert(faults.end(), of_the_step.begin(), of_the_step.end());
  if (!faults.empty()) return faults;
  return common;
}

/// The photograph of the record that came of the same camera's file.
const record::Photo* same_as(const record::Record& record, const CameraPicture& picture) {
  const auto found =
      std::find_if(record.photos.begin(), record.photos.end(), [&](const record::Photo& photo) {
        const std::string& of = photo.original ? photo.original->sha256 : photo.sha256;
        return of == picture.sha256 || photo.sha256 == picture.sha256;
      });
  return found == record.photos.end() ? nullptr : &*found;
}

Diagnostics faults_of_twins(const record::Record& record,
                            const std::vector<CameraPicture>& pictures) {
  Diagnostics faults;
  std::map<std::string, const CameraPicture*> seen;
  for (const CameraPicture& one : pictures) {
    if (const record::Photo* photo = same_as(record, one)) {
      faults.push_back(base::error_at(
          {one.file.string(), 0, 0},
          fmt::format("the photograph is in the record already, as \"{}\"", photo->id.text),
          "refer to it by its id", "photo-twice"));
      continue;
    }
    const auto [first, fresh] = seen.emplace(one.sha256, &one);
    if (fresh) continue;
    faults.push_back(base::error_at(
        {one.file.string(), 0, 0},
        fmt::format("the photograph is the same as {}", first->second->file.string()),
        "give it once", "photo-twice"));
  }
  return faults;
}

/// A photograph's places in the reel's folder.
struct Places {
  std::string name;
  std::string file;
  std::string original;  ///< empty: the file is the original
};

Places places_of(const std::string& name, const CameraPicture& picture) {
  Places places{name, "photos/" + name + ".jpg", {}};
  if (picture.printed.answer.made != photo::Made::as_it_was) {
    places.original = fmt::format("originals/{}.{}", name, picture.printed.answer.ending);
  }
  return places;
}

/// Hands out names that nothing in the record, in the folder or before in this change has.
class FreeNames {
 public:
  FreeNames(const library::World& world, Draft& draft) : files_(world.files), draft_(draft) {
    for (const record::Photo& photo : draft.record().photos) {
      taken_.insert(photo.file);
      if (photo.original) taken_.insert(photo.original->file);
    }
  }

  Places next(const std::string& wish, const CameraPicture& picture, Diagnostics& warnings) {
    for (int number = 1;; ++number) {
      const std::string name = number == 1 ? wish : fmt::format("{}-{}", wish, number);
      Places places = places_of(name, picture);
      if (draft_.by_id("ph-" + name) || !is_free(places, picture)) continue;
      taken_.insert(places.file);
      taken_.insert(places.original);
      if (number > 1) {
        warnings.push_back(base::warning_at(
            {picture.file.string(), 0, 0},
            fmt::format("there is a photograph named {} already; this one is kept as {}", wish,
                        name),
            "nothing is lost; --name gives it another", "photo-name"));
      }
      return places;
    }
  }

 private:
  [[nodiscard]] bool is_free(const Places& places, const CameraPicture& picture) const {
    const std::string print_sha = seal::hex(seal::fingerprint(picture.printed.jpeg));
    const auto free = [&](const std::string& file, const std::string& sha256) {
      if (file.empty()) return true;
      if (taken_.contains(file)) return false;
      const fs::path path = draft_.loaded().folder / file;
      return !files_.exists(path) || holds(files_, path, sha256);
    };
    return free(places.file, print_sha) && free(places.original, picture.sha256);
  }

  const base::Files& files_;
  Draft& draft_;
  std::set<std::string> taken_;
};

/// The day it was taken; empty when the camera's clock cannot be right.
std::string taken_on(const PhotoAddRequest& request, const CameraPicture& picture,
                     Diagnostics& warnings) {
  if (!request.taken.empty()) return request.taken;
  const auto& taken = picture.printed.answer.taken;
  if (!taken) return {};
  if (request.on < *taken) {
    warnings.push_back(base::warning_at(
        {picture.file.string(), 0, 0},
        fmt::format("the camera's clock says {}, which is after {}; no day was taken over",
                    base::iso_text(*taken), base::iso_text(request.on)),
        "set the camera's clock; --taken gives the day", "photo-clock"));
    return {};
  }
  return base::iso_text(*taken);
}

void add_element(Draft& draft, const Common& common, const PhotoAddRequest& request,
                 const Places& places, const CameraPicture& picture, const std::string& taken) {
  const photo::Size size = picture.printed.answer.size;
  const std::string id = "ph-" + places.name;
  const pugi::xml_node photo = draft.add_with_id(draft.section("photos"), "photo", id);
  draft.add(photo, "file", places.file);
  draft.add(photo, "sha256", seal::hex(seal::fingerprint(picture.printed.jpeg)));
  draft.add(photo, "width", std::to_string(size.width));
  draft.add(photo, "height", std::to_string(size.height));
  if (!places.original.empty()) {
    const pugi::xml_node original = draft.add(photo, "original");
    draft.add(original, "file", places.original);
    draft.add(original, "sha256", picture.sha256);
  }
  draft.add_if(photo, "taken", taken);
  if (!common.by.empty()) draft.add_ref(photo, "by", common.by);
  draft.add(photo, "stage", common.stage);
  if (!common.visit.empty()) draft.add_ref(photo, "visit", common.visit);
  for (const std::string& piece : common.pieces)
    draft.add_ref(photo, "piece", piece);
  if (!common.pair_of.empty()) draft.add_ref(photo, "pair-of", common.pair_of);
  draft.add_words(photo, "caption", common.caption);
  draft.add_words(photo, "alternative", request.alternative);
  draft.add_if(photo, "scale", request.scale);
  draft.add_if(photo, "rights", request.rights);
  for (const std::string& person : common.shows)
    draft.add_ref(photo, "shows", person);
  if (!common.step.empty()) draft.add_ref(draft.by_id(common.step), "photo", id);
}

std::vector<NewFile> files_of(const Places& places, const CameraPicture& picture) {
  std::vector<NewFile> files{
      {places.file, picture.printed.jpeg, {}, seal::hex(seal::fingerprint(picture.printed.jpeg))}};
  if (!places.original.empty()) {
    files.push_back({places.original, {}, picture.file, picture.sha256});
  }
  return files;
}

/// "1200 × 900, turned or made smaller for print".
std::string how_made(const photo::PrintAnswer& answer) {
  const char* how = answer.made == photo::Made::as_it_was ? "kept as it is"
                    : answer.made == photo::Made::without_remarks
                        ? "without the camera's data, else as it is"
                        : "made for print";
  return fmt::format("{} × {}, {}", answer.size.width, answer.size.height, how);
}

std::string sentence_of(const std::vector<std::string>& ids, const Common& common,
                        const CameraPicture& first) {
  std::string where = common.step.empty() ? common.stage : common.stage + ", " + common.step;
  if (ids.size() == 1) {
    return fmt::format("photograph {}: {}; {}", ids.front(), how_made(first.printed.answer), where);
  }
  return fmt::format("{} photographs: {}; {}", ids.size(), fmt::join(ids, ", "), where);
}

}  // namespace

base::Result<CameraPicture> read_camera_picture(const library::World& world,
                                                const fs::path& program, const fs::path& file) {
  const base::Location where{file.string(), 0, 0};
  const auto size = world.files.size(file);
  if (size && !world.files.is_folder(file) && *size > photo::kMostCameraBytes) {
    return base::error_at(where,
                          fmt::format("it is {} MB, expected a photograph of at most {} MB",
                                      *size >> 20U, photo::kMostCameraBytes >> 20U),
                          "choose a photograph; a video is not kept here", "photo-large");
  }
  const auto bytes = world.files.read(file, photo::kMostCameraBytes);
  if (!bytes) return bytes.faults();
  auto printed = make_printable(program, *bytes);
  if (!printed) {
    Diagnostics faults = printed.faults();
    for (base::Diagnostic& fault : faults) {
      if (fault.where.file.empty()) fault.where = where;
    }
    return faults;
  }
  return CameraPicture{file, seal::hex(seal::fingerprint(*bytes)), std::move(printed).value()};
}

Change photo_add(const library::World& world, PhotoAddRequest request,
                 std::vector<CameraPicture> pictures) {
  return [&world, request = std::move(request),
          pictures = std::move(pictures)](Draft& draft) -> base::Result<Said> {
    const auto common = find_common(draft, request);
    if (!common) return common.faults();
    if (auto faults = faults_of_twins(draft.record(), pictures); !faults.empty()) return faults;
    Said said;
    FreeNames names(world, draft);
    std::vector<std::string> ids;
    for (const CameraPicture& picture : pictures) {
      std::string wish =
          file_name_of(request.name.empty() ? picture.file.stem().string() : request.name);
      if (!request.name.empty() && pictures.size() > 1) {
        wish += fmt::format("-{}", ids.size() + 1);
      }
      const Places places = names.next(wish, picture, said.warnings);
      const std::string taken = taken_on(request, picture, said.warnings);
      add_element(draft, *common, request, places, picture, taken);
      for (NewFile& file : files_of(places, picture))
        said.files.push_back(std::move(file));
      if (picture.printed.answer.profile_unusable) {
        said.warnings.push_back(
            base::warning_at({picture.file.string(), 0, 0},
                             "its colour profile makes no sense; its colours were taken as sRGB",
                             "compare the colours with the reel", "photo-colour"));
      }
      ids.push_back("ph-" + places.name);
    }
    said.sentence = sentence_of(ids, *common, pictures.front());
    return said;
  };
}

base::Result<Edited> add_photographs(const library::World& world, const fs::path& program,
                                     const EditRequest& edit_request,
                                     const PhotoAddRequest& request,
                                     const std::vector<std::string>& files) {
  std::vector<CameraPicture> pictures;
  Diagnostics faults;
  for (const std::string& file : files) {
    auto picture = read_camera_picture(world, program, file);
    if (picture) {
      pictures.push_back(std::move(picture).value());
    } else {
      faults.insert(faults.end(), picture.faults().begin(), picture.faults().end());
    }
  }
  if (!faults.empty()) return faults;
  return edit(world, edit_request, photo_add(world, request, std::move(pictures)));
}

}  // namespace winchbook::daybook
