#include "base/files.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <chrono>
#include <cstring>
#include <fstream>
#include <sstream>
#include <system_error>
#include <thread>
#include <utility>

namespace winchbook::base {
namespace {

namespace fs = std::filesystem;

/// An open file descriptor that closes itself.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() {
    if (number_ >= 0) ::close(number_);
  }
  [[nodiscard]] int number() const { return number_; }
  [[nodiscard]] bool is_open() const { return number_ >= 0; }
  /// Closes now, so that a late write error is seen.
  [[nodiscard]] bool close_now() { return ::close(std::exchange(number_, -1)) == 0; }

 private:
  int number_;
};

/// The reason of the last failed call, for a sentence: "no space left on device".
std::string reason() {
  std::string text = std::strerror(errno);  // NOLINT(concurrency-mt-unsafe)
  if (!text.empty() && text.size() > 1 && text[1] >= 'a' && text[1] <= 'z') {
    text[0] = static_cast<char>(text[0] >= 'A' && text[0] <= 'Z' ? text[0] - 'A' + 'a' : text[0]);
  }
  return text;
}

Diagnostic cannot_read(const fs::path& path, const std::string& why) {
  return of_machine(error_at({path.string(), 0, 0}, "cannot read: " + why,
                             "check the name and that you may read it", "file-read"));
}

Diagnostic cannot_write(const fs::path& path, const std::string& why) {
  return of_machine(error_at(
      {path.string(), 0, 0}, "cannot write: " + why,
      "choose a folder you may write to, with room left; nothing was changed", "file-write"));
}

/// A lock of flock(2); closing the file gives it back.
class LockedFile final : public HeldLock {
 public:
  explicit LockedFile(int number) : file_(number) {}
  [[nodiscard]] const Descriptor& file() const { return file_; }

 private:
  Descriptor file_;
};

bool write_all(int descriptor, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t written = ::write(descriptor, bytes.data(), bytes.size());
    if (written < 0 && errno == EINTR) continue;
    if (written <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(written));
  }
  return true;
}

}  // namespace

Result<std::string> RealFiles::read(const fs::path& path, std::uintmax_t limit) const {
  const Descriptor file(::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK));  // NOLINT
  if (!file.is_open()) return cannot_read(path, reason());
  struct stat facts {};
  if (::fstat(file.number(), &facts) != 0) return cannot_read(path, reason());
  if (S_ISDIR(facts.st_mode)) return cannot_read(path, "it is a folder");
  if (!S_ISREG(facts.st_mode)) return cannot_read(path, "it is not an ordinary file");
  const auto length = static_cast<std::uintmax_t>(facts.st_size);
  if (length > limit) {
    return cannot_read(path, "it holds " + std::to_string(length) + " bytes, more than the " +
                                 std::to_string(limit) + " allowed here");
  }
  std::string bytes(length, '\0');
  std::size_t got = 0;
  while (got < bytes.size()) {
    const ssize_t n = ::read(file.number(), bytes.data() + got, bytes.size() - got);
    if (n < 0 && errno == EINTR) continue;
    if (n < 0) return cannot_read(path, reason());
    if (n == 0) break;
    got += static_cast<std::size_t>(n);
  }
  bytes.resize(got);
  return bytes;
}

Result<std::unique_ptr<std::istream>> Files::open(const fs::path& path) const {
  constexpr std::uintmax_t kMostBytes = std::uintmax_t{1} << 30U;
  auto bytes = read(path, kMostBytes);
  if (!bytes) return bytes.faults();
  return std::unique_ptr<std::istream>(
      std::make_unique<std::istringstream>(std::move(bytes).value()));
}

Result<std::unique_ptr<std::istream>> RealFiles::open(const fs::path& path) const {
  std::error_code code;
  const fs::file_status status = fs::status(path, code);
  if (code) return cannot_read(path, code.message());
  if (fs::is_directory(status)) return cannot_read(path, "it is a folder");
  if (!fs::is_regular_file(status)) return cannot_read(path, "it is not an ordinary file");
  auto stream = std::make_unique<std::ifstream>(path, std::ios::binary);
  if (!stream->is_open()) return cannot_read(path, reason());
  return std::unique_ptr<std::istream>(std::move(stream));
}

bool RealFiles::exists(const fs::path& path) const {
  std::error_code ignored;
  return fs::exists(path, ignored);
}

bool RealFiles::is_folder(const fs::path& path) const {
  std::error_code ignored;
  return fs::is_directory(path, ignored);
}

