#include "knowledge/valid_file.h"

#include <cstdint>
#include <utility>

#include "base/words_of_text.h"

namespace winchbook::knowledge {
namespace {

constexpr std::uintmax_t kFileLimit = std::uintmax_t{4} << 20U;

}  // namespace

base::Result<xml::Document> read_valid(const Source& source, const std::filesystem::path& path,
                                       std::string_view root) {
  const auto schema = source.schema("knowledge-1.xsd");
  if (!schema) return schema.faults();
  auto bytes = source.files().read(path, kFileLimit);
  if (!bytes) return bytes.faults();
  auto document = xml::Document::parse(path.filename().string(), std::move(bytes).value());
  if (!document) return document.faults();
  if (document->root().name() != root) {
    return base::error_at(document->where(document->root()),
                          "found <" + std::string(document->root().name()) + ">, expected <" +
                              std::string(root) + ">",
                          {}, "wrong-root");
  }
  base::Diagnostics faults = (*schema)->faults_in(*document, document->root());
  if (base::has_error(faults)) return faults;
  return document;
}

base::Result<xml::Document> valid_document(const Source& source, std::string file,
                                           std::string bytes, std::string_view schema) {
  auto document = xml::Document::parse(std::move(file), std::move(bytes));
  if (!document) return document;
  const auto compiled = source.schema(schema);
  if (!compiled) return compiled.faults();
  base::Diagnostics faults = (*compiled)->faults_in(*document, document->root());
  if (base::has_error(faults)) return faults;
  return document;
}

std::string folded(pugi::xml_node node) {
  return base::on_one_line(node.text().get());
}

}  // namespace winchbook::knowledge
