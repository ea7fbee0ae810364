#include "library/world.h"

#include <algorithm>
#include <utility>

#include "words/catalogue_file.h"

namespace winchbook::library {
namespace {

constexpr std::uintmax_t kMostBytes = std::uintmax_t{16} << 20U;
constexpr const char* kLastResort = "en-GB";

/// The file of a language: its own, or one of the same tongue, or British English.
std::filesystem::path catalogue_path(const World& world, std::string_view language) {
  const std::filesystem::path folder = world.data / "shared" / "words";
  const auto file = [&](std::string_view name) { return folder / (std::string(name) + ".xml"); };
  if (world.files.exists(file(language))) return file(language);
  const std::string tongue(language.substr(0, language.find('-')));
  for (const std::string& name : world.files.names_in(folder)) {
    if (!tongue.empty() && (name == tongue + ".xml" || name.starts_with(tongue + "-"))) {
      return folder / name;
    }
  }
  return file(kLastResort);
}

}  // namespace

base::Result<xml::Document> read_xml(const World& world, const std::filesystem::path& path) {
  auto bytes = world.files.read(path, kMostBytes);
  if (!bytes) return bytes.faults();
  return xml::Document::parse(path.string(), std::move(bytes).value());
}

base::Result<xml::Schema> read_schema(const World& world, std::string_view name) {
  const std::filesystem::path path = world.data / "schemas" / name;
  auto bytes = world.files.read(path, kMostBytes);
  if (!bytes) return bytes.faults();
  return xml::Schema::compile(path.string(), *bytes);
}

base::Result<words::Catalogue> read_words(const World& world, std::string_view language,
                                          const xml::Schema& templates) {
  words::Messages messages;
  std::string spoken;
  std::filesystem::path path = catalogue_path(world, language);
  for (int depth = 0; depth < 4; ++depth) {
    const auto document = read_xml(world, path);
    if (!document) return document.faults();
    auto file = words::read_catalogue(*document, templates);
    if (!file) return file.faults();
    if (spoken.empty()) spoken = file->language;
    messages.merge(file.value().messages);  // what is there already stands
    if (file->otherwise.empty()) break;
    path = catalogue_path(world, file->otherwise);
  }
  return words::Catalogue(std::move(spoken), std::move(messages));
}

}  // namespace winchbook::library
