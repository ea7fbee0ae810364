#include "report/condition_chart.h"
#include "report/sections.h"

namespace winchbook::report {
namespace {

using document::SideNote;

/// What the owner asked for, in order, and what must stay: beside the first words.
std::vector<document::Beside> wishes(const Telling& telling) {
  std::vector<document::Beside> notes;
  const record::Visit& visit = telling.visit;
  const auto& words = telling.words;
  if (!visit.wishes.words.empty() && telling.edition.reader == record::Reader::owner) {
    const auto& who = visit.brought_by;
    const std::string lead = words.say(
        "came.asked",
        {{"who", who ? "named" : "owner"}, {"name", who ? telling.short_name(*who) : ""}});
    document::Text text = document::with_lead(lead, "");
    text.parts.emplace_back(document::Run{" "});
    append(text, telling.text(visit.wishes.words.front().words));
    notes.emplace_back(SideNote{std::move(text)});
  }
  std::vector<std::string> stays;
  for (const record::Agreement& agreement : visit.agreements) {
    for (const record::Words& one : agreement.must_stay)
      stays.push_back(telling.plain(one));
  }
  if (!telling.record.reel.box_and_papers.empty()) {
    notes.emplace_back(SideNote{document::with_lead(
        words.say("came.with-it"), telling.plain(telling.record.reel.box_and_papers))});
  }
  if (!stays.empty()) {
    notes.emplace_back(SideNote{document::with_lead(words.say("came.must-stay"), joined(stays))});
  }
  return notes;
}

/// With no words to stand beside, the notes are told one below the other.
document::Paragraph in_paragraphs(std::vector<document::Beside> notes) {
  document::Paragraph told;
  told.manner = document::ParagraphManner::unindented;
  for (document::Beside& note : notes) {
    auto* words = std::get_if<SideNote>(&note);
    if (words == nullptr) continue;
    if (!told.words.empty()) told.words.parts.emplace_back(document::LineEnd{});
    append(told.words, std::move(words->words));
  }
  return told;
}

void add_pictures(const Telling& telling, document::Chapter& chapter) {
  const auto& pictures = telling.pictures.of("how-it-came");
  if (pictures.size() == 1) {
    document::Figure figure = telling.figure(*pictures.front(), document::Width::main);
    figure.caption_in_side = true;
    chapter.blocks.emplace_back(std::move(figure));
  } else if (pictures.size() > 1) {
    document::FigureRow row;
    row.figures.push_back(telling.figure(*pictures[0], document::Width::side));
    row.figures.push_back(telling.figure(*pictures[1], document::Width::main));
    chapter.blocks.emplace_back(std::move(row));
  }
}

/// The named faults as found, each a sentence with its gravity first.
std::optional<document::List> faults(const Telling& telling) {
  document::List list;
  for (const record::Fault& fault : telling.visit.findings.faults) {
    if (!fault.found) continue;
    const std::string gravity =
        telling.words.say("severity." + std::string(record::word_of(*fault.found)));
    document::Text text =
        document::with_lead(telling.words.capitalised(fault.name),
                            telling.words.say("came.fault", {{"gravity", gravity}}) + " ");
    append(text, telling.text(fault.what));
    list.items.push_back(std::move(text));
  }
  if (list.items.empty()) return std::nullopt;
  return list;
}

}  // namespace

std::optional<document::Chapter> tell_how_it_came(const Telling& telling) {
  const record::Visit& visit = telling.visit;
  document::Chapter chapter = telling.chapter("how-it-came");
  chapter.eyebrow =
      telling.words.say("came.eyebrow-dated", {{"date", telling.words.date(visit.taken_in)}});
  chapter.eyebrow_continued =
      telling.words.say("chapter.continued", {{"eyebrow", chapter.eyebrow}});
  chapter.stand_first = telling.plain(visit.arrived);
  add_pictures(telling, chapter);
  document::Paragraph first = telling.paragraph(visit.findings.note);
  first.beside = wishes(telling);
  if (!first.words.empty()) {
    chapter.blocks.emplace_back(std::move(first));
  } else if (!first.beside.empty()) {
    chapter.blocks.emplace_back(in_paragraphs(std::move(first.beside)));
  }
  if (auto named = faults(telling)) {
    chapter.blocks.emplace_back(
        document::Subhead{telling.counted("came.faults", named->items.size())});
    chapter.blocks.emplace_back(std::move(*named));
  }
  if (auto chart = condition_chart(telling)) chapter.blocks.emplace_back(std::move(*chart));
  if (chapter.blocks.empty() && chapter.stand_first.empty()) return std::nullopt;
  return chapter;
}

}  // namespace winchbook::report
