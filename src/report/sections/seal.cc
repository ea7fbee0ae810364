#include <algorithm>
#include <utility>

#include "base/words_of_text.h"
#include "report/sections.h"
#include "report/statement.h"

namespace winchbook::report {
namespace {

/// Sixty-four digits in fours, four groups a line.
std::string in_fours(std::string_view digits) {
  std::string out;
  for (std::size_t i = 0; i < digits.size(); i += 4) {
    if (i > 0) out += i % 16 == 0 ? "\n" : "\u00A0";
    out += digits.substr(i, 4);
  }
  return out;
}

/// The same in one line that may break between the fours.
std::string in_one_line(std::string_view digits) {
  std::string out = in_fours(digits);
  std::replace(out.begin(), out.end(), '\n', ' ');
  return out;
}

/// What the square code says: capitals, digits and spaces only, which a QR code packs most tightly,
/// so that it fits the margin; as plain text, so that a person can compare it.
std::string qr_payload(const Edition& edition) {
  std::string payload = "WB1 " + edition.document + " " + std::to_string(edition.number) + " " +
                        base::iso_text(edition.date) + " ";
  for (const char letter : edition.code) {
    if (letter != ' ') payload += letter;
  }
  return base::in_capitals(payload + " " + edition.fingerprint);
}

document::Facts facts(const Telling& telling) {
  const auto& words = telling.words;
  const Edition& edition = telling.edition;
  document::Facts facts;
  facts.label_width = 72;
  const auto add = [&](const char* key, document::Text text) {
    facts.facts.push_back({words.say(key), std::move(text)});
  };
  add("seal.book", document::plain(words.say(
                       "seal.book-is", {{"document", words.say("document." + edition.document)},
                                        {"edition", std::to_string(edition.number)},
                                        {"date", words.day(edition.date)}})));
  add("seal.reel", document::plain(titled(telling, reel_in_trade(telling))));
  add("seal.fingerprint", document::in_lines(in_fours(edition.fingerprint)));
  add("seal.earlier",
      document::plain(edition.earlier.empty() ? words.say("seal.none")
                                              : words.joined("join.comma", edition.earlier)));
  const auto& photos = telling.record.photos;
  const auto shown = std::count_if(photos.begin(), photos.end(),
                                   [](const record::Photo& photo) { return !photo.withheld; });
  add("seal.inside",
      document::plain(words.say(edition.withheld > 0 ? "seal.inside-shown" : "seal.inside-is",
                                {{"count", static_cast<std::size_t>(shown)}})));
  if (edition.withheld > 0) {
    document::Text withheld =
        document::plain(words.say("seal.withheld-is", {{"count", edition.withheld}}));
    withheld.parts.emplace_back(document::LineEnd{});
    append(withheld, document::in_lines(in_fours(edition.withheld_root)));
    add("seal.withheld", std::move(withheld));
  }
  return facts;
}

}  // namespace

namespace {

/// Which document it is, its fingerprint, how to check it, and what is withheld from its reader.
std::string note_words(const Telling& telling) {
  const auto& words = telling.words;
  const Edition& edition = telling.edition;
  return words.say(edition.withheld > 0 ? "seal-note.withheld" : "seal-note.words",
                   {{"document", words.say("document." + edition.document)},
                    {"edition", std::to_string(edition.number)},
                    {"date", words.day(edition.date)},
                    {"fingerprint", in_one_line(edition.fingerprint)},
                    {"count", edition.withheld},
                    {"root", in_one_line(edition.withheld_root)}});
}

}  // namespace

std::optional<document::Chapter> tell_seal_note(const Telling& telling) {
  document::Chapter chapter = telling.chapter("seal-note");
  document::Paragraph note{document::with_lead(telling.edition.code + ".", note_words(telling))};
  note.manner = document::ParagraphManner::note;
  chapter.blocks.emplace_back(std::move(note));
  return chapter;
}

std::optional<document::Chapter> tell_statement_seal(const Telling& telling) {
  document::Chapter chapter = telling.chapter("statement-seal");
  chapter.keeps_together = true;
  const Edition& edition = telling.edition;
  document::Seal seal{edition.code, qr_payload(edition),
                      telling.words.say("seal.qr", {{"code", edition.code}})};
  seal.small = true;
  chapter.blocks.emplace_back(std::move(seal));
  for (std::string said :
       {note_words(telling),
        telling.words.say("statement-seal.written", {{"bench", telling.record.bench.name},
                                                     {"place", telling.record.bench.place}})}) {
    document::Paragraph note = telling.sentence(std::move(said));
    note.manner = document::ParagraphManner::note;
    chapter.blocks.emplace_back(std::move(note));
  }
  return chapter;
}

std::optional<document::Chapter> tell_seal(const Telling& telling) {
  document::Chapter chapter = telling.chapter("seal");
  chapter.stand_first = telling.words.say("seal.answer");
  const Edition& edition = telling.edition;
  document::Seal seal{edition.code, qr_payload(edition),
                      telling.words.say("seal.qr", {{"code", edition.code}})};
  chapter.blocks.emplace_back(std::move(seal));
  chapter.blocks.emplace_back(facts(telling));
  chapter.blocks.emplace_back(telling.sentence(telling.words.say("seal.check")));
  if (edition.withheld > 0) {
    chapter.blocks.emplace_back(document::Subhead{telling.words.say("seal.withheld-head")});
    document::Paragraph how = telling.sentence(
        telling.words.say("seal.withheld-how", {{"bench", telling.record.bench.name}}));
    how.manner = document::ParagraphManner::unindented;
    how.beside.emplace_back(document::SideNote{document::with_lead(
        telling.words.say("seal.withheld-lead"), telling.words.say("seal.withheld-hand"))});
    chapter.blocks.emplace_back(std::move(how));
  }
  chapter.blocks.emplace_back(document::Subhead{telling.words.say("seal.paper-only")});
  document::Paragraph paper = telling.sentence(telling.words.say("seal.paper-only-is"));
  paper.manner = document::ParagraphManner::unindented;
  paper.beside.emplace_back(
      document::SideNote{document::plain(telling.words.say("seal.loose-leaf"))});
  chapter.blocks.emplace_back(std::move(paper));
  return chapter;
}

}  // namespace winchbook::report
