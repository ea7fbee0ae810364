#include "report/receipts.h"

#include <algorithm>
#include <utility>

#include "assess/with_the_reel.h"
#include "record/enum_words.h"
#include "report/care_words.h"
#include "report/statement.h"
#include "report/told.h"

namespace winchbook::report {
namespace {

using document::LineEnd;
using document::Run;
using document::Text;

/// Words that hold line breaks, each line on a line of its own.
void append_lines(Text& text, const std::string& words) {
  std::size_t begin = 0;
  while (begin <= words.size()) {
    const std::size_t end = std::min(words.find('\n', begin), words.size());
    if (end > begin) {
      if (!text.empty()) text.parts.emplace_back(LineEnd{});
      text.parts.emplace_back(Run{words.substr(begin, end - begin)});
    }
    begin = end + 1;
  }
}

Text lead(const Telling& telling, const char* key) {
  return {{Run{.text = telling.words.say(key), .bold = true}}, {}};
}

void append_told(Text& text, const std::optional<record::MaybeText>& words) {
  if (!words) return;
  if (const std::string* told = record::told(*words)) append_lines(text, *told);
}

document::SideNote bench_note(const Telling& telling) {
  const record::Bench& bench = telling.record.bench;
  Text text = lead(telling, "receipt.bench");
  text.parts.emplace_back(Run{" " + bench.name});
  append_lines(text, bench.address.empty() ? bench.place : bench.address);
  append_lines(text, bench.contact);
  return {std::move(text)};
}

document::SideNote person_note(const Telling& telling, const char* key,
                               const std::optional<record::PersonId>& person) {
  Text text = lead(telling, key);
  const record::Person* known = person ? find(telling.record, *person) : nullptr;
  text.parts.emplace_back(
      Run{" " + (known != nullptr ? telling.name(known->id)
                                  : telling.words.say("not-entered.for-the-pen"))});
  if (known != nullptr) {
    append_told(text, known->address);
    append_told(text, known->contact);
  }
  const auto owner = assess::owner_of(telling.record, telling.visit);
  if (owner && !(person && *owner == *person)) {
    append_lines(text, telling.words.say("receipt.owned-by", {{"name", telling.name(*owner)}}));
  }
  return {std::move(text)};
}

/// The whole reel at that end of the visit: the cover's picture if it is one of them, else the
/// first that was taken.
const record::Photo* whole_reel(const Telling& telling, record::Stage stage) {
  const auto fits = [&](const record::Photo& photo) {
    const bool here = !photo.visit || *photo.visit == telling.visit.id;
    return photo.stage == stage && !photo.withheld && here && known_by_then(telling, photo.taken);
  };
  if (const record::Photo* cover = telling.pictures.cover; cover != nullptr && fits(*cover)) {
    return cover;
  }
  for (const record::Photo& photo : telling.record.photos) {
    if (fits(photo)) return &photo;
  }
  return nullptr;
}

}  // namespace

document::Chapter receipt_chapter(const Telling& telling, std::string_view id, Copy copy) {
  document::Chapter chapter;
  chapter.id = std::string(id) + (copy == Copy::owner ? "-owner" : "-bench");
  chapter.title = telling.assessment.identity.name;
  chapter.eyebrow = telling.words.say(
      "receipt.eyebrow", {{"document", telling.words.say("document." + telling.edition.document)},
                          {"copy", telling.words.say(copy == Copy::owner ? "receipt.copy.owner"
                                                                         : "receipt.copy.bench")}});
  chapter.eyebrow_continued =
      telling.words.say("chapter.continued", {{"eyebrow", chapter.eyebrow}});
  chapter.counted_apart = true;
  chapter.tells = told_identity(telling.assessment.identity);
  chapter.tells.push_back(told_name(telling.assessment.identity));
  return chapter;
}

std::string job_number(const Telling& telling) {
  return telling.visit.number.empty() ? telling.edition.reel_code : telling.visit.number;
}

bool known_by_then(const Telling& telling, const std::optional<base::EdtfDate>& date) {
  const auto first = date ? date->earliest() : std::nullopt;
  return !first || *first <= telling.edition.date;
}

void ReceiptFacts::add(const char* key, Text words) {
  if (words.empty()) return;
  facts_.facts.push_back({telling_.words.say(key), std::move(words)});
}

void ReceiptFacts::add(const char* key, std::string words) {
  add(key, document::plain(std::move(words)));
}

void ReceiptFacts::add_lines(const char* key, const std::vector<Text>& lines, const char* none) {
  Text text;
  for (const Text& line : lines) {
    if (!text.empty()) text.parts.emplace_back(LineEnd{});
    append(text, line);
  }
  if (text.empty() && none != nullptr) text = document::plain(telling_.words.say(none));
  add_or_room(key, std::move(text));
}

void ReceiptFacts::add_or_room(const char* key, Text words) {
  if (document::spoken(words).empty())
    words = document::plain(telling_.words.say("not-entered.for-the-pen"));
  add(key, std::move(words));
}

void ReceiptFacts::add_or_room(const char* key, std::string words) {
  add_or_room(key, document::plain(std::move(words)));
}

std::string reel_and_model(const Telling& telling) {
  const bool more = telling.assessment.identity.trade_says_more();
  return joined({kind_and_maker(telling), more ? reel_in_trade(telling) + "." : ""});
}

std::string name_and_count(const Telling& telling, const record::Piece& piece, int count) {
  std::string name = telling.words.capitalised(piece.name);
  if (count < 2) return name;
  return telling.words.say("ledger.name-and-count",
                           {{"name", name}, {"count", telling.words.spelled(count)}});
}

std::string name_and_count(const Telling& telling, const record::Piece& piece) {
  return name_and_count(telling, piece, piece.count);
}

std::string cost_range(const Telling& telling, const std::optional<base::Money>& low,
                       const std::optional<base::Money>& high) {
  if (!low && !high) return "";
  if (!low || !high || *low == *high) return telling.words.money(low ? *low : *high);
  return telling.words.say(
      "range", {{"low", telling.words.money(*low)}, {"high", telling.words.money(*high)}});
}

std::vector<document::Beside> receipt_margin(const Telling& telling, record::Stage stage,
                                             const char* person_key,
                                             const std::optional<record::PersonId>& person) {
  std::vector<document::Beside> margin;
  if (const record::Photo* photo = whole_reel(telling, stage)) {
    document::Figure figure = telling.figure(*photo, document::Width::side);
    figure.caption.number = 0;
    margin.emplace_back(std::move(figure));
  }
  Text number = lead(telling, "receipt.number");
  number.parts.emplace_back(Run{" " + job_number(telling)});
  margin.emplace_back(document::SideNote{std::move(number)});
  margin.emplace_back(bench_note(telling));
  margin.emplace_back(person_note(telling, person_key, person));
  return margin;
}

std::optional<document::Caution> hazards_by_name(const Telling& telling) {
  std::vector<std::string> names;
  using knowledge::Matters;
  for (const ToldFlag& flag : flags_told(telling, {Matters::keep, Matters::hand})) {
    if (!flag.legal) names.push_back(flag.name);
  }
  if (names.empty()) return std::nullopt;
  return document::Caution{telling.words.say("receipt.hazards"),
                           document::plain(telling.words.say(
                               "receipt.hazards-are", {{"names", telling.words.list(names)}}))};
}

document::Signatures receipt_signatures(const Telling& telling, const char* above,
                                        const char* person_key,
                                        const std::optional<record::PersonId>& person) {
  const auto& restorers =
      telling.visit.restorers.empty() ? telling.record.bench.restorers : telling.visit.restorers;
  const std::string date = telling.words.say("receipt.date");
  document::Signatures signatures;
  signatures.above = document::plain(telling.words.say(above));
  signatures.places = {{telling.words.say("receipt.for-bench"),
                        restorers.empty() ? "" : telling.name(restorers.front()), date},
                       {telling.words.say(person_key), person ? telling.name(*person) : "", date}};
  return signatures;
}

}  // namespace winchbook::report
