#include "daybook/entries/photo_watch.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <utility>

#include "record/moments.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;

/// True for the names that cameras give to pictures.
bool is_picture_name(const std::string& name) {
  constexpr auto kEndings = std::to_array<std::string_view>(
      {".jpg", ".jpeg", ".png", ".heic", ".heif", ".avif", ".webp", ".tif", ".tiff"});
  std::string ending = fs::path(name).extension().string();
  std::transform(ending.begin(), ending.end(), ending.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  return std::find(kEndings.begin(), kEndings.end(), ending) != kEndings.end();
}

/// True when the name of every fault's rule begins so.
bool is_because_of(const base::Diagnostics& faults, std::string_view rule) {
  return std::all_of(faults.begin(), faults.end(),
                     [&](const base::Diagnostic& one) { return one.rule.starts_with(rule); });
}

}  // namespace

Watch::Watch(const library::World& world, WatchRequest request)
    : world_(&world), request_(std::move(request)) {}

base::Result<Watch> Watch::begin(const library::World& world, WatchRequest request) {
  if (!world.files.is_folder(request.folder)) {
    return base::of_machine(
        base::of_machine(base::error_at({request.folder.string(), 0, 0}, "there is no such folder",
                       "name the folder into which the camera puts its pictures", "file-read")));
  }
  Watch watch(world, std::move(request));
  if (watch.request_.take_old) return watch;
  for (const std::string& name : world.files.names_in(watch.request_.folder)) {
    watch.passed_over_.insert(name);
    if (is_picture_name(name)) ++watch.left_alone_;
  }
  return watch;
}

std::vector<base::Result<Edited>> Watch::look() {
  std::vector<base::Result<Edited>> results;
  std::map<std::string, std::uintmax_t> now;
  waiting_ = false;
  const fs::path real = world_->files.resolved(request_.folder);
  for (const std::string& name : world_->files.names_in(request_.folder)) {
    const fs::path file = request_.folder / name;
    if (passed_over_.contains(name) || name.starts_with('.') || world_->files.is_folder(file)) {
      continue;
    }
    const bool link = world_->files.resolved(file) != real / name;
    if (link || !is_picture_name(name)) {
      passed_over_.insert(name);
      results.emplace_back(Edited{
          {},
          {},
          {base::warning_at({file.string(), 0, 0},
                            link ? "passed over: it is a link to another file"
                                 : "passed over: by its name it is no photograph",
                            "winchbook photo add takes it in, if it is one", "photo-passed-over")},
          {}});
      continue;
    }
    const auto size = world_->files.size(file);
    if (!size) continue;
    now[name] = *size;
    const auto before = seen_.find(name);
    const auto done = done_.find(name);
    if (done != done_.end() && done->second == *size) continue;
    if (before == seen_.end() || before->second != *size) {
      waiting_ = true;
      continue;
    }
    if (auto result = try_to_take(name, *size)) results.push_back(std::move(*result));
  }
  seen_ = std::move(now);
  return results;
}

/// Nothing when there is nothing to tell. What stands in the way beside the photograph itself (a
/// record that is locked or wrong) is told once, and tried again at the next look.
std::optional<base::Result<Edited>> Watch::try_to_take(const std::string& name,
                                                       std::uintmax_t size) {
  auto edited = take(request_.folder / name);
  if (edited) {
    ++taken_;
    done_[name] = size;
    return edited;
  }
  const base::Diagnostics& faults = edited.faults();
  if (is_because_of(faults, "photo-")) {
    done_[name] = size;
    if (is_because_of(faults, "photo-twice")) return std::nullopt;
    return edited;
  }
  const auto told = told_.find(name);
  if (told != told_.end() && told->second == faults.front().message) return std::nullopt;
  told_[name] = faults.front().message;
  return edited;
}

base::Result<Edited> Watch::take(const fs::path& file) {
  PhotoAddRequest request;
  request.on = request_.on;
  request.step = current_step();
  if (request.step.empty()) {
    request.stage = "as-found";
    request.caption = request_.before_any_step;
  }
  return add_photographs(*world_, request_.program, request_.edit, request, {file.string()});
}

/// "last" once a step is entered; a fault of the record is told by the edit itself.
std::string Watch::current_step() const {
  const auto loaded =
      recordfile::read(world_->files, request_.edit.record, world_->data / "schemas");
  if (!loaded) return {};
  const record::Visit* visit = record::last_visit(loaded->record);
  return visit == nullptr || visit->strip_down.empty() ? "" : "last";
}

}  // namespace winchbook::daybook
