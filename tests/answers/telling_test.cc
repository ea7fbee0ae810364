#include "answers/telling.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "assess/fitting/seat.h"
#include "assess/value/value.h"
#include "base/files.h"
#include "knowledge/care.h"
#include "record/enum_words.h"
#include "words/shared_words.h"

namespace winchbook::answers {
namespace {

/// The keys of a list's values, `but` those that no answer says, that the catalogue lacks.
template <class Value>
std::string missing(const std::string& stem, const std::vector<Value>& but = {}) {
  const words::Catalogue words = shared_words("en-GB");
  std::string keys;
  for (const auto& one : enum_words(Value{})) {
    const std::string key = stem + "." + std::string(one.word);
    if (std::find(but.begin(), but.end(), one.value) == but.end() && !words.has(key))
      keys += key + " ";
  }
  return keys;
}

}  // namespace

TEST_CASE("every value of a list that an answer says is in the catalogue") {
  using assess::fitting::SeatReason;
  CHECK(missing<assess::value::Excluded>("answer.value.out") == "");
  CHECK(missing<assess::value::Note>("answer.value.note") == "");
  CHECK(missing<assess::value::Basis>("answer.value.paid") == "");
  CHECK(missing<assess::value::Trait>("value.trait") == "");
  CHECK(missing<record::Course>("course") == "");
  CHECK(missing<record::Matter>("matter") == "");
  CHECK(missing<record::Matter>("answer.advise.column") == "");
  CHECK(missing<assess::fitting::Fit>("answer.seat.fit") == "");
  CHECK(missing<assess::fitting::Press>("answer.seat.press") == "");
  CHECK(missing<SeatReason>(
            "answer.seat.reason",
            {SeatReason::turns_freely, SeatReason::tight_outside, SeatReason::tight_inside,
             SeatReason::within_tolerance, SeatReason::smaller_step}) == "");
  CHECK(missing<knowledge::CareVerdict>("answer.care.verdict") == "");
  CHECK(missing<record::Course>("nobody.said") != "");
}

TEST_CASE("an answer is one untitled chapter in the language that was asked for") {
  base::RealFiles files;
  library::Library library({files, WINCHBOOK_SOURCE_DIR, "test"});
  forms::Setting setting{library, "winchbook", false, {}};
  const auto outcome = tell(setting, "en-US", [](const words::Catalogue& words) {
    return Blocks{paragraph(words.say("answer.more", {{"count", "3"}}) + "\nend")};
  });
  REQUIRE(outcome);
  CHECK(outcome->text.empty());
  REQUIRE(outcome->told);
  CHECK(outcome->told->language == "en-US");
  REQUIRE(outcome->told->chapters.size() == 1);
  CHECK(outcome->told->chapters.front().title.empty());
  const std::string dumped = document::dump(*outcome->told);
  CHECK(dumped.find("and 3 more") != std::string::npos);
  CHECK(dumped.find("end") != std::string::npos);
}

}  // namespace winchbook::answers
