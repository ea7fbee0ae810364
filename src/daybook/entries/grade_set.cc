#include "daybook/entries/grade_set.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <utility>

#include "base/decimal.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "record/find_named.h"
#include "record/moments.h"

namespace winchbook::daybook {
namespace {

using base::Decimal;
using base::Diagnostics;

struct Phrase {
  std::string_view words;
  const char* element;
  const char* answer;
};

constexpr auto kAnswers = std::to_array<Phrase>({
    {"born here", "born-here", "yes"},
    {"not born here", "born-here", "no"},
    {"born here not known", "born-here", "not-determined"},
    {"the maker's", "made-by", "this-maker"},
    {"the maker’s", "made-by", "this-maker"},
    {"another maker's", "made-by", "another"},
    {"another maker’s", "made-by", "another"},
    {"bench made", "made-by", "bench"},
    {"owner made", "made-by", "owner"},
    {"maker not known", "made-by", "not-determined"},
    {"right pattern", "pattern", "right"},
    {"running change", "pattern", "running-change"},
    {"service spare", "pattern", "service-spare"},
    {"wrong pattern", "pattern", "wrong"},
    {"pattern not known", "pattern", "not-determined"},
});

/// What all phrases say together.
struct Grading {
  std::map<std::string, std::string> answers;  // element to answer
  std::string certainty;
  std::string presence;
  std::vector<std::pair<std::string, std::optional<Decimal>>> surface;
  std::string corroded;
  std::string defects;
  std::string material;
  std::string finish;

  [[nodiscard]] bool has_state() const {
    return !presence.empty() || !surface.empty() || !corroded.empty() || !defects.empty();
  }
};

std::string trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(' ') - first + 1));
}

std::string hyphened(std::string text) {
  std::replace(text.begin(), text.end(), ' ', '-');
  return text;
}

/// The text behind a word it begins with.
std::optional<std::string> behind(const std::string& phrase, std::string_view word) {
  if (!phrase.starts_with(word) || phrase.size() <= word.size()) return std::nullopt;
  return phrase.substr(word.size());
}

/// "untouched 85", "worn through"; false when it names no state of a surface.
bool read_surface(const std::string& phrase, Grading& grading) {
  const std::size_t space = phrase.rfind(' ');
  std::string name = phrase;
  std::optional<Decimal> share;
  if (space != std::string::npos) {
    std::string number = phrase.substr(space + 1);
    if (number.ends_with('%')) number.pop_back();
    if (const auto decimal = Decimal::parse(number)) {
      share = *decimal;
      name = phrase.substr(0, space);
    }
  }
  const std::string word = hyphened(name);
  if (!record::value_of<record::SurfaceState>(word)) return false;
  grading.surface.emplace_back(word, share);
  return true;
}

bool read_phrase(const std::string& phrase, Grading& grading) {
  for (const Phrase& one : kAnswers) {
    if (one.words != phrase) continue;
    grading.answers[one.element] = one.answer;
    return true;
  }
  if (record::value_of<record::Certainty>(phrase)) {
    grading.certainty = phrase;
    return true;
  }
  if (record::value_of<record::Presence>(hyphened(phrase))) {
    grading.presence = hyphened(phrase);
    return true;
  }
  for (const auto& [word, into] :
       {std::pair{"corroded ", &grading.corroded}, std::pair{"defects ", &grading.defects},
        std::pair{"material ", &grading.material}, std::pair{"finish ", &grading.finish}}) {
    if (auto rest = behind(phrase, word)) {
      *into = *rest;
      return true;
    }
  }
  return read_surface(phrase, grading);
}

base::Result<Grading> read_phrases(const std::vector<std::string>& texts) {
  Grading grading;
  Diagnostics faults;
  for (std::string_view rest : texts) {
    while (!rest.empty()) {
      const std::size_t comma = std::min(rest.find(','), rest.size());
      const std::string phrase = trimmed(rest.substr(0, comma));
      rest.remove_prefix(std::min(comma + 1, rest.size()));
      if (phrase.empty() || read_phrase(phrase, grading)) continue;
      faults.push_back(base::of_command(base::error(
          fmt::format("\"{}\" says nothing of a part", phrase),
          "say such as \"born here, the maker's, right pattern, certain\" or \"untouched 85, worn "
          "through 15\"",
          "command-grade")));
    }
  }
  if (!faults.empty()) return faults;
  return grading;
}

/// What is left to a hundred, for the one state that has no share.
std::string left_over(const Grading& grading) {
  Decimal sum;
  for (const auto& [state, share] : grading.surface) {
    if (share) sum = sum + *share;
  }
  return (Decimal(100, 0) - sum).text();
}

