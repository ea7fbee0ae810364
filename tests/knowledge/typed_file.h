#pragma once

#include <doctest/doctest.h>

#include <filesystem>
#include <string>
#include <string_view>

#include "base/files.h"
#include "knowledge/source.h"

namespace winchbook::knowledge {

/// A file with these bytes, gone when the test ends.
class TypedFile {
 public:
  TypedFile(const char* name, std::string_view bytes)
      : path_(std::filesystem::temp_directory_path() / name) {
    REQUIRE(base::RealFiles().write_aside(path_, bytes).empty());
  }
  TypedFile(const TypedFile&) = delete;
  TypedFile& operator=(const TypedFile&) = delete;
  ~TypedFile() { std::filesystem::remove(path_); }

  [[nodiscard]] const std::filesystem::path& path() const { return path_; }

 private:
  std::filesystem::path path_;
};

inline const Source& project() {
  static const base::RealFiles kFiles;
  static const Source kSource(kFiles, WINCHBOOK_SOURCE_DIR);
  return kSource;
}

}  // namespace winchbook::knowledge
