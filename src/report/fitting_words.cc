#include "report/fitting_words.h"

namespace winchbook::report {

using record::Fitting;

std::string donor_words(const Telling& telling, const record::Piece& piece) {
  if (piece.donor) {
    if (const record::Donor* donor = find(telling.record, *piece.donor)) {
      return telling.words.capitalised(donor->name) + ".";
    }
  }
  if (piece.made_by.answer == record::MadeBy::bench) return telling.words.say("fitting.bench-made");
  if (!piece.maker_name.empty()) return piece.maker_name + ".";
  return telling.words.say("fitting.donor-not-known");
}

std::string old_piece_words(const Telling& telling, const Fitting& fitting) {
  if (!fitting.instead_of) return telling.words.say("fitting.none-came");
  const record::Piece* old = find(telling.record, *fitting.instead_of);
  if (old == nullptr) return telling.words.say("fitting.none-came");
  const std::string key = "where." + std::string(record::word_of(old->now.kind));
  return telling.words.say(key, {{"bag", telling.words.capitalised(old->now.bag)}});
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

}  // namespace winchbook::report
