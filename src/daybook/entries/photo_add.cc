#include "daybook/entries/photo_add.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "daybook/looks.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "record/find_named.h"
#include "record/free_id.h"
#include "seal/digest.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;
using base::Diagnostics;

forms::Form form(PhotoAddRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  const auto without_step = [&request] { return request.step.empty() && !request.none; };
  return {
      field("FILE", "photographs: JPEG, PNG, HEIC, AVIF, WebP or TIFF", request.files)
          .asks("Which photographs?", [&request] { return !request.none; }),
      field("--stage", "found, left, strip-down, cleaning, work, fitting, test, history, document",
            request.stage)
          .asks("When was it taken: found, left, or while at work?", without_step),
      field("--step", "the step of taking apart it shows, by number or id, or \"last\"",
            request.step),
      field("--caption", "what is seen; with --step, its words serve", request.caption)
          .asks("What is seen?", without_step),
      field("--part", "a part it shows; with --step, its parts serve", request.parts),
      field("--name", "a name for it; left out, that of the file", request.name),
      field("--alt", "what somebody who cannot see it is told", request.alternative),
      field("--scale", "what gives the scale: \"rule in millimetres\"", request.scale),
      field("--rights", "whose it is, if lent", request.rights),
      field("--by", "who took it", request.by),
      field("--shows", "somebody who can be recognised in it", request.shows),
      field("--taken", "when; left out, by the camera's clock", request.taken),
      flag("--none", "no photograph was taken in this stay", request.none),
      field("--pair-of", "its fellow taken as found from the same place", request.pair_of),
  };
}

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

/// What all the photographs have in common, found in the record.
struct Common {
  record::Photo photo;                ///< with all that is not of the one picture
  record::StripStep* step = nullptr;  ///< that they show
};

template <class Found, class Id> void keep(const Found& found, Id& id, Diagnostics& faults) {
  if (found) {
    id = found.value()->id;
  } else {
    faults.insert(faults.end(), found.faults().begin(), found.faults().end());
  }
}

/// A step of taking the reel apart, by its number or id; "last" is the one that was entered last.
base::Result<record::StripStep*> find_step(record::Visit& visit, std::string_view said) {
  if (said == "last" && !visit.strip_down.empty()) return &visit.strip_down.back();
  for (record::StripStep& step : visit.strip_down) {
    if (step.id.text == said || std::to_string(step.number) == said) return &step;
  }
  return base::of_command(base::error(
      fmt::format("there is no step \"{}\"", said),
      visit.strip_down.empty() ? "winchbook strip enters one" : "name one by its number or id",
      "command-name"));
}

/// The visit, and what the step says.
Diagnostics look_at_step(Draft& draft, const PhotoAddRequest& request, Common& common) {
  record::Photo& photo = common.photo;
  const bool of_the_work =
      photo.stage != record::Stage::history && photo.stage != record::Stage::document;
  if (!of_the_work && request.step.empty()) return {};
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  photo.visit = open.value()->id;
  if (request.step.empty()) return {};
  const auto step = find_step(**open, request.step);
  if (!step) return step.faults();
  common.step = *step;
  if (photo.caption.empty()) {
    photo.caption = draft.words(record::plain_text(draft.record(), common.step->what));
  }
  if (photo.pieces.empty()) photo.pieces = common.step->pieces;
  return {};
}

base::Result<Common> find_common(Draft& draft, const PhotoAddRequest& request) {
  Common common;
  record::Photo& photo = common.photo;
  photo.stage = request.stage          ? request.stage->stage
                : request.step.empty() ? record::Stage::as_found
                                       : record::Stage::strip_down;
  photo.caption = draft.words(request.caption);
  photo.alternative = draft.words(request.alternative);
  photo.scale = request.scale;
  photo.rights = request.rights;
  const auto pieces = pieces_named(draft, request.parts);
  if (!pieces) return pieces.faults();
  for (const record::Piece* piece : *pieces)
    photo.pieces.push_back(piece->id);
  Diagnostics faults;
  if (!request.by.empty()) keep(record::find_person(draft.record(), request.by), photo.by, faults);
  for (const std::string& person : request.shows)
    keep(record::find_person(draft.record(), person), photo.shows.emplace_back(), faults);
  if (!request.pair_of.empty())
    keep(record::find_photo(draft.record(), request.pair_of), photo.pair_of, faults);
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
  explicit FreeNames(const Draft& draft) : draft_(draft) {
    for (const record::Photo& photo : draft.record().photos) {
      taken_.insert(photo.file);
      if (photo.original) taken_.insert(photo.original->file);
    }
  }

  Places next(const std::string& wish, const CameraPicture& picture, Diagnostics& warnings) {
    for (int number = 1;; ++number) {
      const std::string name = number == 1 ? wish : fmt::format("{}-{}", wish, number);
      Places places = places_of(name, picture);
      if (record::has_id(draft_.record(), "ph-" + name) || !is_free(places, picture)) continue;
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
      const base::Files& files = draft_.library().files();
      return !files.exists(path) || holds(files, path, sha256);
    };
    return free(places.file, print_sha) && free(places.original, picture.sha256);
  }

  const Draft& draft_;
  std::set<std::string> taken_;
};

