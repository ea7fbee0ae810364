#pragma once

#include <doctest/doctest.h>

#include <filesystem>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/files.h"

namespace winchbook::knowledge {

/// The files of the program, with one place of one of them changed.
class PatchedFiles final : public base::Files {
 public:
  PatchedFiles() = default;
  PatchedFiles(std::string name, std::string from, std::string to)
      : name_(std::move(name)), from_(std::move(from)), to_(std::move(to)) {}

  [[nodiscard]] base::Result<std::string> read(const std::filesystem::path& path,
                                               std::uintmax_t limit) const override {
    base::Result<std::string> bytes = disk_.read(path, limit);
    if (!bytes || path.filename() != name_) return bytes;
    std::string text = std::move(bytes).value();
    const std::size_t at = text.find(from_);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from_.size(), to_);
  }
  [[nodiscard]] bool exists(const std::filesystem::path& path) const override {
    return disk_.exists(path);
  }
  [[nodiscard]] bool is_folder(const std::filesystem::path& path) const override {
    return disk_.is_folder(path);
  }
  [[nodiscard]] base::Result<std::uintmax_t> size(
      const std::filesystem::path& path) const override {
    return disk_.size(path);
  }
  [[nodiscard]] std::filesystem::path resolved(const std::filesystem::path& path) const override {
    return disk_.resolved(path);
  }
  [[nodiscard]] base::Diagnostics write_aside(const std::filesystem::path&,
                                              std::string_view) override {
    return {base::error("nothing is written here")};
  }
  [[nodiscard]] std::vector<std::string> names_in(
      const std::filesystem::path& folder) const override {
    return disk_.names_in(folder);
  }

 private:
  base::RealFiles disk_;
  std::string name_, from_, to_;
};

}  // namespace winchbook::knowledge
