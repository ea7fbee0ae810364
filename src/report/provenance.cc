#include "report/provenance.h"

#include <optional>
#include <utility>
#include <variant>

namespace winchbook::report {
namespace {

using record::CustodyGap;
using record::CustodyStep;

/// From when to when, as far as anybody knows; empty when nobody does.
std::string between(const Telling& telling, const std::optional<base::EdtfDate>& from,
                    const std::optional<base::EdtfDate>& until) {
  const auto& words = telling.words;
  if (from && until) {
    return words.say("custody.from-until",
                     {{"from", words.date(*from)}, {"until", words.date(*until)}});
  }
  if (from) return words.say("custody.from", {{"from", words.date(*from)}});
  if (until) return words.say("date.until", {{"last", words.date(*until)}});
  return "";
}

/// What follows a comma.
std::string and_then(const Telling& telling, std::string_view words) {
  return telling.words.say("join.comma", {{"before", ""}, {"next", words}});
}

/// "Augusta Merrow [1911/1979], purser of the Ellery Sound ferry, bought new, 1948": the holder,
/// who they were, how it came to them, and when.
document::Text step_words(const Telling& telling, const CustodyStep& step, bool same_holder,
                          bool opens_sentence) {
  const record::Person* person = find(telling.record, step.holder);
  std::string holder =
      same_holder ? telling.words.say("custody.the-same") : telling.name(step.holder);
  // What stands in for a withheld name begins with a small letter.
  if (opens_sentence) holder = telling.words.capitalised(holder);
  document::Text text = document::plain(std::move(holder));
  const auto add = [&](std::string words) {
    text.parts.emplace_back(document::Run{std::move(words)});
  };
  if (!same_holder && person != nullptr && person->lived && record::told(person->name) != nullptr) {
    add(telling.words.say("custody.lived", {{"dates", telling.words.date(*person->lived)}}));
  }
  if (step.held != record::Held::both) {
    add(and_then(telling, telling.words.say("held." + std::string(record::word_of(step.held)))));
  }
  if (!step.how.empty()) {
    add(and_then(telling, ""));
    if (step.certainty && step.certainty != record::Certainty::certain) {
      add(telling.words.say("custody." + std::string(record::word_of(*step.certainty))) + " ");
    }
    append(text, telling.text(step.how));
  }
  // The next holder's beginning is this one's end.
  if (std::string when = between(telling, step.from, std::nullopt); !when.empty()) {
    text.parts.emplace_back(document::Run{and_then(telling, when)});
  }
  return text;
}

document::Text gap_words(const Telling& telling, const CustodyGap& gap) {
  document::Text text = document::plain(telling.words.say("custody.gap-open"));
  std::string when = between(telling, gap.from, gap.until);
  if (gap.from && !gap.until) {
    when = telling.words.say("date.from", {{"first", telling.words.date(*gap.from)}});
  }
  if (!when.empty()) {
    text.parts.emplace_back(document::Run{and_then(telling, when)});
  }
  if (!gap.what.empty()) text.parts.emplace_back(document::Run{": "});
  append(text, telling.text(gap.what));
  text.parts.emplace_back(document::Run{telling.words.say("custody.gap-close")});
  return text;
}

/// What the dates of two steps in a row leave open between them: nothing when the second begins by
/// the day after the first ended, or when either day is not told.
std::optional<CustodyGap> left_open(const CustodyStep& before, const CustodyStep& after) {
  if (!before.until || !after.from) return std::nullopt;
  const auto ended = before.until->latest();
  const auto begun = after.from->earliest();
  if (!ended || !begun || base::day_number(*begun) - base::day_number(*ended) <= 1)
    return std::nullopt;
  return CustodyGap{{}, before.until, after.from, {}};
}

/// "1979/": it ended, and nobody knows when.
bool ended_sometime(const CustodyStep& step) {
  if (!step.until) return false;
  const auto& end = step.until->members().back().to;
  return end.kind == base::EdtfEnd::Kind::unknown;
}

/// One step or gap and the sign after it.
void add_sentence(document::Text words, const char* sign, document::Text& out) {
  if (!out.parts.empty()) out.parts.emplace_back(document::Run{" "});
  append(out, std::move(words));
  out.parts.emplace_back(document::Run{sign});
}

}  // namespace

document::Text provenance(const Telling& telling, std::vector<document::Text>& notes) {
  document::Text out;
  bool opens_sentence = true;
  const auto& custody = telling.record.custody;
  for (std::size_t i = 0; i < custody.size(); ++i) {
    if (const auto* gap = std::get_if<CustodyGap>(&custody[i])) {
      add_sentence(gap_words(telling, *gap), ".", out);
      opens_sentence = true;
      continue;
    }
    const auto& step = std::get<CustodyStep>(custody[i]);
    const auto* before = i > 0 ? std::get_if<CustodyStep>(&custody[i - 1]) : nullptr;
    const auto* after =
        i + 1 < custody.size() ? std::get_if<CustodyStep>(&custody[i + 1]) : nullptr;
    const bool same = before != nullptr && before->holder == step.holder;
    const std::optional<CustodyGap> open =
        after != nullptr ? left_open(step, *after) : std::nullopt;
    const bool direct = after != nullptr && !open && !ended_sometime(step);
    add_sentence(step_words(telling, step, same, opens_sentence), direct ? ";" : ".", out);
    opens_sentence = !direct;
    if (!step.source.empty()) {
      notes.push_back(document::plain(step.source));
      out.parts.emplace_back(document::NoteMark{static_cast<int>(notes.size())});
    }
    if (open) add_sentence(gap_words(telling, *open), ".", out);
  }
  return out;
}

document::Text provenance_key(const Telling& telling) {
  return document::with_lead(telling.words.say("custody.how-to-read"),
                             telling.words.say("custody.key"));
}

std::string stays_at_bench(const Telling& telling) {
  std::vector<std::string> told;
  for (const record::Visit& visit : telling.record.visits) {
    const std::string from = telling.words.date(visit.taken_in);
    if (visit.hand_back) {
      told.push_back(
          telling.words.say("custody.from-until",
                            {{"from", from}, {"until", telling.words.date(visit.hand_back->on)}}));
    } else {
      told.push_back(telling.words.say("date.since", {{"first", from}}));
    }
  }
  return telling.words.say(
      "custody.bench", {{"bench", telling.record.bench.name}, {"dates", telling.words.list(told)}});
}

}  // namespace winchbook::report