/// The day it was taken; empty when the camera's clock cannot be right.
std::optional<base::EdtfDate> taken_on(const PhotoAddRequest& request, const CameraPicture& picture,
                                       Diagnostics& warnings) {
  if (request.taken) return request.taken;
  const auto& taken = picture.printed.answer.taken;
  if (!taken) return std::nullopt;
  if (request.on < *taken) {
    warnings.push_back(base::warning_at(
        {picture.file.string(), 0, 0},
        fmt::format("the camera's clock says {}, which is after {}; no day was taken over",
                    base::iso_text(*taken), base::iso_text(request.on)),
        "set the camera's clock; --taken gives the day", "photo-clock"));
    return std::nullopt;
  }
  return date_of(*taken);
}

/// The photograph of one picture.
record::Photo photo_of(const Common& common, const Places& places, const CameraPicture& picture) {
  record::Photo photo = common.photo;
  photo.id = {"ph-" + places.name};
  photo.file = places.file;
  photo.sha256 = seal::hex(seal::fingerprint(picture.printed.jpeg));
  photo.width = picture.printed.answer.size.width;
  photo.height = picture.printed.answer.size.height;
  if (!places.original.empty()) photo.original = {places.original, picture.sha256};
  return photo;
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
  std::string where(record::word_of(common.photo.stage));
  if (common.step != nullptr) where += ", " + common.step->id.text;
  if (ids.size() == 1) {
    return fmt::format("photograph {}: {}; {}", ids.front(), how_made(first.printed.answer), where);
  }
  return fmt::format("{} photographs: {}; {}", ids.size(), fmt::join(ids, ", "), where);
}

/// Reads a camera's file and has it made ready for printing. Errors stand at the file.
base::Result<CameraPicture> read_picture(const library::World& world, const fs::path& file) {
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
  auto printed = make_printable(world.picture_program, *bytes);
  if (!printed) {
    Diagnostics faults = printed.faults();
    for (base::Diagnostic& fault : faults) {
      if (fault.where.file.empty()) fault.where = where;
    }
    return faults;
  }
  return CameraPicture{file, seal::hex(seal::fingerprint(*bytes)), std::move(printed).value()};
}

}  // namespace

base::Diagnostics read_typed(std::string_view typed, TypedStage& into) {
  for (const auto& one : record::enum_words(record::Stage{})) {
    if (one.word != typed && one.word != "as-" + std::string(typed)) continue;
    into.stage = one.value;
    return {};
  }
  return {base::error(fmt::format("\"{}\" is no stage of the work", typed),
                      "one of found, left, strip-down, cleaning, work, fitting, test, history, "
                      "document",
                      "command-stage")};
}

base::Diagnostics read_pictures(PhotoAddRequest& request, library::Library& library) {
  request.pictures.clear();
  Diagnostics faults;
  for (const fs::path& file : request.files) {
    auto picture = read_picture(library.world(), file);
    if (picture) {
      request.pictures.push_back(std::move(picture).value());
    } else {
      faults.insert(faults.end(), picture.faults().begin(), picture.faults().end());
    }
  }
  return faults;
}

base::Result<Said> photo_add(const PhotoAddRequest& request, Draft& draft) {
  if (request.none) {
    return found_none(draft, record::LookedFor::photographs, request.on, request.by);
  }
  const std::vector<CameraPicture>& pictures = request.pictures;
  const auto common = find_common(draft, request);
  if (!common) return common.faults();
  if (auto faults = faults_of_twins(draft.record(), pictures); !faults.empty()) return faults;
  Said said;
  FreeNames names(draft);
  std::vector<std::string> ids;
  for (const CameraPicture& picture : pictures) {
    std::string wish =
        file_name_of(request.name.empty() ? picture.file.stem().string() : request.name);
    if (!request.name.empty() && pictures.size() > 1) wish += fmt::format("-{}", ids.size() + 1);
    const Places places = names.next(wish, picture, said.warnings);
    record::Photo photo = photo_of(*common, places, picture);
    photo.taken = taken_on(request, picture, said.warnings);
    if (common->step != nullptr) common->step->photos.push_back(photo.id);
    ids.push_back(photo.id.text);
    draft.record().photos.push_back(std::move(photo));
    for (NewFile& file : files_of(places, picture))
      said.files.push_back(std::move(file));
    if (picture.printed.answer.profile_unusable) {
      said.warnings.push_back(
          base::warning_at({picture.file.string(), 0, 0},
                           "its colour profile makes no sense; its colours were taken as sRGB",
                           "compare the colours with the reel", "photo-colour"));
    }
  }
  said.sentence = sentence_of(ids, *common, pictures.front());
  return said;
}

forms::Job photo_add_job() {
  return entry_job<PhotoAddRequest>(form, photo_add,
                                    [](PhotoAddRequest& request, forms::Setting& setting) {
                                      return read_pictures(request, setting.library);
                                    });
}

}  // namespace winchbook::daybook
