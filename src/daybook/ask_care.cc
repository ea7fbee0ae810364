#include "daybook/ask_care.h"

#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <utility>

#include "assess/care/care.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using assess::care::Because;
using assess::care::Judged;
using knowledge::CareTable;
using knowledge::CareVerdict;
using record::PieceId;

std::string without_stop(std::string text) {
  if (text.ends_with('.')) text.pop_back();
  return text;
}

/// Lies in the tray: more of it came off than went anywhere.
bool is_off(const record::Visit& visit, const PieceId& piece) {
  return std::any_of(visit.tray.begin(), visit.tray.end(), [&](const record::TrayLine& line) {
    return line.piece == piece &&
           line.taken_off + line.found_loose > line.refitted + line.bagged + line.to_owner +
                                                   line.kept_by_bench + line.lost + line.scrapped;
  });
}

/// The place in which a piece sits now, or null.
const record::Place* place_of(const record::Record& record, const PieceId& piece) {
  const record::Place* place = nullptr;
  for (const record::Fitting& fitting : record.fittings) {
    if (fitting.piece == piece && !fitting.until) place = find(record, fitting.place);
  }
  return place;
}

/// What is not apart from a piece: nothing when it is off; else itself, and what sits in the same
/// assembly, is not off and is not cleaned with it.
std::vector<PieceId> joined_to(const CareQuestion& asked, const record::Piece& piece) {
  if (piece.now.kind != record::Whereabouts::Kind::fitted || is_off(asked.visit, piece.id))
    return {};
  const record::Place* place = place_of(asked.record, piece.id);
  std::vector<PieceId> joined{piece.id};
  if (place == nullptr || place->assembly.empty()) return joined;
  for (const record::Piece& other : asked.record.pieces) {
    const bool cleaned =
        std::find(asked.pieces.begin(), asked.pieces.end(), &other) != asked.pieces.end();
    if (cleaned || other.now.kind != record::Whereabouts::Kind::fitted) continue;
    const record::Place* beside = place_of(asked.record, other.id);
    if (beside != nullptr && beside->assembly == place->assembly &&
        !is_off(asked.visit, other.id)) {
      joined.push_back(other.id);
    }
  }
  return joined;
}

/// One thing said, and all the pieces of which it is said.
struct Objection {
  Judged judged;
  std::vector<const record::Piece*> pieces;
};

bool says_the_same(const Judged& a, const Judged& b) {
  return a.because == b.because && a.verdict == b.verdict && a.method == b.method &&
         a.substance == b.substance && a.row == b.row && a.other == b.other;
}

std::vector<Objection> gathered(const CareTable& table, const CareQuestion& asked) {
  std::vector<PieceId> together;
  for (const record::Piece* piece : asked.pieces)
    together.push_back(piece->id);
  std::vector<Objection> objections;
  for (const record::Piece* piece : asked.pieces) {
    const auto judged = assess::care::judge(
        table, asked.record, asked.visit,
        {*piece, asked.method, asked.minutes, joined_to(asked, *piece), together});
    for (const Judged& one : judged) {
      const auto known =
          std::find_if(objections.begin(), objections.end(),
                       [&](const Objection& other) { return says_the_same(other.judged, one); });
      if (known == objections.end()) {
        objections.push_back({one, {piece}});
      } else {
        known->pieces.push_back(piece);
      }
    }
  }
  std::stable_sort(objections.begin(), objections.end(), [](const auto& a, const auto& b) {
    return a.judged.verdict > b.judged.verdict;
  });
  return objections;
}

std::string verdict_words(CareVerdict verdict) {
  switch (verdict) {
    case CareVerdict::never:
      return "never";
    case CareVerdict::harm:
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

std::string sentence(const CareQuestion& asked, const Objection& objection) {
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
      return fmt::format("{}: {} to {} minutes is what it takes", method,
                         judged.method->least_minutes, judged.method->most_minutes);
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

base::Diagnostic told(const CareQuestion& asked, const Objection& objection) {
  const Judged& judged = objection.judged;
  const bool refuses = judged.verdict >= CareVerdict::harm && judged.because != Because::joined;
  base::Diagnostic fault = base::error(sentence(asked, objection), {}, "care");
  if (refuses) {
    fault.hint = fmt::format(
        "choose another method, or give the reason with --against-warning; "
        "source: {}",
        source_of(judged));
    return fault;
  }
  fault.severity = base::Severity::warning;
  fault.hint = judged.verdict == CareVerdict::not_known
                   ? "try it on a hidden place first; winchbook lookup care tells what is known"
                   : "source: " + source_of(judged);
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

base::Result<AskCare> care_asker(const library::World& world) {
  auto read = knowledge::load_care(world.files, world.data);
  if (!read) return read.faults();
  const auto table = std::make_shared<const CareTable>(std::move(read).value());
  return AskCare([table](const CareQuestion& asked) {
    base::Diagnostics answer;
    for (const Objection& objection : gathered(*table, asked))
      answer.push_back(told(asked, objection));
    const base::Diagnostics advice = advice_on(*table, asked.method);
    answer.insert(answer.end(), advice.begin(), advice.end());
    return answer;
  });
}

}  // namespace winchbook::daybook
