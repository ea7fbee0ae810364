#include "report/write.h"

#include <algorithm>
#include <array>
#include <set>
#include <utility>

#include "assess/entered.h"
#include "assess/with_the_reel.h"
#include "report/dating_words.h"
#include "report/sections.h"
#include "report/statement.h"
#include "report/told.h"

namespace winchbook::report {
namespace {

using document::Document;
using record::Record;
using record::Visit;

bool fitted_in(const Record& record, const Visit& visit) {
  return std::any_of(record.fittings.begin(), record.fittings.end(),
                     [&](const record::Fitting& one) { return one.visit == visit.id; });
}

/// A clean and grease of a few rows gets the template's short list of chapters.
bool is_thin(const Record& record, const Visit& visit, const Template& design) {
  return design.thin && record.places.size() <= design.thin->places &&
         record.photos.size() <= design.thin->photographs && !fitted_in(record, visit);
}

std::string maker_line(const Telling& telling) {
  using Maker = assess::Identity::Maker;
  const assess::Identity& reel = telling.assessment.identity;
  const std::string kind =
      telling.words.say("reel-kind." + std::string(record::word_of(telling.record.reel.kind)));
  const words::Argument kind_is{"kind", kind};
  if (reel.how == Maker::not_known) return telling.words.say("cover.kind-only", {kind_is});
  const words::Argument maker_is{"maker", reel.maker};
  if (reel.how == Maker::attributed)
    return telling.words.say("cover.kind-attributed", {kind_is, maker_is});
  if (reel.place.empty())
    return telling.words.say("cover.kind-and-maker-only", {kind_is, maker_is});
  return telling.words.say("cover.kind-and-maker", {kind_is, maker_is, {"place", reel.place}});
}

/// When it was handed back, or else when it came.
std::string last_line(const Telling& telling) {
  const Visit& visit = telling.visit;
  const auto year_of = [](const base::EdtfDate& date) {
    const auto day = date.latest() ? date.latest() : date.earliest();
    return day ? std::to_string(day->year) : date.text();
  };
  const auto& back = visit.hand_back;
  return telling.words.say("cover.stands", {{"state", back ? "back" : "here"},
                                            {"year", year_of(back ? back->on : visit.taken_in)}});
}

/// Which reel it is, when it was made and where it stands now, a line each; of a year that nobody
/// gave nothing is said.
std::vector<std::string> stand_first(const Telling& telling) {
  const assess::Identity& reel = telling.assessment.identity;
  std::vector<std::string> lines{maker_line(telling)};
  if (reel.assembled()) {
    lines.push_back(
        telling.words.say("cover.assembled", {{"number", telling.words.spelled(reel.reels)}}));
  }
  if (const std::string years = made_years(telling); !years.empty()) {
    lines.push_back(
        telling.words.say(reel.assembled() ? "cover.made-assembled" : "cover.made",
                          {{"date", years}, {"sure", reel.made.certain ? "certain" : "likely"}}));
  }
  lines.push_back(last_line(telling));
  return lines;
}

std::string written_at(const Telling& telling) {
  const auto& bench = telling.record.bench;
  if (bench.restorers.empty()) {
    return telling.words.say("cover.written-at-bench",
                             {{"bench", bench.name}, {"place", bench.place}});
  }
  return telling.words.say("cover.written-at", {{"bench", bench.name},
                                                {"place", bench.place},
                                                {"name", telling.name(bench.restorers.front())}});
}

/// The marks a stranger would read first, when there is no photograph to show them.
std::vector<std::string> marks_as_read(const Telling& telling) {
  constexpr std::size_t kMost = 6;
  std::vector<std::string> lines;
  for (const record::Marking& mark : telling.record.markings) {
    const std::string* text = record::told(mark.text);
    if (text == nullptr || lines.size() == kMost) continue;
    lines.push_back(*text);
  }
  return lines;
}

/// Says that nothing was read or photographed only where that is so: what is withheld was.
std::string no_picture_note(const Telling& telling, bool has_marks) {
  const bool photographed = !telling.record.photos.empty();
  if (has_marks) return telling.words.say(photographed ? "cover.as-read-only" : "cover.as-read");
  const bool marked = !telling.record.markings.empty();
  return photographed || marked ? "" : telling.words.say("cover.no-marks");
}

document::Cover cover_of(const Telling& telling, bool compact) {
  const auto& words = telling.words;
  const assess::Identity& reel = telling.assessment.identity;
  document::Cover cover;
  cover.compact = compact;
  cover.eyebrow = words.say("cover.eyebrow." + telling.edition.document);
  cover.name = reel.name;
  cover.stand_first = stand_first(telling);
  cover.tells = {told_name(reel), {"identity:reels", std::to_string(reel.reels)}};
  for (document::Fact& fact : told_made(reel.made))
    cover.tells.push_back(std::move(fact));
  if (telling.pictures.cover != nullptr) {
    document::Figure picture{telling.photograph(*telling.pictures.cover)};
    picture.width = compact ? document::Width::main : document::Width::full;
    cover.picture = std::move(picture);
  } else {
    cover.marks_as_read = marks_as_read(telling);
    cover.no_picture_note = no_picture_note(telling, !cover.marks_as_read.empty());
  }
  cover.foot_left = {words.say("cover.edition", {{"number", telling.edition.number}}),
                     words.day(telling.edition.date)};
  const auto client = assess::client_of(telling.record, telling.visit);
  cover.foot_right = {client ? words.say("cover.for", {{"name", telling.name(*client)}})
                             : words.say("cover.for-whoever"),
                      written_at(telling)};
  return cover;
}

Document frame_of(const Telling& telling, const std::string& name) {
  const auto& words = telling.words;
  const std::string document = words.say("document." + telling.edition.document);
  Document out;
  out.title = words.say("folio", {{"name", name},
                                  {"document", document},
                                  {"edition", std::to_string(telling.edition.number)}});
  out.subject = words.say("subject." + telling.edition.document);
  out.author = telling.record.bench.name;
  out.language = words.language();
  // The braces of the page numbers stay: layout knows them when every page is full.
  out.folio = {words.say("page-of", {{"page", "{page}"}, {"pages", "{pages}"}}), out.title,
               telling.edition.code, words.say("caution.defer")};
  return out;
}

std::vector<std::string> ids_of(const std::vector<SectionChoice>& choices) {
  std::vector<std::string> ids;
  ids.reserve(choices.size());
  for (const SectionChoice& choice : choices)
    ids.push_back(choice.id);
  return ids;
}

}  // namespace

void tell_only_what_was_entered(const Record& record, words::Catalogue& words) {
  std::set<std::string, std::less<>> entered;
  if (const Visit* visit = record::last_visit(record)) {
    for (const assess::Entered one : assess::entered(record, *visit))
      entered.emplace(base::word_of(one));
  }
  words.tell_only(std::move(entered));
}

base::Result<Document> write(const Source& source) {
  const Record& record = source.record;
  const Template& design = source.design;
  const Visit* visit = record::last_visit(record);
  if (visit == nullptr) {
    return base::error("the record has no visit, so there is nothing to tell yet",
                       "enter the visit in which the reel came to the bench", "no-visit");
  }
  const bool thin = is_thin(record, *visit, design);
  const auto& sections = thin ? design.thin->sections : design.sections;
  const PicturePlan pictures = plan_pictures(record, *visit, ids_of(sections));
  const Telling telling{record,         *visit,          source.assessment,       source.words,
                        pictures,       source.edition,  source.photograph_facts, source.worth,
                        source.courses, source.recorded, design.nameless};
  const assess::Identity& reel = source.assessment.identity;
  // The foot of a page has no room for the serial beside what the reel was put together from.
  const std::string in_trade = reel.assembled() ? reel.in_trade() : reel_in_trade(telling);
  Document out = frame_of(telling, titled(telling, design.cover ? reel.name : in_trade));
  out.tells = design.cover ? FactList{told_name(reel)} : told_identity(reel);
  if (design.cover) out.cover = cover_of(telling, thin);
  for (const SectionChoice& choice : sections) {
    if (is_owners_only(choice.id) && telling.edition.reader != record::Reader::owner) continue;
    auto chapter = find_section(choice.id)(telling);
    if (!chapter) continue;
    if (choice.starts_page) chapter->starts_page = *choice.starts_page;
    chapter->keeps_together = choice.keeps_together;
    out.chapters.push_back(std::move(*chapter));
  }
  return out;
}

std::vector<std::string> name_messages(const Template& design) {
  std::vector<std::string> keys{"document." + design.document, "subject." + design.document};
  if (design.cover) keys.push_back("cover.eyebrow." + design.document);
  return keys;
}

bool tells_drag_and_line(const Template& design) {
  const auto in = [](const std::vector<SectionChoice>& sections) {
    return std::any_of(sections.begin(), sections.end(), [](const SectionChoice& one) {
      return tells_drag_and_line(std::string_view(one.id));
    });
  };
  return in(design.sections) || (design.thin && in(design.thin->sections));
}

std::string paper_of(std::string_view language) {
  constexpr std::array<std::string_view, 15> kLetter{"BZ", "CA", "CL", "CO", "CR", "DO", "GT", "MX",
                                                     "NI", "PA", "PH", "PR", "SV", "US", "VE"};
  const auto dash = language.rfind('-');
  const std::string_view region =
      dash == std::string_view::npos ? std::string_view{} : language.substr(dash + 1);
  return std::find(kLetter.begin(), kLetter.end(), region) != kLetter.end() ? "letter" : "a4";
}

}  // namespace winchbook::report
