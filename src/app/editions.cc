#include "app/editions.h"

#include <algorithm>
#include <filesystem>
#include <sstream>
#include <utility>

#include "seal/digest.h"
#include "seal/short_code.h"

namespace winchbook::app {
namespace {

namespace fs = std::filesystem;

constexpr const char* kNamespace = "urn:winchbook:editions:1";

fs::path list_path(const fs::path& folder) {
  return folder / "editions.xml";
}

void add_row(pugi::xml_node list, const IssuedEdition& edition) {
  pugi::xml_node row = list.append_child("edition");
  const auto add = [&](const char* name, const std::string& value) {
    row.append_child(name).text().set(value.c_str());
  };
  add("document", edition.document);
  add("number", std::to_string(edition.number));
  add("issued-on", edition.issued_on);
  add("reader", edition.reader);
  add("file", edition.file);
  add("fingerprint", edition.fingerprint);
  add("code", edition.code);
  add("program", edition.program);
}

std::string list_of(const std::vector<IssuedEdition>& editions) {
  pugi::xml_document list;
  pugi::xml_node declaration = list.append_child(pugi::node_declaration);
  declaration.append_attribute("version") = "1.0";
  declaration.append_attribute("encoding") = "UTF-8";
  pugi::xml_node root = list.append_child("editions");
  root.append_attribute("xmlns") = kNamespace;
  root.append_attribute("version") = "1";
  for (const IssuedEdition& edition : editions)
    add_row(root, edition);
  std::ostringstream out;
  list.save(out, "  ", pugi::format_default, pugi::encoding_utf8);
  return out.str();
}

}  // namespace

base::Result<std::vector<IssuedEdition>> read_editions(library::Library& library,
                                                       const fs::path& folder) {
  std::vector<IssuedEdition> editions;
  if (!library.files().exists(list_path(folder))) return editions;
  const auto document = library.valid_xml(list_path(folder), "editions-1.xsd");
  if (!document) return document.faults();
  for (const pugi::xml_node row : document->root().children("edition")) {
    const auto told = [&](const char* name) { return std::string(row.child(name).child_value()); };
    editions.push_back({told("document"), row.child("number").text().as_int(), told("issued-on"),
                        told("reader"), told("file"), told("fingerprint"), told("code"),
                        told("program")});
  }
  return editions;
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
  return library.files().write_aside(list_path(folder), list_of(*editions));
}

}  // namespace winchbook::app
