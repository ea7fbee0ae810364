#include "daybook/entries/identify.h"

#include <fmt/format.h>

#include <utility>
#include <vector>

#include "base/words_of_text.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

using base::Diagnostics;

forms::Form form(IdentifyRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  Form fields = {
      field("--name", "what the documents call it", request.name),
      field("--model", "the maker's name for the model", request.model),
      field("--brake", "star, lever, click or none", request.brake),
      field("--maker", "who made it", request.maker),
      field("--maker-kind", "made-by, attributed or not-determined", request.maker_kind),
      field("--maker-place", "where the works stood", request.maker_place),
      field("--still-trading", "yes or no", request.still_trading).of({"yes", "no"}),
      field("--sold-by", "a retailer whose name it bears", request.sold_by),
      field("--hand",
            "the hand that winds, as it came: right; or as made, found and left: \"right, left, "
            "left\"",
            request.hand),
      field("--how-converted", "how the hand was changed", request.how_converted),
      field("--made", "when it was made, EDTF: 1947/1948", request.made),
      field("--certainty", "certain, likely or possible", request.certainty),
  };
  append(fields, evidence_form(request.evidence));
  append(fields,
         {
             field("--box-and-papers", "what came with it", request.box_and_papers),
             field("--cover", "the photograph for the cover", request.cover),
             field("--own-interest", "the bench's own interest in the reel", request.own_interest),
             field("--terms", "the bench's terms for goods that nobody collects", request.terms),
         });
  return fields;
}

void set_hand(record::HandHistory& hand, const Draft& draft, const IdentifyRequest& request) {
  if (!request.hand) return;
  hand.made = request.hand->made;
  hand.found = request.hand->found;
  hand.left = request.hand->left;
  draft.put(hand.how_converted, request.how_converted);
}

Diagnostics set_maker(record::MakerStatement& maker, const Draft& draft,
                      const IdentifyRequest& request) {
  if (!request.maker.empty()) {
    maker.name = request.maker;
    maker.kind = record::MakerStatement::Kind::made_by;
  }
  set_if(maker.kind, request.maker_kind);
  set_if(maker.place, request.maker_place);
  if (!request.still_trading.empty()) maker.still_trading = request.still_trading == "yes";
  if (request.maker.empty() || request.made) return {};
  set_if(maker.certainty, request.certainty);
  if (request.evidence.empty()) return {};
  auto grounds = evidence_of(draft, request.evidence);
  if (!grounds) return grounds.faults();
  maker.grounds = std::move(grounds).value();
  return {};
}

Diagnostics set_made(record::Reel& reel, const Draft& draft, const IdentifyRequest& request) {
  if (!request.made) return {};
  auto evidence = evidence_of(draft, request.evidence);
  if (!evidence) return evidence.faults();
  reel.made = record::WrittenDate{*request.made, request.certainty, std::move(evidence).value()};
  return {};
}

Diagnostics set_cover(record::Reel& reel, const Draft& draft, const std::string& said) {
  if (said.empty()) return {};
  const auto photo = record::find_photo(draft.record(), said);
  if (!photo) return photo.faults();
  if (reel.cover && *reel.cover != photo.value()->id) {
    return {base::of_command(
        base::error(fmt::format("the cover is \"{}\" in the record already", reel.cover->text),
                    "change it in the record by hand", "command-name"))};
  }
  reel.cover = photo.value()->id;
  return {};
}

}  // namespace

base::Diagnostics read_typed(std::string_view typed, TypedHands& into) {
  std::vector<std::string_view> said = base::parts_of(typed, ',');
  if (said.size() == 1) said = {"not-determined", said.front(), "not-determined"};
  if (said.size() != 3) {
    return {
        base::error(fmt::format("\"{}\" does not say three hands", typed),
                    "say \"right\", as it came, or as made, found and left: \"right, left, right\"",
                    "command-hand")};
  }
  TypedHands hands;
  for (const auto& [word, hand] :
       {std::pair{said[0], &hands.made}, std::pair{said[1], &hands.found},
        std::pair{said[2], &hands.left}}) {
    auto faults = forms::read_typed(base::trimmed(word), *hand);
    if (!faults.empty()) return faults;
  }
  into = hands;
  return {};
}

base::Result<Said> identify(const IdentifyRequest& request, Draft& draft) {
  const bool rests = !request.evidence.empty() || request.certainty;
  if (rests && request.maker.empty() == !request.made) {
    return base::of_command(base::error(
        "what it rests on is of the maker or of the date",
        "give --maker and --made one after the other, each with its own", "command-evidence"));
  }
  record::Reel& reel = draft.record().reel;
  set_if(reel.name, request.name);
  set_if(reel.model, request.model);
  set_if(reel.brake, request.brake);
  set_if(reel.sold_by, request.sold_by);
  if (auto faults = set_maker(reel.maker, draft, request); !faults.empty()) return faults;
  set_hand(reel.hand, draft, request);
  if (auto faults = set_made(reel, draft, request); !faults.empty()) return faults;
  draft.put(reel.box_and_papers, request.box_and_papers);
  draft.put(draft.record().bench.own_interest, request.own_interest);
  draft.put(draft.record().bench.terms, request.terms);
  if (auto faults = set_cover(reel, draft, request.cover); !faults.empty()) return faults;
  std::string sentence = "what the reel is was written down";
  if (!request.maker.empty()) sentence += ": by " + request.maker;
  if (request.made) sentence += ": made " + request.made->text();
  return Said{std::move(sentence), {}};
}

forms::Job identify_job() {
  return entry_job<IdentifyRequest>(form, identify);
}

}  // namespace winchbook::daybook
