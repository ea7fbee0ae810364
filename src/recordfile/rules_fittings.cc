#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <type_traits>

#include "recordfile/rules_list.h"

namespace winchbook::recordfile {

using namespace record;  // NOLINT: the rules speak of nothing else
using base::error_at;
using base::warning_at;

namespace {

bool is_in_force_now(const Fitting& fitting) {
  return !fitting.until && !fitting.removed_in;
}

/// True when there is surely a day on which both are in force.
bool surely_together(const Fitting& a, const Fitting& b) {
  if (is_in_force_now(a) && is_in_force_now(b)) return true;
  const auto begins_before_end = [](const Fitting& one, const Fitting& other) {
    if (!one.from) return false;
    return !other.until || surely_before(*one.from, *other.until);
  };
  return begins_before_end(a, b) && begins_before_end(b, a);
}

const char* word(Whereabouts::Kind kind) {
  switch (kind) {
    case Whereabouts::Kind::fitted:
      return "fitted";
    case Whereabouts::Kind::bagged:
      return "in a bag";
    case Whereabouts::Kind::to_owner:
      return "with the owner";
    case Whereabouts::Kind::kept_by_bench:
      return "kept by the bench";
    case Whereabouts::Kind::lost:
      return "lost";
    case Whereabouts::Kind::scrapped:
      return "scrapped";
    case Whereabouts::Kind::with_reel:
      return "with the reel, not fitted";
    case Whereabouts::Kind::not_known:
      return "not known";
  }
  return "";
}

int pieces_in(const LoadedRecord& loaded, const std::vector<const Fitting*>& fittings) {
  int count = 0;
  for (const Fitting* fitting : fittings) {
    const Piece* piece = find(loaded.record, fitting->piece);
    if (piece != nullptr) count += piece->count;
  }
  return count;
}

/// The date of something done in a visit lies outside of it.
bool outside(const base::EdtfDate& date, const Visit& visit) {
  return surely_before(date, visit.taken_in) ||
         (visit.hand_back && surely_before(visit.hand_back->on, date));
}

bool sits_anywhere(const Record& record, const PieceId& piece) {
  return std::any_of(record.fittings.begin(), record.fittings.end(), [&](const Fitting& one) {
    return one.piece == piece && is_in_force_now(one);
  });
}

const Agreement* find_agreement(const Record& record, const AgreementId& id) {
  for (const Visit& visit : record.visits) {
    for (const Agreement& agreement : visit.agreements) {
      if (agreement.id == id) return &agreement;
    }
  }
  return nullptr;
}

}  // namespace

void piece_in_two_places(const LoadedRecord& loaded, Diagnostics& found) {
  const auto& fittings = loaded.record.fittings;
  for (std::size_t i = 0; i < fittings.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const Fitting& later = fittings[i];
      const Fitting& first = fittings[j];
      if (later.piece != first.piece || !surely_together(first, later)) continue;
      found.push_back(
          error_at(loaded.where(later.id.text),
                   fmt::format("piece \"{}\" is fitted in \"{}\" and in \"{}\" at once (line {})",
                               later.piece.text, first.place.text, later.place.text,
                               loaded.where(first.id.text).line),
                   "end one of the two fittings with <until>, or name another piece"));
    }
  }
}

void place_overfull(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Place& place : loaded.record.places) {
    const auto tell = [&](int count, const std::string& when) {
      if (count <= place.quantity) return false;
      found.push_back(
          error_at(loaded.where(place.id.text),
                   fmt::format("place \"{}\" holds {} pieces {}, expected at most {}",
                               place.id.text, count, when, place.quantity),
                   "end the fitting of the piece that came out, or correct the quantity"));
      return true;
    };
    std::vector<const Fitting*> now;
    for (const Fitting& fitting : loaded.record.fittings) {
      if (fitting.place == place.id && is_in_force_now(fitting)) now.push_back(&fitting);
    }
    bool told = tell(pieces_in(loaded, now), "now");
    for (const Visit& visit : loaded.record.visits) {
      if (told) break;
      const auto at = [&](Moment moment) {
        return pieces_in(loaded, fittings_in(loaded.record, place.id, visit, moment));
      };
      told = tell(at(Moment::found), fmt::format("as visit \"{}\" found it", visit.id.text)) ||
             tell(at(Moment::left), fmt::format("as visit \"{}\" left it", visit.id.text));
    }
  }
}

