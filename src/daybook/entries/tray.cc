#include "daybook/entries/tray.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <utility>

#include "daybook/limits.h"
#include "daybook/open_visit.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using record::Piece;
using record::PieceId;
using record::Visit;

bool holds(const std::vector<PieceId>& pieces, const PieceId& piece) {
  return std::find(pieces.begin(), pieces.end(), piece) != pieces.end();
}

/// What of a line is neither back nor anywhere else.
int unaccounted(const Visit& visit, const PieceId& piece) {
  for (const record::TrayLine& line : visit.tray) {
    if (line.piece == piece) return assess::tray::PieceAccount{piece, {}, line}.unaccounted();
  }
  return 0;
}

/// One way a part can go, and what it does to the record.
struct Way {
  const char* count;        ///< in the tray line
  const char* whereabouts;  ///< of the piece, when all of it goes; null: it stays in the reel
  const std::vector<std::string>* parts;
};

class Going {
 public:
  Going(Draft& draft, const OpenVisit& open, const TrayRequest& request)
      : draft_(draft), open_(open), request_(request) {}

  void go(const Way& way) {
    const auto counted = record::find_counted(draft_.record(), *way.parts);
    if (!counted) {
      add(counted.faults());
      return;
    }
    for (const record::CountedPiece& one : *counted)
      go(way, one);
  }

  void refit(const Piece& piece, int count) {
    count += moved_[piece.id.text];
    if (count <= 0) return;
    moved_[piece.id.text] -= count;
    add_to_tray(draft_, tray_line_of(draft_, open_.element, piece.id), "refitted", count);
    gone_.push_back(&piece);
  }

  [[nodiscard]] const base::Diagnostics& faults() const { return faults_; }
  [[nodiscard]] const std::vector<const Piece*>& gone() const { return gone_; }

 private:
  void add(const base::Diagnostics& faults) {
    faults_.insert(faults_.end(), faults.begin(), faults.end());
  }

  void go(const Way& way, const record::CountedPiece& one) {
    const std::string_view count = way.count;
    int& moved = moved_[one.piece->id.text];
    const int there = unaccounted(*open_.visit, one.piece->id) + moved;
    const bool comes = count == "found-loose" || count == "taken-off";
    if (!comes && one.count > there) {
      add({base::error_at(
          draft_.loaded().where(open_.visit->id.text),
          there == 0 ? fmt::format("{} is not in the tray", one.piece->name)
                     : fmt::format("{} of {} cannot go: {} lie in the tray", one.count,
                                   one.piece->name, there),
          "winchbook strip takes a part off, winchbook tray --found-loose takes in what lay loose",
          "tray")});
      return;
    }
    std::string leave;
    if (way.whereabouts != nullptr) {
      const auto given = leave_for(draft_.record(), *open_.visit, *one.piece, request_.agreed);
      if (!given) {
        add(given.faults());
        return;
      }
      leave = *given;
    }
    moved += comes ? one.count : -one.count;
    add_to_tray(draft_, tray_line_of(draft_, open_.element, one.piece->id), way.count, one.count);
    gone_.push_back(one.piece);
    if (way.whereabouts != nullptr && one.count == one.piece->count) {
      const std::string bag = count == "bagged" ? request_.bag : "";
      take_out(draft_, *open_.visit, *one.piece, request_.on, way.whereabouts, bag, leave);
    }
  }

  Draft& draft_;
  const OpenVisit& open_;
  const TrayRequest& request_;
  base::Diagnostics faults_;
  std::vector<const Piece*> gone_;
  std::map<std::string, int, std::less<>> moved_;  ///< by this command, into the tray and out of it
};

std::string gone_where(const assess::tray::PieceAccount& one) {
  std::string text;
  for (const auto& [count, name] :
       {std::pair{one.line.refitted, "refitted"}, std::pair{one.line.bagged, "bagged"},
        std::pair{one.line.to_owner, "to the owner"},
        std::pair{one.line.kept_by_bench, "kept by the bench"}, std::pair{one.line.lost, "lost"},
        std::pair{one.line.scrapped, "scrapped"}}) {
    if (count > 0) text += fmt::format("{}{} {}", text.empty() ? "" : ", ", count, name);
  }
  return text.empty() ? "nothing back yet" : text;
}

}  // namespace

