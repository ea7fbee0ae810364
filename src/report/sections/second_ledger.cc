#include <algorithm>
#include <utility>

#include "report/bench_work.h"
#include "report/fitting_words.h"
#include "report/sections.h"

namespace winchbook::report {
namespace {

using document::Entry;
using record::Fitting;

void add_fact(const Telling& telling, const char* key, document::Text words, Entry& entry) {
  if (words.empty()) return;
  entry.facts.push_back({telling.words.say(key), std::move(words)});
}

std::optional<document::Photograph> first_photo(const Telling& telling,
                                                const std::vector<record::PhotoId>& ids) {
  for (const record::PhotoId& id : ids) {
    const record::Photo* photo = find(telling.record, id);
    if (photo != nullptr && !photo->withheld) return telling.photograph(*photo);
  }
  return std::nullopt;
}

Entry entry_of(const Telling& telling, const std::string& letter, const Fitting& fitting) {
  Entry entry{letter, telling.piece_name(fitting.piece)};
  entry.anchor = "entry-" + letter;
  entry.old_part = first_photo(telling, fitting.old_photos);
  entry.new_part = first_photo(telling, fitting.photos);
  // A frame stands for the half of a pair that is missing, never for a pair.
  if (entry.old_part || entry.new_part) {
    entry.old_part_absent =
        telling.words.say(fitting.instead_of ? "fitting.no-picture" : "fitting.none-came-frame");
    entry.new_part_absent = telling.words.say("fitting.no-picture");
  }
  if (const record::Piece* piece = find(telling.record, fitting.piece)) {
    add_fact(telling, "fitting.donor", document::plain(donor_words(telling, *piece)), entry);
  }
  add_fact(telling, "fitting.why", telling.text(fitting.why), entry);
  add_fact(telling, "fitting.adapted", telling.text(fitting.adaptation), entry);
  if (fitting.way_back) {
    add_fact(telling, "fitting.way-back", way_back_words(telling, *fitting.way_back), entry);
  }
  add_fact(telling, "fitting.old-one", document::plain(old_piece_words(telling, fitting)), entry);
  return entry;
}

bool is_pictured(const document::Block& block) {
  const auto* entry = std::get_if<Entry>(&block);
  return entry != nullptr && (entry->old_part || entry->new_part);
}

void add_entries(const Telling& telling, document::Chapter& chapter) {
  const assess::VisitAssessment* last = telling.assessment.last();
  if (last == nullptr) return;
  for (const auto& lettered : last->originality.second_ledger) {
    if (const Fitting* fitting = find(telling.record, lettered.fitting)) {
      chapter.blocks.emplace_back(entry_of(telling, lettered.letter, *fitting));
    }
  }
}

}  // namespace

std::optional<document::Chapter> tell_second_ledger(const Telling& telling) {
  document::Chapter chapter = telling.chapter("second-ledger");
  chapter.ledger = document::Ledger::second;
  chapter.starts_page = true;
  add_entries(telling, chapter);
  const std::size_t entries = chapter.blocks.size();
  if (entries > 0) chapter.stand_first = second_ledger_answer(telling, entries);
  if (std::any_of(chapter.blocks.begin(), chapter.blocks.end(), is_pictured)) {
    document::Paragraph note = telling.sentence(telling.words.say("second.pictures"));
    note.manner = document::ParagraphManner::note;
    note.width = document::Width::full;
    chapter.blocks.emplace_back(std::move(note));
  }
  add_bench_work(telling, telling.pictures.of("second-ledger"), chapter);
  if (chapter.blocks.empty()) return std::nullopt;
  return chapter;
}

std::optional<document::Chapter> tell_work(const Telling& telling) {
  document::Chapter chapter = telling.chapter("work");
  chapter.ledger = document::Ledger::second;
  add_entries(telling, chapter);
  add_short_work(telling, chapter);
  add_earlier_visits(telling, chapter);
  if (chapter.blocks.empty()) return std::nullopt;
  return chapter;
}

}  // namespace winchbook::report
