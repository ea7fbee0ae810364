#include <algorithm>
#include <utility>

#include "assess/with_the_reel.h"
#include "base/words_of_text.h"
#include "report/receipts.h"
#include "report/sections.h"
#include "report/statement.h"

namespace winchbook::report {
namespace {

using document::Label;
using document::Text;
using record::Piece;
using Kind = record::Whereabouts::Kind;

constexpr std::size_t kBlankBags = 6;
constexpr std::size_t kBlankCards = 12;
constexpr std::size_t kMostOfStep = 64;  // bytes of a step's words: two lines of a card
constexpr double kTagHeight = 105;
constexpr double kCardHeight = 140.5;

/// Which reel and which stay a label belongs to: the code as it is scanned, and the visit.
std::string scanned(const Telling& telling, char kind, const std::string& which) {
  std::string code = telling.edition.reel_code;
  std::erase(code, ' ');
  const auto& visits = telling.record.visits;
  const auto here = std::find_if(visits.begin(), visits.end(), [&](const record::Visit& one) {
    return one.id == telling.visit.id;
  });
  std::string out =
      std::string("WB1") + kind + " " + code + " " + std::to_string(here - visits.begin() + 1);
  if (!which.empty()) out += " " + which;
  return out;
}

/// As a square code holds it in little room.
std::string closed_up(std::string words) {
  std::erase(words, ' ');
  return base::in_capitals(words);
}

/// A label with its square code and, at its foot, the reel and the job's number.
Label label(const Telling& telling, char kind, const std::string& which) {
  Label out;
  out.qr_payload = scanned(telling, kind, which);
  out.qr_alternative = telling.words.say("label.code", {{"code", out.qr_payload}});
  out.foot = telling.words.say("label.foot", {{"reel", titled(telling, reel_in_trade(telling))},
                                              {"number", job_number(telling)}});
  return out;
}

Text line(std::string words) {
  return document::plain(std::move(words));
}

Label tag(const Telling& telling, std::string name) {
  Label out = label(telling, 'R', "");
  out.hole = true;
  out.name = std::move(name);
  const record::Visit& visit = telling.visit;
  out.words.push_back(
      line(telling.words.say("label.taken-in", {{"date", telling.words.date(visit.taken_in)}})));
  if (visit.promised_by) {
    out.words.push_back(line(
        telling.words.say("label.promised", {{"date", telling.words.date(*visit.promised_by)}})));
  }
  return out;
}

/// Every bag that holds something, in the order in which the pieces name them.
std::vector<std::string> bags(const record::Record& record) {
  std::vector<std::string> out;
  for (const Piece& piece : record.pieces) {
    const std::string& bag = piece.now.bag;
    if (piece.now.kind != Kind::bagged || bag.empty()) continue;
    if (std::find(out.begin(), out.end(), bag) == out.end()) out.push_back(bag);
  }
  std::stable_sort(out.begin(), out.end(), [](const std::string& a, const std::string& b) {
    return std::pair(a.size(), a) < std::pair(b.size(), b);
  });
  return out;
}

Label bag_label(const Telling& telling, const std::string& bag) {
  Label out = label(telling, 'B', closed_up(bag));
  out.name = telling.words.capitalised(bag);
  for (const Piece& piece : telling.record.pieces) {
    if (piece.now.kind == Kind::bagged && piece.now.bag == bag)
      out.words.push_back(line(name_and_count(telling, piece)));
  }
  return out;
}

Label blank_bag(const Telling& telling, std::size_t number) {
  const std::string bag = telling.words.say("label.bag", {{"number", std::to_string(number)}});
  Label out = label(telling, 'B', closed_up(bag));
  out.name = telling.words.capitalised(bag);
  out.ruled_lines = 2;
  return out;
}

/// The first words of a step, cut after one.
std::string first_words(const std::string& words) {
  if (words.size() <= kMostOfStep) return words;
  std::size_t end = words.rfind(' ', kMostOfStep);
  if (end == std::string::npos) {
    end = kMostOfStep;
    while (end > 0 && (static_cast<unsigned char>(words[end]) & 0xC0U) == 0x80U)
      --end;
  }
  return words.substr(0, end) + "\u2026";
}

std::string two_digits(std::size_t number) {
  return (number < 10 ? "0" : "") + std::to_string(number);
}

Label card(const Telling& telling, std::size_t number, const std::string& words) {
  Label out = label(telling, 'S', two_digits(number));
  out.number = std::to_string(number);
  if (words.empty()) {
    out.ruled_lines = 1;
  } else {
    out.words.push_back(line(words));
  }
  return out;
}

document::Chapter sheet(const Telling& telling, std::string_view id, document::Labels labels) {
  document::Chapter chapter = telling.chapter(id);
  chapter.stand_first = telling.words.say(std::string(id) + ".answer");
  chapter.starts_page = true;
  chapter.blocks.emplace_back(std::move(labels));
  return chapter;
}

}  // namespace

std::optional<document::Chapter> tell_reel_tags(const Telling& telling) {
  document::Labels tags;
  tags.least_height = kTagHeight;
  tags.labels.push_back(tag(telling, telling.words.say("label.the-reel")));
  tags.labels.push_back(tag(telling, telling.words.say("label.its-tray")));
  for (const Piece* piece : assess::came_with_it(telling.record, telling.visit)) {
    if (piece->now.kind == Kind::with_reel || piece->now.kind == Kind::not_known)
      tags.labels.push_back(tag(telling, name_and_count(telling, *piece)));
  }
  return sheet(telling, "reel-tags", std::move(tags));
}

std::optional<document::Chapter> tell_bag_labels(const Telling& telling) {
  document::Labels labels;
  labels.least_height = kTagHeight;
  for (const std::string& bag : bags(telling.record))
    labels.labels.push_back(bag_label(telling, bag));
  if (labels.labels.empty()) {
    for (std::size_t i = 1; i <= kBlankBags; ++i)
      labels.labels.push_back(blank_bag(telling, i));
  }
  return sheet(telling, "bag-labels", std::move(labels));
}

std::optional<document::Chapter> tell_step_cards(const Telling& telling) {
  document::Labels cards;
  cards.least_height = kCardHeight;
  std::size_t number = 0;
  for (const record::StripStep& step : telling.visit.strip_down)
    cards.labels.push_back(card(telling, ++number, first_words(telling.plain(step.what))));
  while (telling.visit.strip_down.empty() && number < kBlankCards)
    cards.labels.push_back(card(telling, ++number, ""));
  return sheet(telling, "step-cards", std::move(cards));
}

}  // namespace winchbook::report
