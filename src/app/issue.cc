#include "app/issue.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <map>
#include <memory>
#include <string_view>
#include <utility>

#include "answers/assessed.h"
#include "app/design.h"
#include "app/editions.h"
#include "app/output.h"
#include "app/reel_code.h"
#include "app/shown.h"
#include "app/survivors.h"
#include "app/weigh.h"
#include "archive/texts_of.h"
#include "assess/assessment.h"
#include "assess/fitting/recorded.h"
#include "assess/tray/tray.h"
#include "document/document.h"
#include "layout/lay_out.h"
#include "library/lock.h"
#include "pdf/draw.h"
#include "record/enum_words.h"
#include "record/latest_day.h"
#include "recordfile/record_file.h"
#include "report/write.h"

namespace winchbook::app {
namespace {

namespace fs = std::filesystem;
using base::Diagnostics;
using base::Result;

constexpr std::uintmax_t kMostProfileBytes = std::uintmax_t{4} << 20U;

report::PhotographFactsById facts_of(const std::vector<pdf::Jpeg>& photographs) {
  report::PhotographFactsById facts;
  for (const pdf::Jpeg& photograph : photographs) {
    facts[{photograph.id}].on_its_side = photograph.orientation >= 5;
  }
  return facts;
}

/// What a PDF carries besides its pages and photographs.
Result<pdf::Contents> contents_of(library::Library& library, const document::Document& written,
                                  const report::Edition& edition,
                                  const recordfile::LoadedRecord& loaded) {
  auto profile = library.files().read(library.world().colour_profile, kMostProfileBytes);
  if (!profile) return profile.faults();
  pdf::Contents contents;
  contents.icc_profile = std::move(profile).value();
  contents.attachments.push_back({"record.xml", "text/xml", written.subject, loaded.bytes, true});
  contents.metadata = {written.title,
                       written.author,
                       written.subject,
                       written.language,
                       base::iso_text(edition.date),
                       "winchbook " + library.world().version};
  return contents;
}

/// What a reader gets besides the record and the bare photographs: the words of the pages, and the
/// name of the file.
std::vector<Offered> offered_besides(const Design& design, const document::Document& written,
                                     const fs::path& output) {
  return {{"the document's own words",
           {design.file.string(), 0, 0},
           document::dump(written),
           "take it out of the template's or the program's words"},
          {"the name of the file",
           {output.string(), 0, 0},
           output.filename().string(),
           "name it otherwise with --output",
           Written::name}};
}

/// The finished file, read as other programs read it. What is attached must be the record that was
/// searched, byte for byte.
Result<std::vector<Offered>> read_back(const fs::path& output, const std::string& bytes,
                                       const std::string& record) {
  const auto texts = archive::texts_of(bytes, output.string());
  if (!texts) return texts.faults();
  std::vector<Offered> offered;
  for (const archive::Text& text : *texts) {
    if (text.attached && text.words == record) continue;
    offered.push_back({text.what,
                       {output.string(), 0, 0},
                       text.words,
                       "take it out of the template's or the program's words"});
  }
  return offered;
}

const char* name_of(recordfile::Taken::Kind kind) {
  using Kind = recordfile::Taken::Kind;
  switch (kind) {
    case Kind::name:
      return "names";
    case Kind::short_name:
      return "short names";
    case Kind::address:
      return "addresses";
    case Kind::contact:
      return "contacts";
    case Kind::mention:
      return "mentions";
    case Kind::inscription:
      return "inscriptions";
    case Kind::photograph:
      return "photographs";
  }
  return "";
}

/// What was taken out and where, what was looked for, and what is left for an eye.
std::string summary_of(const recordfile::LoadedRecord& full,
                       const recordfile::Withholding& withheld, const Survey& before,
                       const Survey& finished) {
  std::map<recordfile::Taken::Kind, std::vector<std::string>> lines;
  for (const recordfile::Taken& taken : withheld.taken)
    lines[taken.kind].push_back(std::to_string(taken.where.line));
  std::string said = fmt::format("withheld, by the lines of {}:\n", full.file);
  for (const auto& [kind, where] : lines)
    said += fmt::format("  {}: {}\n", name_of(kind), fmt::join(where, ", "));
  said += fmt::format(
      "looked for {} words, phrases and numbers that would tell it, in {} texts of the record and "
      "the pages and in {} of the finished file\n",
      before.looked_for, before.texts, finished.texts);
  if (!before.found.empty()) said += fmt::format("in doubt: {}, told above\n", before.found.size());
  return said + "read it before you send it\n";
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

Diagnostics no_day(const recordfile::LoadedRecord& loaded) {
  return {base::of_command(base::error_at({loaded.file, 0, 0}, "no entry of the record bears a day",
                                          "give the day of issue with --date", "command-day"))};
}

/// For good, nobody else writes into the reel's folder meanwhile.
Result<std::unique_ptr<base::HeldLock>> lock_for(const library::World& world,
                                                 const IssueRequest& request) {
  if (!request.final || request.dump) return std::unique_ptr<base::HeldLock>();
  const fs::path file = recordfile::record_path(world.files, request.record);
  return library::lock_reel(world, file.has_parent_path() ? file.parent_path() : fs::path("."),
                            request.command);
}

}  // namespace

Result<Issued> issue(library::Library& library, const IssueRequest& asked) {
  const auto held = lock_for(library.world(), asked);
  if (!held) return held.faults();
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
  const fs::path output = output_path(request.output, request.document, *full,
                                      unusual ? record::word_of(reader) : std::string_view{});
  if (!request.dump) {
    Diagnostics faults = faults_of_output(library, output, *full);
    if (base::has_error(faults)) return faults;
  }
  const auto shown = shown_to(library, reader, *full);
  if (!shown) return shown.faults();
  auto photographs = read_photographs(library, *full, shown->record, reader);
  if (!photographs) return photographs.faults();
  // From here on the record is valid, holds what its reader may see, and does not change.
  report::tell_only_what_was_entered(shown->record.record, design.value().words);

  const auto date = request.date ? request.date : record::latest_day(full->record);
  if (!date) return no_day(*full);
  auto edition =
      next_edition(library, request.document, *date, shown->record, shown->withheld.digests);
  if (!edition) return edition.faults();
  if (!open_tray.empty()) edition.value().unaccounted = request.unaccounted;
  edition.value().reel_code = reel_code(full->record);
  edition.value().reader = reader;
  const auto found = answers::assessed(library, shown->record.record);
  if (!found) return found.faults();
  const bool worth_told = request.with_value || !request.value.sales.empty();
  const auto weighed =
      weigh(library, {{}, request.value, *date}, worth_told, shown->record, *found);
  if (!weighed) return weighed.faults();
  const Made made{*full, *shown, *design, *edition, *found, *weighed};
  const auto written = write(library, made, *photographs);
  if (!written) return written.faults();
  // From here on there is only a document.

  Issued issued;
  issued.edition = edition->number;
  issued.code = edition->code;
  issued.date = *date;
  issued.warnings = full->warnings;
  const auto names = read_name_words(library);
  if (!names) return names.faults();
  const Search search{*full, shown->withheld, reader, *names};
  Survey survey = survivors(search, offered_besides(*design, *written, output));
  if (base::has_error(survey.found)) return survey.found;
  issued.warnings.insert(issued.warnings.end(), survey.found.begin(), survey.found.end());
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
  auto contents = contents_of(library, *written, *edition, shown->record);
  if (!contents) return contents.faults();
  contents.value().photographs = std::move(photographs).value();
  const auto bytes = pdf::draw(*pages, *contents, *fonts);
  if (!bytes) return bytes.faults();
  if (!shown->withheld.taken.empty()) {
    const auto finished = read_back(output, *bytes, shown->record.bytes);
    if (!finished) return finished.faults();
    const Survey again = survivors(search, *finished);
    if (base::has_error(again.found)) return again.found;
    issued.withheld = summary_of(*full, shown->withheld, survey, again);
  }
  const Diagnostics faults =
      write_files(library, *full, {output, *edition, reader, request.final, *bytes});
  if (base::has_error(faults)) return faults;
  issued.file = output;
  return issued;
}

}  // namespace winchbook::app
