#include "daybook/entries/clean.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <utility>

#include "daybook/limits.h"
#include "daybook/open_visit.h"
#include "record/find_named.h"
#include "record/moments.h"

namespace winchbook::daybook {
namespace {

using Pieces = std::vector<const record::Piece*>;

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
  text.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(text.front())));
  if (text.find_last_of(".!?") != text.size() - 1) text += '.';
  return text;
}

Pieces parts_in_reel(const record::Record& record) {
  Pieces pieces;
  for (const record::Piece& piece : record.pieces) {
    if (piece.now.kind == record::Whereabouts::Kind::fitted) pieces.push_back(&piece);
  }
  return pieces;
}

/// What the care table says: what harms is refused without a reason, told with one.
base::Diagnostics objections(const CleanRequest& request, const record::Record& record,
                             const record::Visit& visit, const Pieces& pieces) {
  if (!request.care) return {};
  CareQuestion asked{record, visit, pieces, request.method, {}};
  if (const auto minutes = base::Decimal::parse(request.minutes); minutes)
    asked.minutes = base::Minutes{*minutes};
  base::Diagnostics found = request.care(asked);
  for (base::Diagnostic& one : found) {
    if (request.against_warning.empty() || one.severity == base::Severity::warning) continue;
    one.severity = base::Severity::warning;
    one.hint = "the reason stands in the record, and is printed where the cleaning is told";
  }
  return found;
}

}  // namespace

Change clean(CleanRequest request) {
  // A blank is no reason.
  if (request.against_warning.find_first_not_of(" \t\n") == std::string::npos)
    request.against_warning.clear();
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, request.on);
    if (!open) return open.faults();
    auto pieces = record::find_pieces(draft.record(), request.parts);
    if (!pieces) return pieces.faults();
    if (request.all) pieces = parts_in_reel(draft.record());
    if (pieces->empty()) {
      return base::error("nothing is named that was cleaned", "name parts, or say --all",
                         "command-parts");
    }
    base::Diagnostics warnings = objections(request, draft.record(), *open->visit, *pieces);
    const auto limits =
        limits_broken(draft, *open->visit, {*pieces, request.method + ". " + request.what, false},
                      request.agreed);
    warnings.insert(warnings.end(), limits.begin(), limits.end());
    if (base::has_error(warnings)) return warnings;

    const pugi::xml_node cleaning = draft.add(open->element, "cleaning");
    for (const record::Piece* piece : *pieces)
      draft.add_ref(cleaning, "piece", piece->id.text);
    draft.add(cleaning, "material",
              request.material.empty() ? materials_of(*pieces) : request.material);
    draft.add(cleaning, "method", request.method);
    draft.add_if(cleaning, "minutes", request.minutes);
    draft.add_words(cleaning, "what",
                    request.what.empty() ? as_sentence(request.method) : request.what);
    draft.add_words(cleaning, "against-warning", request.against_warning);
    add_caution(draft, cleaning, request.caution, "Cleaning");
    add_way_back(draft, cleaning, request.way_back);
    draft.add_words(cleaning, "loss", request.loss);

    std::size_t graded = 0;
    for (const record::Piece* piece : *pieces) {
      const auto* found = record::state_of(*open->visit, piece->id, record::Moment::found);
      const auto* left = record::state_of(*open->visit, piece->id, record::Moment::left);
      if (found == nullptr || left != nullptr || found->surface.empty()) continue;
      add_state(draft, finding_of(draft, open->element, piece->id), *found, true);
      ++graded;
    }
    if (graded > 0)
      draft.set(draft.need(open->element, "findings"), "left-on", base::iso_text(request.on));
    std::string sentence = fmt::format("cleaned {}: {}", record::listed(*pieces), request.method);
    if (graded > 0) sentence += fmt::format("; {} graded as left", graded);
    return Said{std::move(sentence), std::move(warnings)};
  };
}

}  // namespace winchbook::daybook
