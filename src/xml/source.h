#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "base/diagnostic.h"

namespace winchbook::xml {

/// The bytes of a file and where its lines begin.
class Source {
 public:
  Source() = default;
  Source(std::string file, std::string bytes);

  [[nodiscard]] const std::string& file() const { return file_; }
  [[nodiscard]] const std::string& bytes() const { return bytes_; }
  /// Line and column (characters, from 1) of the byte at `offset`.
  [[nodiscard]] base::Location where(std::size_t offset) const;
  /// The offset of the first byte of `line` (from 1); the end when there is no such line.
  [[nodiscard]] std::size_t line_start(int line) const;

 private:
  std::string file_;
  std::string bytes_;
  std::vector<std::size_t> line_starts_;
};

}  // namespace winchbook::xml
