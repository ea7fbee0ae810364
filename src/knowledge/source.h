#pragma once

#include <filesystem>
#include <map>
#include <string>
#include <string_view>
#include <utility>

#include "base/files.h"
#include "base/result.h"
#include "xml/schema.h"

namespace winchbook::knowledge {

/// Where what is known lies, and the schemas that it keeps: each compiled when it is first asked
/// for, and once, however many load from here.
class Source {
 public:
  /// `data` holds schemas/ and shared/.
  Source(const base::Files& files, std::filesystem::path data)
      : files_(&files), data_(std::move(data)) {}

  [[nodiscard]] const base::Files& files() const { return *files_; }
  /// A folder of shared/: "marks".
  [[nodiscard]] std::filesystem::path shared(std::string_view folder) const {
    return data_ / "shared" / folder;
  }
  /// A schema of schemas/, compiled: "stock-1.xsd".
  [[nodiscard]] base::Result<const xml::Schema*> schema(std::string_view name) const;

 private:
  const base::Files* files_;
  std::filesystem::path data_;
  mutable std::map<std::string, xml::Schema, std::less<>> schemas_;
};

}  // namespace winchbook::knowledge
