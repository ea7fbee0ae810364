#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "base/files.h"
#include "base/result.h"

namespace winchbook::daybook {

/// A file that a change brings into the reel's folder beside the record.
struct NewFile {
  std::filesystem::path file;          ///< from the reel's folder: "photos/foot.jpg"
  std::string bytes;                   ///< what it holds, unless it is a copy
  std::filesystem::path copy_of = {};  ///< a file elsewhere; read again when it is copied
  std::string sha256;                  ///< of what it holds, 64 hexadecimal digits
};

/// Files while they are brought into a folder: taken away again unless they are kept in the end.
class WrittenFiles {
 public:
  WrittenFiles(base::Files& files, std::filesystem::path folder);
  WrittenFiles(const WrittenFiles&) = delete;
  WrittenFiles& operator=(const WrittenFiles&) = delete;
  ~WrittenFiles();

  /// Writes each aside, syncs and renames; one that is there already with the same bytes is left
  /// alone. Errors: other bytes are there, the folder is a link that leads out of the reel's, or
  /// the file it is a copy of has changed since its digest was made.
  [[nodiscard]] base::Diagnostics write(const std::vector<NewFile>& all);
  /// They stay.
  void keep() { made_.clear(); }

 private:
  [[nodiscard]] base::Diagnostics write_one(const NewFile& one);

  base::Files& files_;
  std::filesystem::path folder_;
  std::vector<std::filesystem::path> made_;
};

/// True when a file is there and holds these bytes.
[[nodiscard]] bool holds(const base::Files& files, const std::filesystem::path& file,
                         const std::string& sha256);

}  // namespace winchbook::daybook
