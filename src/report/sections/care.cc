#include <utility>

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
    for (auto& part : telling.text(one).parts)
      into.parts.push_back(std::move(part));
  }
}

std::string dates(const Telling& telling) {
  std::vector<std::string> sentences;
  const record::Visit& visit = telling.visit;
  if (visit.next_service) {
    sentences.push_back(telling.words.say("care.next-service",
                                          {{"date", telling.words.date(*visit.next_service)}}));
  }
  if (visit.review_by) {
    sentences.push_back(
        telling.words.say("care.review-by", {{"date", telling.words.date(*visit.review_by)}}));
  }
  return joined(sentences);
}

}  // namespace

std::optional<document::Chapter> tell_care(const Telling& telling) {
  if (!telling.visit.care) return std::nullopt;
  const record::CareAdvice& care = *telling.visit.care;
  document::Chapter chapter = telling.chapter("care");
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
  if (paragraphs.empty()) return std::nullopt;
  std::size_t at = 0;
  for (const record::Caution& caution : care.cautions) {
    paragraphs[at].beside.emplace_back(telling.caution(caution));
    at = (at + 1) % paragraphs.size();
  }
  for (document::Paragraph& one : paragraphs)
    chapter.blocks.emplace_back(std::move(one));
  return chapter;
}

}  // namespace winchbook::report
