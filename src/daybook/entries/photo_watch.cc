#include "daybook/entries/photo_watch.h"

#include <fmt/format.h>
#include <poll.h>

#include <algorithm>
#include <array>
#include <csignal>
#include <utility>

#include "base/words_of_text.h"
#include "daybook/entries/photo_add.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;

/// True for the names that cameras give to pictures.
bool is_picture_name(const std::string& name) {
  constexpr auto kEndings = std::to_array<std::string_view>(
      {".jpg", ".jpeg", ".png", ".heic", ".heif", ".avif", ".webp", ".tif", ".tiff"});
  const std::string ending = base::in_small_letters(fs::path(name).extension().string());
  return std::find(kEndings.begin(), kEndings.end(), ending) != kEndings.end();
}

/// True when the name of every fault's rule begins so.
bool is_because_of(const base::Diagnostics& faults, std::string_view rule) {
  return std::all_of(faults.begin(), faults.end(),
                     [&](const base::Diagnostic& one) { return one.rule.starts_with(rule); });
}

volatile std::sig_atomic_t asked_to_stop = 0;  // NOLINT: a signal can reach nothing else

void on_signal(int /*signal*/) {
  asked_to_stop = 1;
}

/// Ctrl-C ends the watch once what is being done is done.
class StopOnSignal {
 public:
  StopOnSignal() {
    asked_to_stop = 0;
    struct sigaction action {};
    action.sa_handler = on_signal;
    ::sigaction(SIGINT, &action, &interrupt_);
    ::sigaction(SIGTERM, &action, &terminate_);
  }
  StopOnSignal(const StopOnSignal&) = delete;
  StopOnSignal& operator=(const StopOnSignal&) = delete;
  ~StopOnSignal() {
    ::sigaction(SIGINT, &interrupt_, nullptr);
    ::sigaction(SIGTERM, &terminate_, nullptr);
  }
  [[nodiscard]] static bool asked() { return asked_to_stop != 0; }

 private:
  struct sigaction interrupt_ {};
  struct sigaction terminate_ {};
};

forms::Form form(PhotoWatchRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  Form form = entry_form(request);
  form.push_back(field("FOLDER", "the camera's folder", request.folder).must());
  form.push_back(
      flag("--once", "take what is there and not in the record yet, then end", request.once));
  return form;
}

/// What came of one picture.
forms::Outcome outcome_of(const base::Result<Edited>& edited, bool dry_run) {
  if (!edited) return {{}, edited.faults(), {}};
  if (edited->sentence.empty()) return {{}, edited->warnings, {}};
  return told(edited, dry_run).value();
}

base::Result<forms::Outcome> watch_folder(const PhotoWatchRequest& request,
                                          forms::Setting& setting) {
  constexpr int kPauseMilliseconds = 1000;
  if (auto faults = against_day(request); !faults.empty()) return faults;
  auto begun = Watch::begin(setting.library, request, setting.command);
  if (!begun) return begun.faults();
  Watch& watch = begun.value();
  const StopOnSignal stop;
  if (!request.once) {
    setting.tell(
        {{},
         {},
         fmt::format(
             "watching {}; {} pictures that are there already are left alone; Ctrl-C ends\n",
             request.folder.string(), watch.left_alone())});
  }
  while (!StopOnSignal::asked()) {
    for (const auto& edited : watch.look())
      setting.tell(outcome_of(edited, request.dry_run));
    if (request.once && !watch.is_waiting()) break;
    ::poll(nullptr, 0, kPauseMilliseconds);
  }
  return forms::Outcome{
      fmt::format("{} photograph{} taken in\n", watch.taken(), watch.taken() == 1 ? "" : "s"),
      {},
      {}};
}

}  // namespace

Watch::Watch(library::Library& library, PhotoWatchRequest request, std::string command)
    : library_(&library), request_(std::move(request)), command_(std::move(command)) {}

base::Result<Watch> Watch::begin(library::Library& library, const PhotoWatchRequest& request,
                                 const std::string& command) {
  const auto loaded = library.record(request.path);
  if (!loaded) return loaded.faults();
  const auto words = library.words(loaded->record.language);
  if (!words) return words.faults();
  if (!library.files().is_folder(request.folder)) {
    return base::of_machine(
        base::error_at({request.folder.string(), 0, 0}, "there is no such folder",
                       "name the folder into which the camera puts its pictures", "file-read"));
  }
  Watch watch(library, request, command);
  watch.before_any_step_ = words->say("photo.before-any-step");
  if (request.once) return watch;
  for (const std::string& name : library.files().names_in(request.folder)) {
    watch.passed_over_.insert(name);
    if (is_picture_name(name)) ++watch.left_alone_;
  }
  return watch;
}

std::vector<base::Result<Edited>> Watch::look() {
  std::vector<base::Result<Edited>> results;
  std::map<std::string, std::uintmax_t> now;
  waiting_ = false;
  const base::Files& files = library_->files();
  const fs::path real = files.resolved(request_.folder);
  for (const std::string& name : files.names_in(request_.folder)) {
    const fs::path file = request_.folder / name;
    if (passed_over_.contains(name) || name.starts_with('.') || files.is_folder(file)) {
      continue;
    }
    const bool link = files.resolved(file) != real / name;
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
    const auto size = files.size(file);
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
  request.files = {file};
  if (has_steps()) {
    request.step = "last";
  } else {
    request.stage = TypedStage{record::Stage::as_found};
    request.caption = before_any_step_;
  }
  if (auto faults = read_pictures(request, *library_); !faults.empty()) return faults;
  return edit(*library_, {request_.path, command_, request_.dry_run},
              [&](Draft& draft) { return photo_add(request, draft); });
}

/// A fault of the record is told by the edit itself.
bool Watch::has_steps() const {
  const auto loaded = library_->record(request_.path);
  if (!loaded) return false;
  const record::Visit* visit = record::last_visit(loaded->record);
  return visit != nullptr && !visit->strip_down.empty();
}

forms::Job photo_watch_job() {
  return forms::job_of<PhotoWatchRequest>(form, watch_folder);
}

}  // namespace winchbook::daybook
