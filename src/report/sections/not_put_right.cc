#include <utility>

#include "record/moments.h"
#include "report/sections.h"

namespace winchbook::report {
namespace {

/// A fault that stayed, by name, and why it stayed.
document::Text fault_left(const Telling& telling, const record::Fault& fault) {
  const std::string gravity = telling.words.say(
      "severity." +
      std::string(record::word_of(*record::severity_at(fault, record::Moment::left))));
  document::Text text =
      document::with_lead(telling.words.capitalised(fault.name),
                          telling.words.say("came.fault", {{"gravity", gravity}}) + " ");
  const record::Words& why = fault.why_it_stays.empty() ? fault.what : fault.why_it_stays;
  append(text, telling.text(why));
  return text;
}

}  // namespace

std::optional<document::Chapter> tell_not_put_right(const Telling& telling) {
  const record::Visit& visit = telling.visit;
  document::Chapter chapter = telling.chapter("not-put-right");
  if (visit.findings.left_on) {
    chapter.eyebrow = telling.words.say("not-put-right.eyebrow-dated",
                                        {{"date", telling.words.date(*visit.findings.left_on)}});
    chapter.eyebrow_continued =
        telling.words.say("chapter.continued", {{"eyebrow", chapter.eyebrow}});
  }
  document::List faults;
  for (const record::Fault& fault : visit.findings.faults) {
    if (record::severity_at(fault, record::Moment::left))
      faults.items.push_back(fault_left(telling, fault));
  }
  if (visit.not_put_right.empty() && faults.items.empty()) return std::nullopt;
  bool first = true;
  for (const record::Words& words : visit.not_put_right) {
    document::Paragraph paragraph = telling.paragraph(words);
    if (std::exchange(first, false) && telling.visit.next_service) {
      paragraph.beside.emplace_back(
          document::SideNote{document::plain(telling.words.say("not-put-right.seen-again"))});
    }
    chapter.blocks.emplace_back(std::move(paragraph));
  }
  if (!faults.items.empty()) {
    chapter.blocks.emplace_back(
        document::Subhead{telling.counted("not-put-right.faults", faults.items.size())});
    chapter.blocks.emplace_back(std::move(faults));
  }
  return chapter;
}

}  // namespace winchbook::report
