#include "app/editions.h"

#include <algorithm>
#include <cstdint>
#include <utility>

#include "seal/digest.h"
#include "seal/short_code.h"

namespace winchbook::app {
namespace {

namespace fs = std::filesystem;

fs::path list_path(const fs::path& folder) {
  return folder / "editions.xml";
}

}  // namespace

base::Result<std::vector<IssuedEdition>> read_editions(library::Library& library,
                                                       const fs::path& folder) {
  const fs::path path = list_path(folder);
  if (!library.files().exists(path)) return std::vector<IssuedEdition>{};
  constexpr std::uintmax_t kMostBytes = std::uintmax_t{64} << 20U;
  auto bytes = library.files().read(path, kMostBytes);
  if (!bytes) return bytes.faults();
  const auto schema = library.schema("editions-1.xsd");
  if (!schema) return schema.faults();
  return recordfile::editions_from(path.string(), std::move(bytes).value(), **schema);
}

std::string kept_name(const report::Edition& edition) {
  return "issued/" + edition.document + "-" + std::to_string(edition.number) + ".pdf";
}

base::Result<report::Edition> next_edition(library::Library& library, const std::string& document,
                                           const base::Day& date,
                                           const recordfile::LoadedRecord& loaded,
                                           const std::vector<std::string>& withheld) {
  const auto issued = read_editions(library, loaded.folder);
  if (!issued) return issued.faults();
  report::Edition edition;
  edition.document = document;
  edition.date = date;
  for (const IssuedEdition& one : *issued) {
    if (one.document != document) continue;
    edition.number = std::max(edition.number, one.number + 1);
    edition.earlier.push_back(one.code);
  }
  // A list that was lost does not give an edition's number twice.
  while (library.files().exists(loaded.folder / kept_name(edition)))
    ++edition.number;
  const seal::Digest fingerprint = seal::fingerprint(loaded.bytes);
  edition.fingerprint = seal::hex(fingerprint);
  edition.code =
      seal::grouped(seal::short_code({fingerprint, edition.document, std::to_string(edition.number),
                                      base::iso_text(edition.date)}));
  edition.withheld = withheld.size();
  if (!withheld.empty()) edition.withheld_root = seal::hex(seal::merkle_root(withheld));
  // The page prints it in three words.
  std::replace(edition.code.begin(), edition.code.end(), '-', ' ');
  return edition;
}

base::Diagnostics keep_edition(library::Library& library, const fs::path& folder,
                               const IssuedEdition& edition, std::string_view pdf) {
  auto editions = read_editions(library, folder);
  if (!editions) return editions.faults();
  editions.value().push_back(edition);
  base::Diagnostics faults =
      library.files().make_folder(folder / fs::path(edition.file).parent_path());
  if (base::has_error(faults)) return faults;
  faults = library.files().write_aside(folder / edition.file, pdf);
  if (base::has_error(faults)) return faults;
  return library.files().write_aside(list_path(folder), recordfile::editions_file(*editions));
}

}  // namespace winchbook::app
