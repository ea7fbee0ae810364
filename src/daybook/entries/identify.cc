#include "daybook/entries/identify.h"

#include <fmt/format.h>

#include <array>
#include <utility>

#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using base::Diagnostics;

std::string trimmed(std::string_view text) {
  const std::size_t first = text.find_first_not_of(' ');
  if (first == std::string_view::npos) return {};
  return std::string(text.substr(first, text.find_last_not_of(' ') - first + 1));
}

/// The three hands of "right" or "right, left, right"; empty when there are not one or three.
std::vector<std::string> hands_of(std::string_view text) {
  std::vector<std::string> hands;
  for (std::size_t at = 0; at <= text.size();) {
    const std::size_t comma = std::min(text.find(',', at), text.size());
    hands.push_back(trimmed(text.substr(at, comma - at)));
    at = comma + 1;
  }
  if (hands.size() == 1) hands.resize(3, hands.front());
  return hands.size() == 3 ? hands : std::vector<std::string>();
}

Diagnostics set_hand(Draft& draft, pugi::xml_node reel, const IdentifyRequest& request) {
  if (request.hand.empty()) return {};
  const auto hands = hands_of(request.hand);
  if (hands.empty()) {
    return {base::of_command(base::error(
        fmt::format("\"{}\" does not say three hands", request.hand),
        "say \"right\", or as made, found and left: \"right, left, right\"", "command-hand"))};
  }
  constexpr std::array kMoments{"made", "found", "left"};
  const pugi::xml_node hand = draft.need(reel, "hand");
  for (std::size_t i = 0; i < hands.size(); ++i)
    draft.set(hand, kMoments.at(i), hands[i]);
  draft.set_words(hand, "how-converted", request.how_converted);
  return {};
}

Diagnostics set_maker(Draft& draft, pugi::xml_node reel, const IdentifyRequest& request) {
  const pugi::xml_node maker = draft.need(reel, "maker");
  if (!request.maker.empty()) {
    draft.set(maker, "name", request.maker);
    if (request.maker_kind.empty()) draft.set(maker, "kind", "made-by");
  }
  for (const auto& [name, text] :
       {std::pair{"kind", &request.maker_kind}, std::pair{"place", &request.maker_place},
        std::pair{"still-trading", &request.still_trading}}) {
    if (!text->empty()) draft.set(maker, name, *text);
  }
  if (request.maker.empty() || !request.made.empty()) return {};
  if (!request.certainty.empty()) draft.set(maker, "certainty", request.certainty);
  if (request.evidence.empty()) return {};
  const pugi::xml_node grounds = draft.need(maker, "grounds");
  draft.empty(grounds);
  return add_evidence(draft, grounds, request.evidence);
}

Diagnostics set_made(Draft& draft, pugi::xml_node reel, const IdentifyRequest& request) {
  if (request.made.empty()) return {};
  const pugi::xml_node made = draft.need(reel, "made");
  draft.empty(made);
  draft.add(made, "date", request.made);
  draft.add(made, "certainty", request.certainty.empty() ? "likely" : request.certainty);
  return add_evidence(draft, made, request.evidence);
}

}  // namespace

Change identify(IdentifyRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const pugi::xml_node reel = draft.section("reel");
    for (const auto& [name, text] :
         {std::pair{"name", &request.name}, std::pair{"model", &request.model},
          std::pair{"brake", &request.brake}, std::pair{"sold-by", &request.sold_by}}) {
      if (!text->empty()) draft.set(reel, name, *text);
    }
    const bool of_maker = !request.maker.empty() || !request.maker_kind.empty() ||
                          !request.maker_place.empty() || !request.still_trading.empty();
    if (of_maker) {
      if (auto faults = set_maker(draft, reel, request); !faults.empty()) return faults;
    }
    if (auto faults = set_hand(draft, reel, request); !faults.empty()) return faults;
    if (auto faults = set_made(draft, reel, request); !faults.empty()) return faults;
    draft.set_words(reel, "box-and-papers", request.box_and_papers);
    draft.set_words(draft.section("bench"), "own-interest", request.own_interest);
    draft.set_words(draft.section("bench"), "terms", request.terms);
    if (!request.cover.empty()) {
      const auto photo = record::find_photo(draft.record(), request.cover);
      if (!photo) return photo.faults();
      const std::string there = reel.child("cover").attribute("ref").value();
      if (!there.empty() && there != photo.value()->id.text) {
        return base::of_command(
            base::of_command(base::error(fmt::format("the cover is \"{}\" in the record already", there),
                        "change it in the record by hand", "command-name")));
      }
      if (there.empty()) draft.add_ref(reel, "cover", photo.value()->id.text);
    }
    std::string sentence = "what the reel is was written down";
    if (!request.maker.empty()) sentence += ": by " + request.maker;
    if (!request.made.empty()) sentence += ": made " + request.made;
    return Said{std::move(sentence), {}};
  };
}

}  // namespace winchbook::daybook
