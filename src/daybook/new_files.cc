#include "daybook/new_files.h"

#include <algorithm>
#include <utility>

#include "photo/print_size.h"
#include "seal/digest.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;

/// What a process left half written when it was stopped: ".foot.jpg.aB3dE9".
void take_away_leftovers(base::Files& files, const fs::path& file) {
  constexpr std::size_t kLetters = 6;
  const std::string begin = "." + file.filename().string() + ".";
  for (const std::string& name : files.names_in(file.parent_path())) {
    if (name.starts_with(begin) && name.size() == begin.size() + kLetters) {
      static_cast<void>(files.remove(file.parent_path() / name));
    }
  }
}

}  // namespace

bool holds(const base::Files& files, const fs::path& file, const std::string& sha256) {
  if (!files.exists(file)) return false;
  const auto bytes = files.read(file, photo::kMostCameraBytes);
  return bytes && seal::hex(seal::fingerprint(*bytes)) == sha256;
}

WrittenFiles::WrittenFiles(base::Files& files, fs::path folder)
    : files_(files), folder_(std::move(folder)) {}

WrittenFiles::~WrittenFiles() {
  for (const fs::path& file : made_)
    static_cast<void>(files_.remove(file));
}

base::Diagnostics WrittenFiles::write(const std::vector<NewFile>& all) {
  for (const NewFile& one : all) {
    if (auto faults = write_one(one); base::has_error(faults)) return faults;
  }
  return {};
}

base::Diagnostics WrittenFiles::write_one(const NewFile& one) {
  const fs::path file = folder_ / one.file;
  const fs::path parent = file.parent_path();
  if (files_.exists(file)) {
    if (holds(files_, file, one.sha256)) return {};
    return {base::error_at({file.string(), 0, 0}, "there is another file of this name",
                           "give the new one another name with --name", "photo-name")};
  }
  if (auto faults = files_.make_folder(parent); base::has_error(faults)) return faults;
  const fs::path real = files_.resolved(folder_);
  const fs::path inside = files_.resolved(parent);
  if (std::mismatch(real.begin(), real.end(), inside.begin(), inside.end()).first != real.end()) {
    return {base::error_at({parent.string(), 0, 0}, "it leads out of the reel's folder",
                           "put a folder in place of the link", "photo-path")};
  }
  take_away_leftovers(files_, file);
  base::Diagnostics faults;
  if (one.copy_of.empty()) {
    faults = files_.write_aside(file, one.bytes);
  } else {
    const auto bytes = files_.read(one.copy_of, photo::kMostCameraBytes);
    if (!bytes) return bytes.faults();
    if (seal::hex(seal::fingerprint(*bytes)) != one.sha256) {
      return {base::error_at({one.copy_of.string(), 0, 0}, "the file changed while it was read",
                             "wait until it is copied, then add it again", "photo-changed")};
    }
    faults = files_.write_aside(file, *bytes);
  }
  if (!base::has_error(faults)) made_.push_back(file);
  return faults;
}

}  // namespace winchbook::daybook
