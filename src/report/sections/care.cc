#include <utility>

#include "assess/fitting/recorded.h"
#include "report/care_words.h"
#include "report/sections.h"

namespace winchbook::report {
namespace {

std::string newtons(const Telling& telling, const base::Newtons& force) {
  return telling.words.measure(force.value, "N");
}

std::string drag_sentence(const Telling& telling, const record::CareAdvice& care) {
  if (care.drag_low && care.drag_high) {
    return telling.words.say("care.drag", {{"low", telling.words.number(care.drag_low->value)},
                                           {"high", newtons(telling, *care.drag_high)}});
  }
  if (care.drag_high) {
    return telling.words.say("care.drag-most", {{"high", newtons(telling, *care.drag_high)}});
  }
  return "";
}

void add_all(const Telling& telling, const std::vector<record::Words>& sentences,
             document::Text& into) {
  for (const record::Words& one : sentences) {
    if (!into.empty()) into.parts.emplace_back(document::Run{" "});
    append(into, telling.text(one));
  }
}

std::string dates(const Telling& telling) {
  const record::Visit& visit = telling.visit;
  return joined(
      {next_service_words(telling),
       visit.review_by
           ? telling.words.say("care.review-by", {{"date", telling.words.date(*visit.review_by)}})
           : ""});
}

/// The bench's own cautions; then, for a reel that is fished, what its kind, age and line add.
std::vector<document::Caution> cautions(const Telling& telling, bool fished) {
  std::vector<document::Caution> all;
  if (telling.visit.care) {
    for (const record::Caution& caution : telling.visit.care->cautions)
      all.push_back(telling.caution(caution));
  }
  if (!fished) return all;
  for (document::Caution& caution : further_cautions(telling, {knowledge::Matters::use}))
    all.push_back(std::move(caution));
  return all;
}

}  // namespace

std::optional<document::Chapter> tell_care(const Telling& telling) {
  const record::CareAdvice care = telling.visit.care.value_or(record::CareAdvice{});
  document::Chapter chapter = telling.chapter("care");
  const bool fished = assess::fitting::use_of(telling.visit) == assess::fitting::Use::fish;
  if (!fished) {
    chapter.eyebrow = telling.words.say("care.eyebrow-shelf");
    chapter.eyebrow_continued =
        telling.words.say("chapter.continued", {{"eyebrow", chapter.eyebrow}});
  }
  std::vector<document::Paragraph> paragraphs;

  document::Text fish = document::plain(drag_sentence(telling, care));
  if (!care.line.empty()) {
    if (!fish.empty()) fish.parts.emplace_back(document::Run{" "});
    fish.parts.emplace_back(document::Run{telling.words.say("care.line", {{"line", care.line}})});
  }
  add_all(telling, care.fish, fish);
  if (!fish.empty()) paragraphs.push_back({std::move(fish)});

  document::Text keep;
  add_all(telling, care.keep, keep);
  if (!keep.empty()) paragraphs.push_back({std::move(keep)});

  if (std::string when = dates(telling); !when.empty()) {
    paragraphs.push_back(telling.sentence(std::move(when)));
  }
  // With nothing for them to stand beside, the cautions are what there is to say.
  const bool alone = paragraphs.empty();
  if (alone && !telling.visit.care) return std::nullopt;
  std::size_t at = 0;
  for (document::Caution& caution : cautions(telling, fished)) {
    if (alone) {
      document::Text words = document::with_lead(caution.label + ".", " ");
      append(words, std::move(caution.words));
      paragraphs.push_back({std::move(words)});
      continue;
    }
    paragraphs[at].beside.emplace_back(std::move(caution));
    at = (at + 1) % paragraphs.size();
  }
  if (paragraphs.empty()) return std::nullopt;
  for (document::Paragraph& one : paragraphs)
    chapter.blocks.emplace_back(std::move(one));
  return chapter;
}

}  // namespace winchbook::report
