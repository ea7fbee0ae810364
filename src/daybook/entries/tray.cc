#include "daybook/entries/tray.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "assess/tray/tray.h"
#include "daybook/limits.h"
#include "daybook/looks.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using record::Piece;
using record::PieceId;
using record::Visit;
using Kind = record::Whereabouts::Kind;

forms::Form form(TrayRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  Field agreed = agreed_field(request.agreed);
  agreed.help = "the agreement that lets it go";
  return {
      field("--off", "a part that came off, without a step in strip", request.off),
      field("--refit", "a part that is back in its place; \"tail screws: 3\" for three of them",
            request.refitted),
      flag("--refit-all", "everything that is off and nowhere else is back", request.refit_all),
      field("--found-loose", "a part that lay loose; or none", request.found_loose),
      field("--bag", "a part that goes into the bag of --label", request.bagged),
      field("--label", "the bag's label: \"bag 3\"", request.bag),
      field("--to-owner", "a part given to the owner", request.to_owner),
      field("--keep", "a part the bench keeps, with --agreed", request.kept),
      field("--lost", "a part that is lost", request.lost),
      field("--scrap", "a part thrown away, with --agreed", request.scrapped),
      std::move(agreed),
  };
}

/// What of a piece is neither back nor anywhere else.
int unaccounted(const Visit& visit, const PieceId& piece) {
  for (const record::TrayLine& line : visit.tray) {
    if (line.piece == piece) return assess::tray::PieceAccount{piece, {}, line}.unaccounted();
  }
  return 0;
}

/// One way a part can go, and what it does to the record.
struct Way {
  int record::TrayLine::*count = nullptr;
  std::vector<std::string> TrayRequest::*parts = nullptr;
  std::optional<Kind> whereabouts;  ///< of the piece, when all of it goes; empty: it stays
  bool comes = false;               ///< into the tray
};

constexpr std::array kWays{
    Way{&record::TrayLine::taken_off, &TrayRequest::off, {}, true},
    Way{&record::TrayLine::found_loose, &TrayRequest::found_loose, {}, true},
    Way{&record::TrayLine::refitted, &TrayRequest::refitted, {}},
    Way{&record::TrayLine::bagged, &TrayRequest::bagged, Kind::bagged},
    Way{&record::TrayLine::to_owner, &TrayRequest::to_owner, Kind::to_owner},
    Way{&record::TrayLine::kept_by_bench, &TrayRequest::kept, Kind::kept_by_bench},
    Way{&record::TrayLine::lost, &TrayRequest::lost, Kind::lost},
    Way{&record::TrayLine::scrapped, &TrayRequest::scrapped, Kind::scrapped},
};

/// Sends so many of a piece one way.
base::Diagnostics go(const TrayRequest& request, const Way& way, const record::CountedPiece& one,
                     Draft& draft, Visit& visit) {
  const int there = unaccounted(visit, one.piece->id);
  if (!way.comes && one.count > there) {
    return {base::error_at(
        draft.loaded().where(visit.id.text),
        there == 0 ? fmt::format("{} is not in the tray", one.piece->name)
                   : fmt::format("{} of {} cannot go: {} lie in the tray", one.count,
                                 one.piece->name, there),
        "winchbook strip takes a part off, winchbook tray --found-loose takes in what lay loose",
        "tray")};
  }
  std::optional<record::AgreementId> leave;
  if (way.whereabouts) {
    auto given = leave_for(draft.record(), visit, *one.piece, request.agreed);
    if (!given) return given.faults();
    leave = std::move(given).value();
  }
  tray_line_of(visit, one.piece->id, request.on).*way.count += one.count;
  if (way.whereabouts && one.count == one.piece->count) {
    const std::string bag = way.whereabouts == Kind::bagged ? request.bag : "";
    take_out(draft.record(), visit.id, one.piece->id,
             {*way.whereabouts, bag, std::move(leave), date_of(request.on), {}});
  }
  return {};
}

base::Diagnostics not_said(const TrayRequest& request) {
  if (!request.bagged.empty() && request.bag.empty()) {
    return {base::of_command(
        base::error("the bag has no label", "give it with --label: \"bag 3\"", "command-bag"))};
  }
  if ((!request.kept.empty() || !request.scrapped.empty()) && request.agreed.empty()) {
    return {base::error("what the bench keeps or scraps needs the owner's leave",
                        "give the agreement with --agreed", "limit")};
  }
  return {};
}

}  // namespace

base::Result<std::optional<record::AgreementId>> leave_for(const record::Record& record,
                                                           const Visit& visit, const Piece& piece,
                                                           const std::string& agreed) {
  const std::string limit = limit_on(record, visit, piece);
  if (agreed.empty()) {
    if (limit.empty()) return std::optional<record::AgreementId>();
    return base::error(fmt::format("{} must stay, {}", piece.name, limit),
                       "agree with the owner first (winchbook agree --may-leave), then give the "
                       "agreement with --agreed",
                       "limit");
  }
  const auto found = record::find_agreement(record, agreed);
  if (!found) return found.faults();
  const record::Agreement& agreement = **found;
  if (!limit.empty() && std::count(agreement.pieces_may_leave.begin(),
                                   agreement.pieces_may_leave.end(), piece.id) == 0) {
    return base::error(fmt::format("{} must stay, {}, and the agreement \"{}\" does not let it go",
                                   piece.name, limit, agreement.id.text),
                       "agree with the owner first: winchbook agree --may-leave", "limit");
  }
  return std::optional(agreement.id);
}

void take_out(record::Record& record, const record::VisitId& visit, const PieceId& piece,
              const record::Whereabouts& now) {
  for (record::Fitting& fitting : record.fittings) {
    if (fitting.piece != piece || fitting.until || fitting.removed_in) continue;
    fitting.until = now.since;
    fitting.removed_in = visit;
  }
  for (Piece& one : record.pieces) {
    if (one.id == piece) one.now = now;
  }
}

base::Result<Said> tray(const TrayRequest& request, Draft& draft) {
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  Visit& visit = **open;
  base::Diagnostics faults = not_said(request);
  if (!faults.empty()) return faults;
  const auto add = [&](const base::Diagnostics& more) {
    faults.insert(faults.end(), more.begin(), more.end());
    return more.empty();
  };
  if (request.found_loose == std::vector<std::string>{kNone}) {
    return found_none(draft, record::LookedFor::loose_parts, request.on);
  }
  for (const Way& way : kWays) {
    if (const auto counted = counted_named(draft, request.*way.parts); !counted)
      add(counted.faults());
  }
  if (!faults.empty()) return faults;
  const auto lay_there = assess::tray::account(draft.record(), visit).pieces;
  std::vector<const Piece*> gone;
  for (const Way& way : kWays) {
    const auto counted = record::find_counted(draft.record(), request.*way.parts);
    if (!counted) return counted.faults();
    for (const record::CountedPiece& one : *counted) {
      if (add(go(request, way, one, draft, visit))) gone.push_back(one.piece);
    }
  }
  if (!faults.empty()) return faults;
  if (request.refit_all) {
    for (const assess::tray::PieceAccount& one : lay_there) {
      const int still = unaccounted(visit, one.piece);
      if (!one.open() || still <= 0) continue;
      tray_line_of(visit, one.piece, request.on).refitted += still;
      gone.push_back(record::find(draft.record(), one.piece));
    }
  }
  return Said{"tray: " + record::listed(gone), {}};
}

forms::Job tray_job() {
  return entry_job<TrayRequest>(form, tray);
}

}  // namespace winchbook::daybook
