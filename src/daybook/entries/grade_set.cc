#include "daybook/entries/grade_set.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "base/words_of_text.h"
#include "daybook/looks.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "record/find_named.h"
#include "record/moments.h"

namespace winchbook::daybook {
namespace {

using base::Decimal;
using base::Diagnostics;

/// Several texts may be given, and each says more of the same.
forms::Field phrases_field(std::string name, std::string help, Grading& into) {
  forms::Field made = forms::field(std::move(name), std::move(help), into);
  made.kind = forms::Field::Kind::texts;
  return made;
}

forms::Field rest_field(GradeRequest& request) {
  forms::Field made =
      forms::field("--rest", "the same of every part that is not graded yet", request.said);
  made.into = [&request, into = made.into](std::string_view typed) {
    request.rest = true;
    return into(typed);
  };
  return made;
}

forms::Form form_of_findings(GradeRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  const auto of_flag = [&request] { return request.flag.has_value(); };
  const auto of_fault = [&request] {
    return request.fault && !request.flag && request.place.empty() && request.findings_note.empty();
  };
  return {
      or_none_field("--fault",
                    "enter a fault of the part: crack, bend, pitting, worn-teeth, broken, …; or "
                    "none",
                    request.fault, request.no_fault),
      field("--fault-name", "its name: \"hairline crack at screw 4\"", request.fault_name)
          .asks("What is the fault called?", of_fault),
      field("--size", "how long or wide, in mm", request.size),
      field("--found-severity",
            "as found: blemish, weakening or unsafe; left out, it was not there",
            request.found_severity),
      field("--left-severity",
            "as left: blemish, weakening, unsafe or put-right; left out, nobody looked again",
            request.left_severity),
      field("--stays-because", "why it was left", request.stays_because),
      or_none_field("--flag", "enter a flag on the parts: hazard or legal; or none", request.flag,
                    request.no_flag),
      field("--flag-name", "its name: \"asbestos-type washers\"", request.flag_name)
          .asks("What is the flag called?", of_flag),
      field("--what", "more of it", request.what).asks("What was seen?", of_flag),
      field("--place",
            "a place that no part can speak for; --set filled, in part, empty or not examined",
            request.place),
      field("--findings-note", "a note on all that was found", request.findings_note),
  };
}

forms::Form form(GradeRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  const auto of_place = [&request] { return !request.flag && !request.place.empty(); };
  Form form{
      field("PARTS", "the parts to set, or whose fault to enter", request.parts),
      phrases_field("--set",
                    "what is so: \"original, the maker's, right pattern, certain, untouched 85, "
                    "worn through 15\"",
                    request.said)
          .asks("How is it: filled, in part, empty, not examined?", of_place),
      rest_field(request),
      flag("--left", "as left; left out, as found", request.left),
      field("--by", "who looked, or judged", request.by),
  };
  append(form, evidence_form(request.evidence));
  form.push_back(field("--note", "a note on the state", request.note));
  append(form, form_of_findings(request));
  return form;
}

template <class Answer> struct Phrase {
  std::string_view words;
  Answer answer;
};

constexpr auto kOfThisReel = std::to_array<Phrase<record::OfThisReel>>({
    {"original", record::OfThisReel::yes},
    {"not original", record::OfThisReel::no},
    {"originality not known", record::OfThisReel::not_determined},
});

constexpr auto kMadeBy = std::to_array<Phrase<record::MadeBy>>({
    {"the maker's", record::MadeBy::this_maker},
    {"the maker’s", record::MadeBy::this_maker},
    {"another maker's", record::MadeBy::another},
    {"another maker’s", record::MadeBy::another},
    {"bench made", record::MadeBy::bench},
    {"owner made", record::MadeBy::owner},
    {"maker not known", record::MadeBy::not_determined},
});

constexpr auto kPattern = std::to_array<Phrase<record::Pattern>>({
    {"right pattern", record::Pattern::right},
    {"running change", record::Pattern::running_change},
    {"service spare", record::Pattern::service_spare},
    {"wrong pattern", record::Pattern::wrong},
    {"pattern not known", record::Pattern::not_determined},
});

template <class Answer, std::size_t count>
bool read_answer(std::string_view phrase, const std::array<Phrase<Answer>, count>& phrases,
                 std::optional<Answer>& into) {
  for (const auto& one : phrases) {
    if (one.words != phrase) continue;
    into = one.answer;
    return true;
  }
  return false;
}

std::string hyphened(std::string_view text) {
  std::string word(text);
  std::replace(word.begin(), word.end(), ' ', '-');
  return word;
}

/// A word of a closed list, its hyphens written as spaces.
template <class Value> bool read_word(std::string_view phrase, std::optional<Value>& into) {
  const auto value = record::value_of<Value>(hyphened(phrase));
  if (value) into = value;
  return value.has_value();
}

/// The text behind a word it begins with.
bool read_behind(std::string_view phrase, std::string_view word, std::string& into) {
  if (!phrase.starts_with(word) || phrase.size() <= word.size()) return false;
  into = phrase.substr(word.size());
  return true;
}

bool read_share(std::string_view phrase, std::string_view word,
                std::optional<base::Percent>& into) {
  std::string number;
  if (!read_behind(phrase, word, number)) return false;
  const auto share = Decimal::parse(number);
  if (share) into = base::Percent{*share};
  return static_cast<bool>(share);
}

/// "untouched 85", "worn through"; false when it names no state of a surface.
bool read_surface(std::string_view phrase, Grading& grading) {
  std::string_view name = phrase;
  std::optional<base::Percent> share;
  if (const std::size_t space = phrase.rfind(' '); space != std::string_view::npos) {
    std::string_view number = phrase.substr(space + 1);
    if (number.ends_with('%')) number.remove_suffix(1);
    if (const auto decimal = Decimal::parse(number)) {
      share = base::Percent{*decimal};
      name = phrase.substr(0, space);
    }
  }
  const auto state = record::value_of<record::SurfaceState>(hyphened(name));
  if (state) grading.surface.emplace_back(*state, share);
  return state.has_value();
}

bool read_phrase(std::string_view phrase, Grading& grading) {
  return read_answer(phrase, kOfThisReel, grading.of_this_reel) ||
         read_answer(phrase, kMadeBy, grading.made_by) ||
         read_answer(phrase, kPattern, grading.pattern) || read_word(phrase, grading.certainty) ||
         read_word(phrase, grading.presence) || read_share(phrase, "corroded ", grading.corroded) ||
         read_share(phrase, "defects ", grading.defects) ||
         read_behind(phrase, "material ", grading.material) ||
         read_behind(phrase, "finish ", grading.finish) || read_surface(phrase, grading);
}

/// What is left to a hundred, for the one state that has no share.
base::Percent left_over(const Grading& grading) {
  Decimal sum;
  for (const auto& [state, share] : grading.surface) {
    if (share) sum = sum + share->value;
  }
  return {Decimal(100, 0) - sum};
}

/// A layer as it was typed: "nickel plate (the maker's)"; whose it is, only where that is said.
record::FinishLayer layer_of(std::string_view typed) {
  constexpr auto kMakers =
      std::to_array<std::string_view>({"(the maker's)", "(the maker’s)", "(maker)", "(the maker)"});
  for (const std::string_view makers : kMakers) {
    if (!typed.ends_with(makers)) continue;
    typed.remove_suffix(makers.size());
    return {std::string(base::trimmed(typed)), record::FinishBy::maker, {}, {}};
  }
  return {std::string(typed), record::FinishBy::not_determined, {}, {}};
}

/// What all answers have in common, whatever they are.
struct Grounds {
  std::optional<record::Certainty> certainty;
  record::Evidence evidence;
  std::optional<record::PersonId> judged_by;
  base::EdtfDate judged_on;
};

template <class Answer>
void judge(record::Judgement<Answer>& judgement, const std::optional<Answer>& answer,
           const Grounds& grounds) {
  if (!answer) return;
  judgement = {*answer, std::nullopt, grounds.evidence, grounds.judged_by, grounds.judged_on};
  if (*answer != Answer::not_determined) judgement.certainty = grounds.certainty;
}

void set_answers(record::Piece& piece, const Grading& grading, const Grounds& grounds) {
  judge(piece.of_this_reel, grading.of_this_reel, grounds);
  judge(piece.made_by, grading.made_by, grounds);
  judge(piece.pattern, grading.pattern, grounds);
  if (!grading.material.empty()) piece.material = grading.material;
  if (!grading.finish.empty()) {
    piece.finish.push_back(layer_of(grading.finish));
  }
}

record::PieceState state_of(const Draft& draft, const GradeRequest& request,
                            const std::vector<record::PhotoId>& photos) {
  const Grading& grading = request.said;
  record::PieceState state;
  state.on = date_of(request.on);
  state.presence = grading.presence;
  for (const auto& [name, share] : grading.surface)
    state.surface.push_back({name, share ? *share : left_over(grading)});
  state.corroded = grading.corroded;
  state.appearance_defects = grading.defects;
  state.note = draft.words(request.note);
  state.photos = photos;
  return state;
}

std::vector<const record::Piece*> parts_not_yet_graded(const record::Record& record,
                                                       const record::Visit& visit, bool left) {
  std::vector<const record::Piece*> rest;
  const auto moment = left ? record::Moment::left : record::Moment::found;
  for (const record::Piece& piece : record.pieces) {
    if (piece.role != record::PieceRole::part) continue;
    if (piece.now.kind != record::Whereabouts::Kind::fitted) continue;
    if (record::state_entered(visit, piece.id, moment) == nullptr) rest.push_back(&piece);
  }
  return rest;
}

void set_examined(record::Findings& findings, const std::optional<record::PersonId>& by,
                  const GradeRequest& request) {
  if (request.left) {
    findings.left_on = date_of(request.on);
  } else if (!findings.found_on) {
    findings.found_on = date_of(request.on);
  }
  if (!findings.by) findings.by = by;
}

base::Diagnostic nothing_named(const GradeRequest& request) {
  return base::of_command(
      request.rest
          ? base::error("every part is graded already", "name the parts to grade", "command-parts")
          : base::error("no part is named", "name the parts to grade, or say --rest",
                        "command-parts"));
}

}  // namespace

base::Diagnostics read_typed(std::string_view typed, Grading& into) {
  Grading grading = into;
  const std::string_view whole = base::trimmed(typed);
  const bool of_a_place =
      read_word(whole == "filled" ? std::string_view("yes") : whole, grading.filled);
  Diagnostics faults;
  for (const std::string_view part : base::parts_of(typed, ',')) {
    const std::string_view phrase = base::trimmed(part);
    if (phrase.empty() || read_phrase(phrase, grading) || of_a_place) continue;
    faults.push_back(base::error(
        fmt::format("\"{}\" says nothing of a part", phrase),
        "say such as \"original, the maker's, right pattern, certain\" or \"untouched 85, worn "
        "through 15\"; of a place, filled, in part, empty or not examined",
        "command-grade"));
  }
  if (!faults.empty()) return faults;
  grading.typed += (grading.typed.empty() ? "" : ", ") + std::string(typed);
  into = std::move(grading);
  return {};
}

base::Result<Said> set_grade(const GradeRequest& request, Draft& draft) {
  const Grading& grading = request.said;
  if (request.parts.empty() && !request.rest) return nothing_named(request);
  if (grading.filled && !grading.presence) {
    return base::of_command(
        base::error(fmt::format("\"{}\" says nothing of a part", grading.typed),
                    "name a place with --place, or say how the part is: fitted, loose, missing",
                    "command-grade"));
  }
  // Whose a part is can be judged on any day; its state is of the visit.
  const bool of_visit = grading.has_state() || request.rest;
  const auto open =
      of_visit ? open_visit(draft, request.on) : base::Result<record::Visit*>(nullptr);
  if (!open) return open.faults();
  record::Record& record = draft.record();
  const auto by = person_of(record, request.by);
  if (!by) return by.faults();
  auto named = pieces_named(draft, request.parts);
  if (!named) return named.faults();
  if (request.rest) name_all_places(draft);
  if (request.rest) named = parts_not_yet_graded(record, **open, request.left);
  if (named->empty()) return nothing_named(request);

  Grounds grounds{grading.certainty, {}, *by, date_of(request.on)};
  std::vector<record::PhotoId> photos;
  if (grading.has_answer()) {
    auto evidence = evidence_of(draft, request.evidence);
    if (!evidence) return evidence.faults();
    grounds.evidence = std::move(evidence).value();
  } else if (grading.has_state()) {
    auto shown = photos_of(record, request.evidence.photos);
    if (!shown) return shown.faults();
    photos = std::move(shown).value();
  }
  for (record::Piece& piece : record.pieces) {
    if (std::find(named->begin(), named->end(), &piece) == named->end()) continue;
    set_answers(piece, grading, grounds);
  }
  if (grading.has_state()) {
    for (const record::Piece* piece : *named) {
      record::PieceFinding& finding = finding_of(**open, piece->id);
      (request.left ? finding.left : finding.found) = state_of(draft, request, photos);
    }
    set_examined(open.value()->findings, *by, request);
  }
  const char* moment = !grading.has_state() ? "" : request.left ? " as left" : " as found";
  return Said{fmt::format("graded {}{}: {}", record::listed(*named), moment, grading.typed), {}};
}

base::Result<Said> grade_set(const GradeRequest& request, Draft& draft) {
  if (request.no_fault) {
    return found_none(draft, record::LookedFor::faults, request.on, request.by);
  }
  if (request.no_flag) {
    return found_none(draft, record::LookedFor::hazards, request.on, request.by);
  }
  if (request.flag) return add_flag(request, draft);
  if (!request.place.empty()) return set_place_grade(request, draft);
  if (!request.findings_note.empty()) {
    const auto open = open_visit(draft, request.on);
    if (!open) return open.faults();
    draft.put(open.value()->findings.note, request.findings_note);
    return Said{"the findings have their note", {}};
  }
  if (request.fault) return add_fault(request, draft);
  if (!request.said.typed.empty()) return set_grade(request, draft);
  return base::of_command(base::error(
      "nothing is said of what was found",
      "say it with --set, --rest, --fault, --flag or --findings-note; winchbook grade PATH tells "
      "the grades",
      "command-missing"));
}

forms::Job grade_set_job() {
  return entry_job<GradeRequest>(form, grade_set);
}

}  // namespace winchbook::daybook
