#include "daybook/entries/clean.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/words_of_text.h"
#include "daybook/care_objections.h"
#include "daybook/hazards.h"
#include "daybook/limits.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using Pieces = std::vector<const record::Piece*>;

forms::Form form(CleanRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("PARTS", "the parts: ids, beginnings of ids, or names", request.parts),
      flag("--all", "every part in the reel", request.all),
      field("--method", "how, as \"damp cloth, dried at once\"", request.method)
          .asks("How was it cleaned?"),
      field("--material", "of what; left out, the parts say it", request.material),
      field("--minutes", "for how long", request.minutes),
      field("--what", "what was done, in a sentence; left out, the method says it", request.what),
      field("--caution", "a caution beside it: \"Bath: gloves; dry bare steel at once\"",
            request.caution),
      field("--against-warning", "the reason for doing it in spite of a warning",
            request.against_warning)
          .resolves("care", "Why is it done all the same (nothing, to leave it)?"),
      done_already_field(request.done_already),
      agreed_field(request.agreed),
      field("--loss", "finish that came away", request.loss),
      field("--way-back", "how far it can be undone: \"fully: It wipes off.\"", request.way_back),
  };
}

std::vector<record::PieceId> ids_of(const Pieces& pieces) {
  std::vector<record::PieceId> ids;
  for (const record::Piece* piece : pieces)
    ids.push_back(piece->id);
  return ids;
}

/// "Damp cloth, dried at once." of a method.
std::string as_sentence(std::string text) {
  if (text.empty()) return text;
  text.front() = base::in_capitals(text.front());
  if (text.find_last_of(".!?") != text.size() - 1) text += '.';
  return text;
}

base::Result<Pieces> pieces_cleaned(const CleanRequest& request, Draft& draft) {
  auto pieces = pieces_named(draft, request.parts);
  if (!pieces) return pieces;
  if (request.all) {
    name_all_places(draft);
    pieces.value().clear();
    for (const record::Piece& piece : draft.record().pieces) {
      if (piece.now.kind == record::Whereabouts::Kind::fitted) pieces.value().push_back(&piece);
    }
  }
  if (!pieces->empty()) return pieces;
  return base::of_command(base::error("nothing is named that was cleaned",
                                      "name parts, or say --all", "command-parts"));
}

/// What the care table says: what harms is refused without a reason, told with one.
base::Diagnostics objections(const CleanRequest& request, const Draft& draft,
                             const record::Visit& visit, const Pieces& pieces) {
  const auto care = draft.library().care();
  if (!care) return care.faults();
  base::Diagnostics found =
      care_objections(**care, {draft.record(), visit, pieces, request.method, request.minutes});
  // A blank is no reason.
  const bool reason = !base::trimmed(request.against_warning).empty();
  if (!reason && !request.done_already) return found;
  for (base::Diagnostic& one : found) {
    if (one.severity == base::Severity::warning) continue;
    one.severity = base::Severity::warning;
    one.hint = reason ? "the reason stands in the record, and is printed where the cleaning is told"
                      : "it is entered as done";
  }
  return found;
}

record::Cleaning cleaning_of(const CleanRequest& request, const Draft& draft,
                             const Pieces& pieces) {
  record::Cleaning cleaning;
  cleaning.on = date_of(request.on);
  cleaning.pieces = ids_of(pieces);
  cleaning.material = request.material;
  cleaning.method = request.method;
  cleaning.minutes = request.minutes;
  cleaning.what = draft.words(request.what.empty() ? as_sentence(request.method) : request.what);
  cleaning.against_warning = draft.words(request.against_warning);
  if (request.caution) cleaning.caution = caution_of(draft, *request.caution, "Cleaning");
  if (request.way_back) cleaning.way_back = way_back_of(draft, *request.way_back);
  cleaning.loss = draft.words(request.loss);
  return cleaning;
}

}  // namespace

base::Result<Said> clean(const CleanRequest& request, Draft& draft) {
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  record::Visit& visit = **open;
  const auto pieces = pieces_cleaned(request, draft);
  if (!pieces) return pieces.faults();
  const std::string told = request.method + ". " + request.what;
  base::Diagnostics warnings =
      hazards_in(draft, visit, {ids_of(*pieces), told, request.done_already});
  if (base::has_error(warnings)) return warnings;
  for (auto& more : {objections(request, draft, visit, *pieces),
                     limits_broken(draft, visit, {*pieces, told, false}, request.agreed)})
    warnings.insert(warnings.end(), more.begin(), more.end());
  if (base::has_error(warnings)) return warnings;

  visit.cleaning.push_back(cleaning_of(request, draft, *pieces));
  return Said{fmt::format("cleaned {}: {}", record::listed(*pieces), request.method),
              std::move(warnings)};
}

forms::Job clean_job() {
  return entry_job<CleanRequest>(form, clean);
}

}  // namespace winchbook::daybook
