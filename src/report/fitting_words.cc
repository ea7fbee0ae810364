#include "report/fitting_words.h"

#include <algorithm>

#include "base/degree_words.h"

namespace winchbook::report {

using record::Fitting;

namespace {

/// Whether somebody saw the place empty as the reel came.
bool came_empty(const Telling& telling, const Fitting& fitting) {
  const auto& places = telling.visit.findings.places;
  return std::any_of(places.begin(), places.end(), [&](const record::PlaceFinding& one) {
    return one.place == fitting.place && one.found == record::Filled::empty;
  });
}

}  // namespace

std::string donor_words(const Telling& telling, const record::Piece& piece) {
  if (piece.donor) {
    if (const record::Donor* donor = find(telling.record, *piece.donor)) {
      return telling.words.capitalised(donor->name) + ".";
    }
  }
  if (!piece.supplier.empty())
    return telling.words.say("fitting.supplied", {{"supplier", piece.supplier}});
  if (piece.made_by.answer == record::MadeBy::bench) return telling.words.say("fitting.bench-made");
  if (!piece.maker_name.empty()) return piece.maker_name + ".";
  return telling.words.say("fitting.donor-not-known");
}

std::string old_piece_words(const Telling& telling, const Fitting& fitting) {
  const record::Piece* old =
      fitting.instead_of ? find(telling.record, *fitting.instead_of) : nullptr;
  if (old == nullptr)
    return came_empty(telling, fitting) ? telling.words.say("fitting.none-came") : "";
  const std::string key = "where." + std::string(record::word_of(old->now.kind));
  return telling.words.say(key, {{"bag", telling.words.capitalised(old->now.bag)},
                                 {"leave", old->now.leave ? "yes" : "no"}});
}

std::string second_ledger_answer(const Telling& telling, std::size_t entries) {
  int pieces = 0;
  if (const assess::VisitAssessment* last = telling.assessment.last()) {
    for (const auto& lettered : last->originality.second_ledger) {
      const Fitting* fitting = find(telling.record, lettered.fitting);
      const record::Piece* piece =
          fitting == nullptr ? nullptr : find(telling.record, fitting->piece);
      pieces += piece == nullptr ? 1 : piece->count;
    }
  }
  const bool one_each = pieces == static_cast<int>(entries);
  return telling.words.say(
      one_each ? "second.answer" : "second.answer-entries",
      {{"count", pieces},
       {"number", telling.words.spelled(pieces, /*capital=*/true)},
       {"entries", telling.words.spelled(static_cast<std::int64_t>(entries))}});
}

document::Text way_back_words(const Telling& telling, const record::WayBack& way_back) {
  const std::string lead = telling.words.say("statement.way-back-degree",
                                             {{"form", base::degree_word(way_back.degree).word}});
  const std::string words = telling.plain(way_back.words);
  if (words.empty()) return document::with_lead(lead, "");
  if (words.starts_with(lead.substr(0, lead.size() - 1))) return telling.text(way_back.words);
  document::Text text = document::with_lead(lead, "");
  text.parts.emplace_back(document::Run{" "});
  append(text, telling.text(way_back.words));
  return text;
}

}  // namespace winchbook::report
