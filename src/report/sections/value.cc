#include <algorithm>
#include <utility>

#include "assess/with_the_reel.h"
#include "record/enum_words.h"
#include "report/dating_words.h"
#include "report/sections.h"
#include "report/statement.h"
#include "report/told.h"
#include "report/value_words.h"

namespace winchbook::report {
namespace {

using assess::value::Method;

/// Whether there is a figure for some state.
bool told(const Worth& worth) {
  return std::any_of(worth.finding.estimates.begin(), worth.finding.estimates.end(),
                     [](const assess::value::Estimate& one) { return one.method != Method::none; });
}

FactList told_worth(const Worth& worth) {
  FactList told;
  for (std::size_t i = 0; i < worth.states.size() && i < worth.finding.estimates.size(); ++i) {
    const bool found = worth.states[i].kind == assess::ValuedState::Kind::found;
    told.push_back(told_value(found ? "value:found" : "value:left", worth.finding.estimates[i],
                              worth.question.currency));
  }
  return told;
}

FactList told_courses(const Worth& worth) {
  FactList told;
  for (const assess::value::CourseState& one : worth.courses) {
    told.push_back(told_value("value." + std::string(record::word_of(one.course)),
                              assess::value::estimate_of(worth.finding, one),
                              worth.question.currency));
  }
  return told;
}

/// What would change the answer: of a refusal, how many sales are wanting.
std::string change(const Telling& telling) {
  const Worth& worth = *telling.worth;
  const auto least = static_cast<std::size_t>(worth.rules.least);
  const std::size_t count = worth.finding.evidence.counted.size();
  if (count < least) return telling.words.say("value.change-few", {{"count", least - count}});
  return telling.words.say(told(worth) ? "value.change-told" : "value.change-refused");
}

/// Not an appraisal, and who is asked for one.
document::Paragraph not_certified(const Telling& telling) {
  document::Paragraph said = telling.sentence(telling.words.say("value.not-certified"));
  said.manner = document::ParagraphManner::unindented;
  return said;
}

/// What is valued, so that nobody takes another reel for it.
std::string identity(const Telling& telling) {
  using Maker = assess::Identity::Maker;
  const assess::Identity& reel = telling.assessment.identity;
  const auto& words = telling.words;
  std::vector<std::string> parts{
      words.say("reel-kind." + std::string(record::word_of(telling.record.reel.kind)))};
  if (reel.how != Maker::not_known) {
    parts.push_back(words.say(reel.how == Maker::attributed ? "value.attributed" : "value.maker",
                              {{"maker", reel.maker}}));
  }
  if (!reel.model.empty()) parts.push_back(words.say("value.model", {{"model", reel.model}}));
  if (!reel.serial.empty()) parts.push_back(words.say("value.serial", {{"serial", reel.serial}}));
  if (reel.assembled()) {
    parts.push_back(words.say("cover.assembled", {{"number", words.spelled(reel.reels)}}));
  }
  if (const std::string years = made_years(telling); !years.empty()) {
    parts.push_back(
        words.say(reel.assembled() ? "cover.made-assembled" : "cover.made",
                  {{"date", years}, {"sure", reel.made.certain ? "certain" : "likely"}}));
  }
  for (std::string& part : parts) {
    while (part.ends_with(',') || part.ends_with('.'))
      part.pop_back();
  }
  std::string line = words.joined("join.comma", parts);
  while (line.ends_with(',') || line.ends_with('.'))
    line.pop_back();
  return words.say("value.identity", {{"name", reel.name}, {"what", line}});
}

std::string client(const Telling& telling) {
  const auto person = assess::client_of(telling.record, telling.visit);
  return person ? telling.name(*person) : telling.words.say("value.owner");
}

/// The purpose's own words; a purpose that the bench added stands by its name.
std::string purpose(const Telling& telling) {
  const std::string key = "value.purpose." + telling.worth->question.purpose.name;
  return telling.words.has(key) ? telling.words.say(key) : telling.worth->question.purpose.name;
}

std::string states(const Telling& telling) {
  const auto& visit = telling.visit;
  std::string left = visit.hand_back
                         ? telling.words.say("value.state-handed",
                                             {{"date", telling.words.date(visit.hand_back->on)}})
                         : telling.words.say("value.state-at-bench");
  return joined(
      {telling.words.say("value.state-found", {{"date", telling.words.date(visit.taken_in)}}),
       std::move(left)});
}

std::string who_saw(const Telling& telling) {
  const auto& restorers = telling.record.bench.restorers;
  const std::string name =
      restorers.empty() ? telling.record.bench.name : telling.name(restorers.front());
  return telling.words.say("value.seen-is", {{"name", name}, {"bench", telling.record.bench.name}});
}

document::Facts facts(const Telling& telling) {
  const auto& words = telling.words;
  const auto& question = telling.worth->question;
  document::Facts facts;
  facts.label_width = 84;
  const auto add = [&](const char* key, std::string text) {
    facts.facts.push_back({words.say(key), document::plain(std::move(text))});
  };
  const std::string name = client(telling);
  add("value.what", identity(telling));
  add("value.state", states(telling));
  add("value.client", words.say("value.client-is", {{"name", name}}));
  add("value.purpose", purpose(telling));
  add("value.basis",
      words.say("value.basis-is", {{"definition", words.capitalised(question.purpose.definition)},
                                   {"source", question.purpose.source}}));
  add("value.exposure", words.say("value.exposure-is"));
  add("value.effective", words.day(question.as_of));
  add("value.reported", words.day(telling.edition.date));
  add("value.change", change(telling));
  add("value.interest", words.say("value.interest-is", {{"name", name}}));
  add("value.seen", who_saw(telling));
  if (telling.pictures.cover != nullptr) {
    document::Figure picture{telling.photograph(*telling.pictures.cover)};
    picture.width = document::Width::side;
    facts.beside.emplace_back(std::move(picture));
  }
  return facts;
}

}  // namespace

std::optional<document::Chapter> tell_value(const Telling& telling) {
  if (telling.worth == nullptr || telling.worth->finding.estimates.empty()) return std::nullopt;
  document::Chapter chapter = telling.chapter("value");
  chapter.title = telling.assessment.identity.name;
  chapter.stand_first = joined({assembled_sentence(telling), answer_words(telling)});
  chapter.tells = told_worth(*telling.worth);
  FactList told = told_identity(telling.assessment.identity);
  for (document::Fact& fact : told_made(telling.assessment.identity.made))
    told.push_back(std::move(fact));
  chapter.blocks.emplace_back(facts(telling)).tells = std::move(told);
  if (auto courses = courses_value_table(telling)) {
    chapter.blocks.emplace_back(std::move(*courses)).tells = told_courses(*telling.worth);
  } else if (!telling.worth->courses.empty()) {
    document::Paragraph none = telling.sentence(telling.words.say("value.courses-none"));
    none.manner = document::ParagraphManner::unindented;
    chapter.blocks.emplace_back(std::move(none));
  }
  chapter.blocks.emplace_back(not_certified(telling));
  return chapter;
}

std::optional<document::Chapter> tell_value_note(const Telling& telling) {
  if (telling.worth == nullptr || telling.worth->finding.estimates.empty()) return std::nullopt;
  const Worth& worth = *telling.worth;
  const auto& words = telling.words;
  document::Chapter chapter = telling.chapter("value-note");
  chapter.stand_first = answer_words(telling);
  chapter.tells = told_worth(worth);
  std::vector<std::string> sentences{
      words.say("value-note.words", {{"purpose", purpose(telling)},
                                     {"definition", worth.question.purpose.definition},
                                     {"date", words.day(worth.question.as_of)},
                                     {"count", worth.finding.evidence.counted.size()}})};
  if (worth.finding.trial) sentences.push_back(trial_words(telling));
  if (!told(worth)) sentences.push_back(change(telling));
  document::Paragraph said = telling.sentence(joined(sentences));
  said.manner = document::ParagraphManner::unindented;
  chapter.blocks.emplace_back(std::move(said));
  if (auto courses = courses_value_table(telling))
    chapter.blocks.emplace_back(std::move(*courses)).tells = told_courses(worth);
  chapter.blocks.emplace_back(not_certified(telling));
  return chapter;
}

}  // namespace winchbook::report
