#include "app/design.h"

#include <algorithm>
#include <set>
#include <utility>

#include "report/write.h"

namespace winchbook::app {
namespace {

namespace fs = std::filesystem;
using base::Diagnostics;
using base::Result;

bool holds(const std::vector<std::string>& all, const std::string& one) {
  return std::find(all.begin(), all.end(), one) != all.end();
}

/// Puts the template's own words in the place of the program's, or beside them those that name a
/// document of the bench's own.
Diagnostics reword(const report::Template& chapters, const fs::path& file,
                   words::Catalogue& words) {
  Diagnostics faults;
  words::Messages own;
  const std::vector<std::string> names = report::name_messages(chapters);
  for (const auto& [key, pattern, needs] : chapters.rewordings) {
    if (!words.has(key) && !holds(names, key)) {
      faults.push_back(base::error_at({file.string(), 0, 0},
                                      "there is no message \"" + key + "\" to reword",
                                      "take a key of shared/words/en-GB.xml", "template-words"));
    }
    words.reword(key, pattern, needs);
    own.insert_or_assign(key, pattern);
  }
  for (base::Diagnostic& fault : words::Catalogue(words.language(), std::move(own)).faults()) {
    fault.where.file = file.string();
    faults.push_back(std::move(fault));
  }
  return faults;
}

/// The documents the program has templates for.
std::string documents_of(library::Library& library) {
  const fs::path folder = library.world().data / "report-templates";
  std::string names;
  for (const std::string& name : library.files().names_in(folder)) {
    if (!name.ends_with(".xml")) continue;
    const auto file = library::read_xml(library.world(), folder / name);
    if (!file || !report::is_template(*file)) continue;
    names += (names.empty() ? "" : ", ") + name.substr(0, name.size() - 4);
  }
  return names;
}

/// A document without words for its name cannot be told.
Diagnostics faults_of_name(library::Library& library, const report::Template& chapters,
                           const base::Location& where, const words::Catalogue& words) {
  std::string missing;
  for (const std::string& key : report::name_messages(chapters)) {
    if (!words.has(key)) missing += (missing.empty() ? "" : ", ") + key;
  }
  if (missing.empty()) return {};
  return {base::error_at(where, "there are no words for a document \"" + chapters.document + "\"",
                         "write them into the template as words (" + missing +
                             "), or name one of " + documents_of(library),
                         "template-document")};
}

/// A paper that was asked for and is not there is a fault of what was typed.
Diagnostics told_as_typed(Diagnostics faults, const std::string& paper) {
  for (base::Diagnostic& fault : faults) {
    if (fault.rule != "template-paper" || !fault.hint.starts_with("the papers are ")) continue;
    fault = base::of_command(
        base::error("there is no paper \"" + paper + "\"", fault.hint, "command-paper"));
  }
  return faults;
}

}  // namespace

Result<Design> read_design(library::Library& library, const DesignRequest& request) {
  const fs::path file =
      request.file.empty() ? library.world().data / "report-templates" / (request.document + ".xml")
                           : request.file;
  if (request.file.empty() && !library.files().exists(file)) {
    return base::of_command(base::error(
        "there is no document \"" + request.document + "\"",
        "the documents are " + documents_of(library) + "; or name a template with --template",
        "command-document"));
  }
  const auto schema = library.schema("template-1.xsd");
  if (!schema) return schema.faults();
  const auto document = library::read_xml(library.world(), file);
  if (!document) return document.faults();
  auto chapters = report::read_template(*document, **schema);
  if (!chapters) return chapters.faults();
  const bool asked = request.document != DesignRequest{}.document;
  if (!request.file.empty() && asked && request.document != chapters->document) {
    return base::of_command(
        base::error("the template " + file.string() + " is of a document \"" + chapters->document +
                        "\", not \"" + request.document + "\"",
                    "leave --document out, or change the template", "command-document"));
  }
  const auto style_document =
      library::read_xml(library.world(), file.parent_path() / chapters->style_file);
  if (!style_document) return style_document.faults();
  const std::string paper = !request.paper.empty()     ? request.paper
                            : !chapters->paper.empty() ? chapters->paper
                                                       : report::paper_of(request.language);
  auto style = report::read_style(*style_document, **schema, paper, chapters->dense);
  if (!style) {
    return request.paper.empty() ? style.faults() : told_as_typed(style.faults(), paper);
  }
  auto words = library.words(request.language);
  if (!words) return words.faults();
  if (auto faults = reword(*chapters, file, words.value()); !faults.empty()) return faults;
  auto nameless = faults_of_name(library, *chapters, document->where(document->root()), *words);
  if (!nameless.empty()) return nameless;
  document::Style tight = *style;
  if (chapters->tightens) {
    auto dense = report::read_style(*style_document, **schema, paper, true);
    if (!dense) return dense.faults();
    tight = std::move(dense).value();
  }
  return Design{std::move(chapters).value(),
                std::move(style).value(),
                std::move(tight),
                std::move(words).value(),
                file,
                report::faces_of(*style_document)};
}

Result<text::FontBook> open_fonts(library::Library& library, const Design& design) {
  const auto faces = library.faces();
  if (!faces) return faces.faults();
  text::FontBook book(**faces);
  const document::Style& style = design.style;
  std::set<std::string> names(style.fallback.begin(), style.fallback.end());
  for (const document::TypeStyle& type : style.type) {
    for (const std::string& name :
         {type.family.regular, type.family.italic, type.family.bold, type.family.bold_italic}) {
      if (!name.empty()) names.insert(name);
    }
  }
  for (const std::string& name : names) {
    if (book.knows(name)) continue;
    const auto named = design.faces.find(name);
    return base::error_at(
        named == design.faces.end() ? base::Location{} : named->second,
        "there is no face \"" + name + "\"",
        "name a face of " + library.faces_file().string() + ", or add a line to it",
        "template-face");
  }
  return book;
}

}  // namespace winchbook::app