Result<std::uintmax_t> RealFiles::size(const fs::path& path) const {
  std::error_code code;
  const std::uintmax_t bytes = fs::file_size(path, code);
  if (code) return cannot_read(path, code.message());
  return bytes;
}

fs::path RealFiles::resolved(const fs::path& path) const {
  std::error_code code;
  fs::path real = fs::weakly_canonical(path, code);
  return code ? path : real;
}

Diagnostics RealFiles::write_aside(const fs::path& path, std::string_view bytes) {
  struct stat there {};
  if (::lstat(path.c_str(), &there) == 0 && !S_ISREG(there.st_mode)) {
    return {cannot_write(path, S_ISDIR(there.st_mode)   ? "it is a folder"
                               : S_ISLNK(there.st_mode) ? "it is a link to another file"
                                                        : "it is not an ordinary file")};
  }
  const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
  std::string aside = (folder / ("." + path.filename().string() + ".XXXXXX")).string();
  Descriptor file(::mkostemp(aside.data(), O_CLOEXEC));
  if (!file.is_open()) return {cannot_write(path, reason())};
  const mode_t mask = ::umask(0);
  ::umask(mask);
  const bool written = write_all(file.number(), bytes) &&
                       ::fchmod(file.number(), 0666U & ~mask) == 0 && ::fsync(file.number()) == 0 &&
                       file.close_now() && ::rename(aside.c_str(), path.c_str()) == 0;
  if (!written) {
    const std::string why = reason();
    ::unlink(aside.c_str());
    return {cannot_write(path, why)};
  }
  const Descriptor directory(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));  // NOLINT
  if (directory.is_open()) ::fsync(directory.number());
  return {};
}

Diagnostics Files::make_folder(const fs::path& folder) {
  return {cannot_write(folder, "this disk makes no folders")};
}

Diagnostics Files::remove(const fs::path& path) {
  return {cannot_write(path, "this disk takes nothing away")};
}

Result<std::unique_ptr<HeldLock>> Files::lock(const fs::path& /*path*/,
                                              std::string_view /*holder*/) {
  return std::make_unique<HeldLock>();
}

Diagnostics RealFiles::make_folder(const fs::path& folder) {
  std::error_code code;
  fs::create_directories(folder, code);
  if (code) return {cannot_write(folder, code.message())};
  return {};
}

Diagnostics RealFiles::remove(const fs::path& path) {
  std::error_code code;
  fs::remove(path, code);
  if (code) return {cannot_write(path, code.message())};
  return {};
}

Result<std::unique_ptr<HeldLock>> RealFiles::lock(const fs::path& path, std::string_view holder) {
  constexpr int kTries = 250;
  constexpr std::chrono::milliseconds kPause{20};
  constexpr mode_t kMode = 0666;
  auto locked = std::make_unique<LockedFile>(
      ::open(path.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, kMode));  // NOLINT
  const Descriptor& file = locked->file();
  if (!file.is_open()) return cannot_write(path, reason());
  int tries = 0;
  while (::flock(file.number(), LOCK_EX | LOCK_NB) != 0) {
    if (errno != EWOULDBLOCK && errno != EINTR) return cannot_write(path, reason());
    if (++tries == kTries) {
      std::string held(1024, '\0');
      const ssize_t length = ::pread(file.number(), held.data(), held.size(), 0);
      held.resize(length > 0 ? static_cast<std::size_t>(length) : 0);
      held.resize(std::min(held.find('\n'), held.size()));
      return of_machine(
          error_at({path.parent_path().string(), 0, 0},
                   "somebody else is writing here: " + (held.empty() ? "not told who" : held),
                   "wait until that is done, then try again; nothing was changed", "file-locked"));
    }
    std::this_thread::sleep_for(kPause);
  }
  const std::string line =
      "process " + std::to_string(::getpid()) + ", " + std::string(holder) + "\n";
  if (::ftruncate(file.number(), 0) != 0 ||
      ::pwrite(file.number(), line.data(), line.size(), 0) < 0) {
    return cannot_write(path, reason());
  }
  return std::unique_ptr<HeldLock>(std::move(locked));
}

std::vector<std::string> RealFiles::names_in(const fs::path& folder) const {
  std::vector<std::string> names;
  std::error_code code;
  for (const auto& entry : fs::directory_iterator(folder, code)) {
    names.push_back(entry.path().filename().string());
  }
  std::sort(names.begin(), names.end());
  return names;
}

}  // namespace winchbook::base