base::Result<std::string> leave_for(const record::Record& record, const Visit& visit,
                                    const Piece& piece, const std::string& agreed) {
  const std::string limit = limit_on(record, visit, piece);
  if (agreed.empty()) {
    if (limit.empty()) return std::string();
    return base::error(fmt::format("{} must stay, {}", piece.name, limit),
                       "agree with the owner first (winchbook agree --may-leave), then give the "
                       "agreement with --agreed",
                       "limit");
  }
  const auto agreement = record::find_agreement(record, agreed);
  if (!agreement) return agreement.faults();
  if (!limit.empty() && !holds(agreement.value()->pieces_may_leave, piece.id)) {
    return base::error(fmt::format("{} must stay, {}, and the agreement \"{}\" does not let it go",
                                   piece.name, limit, agreement.value()->id.text),
                       "agree with the owner first: winchbook agree --may-leave", "limit");
  }
  return agreement.value()->id.text;
}

void take_out(Draft& draft, const Visit& visit, const Piece& piece, base::Day on, const char* where,
              const std::string& bag, const std::string& leave) {
  for (const record::Fitting& fitting : draft.record().fittings) {
    if (fitting.piece != piece.id || fitting.until || fitting.removed_in) continue;
    const pugi::xml_node element = draft.by_id(fitting.id.text);
    draft.add(element, "until", base::iso_text(on));
    draft.add_ref(element, "removed-in", visit.id.text);
  }
  const pugi::xml_node now = draft.need(draft.by_id(piece.id.text), "now");
  draft.empty(now);
  draft.add(now, "kind", where);
  draft.add_if(now, "bag", bag);
  if (!leave.empty()) draft.add_ref(now, "leave", leave);
  draft.add(now, "since", base::iso_text(on));
}

Change tray(TrayRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, request.on);
    if (!open) return open.faults();
    if (!request.bagged.empty() && request.bag.empty()) {
      return base::of_command(
          base::of_command(base::error("the bag has no label", "give it with --label: \"bag 3\"", "command-bag")));
    }
    if ((!request.kept.empty() || !request.scrapped.empty()) && request.agreed.empty()) {
      return base::error("what the bench keeps or scraps needs the owner's leave",
                         "give the agreement with --agreed", "limit");
    }
    Going going(draft, *open, request);
    for (const Way& way :
         {Way{"taken-off", nullptr, &request.off},
          Way{"found-loose", nullptr, &request.found_loose},
          Way{"refitted", nullptr, &request.refitted}, Way{"bagged", "bagged", &request.bagged},
          Way{"to-owner", "to-owner", &request.to_owner},
          Way{"kept-by-bench", "kept-by-bench", &request.kept}, Way{"lost", "lost", &request.lost},
          Way{"scrapped", "scrapped", &request.scrapped}}) {
      going.go(way);
    }
    if (request.refit_all) {
      for (const auto& one : assess::tray::account(draft.record(), *open->visit).pieces) {
        const Piece* piece = record::find(draft.record(), one.piece);
        if (one.open() && piece != nullptr) going.refit(*piece, one.unaccounted());
      }
    }
    if (!going.faults().empty()) return going.faults();
    return Said{"tray: " + record::listed(going.gone()), {}};
  };
}

std::string tray_in_words(const assess::tray::Account& account) {
  std::string text;
  for (const assess::tray::PieceAccount& one : account.pieces) {
    text += fmt::format("{:<32} {} off", one.name, one.line.taken_off);
    if (one.line.found_loose > 0) text += fmt::format(", {} found loose", one.line.found_loose);
    text += ": " + gone_where(one);
    if (one.unaccounted() > 0) text += fmt::format("; {} UNACCOUNTED", one.unaccounted());
    if (one.unaccounted() < 0) text += fmt::format("; {} more went than came", -one.unaccounted());
    text += "\n";
  }
  for (const assess::tray::PlaceAccount& one : account.places) {
    using assess::tray::Filled;
    if (one.filled() == Filled::filled) continue;
    text += one.filled() == Filled::empty
                ? fmt::format("place {}: empty{}\n", one.name, one.may_be_empty ? " (may be)" : "")
                : fmt::format("place {}: {} of {}\n", one.name, one.sits, one.belongs);
  }
  text += account.closed() ? "nothing is unaccounted for\n" : "the tray is not closed\n";
  return text;
}

}  // namespace winchbook::daybook
