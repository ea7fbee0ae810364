#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "base/files.h"
#include "base/result.h"
#include "record/record.h"
#include "recordfile/references.h"
#include "xml/schema.h"

namespace winchbook::recordfile {

/// A record as it was read, with what is needed to point back into its file.
struct LoadedRecord {
  record::Record record;
  std::string bytes;             ///< the file as it is, for attaching and for editing at offsets
  std::string file;              ///< its path as it is told in messages
  std::filesystem::path folder;  ///< the reel's folder; photographs are found from here
  Places places;                 ///< where each thing stands
  base::Diagnostics warnings;    ///< doubts that block nothing

  /// Where the thing with this id stands; the file alone when the id is not known.
  [[nodiscard]] base::Location where(std::string_view id) const;
  /// Where an element without an id stands: the `number`-th (from 0) of its name below the id.
  [[nodiscard]] base::Location where(std::string_view id, std::string_view element,
                                     std::size_t number) const;
  /// The id that was asked for, or a free one as close to the wish as can be when none was; `now`
  /// is the record as it is by now. Error: something is called so already.
  [[nodiscard]] base::Result<std::string> id_for(const record::Record& now,
                                                 const std::string& given,
                                                 std::string_view wish) const;
};

/// `path` itself, or the record.xml in it when it is a folder.
[[nodiscard]] std::filesystem::path record_path(const base::Files& files,
                                                const std::filesystem::path& path);

/// Reads the record at `path` (a reel's folder or its record.xml): the bytes, the schema section by
/// section, dates, references, and the rules of rules.h. Errors hold everything found that can be
/// found in one go; warnings come with the record.
[[nodiscard]] base::Result<LoadedRecord> read(const base::Files& files,
                                              const std::filesystem::path& path,
                                              const xml::Schema& schema);
/// The same by the record-1.xsd of the folder `schemas`.
[[nodiscard]] base::Result<LoadedRecord> read(const base::Files& files,
                                              const std::filesystem::path& path,
                                              const std::filesystem::path& schemas);

/// The same from bytes already in memory; `file` is what messages call it.
[[nodiscard]] base::Result<LoadedRecord> read_bytes(std::string file, std::string bytes,
                                                    const xml::Schema& schema);

/// The schema of the record's newest version. Error when the file is missing or not in order.
[[nodiscard]] base::Result<xml::Schema> load_schema(const base::Files& files,
                                                    const std::filesystem::path& schemas);

}  // namespace winchbook::recordfile
