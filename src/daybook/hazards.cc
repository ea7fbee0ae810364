#include "daybook/hazards.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>

#include "assess/care/care.h"
#include "base/words_of_text.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using assess::care::Cautions;
using assess::care::Dust;
using assess::care::Flag;
using base::Diagnostics;
using Says = knowledge::FlagTrigger::Says;

std::string names_of(const record::Record& record, const std::vector<record::PieceId>& pieces) {
  std::vector<const record::Piece*> found;
  for (const record::PieceId& id : pieces) {
    if (const record::Piece* piece = find(record, id)) found.push_back(piece);
  }
  return found.empty() ? "what is worked on" : record::listed(found);
}

std::string hazard_name(const knowledge::FlagRule& rule) {
  std::string name = rule.word;
  std::replace(name.begin(), name.end(), '-', ' ');
  return name;
}

base::Diagnostic refused(const Draft& draft, const Dust& dust, bool done_already) {
  const std::string what =
      fmt::format("{}: {} may hold {}, and no eye can tell", dust.act,
                  names_of(draft.record(), dust.pieces), hazard_name(*dust.rule));
  if (done_already) {
    return base::warning_at({}, what, "it is entered as done, and its caution is printed beside it",
                            "hazard");
  }
  return base::error(
      what,
      "leave it: lift it out whole and damp, bag and label it, fit new material, and dispose of it "
      "by the local rules; a laboratory’s report (winchbook laboratory) or the supplier of new "
      "material (winchbook part --known --supplier) lifts this, and what is done already is "
      "entered with --done-already",
      "hazard");
}

/// A message of the catalogue, in the language of the record.
base::Diagnostics add_message(const Draft& draft, const std::string& label, const std::string& key,
                              Diagnostics& into) {
  const auto words = draft.library().words(draft.record().language);
  if (!words) return words.faults();
  // Once, behind the last of them.
  if (!into.empty() && into.back().rule == "caution") into.back().hint.clear();
  into.push_back(base::warning_at({}, words->say(label) + ": " + words->say(key),
                                  words->say("caution.defer"), "caution"));
  return {};
}

}  // namespace

Diagnostics hazards_in(const Draft& draft, const record::Visit& visit, const Told& told) {
  const auto care = draft.library().care();
  if (!care) return care.faults();
  const auto flags = assess::care::flags(draft.record(), visit, **care, {});
  const Cautions asked =
      assess::care::cautions(draft.record(), **care, flags, told.pieces, told.text);
  Diagnostics found;
  for (const Dust& dust : asked.dust)
    found.push_back(refused(draft, dust, told.done_already));
  for (const std::string& word : asked.words) {
    auto faults =
        add_message(draft, "caution." + word + ".label", "caution." + word + ".words", found);
    if (!faults.empty()) return faults;
  }
  return found;
}

Diagnostics hazards_of(const Draft& draft, const record::Visit& visit,
                       const std::vector<record::PieceId>& pieces) {
  const auto care = draft.library().care();
  if (!care) return care.faults();
  Diagnostics found;
  for (const Flag& flag : assess::care::flags(draft.record(), visit, **care, {})) {
    if (!flag.rule->unseen || !flag.rule->forbids_dust || flag.says < Says::may_be) continue;
    const bool meets = std::any_of(pieces.begin(), pieces.end(), [&](const auto& id) {
      return std::find(flag.pieces.begin(), flag.pieces.end(), id) != flag.pieces.end() ||
             std::find(flag.may_be.begin(), flag.may_be.end(), id) != flag.may_be.end();
    });
    if (!meets) continue;
    auto faults = add_message(draft, "flag." + flag.rule->word + ".name",
                              "flag." + flag.rule->word + ".short", found);
    if (!faults.empty()) return faults;
  }
  return found;
}

Diagnostics doubtful_material(const Draft& draft, std::string_view material) {
  const auto care = draft.library().care();
  if (!care) return care.faults();
  // "not determined" says so itself.
  if (!base::says_something(material) || !knowledge::substances_in(**care, material).empty())
    return {};
  const knowledge::Substance* meant = knowledge::meant_in(**care, material);
  const std::string hint =
      meant == nullptr ? "" : fmt::format("; \"{}\" may be meant", meant->name);
  return {base::warning_at(
      {}, fmt::format("the care table does not know \"{}\"{}", material, hint),
      "nothing warns of what it does not know: name it in plain words (winchbook part --known "
      "--material), or leave it as \"not determined\"",
      "material")};
}

Diagnostics faults_of_supplier(std::string_view supplier) {
  if (supplier.empty() || base::says_something(supplier)) return {};
  return {base::of_command(base::error(
      fmt::format("\"{}\" names no supplier, and new material is known by whoever supplied it",
                  supplier),
      "give the supplier's name, or leave --supplier out", "command-supplier"))};
}

forms::Field done_already_field(bool& done_already) {
  return forms::flag("--done-already",
                     "it was done before anybody asked: it is entered, with its caution",
                     done_already);
}

}  // namespace winchbook::daybook