void fitting_order(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Fitting& fitting : loaded.record.fittings) {
    if (!fitting.from || !fitting.until || !surely_before(*fitting.until, *fitting.from)) continue;
    found.push_back(error_at(loaded.where(fitting.id.text),
                             fmt::format("the fitting ends {} before it begins {}",
                                         fitting.until->text(), fitting.from->text()),
                             "correct one of the two dates"));
  }
}

void fitting_visit(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Fitting& fitting : loaded.record.fittings) {
    const auto look = [&](const std::optional<VisitId>& id,
                          const std::optional<base::EdtfDate>& date, const char* what) {
      const Visit* visit = id ? find(loaded.record, *id) : nullptr;
      if (visit == nullptr || !date || !outside(*date, *visit)) return;
      found.push_back(error_at(loaded.where(fitting.id.text),
                               fmt::format("the piece {} {}, which is outside of visit \"{}\"",
                                           what, date->text(), id->text),
                               "correct the date, or name the right visit"));
    };
    look(fitting.visit, fitting.from, "was fitted");
    look(fitting.removed_in, fitting.until, "was taken out");
  }
}

void bench_fitting(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Fitting& fitting : loaded.record.fittings) {
    if (!std::holds_alternative<ByBench>(fitting.by)) continue;
    std::vector<std::string> missing;
    if (!fitting.visit) missing.emplace_back("<visit>");
    if (fitting.why.empty()) missing.emplace_back("<why>");
    if (!fitting.way_back) missing.emplace_back("<way-back>");
    if (missing.empty()) continue;
    found.push_back(
        warning_at(loaded.where(fitting.id.text),
                   fmt::format("the bench fitted \"{}\", and {} is left out", fitting.piece.text,
                               fmt::join(missing, " and ")),
                   "the second ledger tells why each piece was fitted and how it can be undone"));
  }
}

void old_piece(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Fitting& fitting : loaded.record.fittings) {
    if (!fitting.instead_of || *fitting.instead_of != fitting.piece) continue;
    found.push_back(
        error_at(loaded.where(fitting.id.text),
                 fmt::format("piece \"{}\" is fitted instead of itself", fitting.piece.text),
                 "name the old piece in <instead-of>"));
  }
}

void whereabouts(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Piece& piece : loaded.record.pieces) {
    const bool sits = sits_anywhere(loaded.record, piece.id);
    const bool said = piece.now.kind == Whereabouts::Kind::fitted;
    if (sits == said) continue;
    found.push_back(error_at(
        loaded.where(piece.id.text),
        sits ? fmt::format("piece \"{}\" is told to be {}, and a fitting has it in its place still",
                           piece.id.text, word(piece.now.kind))
             : fmt::format("piece \"{}\" is told to be fitted, and no fitting says where",
                           piece.id.text),
        sits ? "end the fitting with <until> or <removed-in>, or correct <now>"
             : "add the fitting, or correct <now>"));
  }
}

void bag_label(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Piece& piece : loaded.record.pieces) {
    if (piece.now.kind != Whereabouts::Kind::bagged || !piece.now.bag.empty()) continue;
    found.push_back(
        warning_at(loaded.where(piece.id.text),
                   fmt::format("piece \"{}\" is in a bag without a label", piece.id.text),
                   "write the label, such as <bag>bag 3</bag>"));
  }
}

