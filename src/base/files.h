#pragma once

#include <cstdint>
#include <filesystem>
#include <istream>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace winchbook::base {

/// A lock that is held as long as this lives.
class HeldLock {
 public:
  HeldLock() = default;
  HeldLock(const HeldLock&) = delete;
  HeldLock& operator=(const HeldLock&) = delete;
  virtual ~HeldLock() = default;
};

/// The disk as the program sees it; tests put a made-up one in its place.
class Files {
 public:
  virtual ~Files() = default;

  /// The whole content. Error when it is missing, not readable, a folder, or longer than `limit`
  /// bytes.
  [[nodiscard]] virtual Result<std::string> read(const std::filesystem::path& path,
                                                 std::uintmax_t limit) const = 0;
  /// The content as a stream, for a file too large to hold. Error when it is missing, not readable
  /// or a folder.
  [[nodiscard]] virtual Result<std::unique_ptr<std::istream>> open(
      const std::filesystem::path& path) const;
  [[nodiscard]] virtual bool exists(const std::filesystem::path& path) const = 0;
  [[nodiscard]] virtual bool is_folder(const std::filesystem::path& path) const = 0;
  /// Bytes on disk, or an error sentence.
  [[nodiscard]] virtual Result<std::uintmax_t> size(const std::filesystem::path& path) const = 0;
  /// The real place of a path with every link followed; as it stands when it does not exist.
  [[nodiscard]] virtual std::filesystem::path resolved(const std::filesystem::path& path) const = 0;
  /// Writes beside `path`, syncs file and folder, then renames: afterwards `path` holds all of
  /// `bytes`, or what it held before. Empty when it went well.
  [[nodiscard]] virtual Diagnostics write_aside(const std::filesystem::path& path,
                                                std::string_view bytes) = 0;
  /// Names in a folder, sorted.
  [[nodiscard]] virtual std::vector<std::string> names_in(
      const std::filesystem::path& folder) const = 0;
  /// Makes a folder and those above it; fine when it is there. Empty when it went well.
  [[nodiscard]] virtual Diagnostics make_folder(const std::filesystem::path& folder);
  /// Takes a file away; fine when it is not there. Empty when it went well.
  [[nodiscard]] virtual Diagnostics remove(const std::filesystem::path& path);
  /// Waits a few seconds for the lock on a file, which is made when it is not there and stays.
  /// `holder` is told to whoever waits in vain meanwhile. The lock goes with the process, however
  /// that ends. A disk in memory has no others to lock out.
  [[nodiscard]] virtual Result<std::unique_ptr<HeldLock>> lock(const std::filesystem::path& path,
                                                               std::string_view holder);
};

/// The disk of this machine.
class RealFiles final : public Files {
 public:
  [[nodiscard]] Result<std::string> read(const std::filesystem::path& path,
                                         std::uintmax_t limit) const override;
  [[nodiscard]] Result<std::unique_ptr<std::istream>> open(
      const std::filesystem::path& path) const override;
  [[nodiscard]] bool exists(const std::filesystem::path& path) const override;
  [[nodiscard]] bool is_folder(const std::filesystem::path& path) const override;
  [[nodiscard]] Result<std::uintmax_t> size(const std::filesystem::path& path) const override;
  [[nodiscard]] std::filesystem::path resolved(const std::filesystem::path& path) const override;
  [[nodiscard]] Diagnostics write_aside(const std::filesystem::path& path,
                                        std::string_view bytes) override;
  [[nodiscard]] std::vector<std::string> names_in(
      const std::filesystem::path& folder) const override;
  [[nodiscard]] Diagnostics make_folder(const std::filesystem::path& folder) override;
  [[nodiscard]] Diagnostics remove(const std::filesystem::path& path) override;
  [[nodiscard]] Result<std::unique_ptr<HeldLock>> lock(const std::filesystem::path& path,
                                                       std::string_view holder) override;
};

}  // namespace winchbook::base
