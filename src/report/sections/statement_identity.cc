#include <algorithm>
#include <set>
#include <utility>

#include "record/entered.h"
#include "record/enum_words.h"
#include "report/care_words.h"
#include "report/dating_words.h"
#include "report/ledger_words.h"
#include "report/sections.h"
#include "report/statement.h"
#include "report/told.h"

namespace winchbook::report {
namespace {

using assess::originality::Finding;
using assess::originality::PieceRow;
using assess::originality::Reason;
using assess::originality::Standing;
using document::Facts;
using document::Text;
using record::Reel;

/// More names than these are counted.
constexpr std::size_t kMostNames = 6;

void add(const Telling& telling, const char* key, Text words, Facts& facts) {
  if (words.empty()) return;
  facts.facts.push_back({telling.words.say(key), std::move(words)});
}

void add(const Telling& telling, const char* key, std::string words, Facts& facts) {
  add(telling, key, document::plain(std::move(words)), facts);
}

std::string kind_of(const Telling& telling) {
  return telling.words.say("reel-kind." + std::string(record::word_of(telling.record.reel.kind)));
}

/// When it was made, in a sentence; nothing where nobody read a mark or wrote a year.
std::string when_made(const Telling& telling) {
  if (std::string made = made_sentence(telling); !made.empty()) return made;
  return telling.record.markings.empty() ? "" : telling.words.say("statement.year-not-known");
}

std::string answer(const Telling& telling) {
  const assess::VisitAssessment* last = telling.assessment.last();
  const bool parts = last != nullptr && !last->originality.rows.empty();
  return joined({kind_and_maker(telling), when_made(telling),
                 parts ? ledger_answer(telling, last->originality) : "",
                 telling.counted("statement.faults-stand", standing_faults(telling))});
}

void add_maker(const Telling& telling, Facts& facts) {
  using Maker = assess::Identity::Maker;
  const assess::Identity& reel = telling.assessment.identity;
  const record::MakerStatement& maker = telling.record.reel.maker;
  const bool known = reel.how != Maker::not_known;
  Text words;
  if (known) {
    const std::string who = reel.place.empty()
                                ? reel.maker
                                : telling.words.say("statement.name-and-place",
                                                    {{"name", reel.maker}, {"place", reel.place}});
    words = document::plain(
        telling.words.say("statement.with-certainty",
                          {{"words", who}, {"sure", how_sure(telling, maker.certainty)}}));
  } else {
    words = document::plain(telling.words.say("statement.maker-not-known"));
  }
  if (Text why = grounds(telling, maker.grounds); !why.empty()) {
    words.parts.emplace_back(document::Run{" "});
    append(words, std::move(why));
  }
  add(telling,
      !known                          ? "statement.maker"
      : reel.how == Maker::attributed ? "statement.attributed"
                                      : "statement.made-by",
      std::move(words), facts);
  add(telling, "statement.sold-by", telling.record.reel.sold_by, facts);
}

/// "right as made, as found and as left", and how it was changed.
Text hand(const Telling& telling) {
  const record::HandHistory& hand = telling.record.reel.hand;
  const auto name = [&](record::Hand one) {
    return telling.words.say("hand." + std::string(record::word_of(one)));
  };
  const bool same = hand.made == hand.found && hand.found == hand.left;
  Text words =
      document::plain(same ? telling.words.say("statement.hand-same", {{"hand", name(hand.made)}})
                           : telling.words.say("statement.hand", {{"made", name(hand.made)},
                                                                  {"found", name(hand.found)},
                                                                  {"left", name(hand.left)}}));
  if (!hand.how_converted.empty()) {
    words.parts.emplace_back(document::Run{". "});
    append(words, telling.text(hand.how_converted));
  }
  return words;
}

std::string measures(const Telling& telling) {
  const Reel& reel = telling.record.reel;
  std::vector<std::string> sizes;
  for (const record::Size& size : reel.sizes) {
    sizes.push_back(telling.words.say(
        "statement.size",
        {{"what", size.what}, {"size", telling.words.measure(size.size.value, "mm")}}));
  }
  if (reel.weight) {
    sizes.push_back(telling.words.say(
        "statement.weight", {{"weight", telling.words.measure(reel.weight->value, "g")}}));
  }
  return telling.words.joined("join.semicolon", sizes);
}

std::string gear_and_line(const Telling& telling) {
  const Reel& reel = telling.record.reel;
  std::string gear;
  std::string line;
  if (reel.gear_ratio) {
    gear = telling.words.say("statement.gear", {{"ratio", telling.words.number(*reel.gear_ratio)}});
  }
  if (reel.capacity) {
    line = telling.words.say(
        "statement.line",
        {{"metres", telling.words.measure(reel.capacity->metres, "m")},
         {"diameter", telling.words.measure(reel.capacity->line_diameter.value, "mm")},
         {"source", reel.capacity->source}});
  }
  return telling.words.joined("join.semicolon", {gear, line});
}

std::string materials(const Telling& telling) {
  std::vector<std::string> names;
  std::set<std::string> known;
  for (const record::Piece& piece : telling.record.pieces) {
    if (piece.now.kind != record::Whereabouts::Kind::fitted || piece.material.empty()) continue;
    if (known.insert(piece.material).second) names.push_back(piece.material);
  }
  return names.empty() ? "" : telling.words.list(names);
}

/// The first few names, and how many more there are; they hold commas of their own.
std::string some_of(const Telling& telling, std::vector<std::string> names) {
  if (names.size() > kMostNames) {
    const std::size_t more = names.size() - kMostNames;
    names.resize(kMostNames);
    names.push_back(telling.words.say("statement.more", {{"count", more}}));
  }
  return telling.words.joined("join.semicolon", names);
}

std::string not_settled(const Telling& telling, const Finding& finding) {
  std::vector<std::string> names;
  for (const PieceRow& row : finding.rows) {
    if (row.left.standing == Standing::not_determined) names.push_back(row_name(telling, row));
  }
  if (names.empty()) return telling.words.say("statement.all-settled");
  return telling.words.say("statement.not-settled", {{"names", some_of(telling, names)}});
}

/// What nobody looked at: empty places that may not be empty, surfaces.
std::string not_examined(const Telling& telling, const Finding& finding) {
  std::vector<std::string> names;
  for (const PieceRow& row : finding.rows) {
    const auto& reasons = row.left.reasons;
    const bool place =
        std::find(reasons.begin(), reasons.end(), Reason::place_not_examined) != reasons.end();
    if (place) {
      names.push_back(telling.words.say("statement.the-place", {{"name", row_name(telling, row)}}));
    } else if (row.left.makers_surface && row.left.surface.empty()) {
      names.push_back(
          telling.words.say("statement.the-surface", {{"name", row_name(telling, row)}}));
    }
  }
  if (names.empty()) return telling.words.say("statement.all-examined");
  return some_of(telling, names);
}

/// Places of the list of which nothing is entered, in one line: they count towards nothing.
std::string places_not_entered(const Telling& telling) {
  std::vector<std::string> names;
  for (const record::Place* place : record::places_not_entered(telling.record))
    names.push_back(place->name);
  return some_of(telling, std::move(names));
}

Facts facts(const Telling& telling) {
  const Reel& reel = telling.record.reel;
  const assess::Identity& identity = telling.assessment.identity;
  Facts facts;
  facts.label_width = 72;
  add_maker(telling, facts);
  add(telling, "statement.model",
      telling.words.joined(
          "join.semicolon",
          {identity.model,
           identity.serial.empty() ? telling.words.say("statement.no-serial") : identity.serial}),
      facts);
  add(telling, "statement.kind",
      telling.words.joined(
          "join.semicolon",
          {kind_of(telling),
           reel.brake == record::Brake::not_determined
               ? ""
               : telling.words.say("brake." + std::string(record::word_of(reel.brake)),
                                   {{"ratchet", ratchet_word(telling)}})}),
      facts);
  add(telling, "statement.hand-label", hand(telling), facts);
  add(telling, "statement.measures", measures(telling), facts);
  add(telling, "statement.gear-and-line", gear_and_line(telling), facts);
  add(telling, "statement.materials", materials(telling), facts);
  add(telling, "statement.box", telling.text(reel.box_and_papers), facts);
  add(telling, "statement.examined", telling.judged("statement.examined-by"), facts);
  const assess::VisitAssessment* last = telling.assessment.last();
  if (last != nullptr && !last->originality.rows.empty()) {
    add(telling, "statement.not-settled-label", not_settled(telling, last->originality), facts);
    add(telling, "statement.not-examined-label", not_examined(telling, last->originality), facts);
  }
  add(telling, "statement.not-entered-label", places_not_entered(telling), facts);
  for (const record::Photo* photo : telling.pictures.of("statement-identity"))
    facts.beside.emplace_back(telling.figure(*photo, document::Width::side));
  return facts;
}

}  // namespace

std::optional<document::Chapter> tell_statement_identity(const Telling& telling) {
  document::Chapter chapter = telling.chapter("statement-identity");
  const assess::Identity& reel = telling.assessment.identity;
  chapter.title = titled(telling, reel_in_trade(telling));
  chapter.stand_first = answer(telling);
  chapter.tells = told_identity(reel);
  for (document::Fact& fact : told_made(reel.made))
    chapter.tells.push_back(std::move(fact));
  chapter.blocks.emplace_back(facts(telling)).tells = told_identity(reel);
  add_statement_figures(telling, chapter);
  add_statement_marks(telling, chapter);
  document::Halves halves{statement_faults(telling)};
  std::vector<document::HalfBlock> custody = statement_custody(telling);
  std::move(custody.begin(), custody.end(), std::back_inserter(halves.left));
  chapter.blocks.emplace_back(std::move(halves));
  return chapter;
}

}  // namespace winchbook::report
