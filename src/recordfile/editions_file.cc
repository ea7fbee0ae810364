#include "recordfile/editions_file.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

#include "xml/rows.h"

namespace winchbook::recordfile {
namespace {

/// A number that its schema has let through, held within reason.
int number_of(const std::string& text) {
  constexpr long kMost = 1'000'000;
  return static_cast<int>(std::clamp(std::strtol(text.c_str(), nullptr, 10), 1L, kMost));
}

}  // namespace

base::Result<std::vector<IssuedEdition>> editions_from(std::string file, std::string bytes,
                                                       const xml::Schema& schema) {
  const auto document = xml::Document::parse(std::move(file), std::move(bytes));
  if (!document) return document.faults();
  base::Diagnostics faults = schema.faults_in(*document, document->root());
  if (base::has_error(faults)) return faults;
  std::vector<IssuedEdition> editions;
  xml::for_each_row(*document, "edition", [&](const xml::Row& row) {
    editions.push_back({row["document"], number_of(row["number"]), row["issued-on"], row["reader"],
                        row["file"], row["fingerprint"], row["code"], row["program"]});
  });
  return editions;
}

std::string editions_file(const std::vector<IssuedEdition>& editions) {
  xml::RowList list{"editions", "urn:winchbook:editions:1", "edition", {}};
  for (const IssuedEdition& one : editions) {
    list.rows.push_back({{"document", one.document},
                         {"number", std::to_string(one.number)},
                         {"issued-on", one.issued_on},
                         {"reader", one.reader},
                         {"file", one.file},
                         {"fingerprint", one.fingerprint},
                         {"code", one.code},
                         {"program", one.program}});
  }
  return xml::written(list);
}

}  // namespace winchbook::recordfile
