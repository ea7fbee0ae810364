#include "report/statement.h"

#include <algorithm>
#include <utility>

#include "record/enum_words.h"
#include "record/moments.h"

namespace winchbook::report {

using Maker = assess::Identity::Maker;

std::string mark_letter(std::size_t index) {
  constexpr std::size_t kLetters = 26;
  std::string letters;
  for (std::size_t rest = index + 1; rest > 0; rest = (rest - 1) / kLetters)
    letters.insert(letters.begin(), static_cast<char>('a' + (rest - 1) % kLetters));
  return letters;
}

std::string marks_named(const Telling& telling, const std::vector<record::MarkingId>& marks) {
  std::vector<std::string> letters;
  const auto& all = telling.record.markings;
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (std::find(marks.begin(), marks.end(), all[i].id) != marks.end())
      letters.push_back(mark_letter(i));
  }
  if (letters.empty()) return "";
  return telling.words.say("statement.marks-named",
                           {{"count", letters.size()}, {"letters", telling.words.list(letters)}});
}

std::string how_sure(const Telling& telling, const std::optional<record::Certainty>& certainty) {
  if (!certainty) return telling.words.say("certainty.not-written");
  return telling.words.say("certainty." + std::string(record::word_of(*certainty)));
}

document::Text grounds(const Telling& telling, const record::Evidence& evidence) {
  document::Text text = telling.text(evidence.because);
  const auto add = [&](const std::string& words) {
    if (words.empty()) return;
    const std::string space = text.empty() ? "" : " ";
    text.parts.emplace_back(document::Run{space + telling.words.capitalised(words) + "."});
  };
  add(marks_named(telling, evidence.markings));
  std::vector<std::string> tellers;
  for (const record::PersonId& person : evidence.told_by)
    tellers.push_back(telling.name(person));
  if (!tellers.empty()) {
    add(telling.words.say("statement.told-by", {{"names", telling.words.list(tellers)}}));
  }
  return text;
}

std::string reel_in_trade(const Telling& telling) {
  const assess::Identity& reel = telling.assessment.identity;
  if (reel.serial.empty()) return reel.in_trade();
  return telling.words.say("seal.reel-is", {{"reel", reel.in_trade()}, {"serial", reel.serial}});
}

std::string titled(const Telling& telling, std::string name) {
  const assess::Identity& reel = telling.assessment.identity;
  if (!reel.assembled()) return name;
  return telling.words.say("identity.assembled-title",
                           {{"name", name}, {"number", telling.words.spelled(reel.reels)}});
}

std::string assembled_sentence(const Telling& telling) {
  const assess::Identity& reel = telling.assessment.identity;
  if (!reel.assembled()) return "";
  return telling.words.say("identity.assembled", {{"number", telling.words.spelled(reel.reels)}});
}

std::string kind_and_maker(const Telling& telling) {
  const assess::Identity& reel = telling.assessment.identity;
  const words::Argument kind{
      "kind",
      telling.words.say("reel-kind." + std::string(record::word_of(telling.record.reel.kind)))};
  const words::Argument reels{"reels", reel.reels};
  const words::Argument number{"number", telling.words.spelled(reel.reels)};
  if (reel.how == Maker::not_known)
    return telling.words.say("statement.kind-only", {kind, reels, number});
  const char* form = reel.how == Maker::attributed ? "attributed"
                     : reel.place.empty()          ? "made"
                                                   : "made-at";
  std::string words = telling.words.say(
      "statement.kind-and-maker",
      {kind, {"form", form}, {"maker", reel.maker}, {"place", reel.place}, reels, number});
  // "Reel Co." brings a full stop of its own.
  if (words.ends_with("..")) words.pop_back();
  return words;
}

std::size_t standing_faults(const Telling& telling) {
  const auto& faults = telling.visit.findings.faults;
  return static_cast<std::size_t>(
      std::count_if(faults.begin(), faults.end(), [](const record::Fault& fault) {
        return record::severity_at(fault, record::Moment::left).has_value();
      }));
}

document::Subhead ruled_subhead(const Telling& telling, const char* key, bool dashed) {
  document::Subhead head{telling.words.say(key)};
  head.width = document::Width::full;
  head.dashed = dashed;
  return head;
}

document::Paragraph note_paragraph(document::Text words) {
  document::Paragraph paragraph{std::move(words), document::ParagraphManner::note};
  paragraph.width = document::Width::full;
  return paragraph;
}

document::Paragraph note_paragraph(std::string words) {
  return note_paragraph(document::plain(std::move(words)));
}

}  // namespace winchbook::report