void leave_given(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Piece& piece : loaded.record.pieces) {
    const bool needs_leave = piece.now.kind == Whereabouts::Kind::kept_by_bench ||
                             piece.now.kind == Whereabouts::Kind::scrapped;
    if (!needs_leave) continue;
    const Agreement* leave =
        piece.now.leave ? find_agreement(loaded.record, *piece.now.leave) : nullptr;
    const bool allowed =
        leave != nullptr &&
        std::count(leave->pieces_may_leave.begin(), leave->pieces_may_leave.end(), piece.id) > 0;
    if (allowed) continue;
    found.push_back(
        error_at(loaded.where(piece.id.text),
                 fmt::format("piece \"{}\" is {}, and no agreement lets it leave", piece.id.text,
                             word(piece.now.kind)),
                 "name the agreement in <leave>, and the piece in its <piece-may-leave>"));
  }
}

void fragment(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Piece& piece : loaded.record.pieces) {
    if (!piece.fragment_of) continue;
    const Piece* whole = find(loaded.record, *piece.fragment_of);
    const bool nested = *piece.fragment_of == piece.id || (whole != nullptr && whole->fragment_of);
    if (!nested && !sits_anywhere(loaded.record, piece.id)) continue;
    found.push_back(error_at(
        loaded.where(piece.id.text),
        nested ? fmt::format("piece \"{}\" is a fragment of itself or of another fragment",
                             piece.id.text)
               : fmt::format("piece \"{}\" is a fragment and fitted by itself", piece.id.text),
        "name the whole piece in <fragment-of>, and fit the whole"));
  }
}

void certainty_told(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Piece& piece : loaded.record.pieces) {
    const auto look = [&](const auto& judgement, const char* name) {
      using Answer = std::decay_t<decltype(judgement.answer)>;
      const bool determined = judgement.answer != Answer::not_determined;
      if (determined || !judgement.certainty) return;
      found.push_back(error_at(
          loaded.where(piece.id.text),
          fmt::format(
              "the answer to <{}> of piece \"{}\" is not determined, and yet has a certainty", name,
              piece.id.text),
          "take the certainty out"));
    };
    look(piece.made_by, "made-by");
    look(piece.of_this_reel, "of-this-reel");
    look(piece.pattern, "pattern");
  }
}

void original_elsewhere(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Piece& piece : loaded.record.pieces) {
    const bool elsewhere = piece.donor || piece.made_by.answer == MadeBy::bench ||
                           piece.made_by.answer == MadeBy::owner;
    if (!elsewhere || piece.of_this_reel.answer != OfThisReel::yes) continue;
    found.push_back(
        error_at(loaded.where(piece.id.text),
                 fmt::format("piece \"{}\" is told to be original, and {}", piece.id.text,
                             piece.donor ? fmt::format("donor \"{}\" gave it", piece.donor->text)
                                         : std::string("was made by a bench or an owner")),
                 "answer <of-this-reel> with no, or correct where the piece came from"));
  }
}

void mark_window(const LoadedRecord& loaded, Diagnostics& found) {
  for (const Marking& marking : loaded.record.markings) {
    if (!marking.says || !marking.says->not_before || !marking.says->not_after) continue;
    const base::EdtfDate& begin = marking.says->not_before->date;
    const base::EdtfDate& end = marking.says->not_after->date;
    if (!surely_before(end, begin)) continue;
    found.push_back(
        error_at(loaded.where(marking.id.text),
                 fmt::format("latest date {} is before earliest date {}", end.text(), begin.text()),
                 "exchange the two, or correct one of them"));
  }
}

void serial_marked(const LoadedRecord& loaded, Diagnostics& found) {
  const std::string& serial = loaded.record.reel.serial;
  if (serial.empty()) return;
  for (const Marking& marking : loaded.record.markings) {
    const std::string* text = told(marking.text);
    if (text == nullptr || text->find(serial) != std::string::npos) return;
  }
  found.push_back(warning_at(loaded.where("", "serial", 0),
                             fmt::format("serial number \"{}\" is not among the marks", serial),
                             "add the mark that bears it, or read it again"));
}

}  // namespace winchbook::recordfile
