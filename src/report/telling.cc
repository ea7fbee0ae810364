#include "report/telling.h"

#include <type_traits>
#include <utility>

namespace winchbook::report {
namespace {

using document::Block;
using document::Run;
using document::Text;
using record::Photo;

/// The bench's own number of a mention, or words that keep the sentence whole when it is not shown.
Run figure_reference(const Telling& telling, const record::PhotoMention& mention) {
  const int number = telling.pictures.number(mention.photo);
  if (number == 0) return {telling.words.say("figure.not-shown")};
  return {telling.words.say("figure.reference", {{"number", std::to_string(number)}})};
}

Run run_of(const Telling& telling, const record::Run& part) {
  return std::visit(
      [&](const auto& one) -> Run {
        using Kind = std::decay_t<decltype(one)>;
        if constexpr (std::is_same_v<Kind, record::Plain>) {
          return {one.words};
        } else if constexpr (std::is_same_v<Kind, record::Emphasis>) {
          return {.text = one.words, .italic = true};
        } else if constexpr (std::is_same_v<Kind, record::PersonMention>) {
          const record::Person* person = find(telling.record, one.person);
          const bool told =
              !telling.nameless && person != nullptr && record::told(person->name) != nullptr;
          return {told && !one.words.empty() ? one.words : telling.name(one.person)};
        } else if constexpr (std::is_same_v<Kind, record::PieceMention>) {
          return {one.words.empty() ? telling.piece_name(one.piece) : one.words};
        } else {
          return figure_reference(telling, one);
        }
      },
      part);
}

}  // namespace

Text Telling::text(const record::Words& said) const {
  Text out;
  for (const record::Run& part : said.runs)
    out.parts.emplace_back(run_of(*this, part));
  return out;
}

std::string Telling::plain(const record::Words& said) const {
  return document::spoken(text(said));
}

Text Telling::note(const record::Words& said) const {
  Text out = text(said);
  if (!said.runs.empty() && std::holds_alternative<record::Emphasis>(said.runs.front())) {
    auto& lead = std::get<Run>(out.parts.front());
    lead.italic = false;
    lead.bold = true;
  }
  return out;
}

std::string Telling::name(const record::PersonId& id) const {
  const record::Person* person = find(record, id);
  if (person == nullptr) return id.text;
  const std::string* told = nameless ? nullptr : record::told(person->name);
  return told != nullptr ? *told : person->stand_in;
}

std::string Telling::short_name(const record::PersonId& id) const {
  const record::Person* person = find(record, id);
  const bool told = !nameless && person != nullptr && record::told(person->name) != nullptr;
  return told && !person->short_name.empty() ? person->short_name : name(id);
}

std::string Telling::counted(std::string_view key, std::size_t count) const {
  return words.say(key,
                   {{"count", count},
                    {"number", words.spelled(static_cast<std::int64_t>(count), /*capital=*/true)}});
}

std::string Telling::hundredths(const base::RatioRange& share) const {
  const auto [low, high] = base::told(share, 100);
  if (low == high) return std::to_string(low);
  return words.say("range", {{"low", std::to_string(low)}, {"high", std::to_string(high)}});
}

std::string Telling::judged(std::string_view key) const {
  const record::Findings& findings = visit.findings;
  if (!findings.by || !findings.found_on || !findings.left_on) return "";
  return words.say(key, {{"name", name(*findings.by)},
                         {"found", words.date(*findings.found_on)},
                         {"left", words.date(*findings.left_on)}});
}

std::string Telling::piece_name(const record::PieceId& id) const {
  const record::Piece* piece = find(record, id);
  return piece == nullptr ? id.text : piece->name;
}

document::Photograph Telling::photograph(const Photo& photo) const {
  document::Photograph out{photo.id.text, photo.width, photo.height};
  const auto facts = photograph_facts.find(photo.id);
  if (facts != photograph_facts.end() && facts->second.on_its_side) {
    std::swap(out.width, out.height);
  }
  out.alternative = plain(photo.alternative.empty() ? photo.caption : photo.alternative);
  return out;
}

document::Figure Telling::figure(const Photo& photo, document::Width width) const {
  document::Figure figure{photograph(photo)};
  figure.width = width;
  figure.caption.number = pictures.number(photo.id);
  if (photo.stage == record::Stage::as_found) figure.caption.sign = document::Sign::found;
  if (photo.stage == record::Stage::as_left) figure.caption.sign = document::Sign::left;
  figure.caption.words = text(photo.caption);
  std::vector<std::string> more;
  if (photo.taken) {
    more.push_back(words.say("figure.date", {{"date", words.date(*photo.taken)}}));
  }
  if (!photo.scale.empty()) more.push_back(words.say("figure.scale", {{"scale", photo.scale}}));
  if (!photo.rights.empty()) {
    more.push_back(words.say("figure.rights", {{"rights", photo.rights}}));
  }
  if (!more.empty()) figure.caption.words.parts.emplace_back(Run{" " + joined(more)});
  return figure;
}

document::Caution Telling::caution(const record::Caution& said) const {
  return {said.label.empty() ? words.say("caution.label") : said.label, text(said.words)};
}

std::vector<Block> Telling::paragraphs(const record::Prose& prose,
                                       document::ParagraphManner first) const {
  std::vector<Block> out;
  for (const record::Paragraph& one : prose) {
    document::Paragraph paragraph{text(one.words)};
    if (out.empty()) paragraph.manner = first;
    if (one.note) paragraph.beside.emplace_back(document::SideNote{note(*one.note)});
    out.emplace_back(std::move(paragraph));
  }
  return out;
}

document::Paragraph Telling::paragraph(const record::Words& said) const {
  return {text(said)};
}

document::Paragraph Telling::sentence(std::string said) const {
  return {document::plain(std::move(said))};
}

document::Chapter Telling::chapter(std::string_view id) const {
  const std::string key(id);
  document::Chapter chapter;
  chapter.id = key;
  chapter.title = words.say(key + ".title");
  chapter.eyebrow = words.say(key + ".eyebrow");
  chapter.eyebrow_continued = words.say("chapter.continued", {{"eyebrow", chapter.eyebrow}});
  return chapter;
}

std::string joined(const std::vector<std::string>& sentences) {
  std::string out;
  for (const std::string& one : sentences) {
    if (one.empty()) continue;
    if (!out.empty()) out += ' ';
    out += one;
  }
  return out;
}

}  // namespace winchbook::report
