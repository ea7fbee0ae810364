#include "app/issue.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <memory>
#include <stdexcept>
#include <string_view>
#include <utility>

#include "answers/assessed.h"
#include "app/design.h"
#include "app/editions.h"
#include "app/reel_code.h"
#include "app/survivors.h"
#include "app/weigh.h"
#include "assess/assessment.h"
#include "assess/fitting/recorded.h"
#include "assess/tray/tray.h"
#include "document/document.h"
#include "knowledge/drag.h"
#include "layout/lay_out.h"
#include "library/lock.h"
#include "library/photographs.h"
#include "pdf/draw.h"
#include "photo/jpeg.h"
#include "photo/remarks.h"
#include "record/enum_words.h"
#include "recordfile/record_file.h"
#include "recordfile/withhold.h"
#include "report/write.h"
#include "seal/digest.h"
#include "seal/short_code.h"

namespace winchbook::app {
namespace {

namespace fs = std::filesystem;
using base::Diagnostics;
using base::Result;

constexpr std::uintmax_t kMostProfileBytes = std::uintmax_t{4} << 20U;

/// The record as its reader may see it, and how it came of the full one.
struct Shown {
  recordfile::LoadedRecord record;
  recordfile::Withholding withheld;
};

/// A withheld edition is a record like any other: it keeps the schema and the rules.
Result<Shown> shown_to(library::Library& library, record::Reader reader,
                       const recordfile::LoadedRecord& full) {
  auto withheld = recordfile::withhold(full, reader);
  if (!withheld) return withheld.faults();
  auto record = library.record_of(full.file, withheld->bytes);
  if (!record) {
    throw std::logic_error("the withheld edition is no record: " +
                           base::to_string(record.faults().front()));
  }
  record.value().folder = full.folder;
  return Shown{std::move(record).value(), std::move(withheld).value()};
}

/// Reads every photograph once, and makes sure that it is the one the record knows; gives those
/// that are shown. The edition has the same photographs in the same order, if by other ids.
Result<std::vector<pdf::Jpeg>> read_photographs(library::Library& library,
                                                const recordfile::LoadedRecord& full,
                                                const recordfile::LoadedRecord& shown,
                                                record::Reader reader) {
  std::vector<pdf::Jpeg> photographs;
  Diagnostics faults;
  for (std::size_t i = 0; i < full.record.photos.size(); ++i) {
    const record::Photo& photo = full.record.photos[i];
    if (photo.withheld) continue;
    if (auto fault = library::fault_of_place(library.files(), full.folder, photo.file)) {
      fault->where = full.where(photo.id.text);
      faults.push_back(std::move(*fault));
      continue;
    }
    auto bytes = library.files().read(full.folder / photo.file, photo::kMostBytes);
    const bool same = bytes && seal::hex(seal::fingerprint(*bytes)) == photo.sha256;
    const auto facts = same ? photo::inspect(*bytes) : Result<photo::JpegFacts>(Diagnostics{});
    if (!facts) {
      faults.push_back(
          base::error_at(full.where(photo.id.text),
                         "photograph \"" + photo.file + "\" is not there or not as it was recorded",
                         "run winchbook check to see what is wrong with it", "photo-changed"));
      continue;
    }
    if (shown.record.photos[i].withheld) continue;
    if (facts->tells_where_taken && reader != record::Reader::owner) {
      faults.push_back(base::error_at(
          full.where(photo.id.text),
          "photograph \"" + photo.file + "\" says where it was taken, and that is an address",
          "take its metadata out without loss, and write its new SHA-256", "withheld-survives"));
      continue;
    }
    photographs.push_back({shown.record.photos[i].id.text, std::move(bytes).value(), facts->width,
                           facts->height, facts->colour == photo::Colour::grey ? 1 : 3,
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

/// The edition that would be issued now; `withheld` are the digests in the record it carries.
Result<report::Edition> next_edition(library::Library& library, const IssueRequest& request,
                                     const recordfile::LoadedRecord& loaded,
                                     const std::vector<std::string>& withheld) {
  const auto issued = read_editions(library, loaded.folder);
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

pdf::Contents contents_of(library::Library& library, const document::Document& written,
                          const report::Edition& edition, const recordfile::LoadedRecord& loaded) {
  pdf::Contents contents;
  contents.attachments.push_back({"record.xml", "text/xml", written.subject, loaded.bytes, true});
  contents.metadata = {written.title,
                       written.author,
                       written.subject,
                       written.language,
                       base::iso_text(edition.date),
                       "winchbook " + library.world().version};
  return contents;
}

/// Beside the record: "keepsake.pdf", and "keepsake-stranger.pdf" when it is not written for the
/// document's usual reader, so that neither is written over the other.
fs::path output_path(const IssueRequest& request, const recordfile::LoadedRecord& loaded,
                     std::string_view unusual_reader) {
  if (!request.output.empty()) return request.output;
  std::string name = request.document;
  if (!unusual_reader.empty()) name += "-" + std::string(unusual_reader);
  return loaded.folder / (name + ".pdf");
}

/// A file that is there and is no PDF is somebody's work, perhaps the record itself; and what is in
/// issued/ is never written over.
Diagnostics faults_of_output(library::Library& library, const fs::path& output,
                             const recordfile::LoadedRecord& loaded) {
  const base::Location where{output.string(), 0, 0};
  const fs::path folder = output.has_parent_path() ? output.parent_path() : fs::path(".");
  if (!library.files().is_folder(folder)) {
    return {base::of_machine(
        base::error_at(where, "cannot write: there is no folder \"" + folder.string() + "\"",
                       "make the folder, or name another; nothing was changed", "file-write"))};
  }
  const fs::path kept = library.files().resolved(loaded.folder / "issued");
  if (library.files().resolved(output).parent_path() == kept) {
    return {
        base::of_machine(base::error_at(where, "editions kept in issued/ are never written over",
                                        "name a file outside issued/", "file-output"))};
  }
  if (!library.files().exists(output) || library.files().is_folder(output)) return {};
  constexpr std::uintmax_t kMostOutputBytes = std::uintmax_t{1} << 31U;
  const auto old = library.files().read(output, kMostOutputBytes);
  if (old && old->starts_with("%PDF-")) return {};
  return {base::of_machine(base::error_at(where, "the file is there already and is not a PDF",
                                          "name another file; this one was left as it is",
                                          "file-output"))};
}

/// What goes where once everything is drawn.
struct Finished {
  fs::path output;
  const report::Edition& edition;
  record::Reader reader = record::Reader::owner;
  bool final = false;
  const std::string& bytes;
};

Diagnostics write_files(library::Library& library, const recordfile::LoadedRecord& loaded,
                        const Finished& finished) {
  if (!finished.final) return library.files().write_aside(finished.output, finished.bytes);
  const report::Edition& edition = finished.edition;
  // Listed and kept first: a book that claims an edition must have one.
  Diagnostics faults =
      keep_edition(library, loaded.folder,
                   {edition.document, edition.number, base::iso_text(edition.date),
                    std::string(record::word_of(finished.reader)), kept_name(edition),
                    edition.fingerprint, edition.code, "winchbook " + library.world().version},
                   finished.bytes);
  if (base::has_error(faults)) return faults;
  return library.files().write_aside(finished.output, finished.bytes);
}

/// Nothing that was withheld may be left anywhere in what the reader gets.
Diagnostics survivors_in(library::Library& library, const Design& design,
                         const recordfile::LoadedRecord& full, const Shown& shown,
                         record::Reader reader, const document::Document& written,
                         const std::vector<pdf::Jpeg>& photographs) {
  if (shown.withheld.taken.empty()) return {};
  const auto names = read_name_words(library);
  if (!names) return names.faults();
  std::vector<Offered> offered{{"the document's own words",
                                {design.file.string(), 0, 0},
                                document::dump(written),
                                "take it out of the template's or the program's words"}};
  const auto& shown_photos = shown.record.record.photos;
  for (const pdf::Jpeg& photograph : photographs) {
    const auto found =
        std::find_if(shown_photos.begin(), shown_photos.end(),
                     [&](const record::Photo& one) { return one.id.text == photograph.id; });
    const auto index = static_cast<std::size_t>(found - shown_photos.begin());
    offered.push_back({"what photograph \"" + found->file + "\" says of itself",
                       full.where(full.record.photos[index].id.text),
                       photo::remarks_in(photograph.bytes),
                       "take its metadata out without loss, and write its new SHA-256"});
  }
  return survivors({full, shown.withheld, reader, *names}, offered);
}

/// Layout knows words, not files: the place of a character no face has is where the record first
/// holds it.
Diagnostics with_places(Diagnostics faults, const recordfile::LoadedRecord& full) {
  const xml::Source source(full.file, full.bytes);
  for (base::Diagnostic& fault : faults) {
    const std::size_t quoted = fault.message.find('"');
    if (fault.rule != "missing-glyph" || quoted == std::string::npos) continue;
    const std::size_t end = fault.message.find('"', quoted + 2);
    const std::string character = fault.message.substr(quoted + 1, end - quoted - 1);
    const std::size_t at = full.bytes.find(character);
    if (at != std::string::npos) fault.where = source.where(at);
  }
  return faults;
}

/// What is printed, and what it was made from.
struct Made {
  const recordfile::LoadedRecord& full;
  const Shown& shown;
  const Design& design;
  const report::Edition& edition;
  const assess::Assessment& assessment;
  const Weighed& weighed;
};

/// Drag and line, where a chapter of the document tells them.
Result<std::optional<assess::fitting::Recorded>> recorded_in(library::Library& library,
                                                             const report::Template& design,
                                                             const record::Record& record) {
  const record::Visit* visit = record::last_visit(record);
  std::optional<assess::fitting::Recorded> recorded;
  if (!report::tells_drag_and_line(design) || visit == nullptr) return recorded;
  const auto knowledge = library.drag();
  if (!knowledge) return knowledge.faults();
  recorded = assess::fitting::recorded(record, *visit, **knowledge);
  return recorded;
}

Result<document::Document> write(library::Library& library, const Made& made,
                                 const std::vector<pdf::Jpeg>& photographs) {
  const record::Record& record = made.shown.record.record;
  const auto recorded = recorded_in(library, made.design.chapters, record);
  if (!recorded) return recorded.faults();
  // From here on nothing computes a fact.

  const auto facts = facts_of(photographs);
  const auto pointer = [](const auto& found) { return found ? &*found : nullptr; };
  return report::write({record, made.assessment, made.design.chapters, made.design.words,
                        made.edition, facts, pointer(made.weighed.worth),
                        pointer(made.weighed.courses), pointer(*recorded)});
}

/// Nothing is given back on paper that has not been handed over.
Diagnostics faults_of_hand_back(const recordfile::LoadedRecord& full) {
  const record::Visit* last = record::last_visit(full.record);
  if (last == nullptr || last->hand_back) return {};
  return {base::error_at(full.where(last->id.text),
                         "the reel has not been handed back, so there is nothing to sign for",
                         "enter it with winchbook handback, then print the receipt",
                         "not-handed-back")};
}

/// Of the chapters those of the part that was asked for.
Diagnostics keep_only(const IssueRequest& request, report::Template& chapters) {
  std::erase_if(chapters.sections, [&](const auto& one) { return one.part != request.only; });
  chapters.thin.reset();
  if (!chapters.sections.empty()) return {};
  return {base::of_command(
      base::error("only the labels are printed in parts, not the " + request.document,
                  "leave --only out, or ask for --document labels", "command-only"))};
}

/// At ease; dense where the template wants each chapter on one page and one of them takes more.
Result<layout::Pages> lay_out(const document::Document& written, const Design& design,
                              const text::FontBook& fonts) {
  auto pages = layout::lay_out(written, design.style, fonts);
  if (!pages || !design.chapters.tightens || pages->pages.size() <= written.chapters.size())
    return pages;
  return layout::lay_out(written, design.tight, fonts);
}

/// A book is not closed over a part that nobody can find.
Diagnostics faults_of_tray(const recordfile::LoadedRecord& full) {
  Diagnostics faults;
  for (const record::Visit& visit : full.record.visits) {
    const assess::tray::Account account = assess::tray::account(full.record, visit);
    for (std::size_t i = 0; i < account.pieces.size(); ++i) {
      const assess::tray::PieceAccount& one = account.pieces[i];
      if (one.unaccounted() == 0) continue;
      faults.push_back(base::error_at(
          full.where(visit.id.text, "line", i),
          fmt::format("of {} {} came off or lay loose, and {} are accounted for", one.name,
                      one.came(), one.went()),
          "say where it went with winchbook tray, or give the reason to be printed with "
          "--unaccounted",
          "tray"));
    }
  }
  return faults;
}

/// What was asked, and what the template says where nothing was.
IssueRequest completed(IssueRequest request, const report::Template& chapters) {
  request.document = chapters.document;
  request.with_value = request.with_value || chapters.needs.value;
  return request;
}

}  // namespace

Result<Issued> issue(library::Library& library, const IssueRequest& asked) {
  std::unique_ptr<base::HeldLock> held;
  if (asked.final && !asked.dump) {
    const fs::path file = recordfile::record_path(library.files(), asked.record);
    auto lock = library::lock_reel(library.world(),
                                   file.has_parent_path() ? file.parent_path() : fs::path("."),
                                   asked.command);
    if (!lock) return lock.faults();
    held = std::move(lock).value();
  }
  const auto full = library.record(asked.record);
  if (!full) return full.faults();
  auto design =
      read_design(library, {asked.document, asked.design, asked.paper, full->record.language});
  if (!design) return design.faults();
  const IssueRequest request = completed(asked, design->chapters);
  const report::Needs& needs = design->chapters.needs;
  if (auto faults = needs.hand_back ? faults_of_hand_back(*full) : Diagnostics{}; !faults.empty())
    return faults;
  const Diagnostics open_tray = needs.tray_closed ? faults_of_tray(*full) : Diagnostics{};
  if (!open_tray.empty() && request.unaccounted.empty()) return open_tray;
  if (!request.only.empty()) {
    if (auto faults = keep_only(request, design.value().chapters); !faults.empty()) return faults;
  }
  const record::Reader reader = request.reader.value_or(design->chapters.reader);
  const bool unusual = reader != design->chapters.reader;
  const fs::path output =
      output_path(request, *full, unusual ? record::word_of(reader) : std::string_view{});
  if (!request.dump) {
    Diagnostics faults = faults_of_output(library, output, *full);
    if (base::has_error(faults)) return faults;
  }
  const auto shown = shown_to(library, reader, *full);
  if (!shown) return shown.faults();
  auto photographs = read_photographs(library, *full, shown->record, reader);
  if (!photographs) return photographs.faults();
  // From here on the record is valid, holds what its reader may see, and does not change.

  auto edition = next_edition(library, request, shown->record, shown->withheld.digests);
  if (!edition) return edition.faults();
  if (!open_tray.empty()) edition.value().unaccounted = request.unaccounted;
  edition.value().reel_code = reel_code(full->record);
  const auto found = answers::assessed(library, shown->record.record);
  if (!found) return found.faults();
  const bool worth_told = request.with_value || !request.value.sales.empty();
  const auto weighed =
      weigh(library, {{}, request.value, request.date}, worth_told, shown->record, *found);
  if (!weighed) return weighed.faults();
  const Made made{*full, *shown, *design, *edition, *found, *weighed};
  const auto written = write(library, made, *photographs);
  if (!written) return written.faults();
  // From here on there is only a document.

  Issued issued;
  issued.edition = edition->number;
  issued.code = edition->code;
  issued.warnings = full->warnings;
  Diagnostics left = survivors_in(library, *design, *full, *shown, reader, *written, *photographs);
  if (base::has_error(left)) return left;
  std::move(left.begin(), left.end(), std::back_inserter(issued.warnings));
  if (request.dump == IssueRequest::Dump::words) {
    issued.text = document::dump(*written);
    return issued;
  }
  const auto fonts = open_fonts(library, *design);
  if (!fonts) return fonts.faults();
  const auto pages = lay_out(*written, *design, *fonts);
  // A face that is not there lacks every character: the cause is told, not its consequences.
  if (base::has_error(fonts->faults())) return fonts->faults();
  if (!pages) return with_places(pages.faults(), *full);
  issued.pages = pages->pages.size();
  // From here on every position is fixed.

  if (request.dump == IssueRequest::Dump::pages) {
    issued.text = layout::dump(*pages);
    return issued;
  }
  pdf::Contents contents = contents_of(library, *written, *edition, shown->record);
  contents.photographs = std::move(photographs).value();
  auto profile = library.files().read(library.world().colour_profile, kMostProfileBytes);
  if (!profile) return profile.faults();
  contents.icc_profile = std::move(profile).value();
  const auto bytes = pdf::draw(*pages, contents, *fonts);
  if (!bytes) return bytes.faults();
  const Diagnostics faults =
      write_files(library, *full, {output, *edition, reader, request.final, *bytes});
  if (base::has_error(faults)) return faults;
  issued.file = output;
  return issued;
}

}  // namespace winchbook::app
