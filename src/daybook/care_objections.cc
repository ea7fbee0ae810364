#include "daybook/care_objections.h"

#include <fmt/format.h>
#include <algorithm>

#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using assess::care::Because;
using assess::care::Judged;
using assess::care::Objection;
using assess::care::Question;
using knowledge::CareTable;
using knowledge::CareVerdict;

std::string without_stop(std::string text) {
  if (text.ends_with('.')) text.pop_back();
  return text;
}

std::string verdict_words(CareVerdict verdict) {
  switch (verdict) {
    case CareVerdict::never:
      return "never";
    case CareVerdict::harms:
      return "it harms";
    case CareVerdict::with_care:
      return "with care";
    default:
      return "not known";
  }
}

std::string other_name(const record::Record& record, const Judged& judged) {
  const record::Piece* other = judged.other ? find(record, *judged.other) : nullptr;
  return other == nullptr ? "another piece" : other->name;
}

std::string sentence(const Question& asked, const Objection& objection) {
  const Judged& judged = objection.judged;
  const std::string names = record::listed(objection.pieces);
  const std::string method = judged.method == nullptr ? asked.method : judged.method->name;
  switch (judged.because) {
    case Because::method_unknown:
      return fmt::format("the care table does not know the method \"{}\" ({})", asked.method,
                         names);
    case Because::substance_unknown:
      return fmt::format(
          "{} on {}: not known, since its material or a layer on it is not "
          "determined",
          method, names);
    case Because::worn:
      return fmt::format(
          "{} on worn {} ({}): it harms. What is worn through cannot be put right; "
          "write it down as worn",
          method, judged.substance->name, names);
    case Because::captive:
      return fmt::format(
          "{}: {} not off, with a spring under load ({}): what has captive or moving "
          "pieces is taken apart before the bath",
          method, names + (objection.pieces.size() == 1 ? " is" : " are"),
          other_name(asked.record, judged));
    case Because::joined:
      return fmt::format("{}: {}, of {}, is not off and goes in with {}. {}", method,
                         other_name(asked.record, judged), judged.substance->name, names,
                         without_stop(judged.row->reason));
    case Because::time:
      return fmt::format(
          "{} on {}: {} minutes at most, short and cool", method, names,
          judged.row == nullptr ? judged.method->most_minutes : judged.row->most_minutes);
    case Because::together:
    case Because::table:
      break;
  }
  const std::string of = judged.substance == nullptr ? "this" : judged.substance->name;
  if (judged.row == nullptr) {
    return fmt::format("{} on {} ({}): not known", method, of, names);
  }
  return fmt::format("{} on {} ({}): {}. {}", method, of, names, verdict_words(judged.verdict),
                     without_stop(judged.row->reason));
}

std::string source_of(const Judged& judged) {
  return judged.row == nullptr ? "common practice" : judged.row->source;
}

/// Whether work on one of them can hurt somebody.
bool is_hazardous(const CareTable& table, const Objection& objection) {
  return std::any_of(
      objection.pieces.begin(), objection.pieces.end(), [&](const record::Piece* piece) {
        const auto all = knowledge::substances_in(table, piece->material);
        return std::any_of(all.begin(), all.end(),
                           [&](const auto* one) { return knowledge::is_hazardous(table, *one); });
      });
}

base::Diagnostic told(const CareTable& table, const Question& asked, const Objection& objection) {
  const Judged& judged = objection.judged;
  const bool refuses = judged.verdict >= CareVerdict::harms && judged.because != Because::joined;
  base::Diagnostic fault = base::error(sentence(asked, objection), {}, "care");
  if (refuses) {
    fault.hint = fmt::format(
        "choose another method, or give the reason with --against-warning; "
        "source: {}",
        source_of(judged));
    return fault;
  }
  fault.severity = base::Severity::warning;
  if (judged.verdict != CareVerdict::not_known) {
    fault.hint = "source: " + source_of(judged);
  } else if (is_hazardous(table, objection)) {
    fault.hint =
        "work on this can hurt whoever does it: leave it alone until somebody knows; winchbook "
        "lookup care tells what is known";
  } else {
    fault.hint = "try it on a hidden place first; winchbook lookup care tells what is known";
  }
  return fault;
}

/// What to mind of a method whatever the material.
base::Diagnostics advice_on(const CareTable& table, const std::string& method) {
  base::Diagnostics advice;
  for (const knowledge::CareMethod* one : knowledge::methods_in(table, method)) {
    if (one->advice.empty()) continue;
    base::Diagnostic told =
        base::error(one->name + ": " + one->advice, "source: common practice", "care");
    told.severity = base::Severity::warning;
    advice.push_back(std::move(told));
  }
  return advice;
}

}  // namespace

base::Diagnostics care_objections(const CareTable& table, const Question& asked) {
  base::Diagnostics answer;
  for (const Objection& objection : assess::care::objections(table, asked))
    answer.push_back(told(table, asked, objection));
  const base::Diagnostics advice = advice_on(table, asked.method);
  answer.insert(answer.end(), advice.begin(), advice.end());
  return answer;
}

}  // namespace winchbook::daybook
