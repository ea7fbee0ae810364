#include "answers/shelf.h"

#include <fmt/format.h>

#include <algorithm>
#include <atomic>
#include <set>
#include <thread>
#include <utility>

#include "base/edtf_date.h"
#include "record/find_named.h"

namespace winchbook::answers {
namespace {

namespace fs = std::filesystem;

constexpr int kDeepest = 32;
constexpr std::uintmax_t kLongest = std::uintmax_t{64} << 20U;

/// The folders with a record, by their names; each place once.
class Walk {
 public:
  Walk(const base::Files& files, base::Diagnostics& warnings)
      : files_(files), warnings_(warnings) {}

  std::vector<fs::path> from(const fs::path& folder) {
    go(folder, 0);
    return std::move(found_);
  }

 private:
  void go(const fs::path& folder, int depth) {
    if (!seen_.insert(files_.resolved(folder)).second) return;
    if (files_.exists(folder / "record.xml")) {
      found_.push_back(folder);
      return;
    }
    if (depth == kDeepest) {
      warnings_.push_back(base::warning_at({folder.string(), 0, 0},
                                           "what lies deeper was not looked into",
                                           "name this folder by itself", "shelf-depth"));
      return;
    }
    for (const std::string& name : files_.names_in(folder)) {
      if (!name.starts_with('.') && files_.is_folder(folder / name)) go(folder / name, depth + 1);
    }
  }

  const base::Files& files_;
  base::Diagnostics& warnings_;
  std::set<fs::path> seen_;
  std::vector<fs::path> found_;
};

base::Result<ShelfReel> read_one(const base::Files& files, const fs::path& folder) {
  const fs::path file = folder / "record.xml";
  auto bytes = files.read(file, kLongest);
  if (!bytes) return bytes.faults();
  const auto record = xml::Document::glance(file.string(), std::move(bytes).value());
  if (!record) return record.faults();
  if (std::string_view(record->root().name()) != "reel-record") {
    return base::error_at(
        {file.string(), 1, 1},
        fmt::format("this is no record: its root is \"{}\"", record->root().name()),
        "a record's root is reel-record", "record-root");
  }
  ShelfReel reel = recordfile::glance(*record);
  reel.folder = folder;
  return reel;
}

/// Every record, in the order of the folders, read on all processors.
std::vector<base::Result<ShelfReel>> read_all(const base::Files& files,
                                              const std::vector<fs::path>& folders) {
  std::vector<base::Result<ShelfReel>> read(folders.size(), ShelfReel{});
  std::atomic<std::size_t> next = 0;
  const auto work = [&] {
    for (std::size_t i = next++; i < folders.size(); i = next++)
      read[i] = read_one(files, folders[i]);
  };
  std::vector<std::thread> others;
  const unsigned processors = std::max(1U, std::thread::hardware_concurrency());
  const std::size_t helpers = std::min<std::size_t>(processors - 1, folders.size() / 16);
  for (std::size_t i = 0; i < helpers; ++i)
    others.emplace_back(work);
  work();
  for (std::thread& one : others)
    one.join();
  return read;
}

/// Whether the last visit may have begun or ended on the day or later.
bool since(const ShelfReel& reel, const std::optional<base::Day>& day) {
  if (!day) return true;
  for (const std::string& text : {reel.taken_in, reel.handed_back}) {
    const auto date = base::EdtfDate::parse(text);
    if (!date) continue;
    const auto latest = date->latest();
    if (!latest || !(*latest < *day)) return true;
  }
  return false;
}

bool unfinished(const ShelfReel& reel) {
  return !reel.taken_in.empty() && (reel.handed_back.empty() || !reel.open.empty());
}

/// Keeps the fittings that were looked for; whether any is left, or none was looked for.
bool keep_fitted(ShelfReel& reel, const std::string& wanted) {
  if (wanted.empty()) return true;
  std::erase_if(reel.fitted, [&](const ShelfFitting& one) {
    return !record::holds_words(one.piece, wanted) && !record::holds_words(one.place, wanted);
  });
  return !reel.fitted.empty();
}

bool is_wanted(ShelfReel& reel, const ShelfRequest& request, const std::optional<base::Day>& day) {
  const auto matches = [](const std::string& text, const std::string& wanted) {
    return wanted.empty() || record::holds_words(text, wanted);
  };
  return matches(reel.maker, request.maker) && matches(reel.model, request.model) &&
         matches(reel.owner, request.owner) && since(reel, day) &&
         (!request.unfinished || unfinished(reel)) && keep_fitted(reel, request.fitted);
}

forms::Form form(ShelfRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("FOLDER", "the folder in which the reels' folders lie, at any depth; left out, here",
            request.folder),
      field("--maker", "by this maker; the beginnings of its words do", request.maker),
      field("--model", "of this model", request.model),
      field("--owner", "who has it, or brought it last", request.owner),
      field("--since", "here on that day or later: 2024, 2026-03-05", request.since),
      flag("--unfinished", "still here, or with parts unaccounted for", request.unfinished),
      field("--fitted", "a part that was put in: \"drag washer\"", request.fitted),
      flag("--json", "the list as JSON (schemas/shelf.schema.json)", request.json),
  };
}

base::Result<forms::Outcome> run(const ShelfRequest& request, forms::Setting& setting) {
  auto shelf = look_through_shelf(setting.library, request);
  if (!shelf) return shelf.faults();
  base::Diagnostics warnings = std::move(shelf.value().warnings);
  if (request.json) return forms::Outcome{shelf_as_json(*shelf), std::move(warnings), {}};
  auto outcome = tell(setting, kNoRecord, [&](const words::Catalogue& words) {
    return shelf_told(*shelf, !request.fitted.empty(), words);
  });
  if (outcome) outcome.value().doubts = std::move(warnings);
  return outcome;
}

}  // namespace

base::Result<Shelf> look_through_shelf(library::Library& library, const ShelfRequest& request) {
  std::optional<base::Day> day;
  if (!request.since.empty()) {
    const auto date = base::EdtfDate::parse(request.since);
    if (!date || !date->earliest()) {
      return base::of_command(
          base::error(fmt::format("\"{}\" is no day to begin with", request.since),
                      "say --since 2026, 2026-03 or 2026-03-05", "command-day"));
    }
    day = *date->earliest();
  }
  if (!library.files().is_folder(request.folder)) {
    return base::of_machine(
        base::error_at({request.folder.string(), 0, 0}, "there is no such folder",
                       "name the folder in which the reels' folders lie", "file-read"));
  }
  Shelf shelf;
  const auto folders = Walk(library.files(), shelf.warnings).from(request.folder);
  shelf.looked = folders.size();
  for (base::Result<ShelfReel>& one : read_all(library.files(), folders)) {
    if (!one) {
      for (base::Diagnostic fault : one.faults()) {
        fault.severity = base::Severity::warning;
        shelf.warnings.push_back(std::move(fault));
      }
    } else if (is_wanted(one.value(), request, day)) {
      shelf.reels.push_back(std::move(one).value());
    }
  }
  return shelf;
}

forms::Job shelf_job() {
  return forms::job_of(form, run);
}

}  // namespace winchbook::answers
