#pragma once

#include <doctest/doctest.h>

#include <cstdint>
#include <filesystem>
#include <string>
#include <utility>

#include "base/diagnostic.h"
#include "base/files.h"

/// What the tests of the jobs that read and write files share.
namespace winchbook::on_disk {

inline const std::filesystem::path kProject = WINCHBOOK_SOURCE_DIR;

inline std::string bytes_of(const std::filesystem::path& path) {
  auto bytes = base::RealFiles().read(path, std::uintmax_t{64} << 20U);
  CAPTURE(path.string());
  REQUIRE(bytes);
  return std::move(bytes).value();
}

inline void put(const std::filesystem::path& path, const std::string& bytes) {
  REQUIRE(base::RealFiles().write_aside(path, bytes).empty());
}

inline std::string printed(const base::Diagnostics& faults) {
  std::string text;
  for (const base::Diagnostic& fault : faults)
    text += to_string(fault);
  return text;
}

inline bool says(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

/// A request with some of its fields filled in.
template <class Request, class Fill> Request filled(const Fill& fill) {
  Request request;
  fill(request);
  return request;
}

}  // namespace winchbook::on_disk
