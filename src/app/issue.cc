#include "app/issue.h"

#include <algorithm>
#include <set>
#include <utility>

#include "app/check.h"
#include "app/editions.h"
#include "assess/assessment.h"
#include "document/document.h"
#include "knowledge/knowledge.h"
#include "layout/lay_out.h"
#include "pdf/draw.h"
#include "photo/jpeg.h"
#include "recordfile/record_file.h"
#include "report/template.h"
#include "report/write.h"
#include "seal/digest.h"
#include "seal/short_code.h"
#include "text/font_book.h"

namespace winchbook::app {
namespace {

namespace fs = std::filesystem;
using base::Diagnostics;
using base::Result;

constexpr std::uintmax_t kMostProfileBytes = std::uintmax_t{4} << 20U;
constexpr const char* kColourProfile = "/usr/share/color/icc/sRGB.icc";

struct Design {
  report::Template chapters;
  document::Style style;
  words::Catalogue words;
};

/// Puts the template's own words in the place of the program's.
Diagnostics reword(const report::Template& chapters, const fs::path& file,
                   words::Catalogue& words) {
  Diagnostics faults;
  words::Messages own;
  for (const auto& [key, pattern] : chapters.rewordings) {
    if (!words.has(key)) {
      faults.push_back(base::error_at({file.string(), 0, 0},
                                      "there is no message \"" + key + "\" to reword",
                                      "take a key of shared/words/en-GB.xml", "template-words"));
    }
    words.reword(key, pattern);
    own.insert_or_assign(key, pattern);
  }
  for (base::Diagnostic& fault : words::Catalogue(words.language(), std::move(own)).faults()) {
    fault.where.file = file.string();
    faults.push_back(std::move(fault));
  }
  return faults;
}

Result<Design> read_design(const World& world, const IssueRequest& request,
                           const std::string& language) {
  const fs::path file = request.design.empty()
                            ? world.data / "report-templates" / (request.document + ".xml")
                            : request.design;
  if (request.design.empty() && !world.files.exists(file)) {
    return base::error("there is no document \"" + request.document + "\"",
                       "ask for keepsake, or name a template with --template", "document");
  }
  const auto schema = read_schema(world, "template-1.xsd");
  if (!schema) return schema.faults();
  const auto document = read_xml(world, file);
  if (!document) return document.faults();
  auto chapters = report::read_template(*document, *schema);
  if (!chapters) return chapters.faults();
  const auto style_document = read_xml(world, file.parent_path() / chapters->style_file);
  if (!style_document) return style_document.faults();
  const std::string paper = !request.paper.empty()     ? request.paper
                            : !chapters->paper.empty() ? chapters->paper
                                                       : report::paper_of(language);
  auto style = report::read_style(*style_document, *schema, paper);
  if (!style) return style.faults();
  auto words = read_words(world, language, *schema);
  if (!words) return words.faults();
  if (auto faults = reword(*chapters, file, words.value()); !faults.empty()) return faults;
  return Design{std::move(chapters).value(), std::move(style).value(), std::move(words).value()};
}

Result<text::FontBook> open_fonts(const World& world, const document::Style& style) {
  const fs::path file = world.data / "shared" / "fonts.txt";
  const auto bytes = world.files.read(file, kMostProfileBytes);
  if (!bytes) return bytes.faults();
  auto entries = text::read_fonts_list(*bytes, file.string());
  if (!entries) return entries.faults();
  text::FontBook book(std::move(entries).value());
  std::set<std::string> names(style.fallback.begin(), style.fallback.end());
  for (const document::TypeStyle& type : style.type) {
    for (const std::string& name :
         {type.family.regular, type.family.italic, type.family.bold, type.family.bold_italic}) {
      if (!name.empty()) names.insert(name);
    }
  }
  for (const std::string& name : names) {
    if (!book.knows(name)) {
      return base::error_at({file.string(), 0, 0}, "there is no face \"" + name + "\"",
                            "add it to this list, or name another in the style", "font-name");
    }
  }
  return book;
}

/// Reads every photograph once, and makes sure that it is the one the record knows.
Result<std::vector<pdf::Jpeg>> read_photographs(const World& world,
                                                const recordfile::LoadedRecord& loaded) {
  std::vector<pdf::Jpeg> photographs;
  Diagnostics faults;
  for (const record::Photo& photo : loaded.record.photos) {
    if (photo.withheld) continue;
    if (auto fault = fault_of_place(world.files, loaded.folder, photo.file)) {
      fault->where = loaded.where(photo.id.text);
      faults.push_back(std::move(*fault));
      continue;
    }
    auto bytes = world.files.read(loaded.folder / photo.file, photo::kMostBytes);
    const bool same = bytes && seal::hex(seal::fingerprint(*bytes)) == photo.sha256;
    const auto facts = same ? photo::inspect(*bytes) : Result<photo::JpegFacts>(Diagnostics{});
    if (!facts) {
      faults.push_back(
          base::error_at(loaded.where(photo.id.text),
                         "photograph \"" + photo.file + "\" is not there or not as it was recorded",
                         "run winchbook check to see what is wrong with it", "photo-changed"));
      continue;
    }
    photographs.push_back({photo.id.text, std::move(bytes).value(), facts->width, facts->height,
                           facts->colour == photo::Colour::grey ? 1 : 3,
                           static_cast<int>(facts->orientation), false, facts->icc_profile});
  }
  if (!faults.empty()) return faults;
  return photographs;
}

report::PhotographFactsById facts_of(const std::vector<pdf::Jpeg>& photographs) {
  report::PhotographFactsById facts;
  for (const pdf::Jpeg& photograph : photographs) {
    facts[{photograph.id}].on_its_side = photograph.orientation >= 5;
  }
  return facts;
}

/// Where an edition is kept, from the reel's folder.
std::string kept_name(const report::Edition& edition) {
  return "issued/" + edition.document + "-" + std::to_string(edition.number) + ".pdf";
}

/// The edition that would be issued now.
Result<report::Edition> next_edition(const World& world, const IssueRequest& request,
                                     const recordfile::LoadedRecord& loaded) {
  const auto issued = read_editions(world, loaded.folder);
  if (!issued) return issued.faults();
  report::Edition edition;
  edition.document = request.document;
  edition.date = request.date;
  for (const IssuedEdition& one : *issued) {
    if (one.document != request.document) continue;
    edition.number = std::max(edition.number, one.number + 1);
    edition.earlier.push_back(one.code);
  }
  // A list that was lost does not give an edition's number twice.
  while (world.files.exists(loaded.folder / kept_name(edition)))
    ++edition.number;
  const seal::Digest fingerprint = seal::fingerprint(loaded.bytes);
  edition.fingerprint = seal::hex(fingerprint);
  edition.code =
      seal::grouped(seal::short_code({fingerprint, edition.document, std::to_string(edition.number),
                                      base::iso_text(edition.date)}));
  // The page prints it in three words.
  std::replace(edition.code.begin(), edition.code.end(), '-', ' ');
  return edition;
}

pdf::Contents contents_of(const World& world, const document::Document& written,
                          const report::Edition& edition, const recordfile::LoadedRecord& loaded) {
  pdf::Contents contents;
  contents.attachments.push_back({"record.xml", "text/xml", written.subject, loaded.bytes, true});
  contents.metadata = {written.title,
                       written.author,
                       written.subject,
                       written.language,
                       base::iso_text(edition.date),
                       "winchbook " + world.version};
  return contents;
}

fs::path output_path(const IssueRequest& request, const recordfile::LoadedRecord& loaded) {
  if (!request.output.empty()) return request.output;
  return loaded.folder / (request.document + ".pdf");
}

/// A file that is there and is no PDF is somebody's work, perhaps the record itself; and what is in
/// issued/ is never written over.
Diagnostics faults_of_output(const World& world, const IssueRequest& request,
                             const recordfile::LoadedRecord& loaded) {
  const fs::path output = output_path(request, loaded);
  const base::Location where{output.string(), 0, 0};
  const fs::path folder = output.has_parent_path() ? output.parent_path() : fs::path(".");
  if (!world.files.is_folder(folder)) {
    return {base::error_at(where, "cannot write: there is no folder \"" + folder.string() + "\"",
                           "make the folder, or name another; nothing was changed", "file-write")};
  }
  const fs::path kept = world.files.resolved(loaded.folder / "issued");
  if (world.files.resolved(output).parent_path() == kept) {
    return {base::error_at(where, "editions kept in issued/ are never written over",
                           "name a file outside issued/", "file-output")};
  }
  if (!world.files.exists(output) || world.files.is_folder(output)) return {};
  constexpr std::uintmax_t kMostOutputBytes = std::uintmax_t{1} << 31U;
  const auto old = world.files.read(output, kMostOutputBytes);
  if (old && old->starts_with("%PDF-")) return {};
  return {base::error_at(where, "the file is there already and is not a PDF",
                         "name another file; this one was left as it is", "file-output")};
}

Diagnostics write_files(const World& world, const IssueRequest& request,
                        const recordfile::LoadedRecord& loaded, const report::Edition& edition,
                        const std::string& bytes) {
  if (!request.final) return world.files.write_aside(output_path(request, loaded), bytes);
  // Listed and kept first: a book that claims an edition must have one.
  Diagnostics faults = keep_edition(
      world, loaded.folder,
      {edition.document, edition.number, base::iso_text(edition.date), request.reader,
       kept_name(edition), edition.fingerprint, edition.code, "winchbook " + world.version},
      bytes);
  if (base::has_error(faults)) return faults;
  return world.files.write_aside(output_path(request, loaded), bytes);
}

}  // namespace

Result<Issued> issue(const World& world, const IssueRequest& request) {
  const auto loaded = recordfile::read(world.files, request.record, world.data / "schemas");
  if (!loaded) return loaded.faults();
  if (request.give == IssueRequest::Give::pdf) {
    Diagnostics faults = faults_of_output(world, request, *loaded);
    if (base::has_error(faults)) return faults;
  }
  auto photographs = read_photographs(world, *loaded);
  if (!photographs) return photographs.faults();
  // From here on the record is valid and does not change; XML is gone.

  const auto knowledge =
      knowledge::load(world.files, world.data, assess::word(loaded->record.reel.kind));
  if (!knowledge) return knowledge.faults();
  const assess::Assessment assessment = assess::assess(loaded->record, *knowledge);
  // From here on nothing computes a fact.

  const auto design = read_design(world, request, loaded->record.language);
  if (!design) return design.faults();
  const auto edition = next_edition(world, request, *loaded);
  if (!edition) return edition.faults();
  const auto facts = facts_of(*photographs);
  const auto written =
      report::write({loaded->record, assessment, design->chapters, design->words, *edition, facts});
  if (!written) return written.faults();
  // From here on there is only a document.

  Issued issued;
  issued.edition = edition->number;
  issued.code = edition->code;
  issued.warnings = loaded->warnings;
  if (request.give == IssueRequest::Give::words) {
    issued.text = document::dump(*written);
    return issued;
  }
  const auto fonts = open_fonts(world, design->style);
  if (!fonts) return fonts.faults();
  const auto pages = layout::lay_out(*written, design->style, *fonts);
  // A face that is not there lacks every character: the cause is told, not its consequences.
  if (base::has_error(fonts->faults())) return fonts->faults();
  if (!pages) return pages.faults();
  issued.pages = pages->pages.size();
  // From here on every position is fixed.

  if (request.give == IssueRequest::Give::pages) {
    issued.text = layout::dump(*pages);
    return issued;
  }
  pdf::Contents contents = contents_of(world, *written, *edition, *loaded);
  contents.photographs = std::move(photographs).value();
  auto profile = world.files.read(kColourProfile, kMostProfileBytes);
  if (!profile) return profile.faults();
  contents.icc_profile = std::move(profile).value();
  const auto bytes = pdf::draw(*pages, contents, *fonts);
  if (!bytes) return bytes.faults();
  const Diagnostics faults = write_files(world, request, *loaded, *edition, *bytes);
  if (base::has_error(faults)) return faults;
  issued.file = output_path(request, *loaded);
  return issued;
}

}  // namespace winchbook::app