base::Diagnostics set_answers(Draft& draft, pugi::xml_node piece, const Grading& grading,
                              const GradeRequest& request) {
  for (const auto& [element, answer] : grading.answers) {
    const pugi::xml_node judgement = draft.need(piece, element.c_str());
    draft.empty(judgement);
    draft.add(judgement, "answer", answer);
    if (answer != "not-determined") {
      draft.add(judgement, "certainty", grading.certainty.empty() ? "likely" : grading.certainty);
    }
    auto faults = add_evidence(draft, judgement, request.evidence);
    if (!faults.empty()) return faults;
    if (!draft.record().bench.restorers.empty()) {
      draft.add_ref(judgement, "judged-by", draft.record().bench.restorers.front().text);
    }
    draft.add(judgement, "judged-on", base::iso_text(request.on));
  }
  if (!grading.material.empty()) draft.set(piece, "material", grading.material);
  if (!grading.finish.empty()) {
    const pugi::xml_node finish = draft.add(piece, "finish");
    draft.add(finish, "what", grading.finish);
    draft.add(finish, "by", "maker");
  }
  return {};
}

base::Diagnostics set_state(Draft& draft, pugi::xml_node finding, const Grading& grading,
                            const GradeRequest& request) {
  const pugi::xml_node state = draft.need(finding, request.left ? "left" : "found");
  draft.empty(state);
  draft.add(state, "presence", grading.presence.empty() ? "fitted" : grading.presence);
  for (const auto& [name, share] : grading.surface) {
    const pugi::xml_node surface = draft.add(state, "surface");
    draft.add(surface, "state", name);
    draft.add(surface, "share", share ? share->text() : left_over(grading));
  }
  draft.add_if(state, "corroded", grading.corroded);
  draft.add_if(state, "appearance-defects", grading.defects);
  draft.add_words(state, "note", request.note);
  if (!grading.answers.empty()) return {};
  return add_photos(draft, state, request.evidence.photos);
}

std::vector<const record::Piece*> parts_not_yet_graded(const Draft& draft,
                                                       const record::Visit& visit, bool left) {
  std::vector<const record::Piece*> rest;
  const auto moment = left ? record::Moment::left : record::Moment::found;
  for (const record::Piece& piece : draft.record().pieces) {
    if (piece.role != record::PieceRole::part) continue;
    if (piece.now.kind != record::Whereabouts::Kind::fitted) continue;
    if (record::state_of(visit, piece.id, moment) == nullptr) rest.push_back(&piece);
  }
  return rest;
}

void set_examined(Draft& draft, pugi::xml_node visit, const GradeRequest& request) {
  const pugi::xml_node findings = draft.need(visit, "findings");
  const char* day = request.left ? "left-on" : "found-on";
  // As left: the last look counts, since cleaning grades as left, too.
  if (request.left || !findings.child(day)) draft.set(findings, day, base::iso_text(request.on));
  if (!findings.child("by") && !draft.record().bench.restorers.empty()) {
    draft.add_ref(findings, "by", draft.record().bench.restorers.front().text);
  }
}

}  // namespace

Change set_grade(GradeRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto grading = read_phrases(request.phrases);
    if (!grading) return grading.faults();
    // Whose a part is can be judged on any day; its state is of the visit.
    const bool of_visit = grading->has_state() || request.rest;
    auto open = of_visit ? open_visit(draft, request.on) : base::Result<OpenVisit>(OpenVisit{});
    if (!open) return open.faults();
    auto pieces = record::find_pieces(draft.record(), request.parts);
    if (!pieces) return pieces.faults();
    if (request.rest) pieces = parts_not_yet_graded(draft, *open->visit, request.left);
    if (pieces->empty()) {
      return base::of_command(
          base::of_command(base::error(request.rest ? "every part is graded already" : "no part is named",
                      "name the parts to grade", "command-parts")));
    }
    for (const record::Piece* piece : *pieces) {
      auto faults = set_answers(draft, draft.by_id(piece->id.text), *grading, request);
      if (faults.empty() && grading->has_state()) {
        faults = set_state(draft, finding_of(draft, open->element, piece->id), *grading, request);
      }
      if (!faults.empty()) return faults;
    }
    if (grading->has_state()) set_examined(draft, open->element, request);
    std::string phrases;
    for (const std::string& one : request.phrases)
      phrases += (phrases.empty() ? "" : ", ") + one;
    const char* moment = !grading->has_state() ? "" : request.left ? " as left" : " as found";
    return Said{fmt::format("graded {}{}: {}", record::listed(*pieces), moment, phrases), {}};
  };
}

}  // namespace winchbook::daybook
