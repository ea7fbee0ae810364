#include "daybook/entries/clean.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/words_of_text.h"
#include "daybook/care_objections.h"
#include "daybook/limits.h"
#include "daybook/open_visit.h"
#include "record/find_named.h"
#include "record/moments.h"

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
      field("--material", "of what; left out, that of the parts", request.material),
      field("--minutes", "for how long", request.minutes),
      field("--what", "what was done, in a sentence; left out, the method says it", request.what),
      field("--caution", "a caution beside it: \"Bath: gloves; dry bare steel at once\"",
            request.caution),
      field("--against-warning", "the reason for doing it in spite of a warning",
            request.against_warning)
          .resolves("care", "Why is it done all the same (nothing, to leave it)?"),
      agreed_field(request.agreed),
      field("--loss", "finish that came away", request.loss),
      field("--way-back", "how far it can be undone: \"100: Fully.\"", request.way_back),
  };
}

/// "brass", "brass and hard rubber".
std::string materials_of(const Pieces& pieces) {
  std::vector<std::string> materials;
  for (const record::Piece* piece : pieces) {
    if (std::find(materials.begin(), materials.end(), piece->material) == materials.end()) {
      materials.push_back(piece->material);
    }
  }
  std::string text;
  for (std::size_t i = 0; i < materials.size(); ++i)
    text += (i == 0 ? "" : i + 1 == materials.size() ? " and " : ", ") + materials[i];
  return text.empty() ? "not determined" : text;
}

/// "Damp cloth, dried at once." of a method.
std::string as_sentence(std::string text) {
  if (text.empty()) return text;
  text.front() = base::in_capitals(text.front());
  if (text.find_last_of(".!?") != text.size() - 1) text += '.';
  return text;
}

base::Result<Pieces> pieces_cleaned(const CleanRequest& request, const record::Record& record) {
  auto pieces = record::find_pieces(record, request.parts);
  if (!pieces) return pieces;
  if (request.all) {
    pieces.value().clear();
    for (const record::Piece& piece : record.pieces) {
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
  if (base::trimmed(request.against_warning).empty()) return found;
  for (base::Diagnostic& one : found) {
    if (one.severity == base::Severity::warning) continue;
    one.severity = base::Severity::warning;
    one.hint = "the reason stands in the record, and is printed where the cleaning is told";
  }
  return found;
}

record::Cleaning cleaning_of(const CleanRequest& request, const Draft& draft,
                             const Pieces& pieces) {
  record::Cleaning cleaning;
  for (const record::Piece* piece : pieces)
    cleaning.pieces.push_back(piece->id);
  cleaning.material = request.material.empty() ? materials_of(pieces) : request.material;
  cleaning.method = request.method;
  cleaning.minutes = request.minutes;
  cleaning.what = draft.words(request.what.empty() ? as_sentence(request.method) : request.what);
  cleaning.against_warning = draft.words(request.against_warning);
  if (request.caution) cleaning.caution = caution_of(draft, *request.caution, "Cleaning");
  if (request.way_back) cleaning.way_back = way_back_of(draft, *request.way_back);
  cleaning.loss = draft.words(request.loss);
  return cleaning;
}

/// What was examined as found and not yet as left is graded as cleaned; how many were.
std::size_t grade_as_cleaned(record::Visit& visit, const Pieces& pieces) {
  std::size_t graded = 0;
  for (const record::Piece* piece : pieces) {
    const auto* found = record::state_of(visit, piece->id, record::Moment::found);
    const auto* left = record::state_of(visit, piece->id, record::Moment::left);
    if (found == nullptr || left != nullptr || found->surface.empty()) continue;
    finding_of(visit, piece->id).left = state_left(*found, true);
    ++graded;
  }
  return graded;
}

}  // namespace

base::Result<Said> clean(const CleanRequest& request, Draft& draft) {
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  record::Visit& visit = **open;
  const auto pieces = pieces_cleaned(request, draft.record());
  if (!pieces) return pieces.faults();
  base::Diagnostics warnings = objections(request, draft, visit, *pieces);
  const auto limits = limits_broken(
      draft, visit, {*pieces, request.method + ". " + request.what, false}, request.agreed);
  warnings.insert(warnings.end(), limits.begin(), limits.end());
  if (base::has_error(warnings)) return warnings;

  visit.cleaning.push_back(cleaning_of(request, draft, *pieces));
  const std::size_t graded = grade_as_cleaned(visit, *pieces);
  if (graded > 0) visit.findings.left_on = date_of(request.on);
  std::string sentence = fmt::format("cleaned {}: {}", record::listed(*pieces), request.method);
  if (graded > 0) sentence += fmt::format("; {} graded as left", graded);
  return Said{std::move(sentence), std::move(warnings)};
}

forms::Job clean_job() {
  return entry_job<CleanRequest>(form, clean);
}

}  // namespace winchbook::daybook
