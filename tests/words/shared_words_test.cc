#include "shared_words.h"

#include <array>
#include <filesystem>
#include <regex>
#include <stdexcept>
#include <string>
#include <vector>

using winchbook::base::Decimal;
using winchbook::base::Money;
using winchbook::words::Catalogue;
using winchbook::words::Messages;

namespace {

std::vector<std::string> languages() {
  std::vector<std::string> found;
  for (const auto& file :
       std::filesystem::directory_iterator(WINCHBOOK_SOURCE_DIR "/shared/words")) {
    if (file.path().extension() == ".xml") found.push_back(file.path().stem().string());
  }
  REQUIRE(found.size() >= 2);
  return found;
}

/// Parts of words that are British and not American, in spelling or as a word.
constexpr std::array kBritish{
    "afterwards", "all round", "aluminium", "anodis",    "armour",    "autumn",   "backwards",
    "catalogue",  "centre",    "colour",    "favour",    "fibre",     "flavour",  "grey",
    "hire",       "honour",    "inwards",   "jewellery", "judgement", "labelled", "labour",
    "licence",    "metre",     "modelled",  "mould",     "neighbour", "organis",  "outwards",
    "oxidis",     "pencilled", "petrol",    "posted",    "programme", "recognis", "spanner",
    "sulphur",    "towards",   "travelled", "vapour",    "vulcanis",  "whilst"};

/// The British words that a message prints; the names of its arguments are not printed.
std::vector<std::string> british_in(const std::string& message) {
  static const std::regex kArgument(R"(\{[a-z_]+\s*[,}])");
  const std::string printed = std::regex_replace(message, kArgument, " ");
  std::vector<std::string> found;
  for (const char* word : kBritish) {
    if (printed.find(word) != std::string::npos) found.emplace_back(word);
  }
  return found;
}

Money money(const char* amount, const char* currency) {
  return {Decimal::parse(amount).value(), currency};
}

}  // namespace

TEST_CASE("every pattern of every language can be read") {
  for (const std::string& language : languages()) {
    for (const auto& fault : Catalogue(language, messages_of(language)).faults()) {
      FAIL_CHECK(language << ": " << fault.message);
    }
  }
}

TEST_CASE("no language has a message that British English lacks") {
  const Messages british = messages_of("en-GB");
  for (const std::string& language : languages()) {
    for (const auto& message : messages_of(language)) {
      const auto& key = message.first;
      CHECK_MESSAGE(british.contains(key), language, ": ", key);
    }
  }
}

TEST_CASE("a message in the language stands before the one it falls back to") {
  CHECK(shared_words("en-US").say("season.23") == "fall");
  CHECK(shared_words("en-US").say("season.21") == shared_words("en-GB").say("season.21"));
}

TEST_CASE("American English has a message of its own for each that is British in a word") {
  const Messages american = messages_of("en-US");
  std::size_t differ = 0;
  for (const auto& british : messages_of("en-GB")) {
    if (british_in(british.second).empty()) continue;
    ++differ;
    CHECK_MESSAGE(american.contains(british.first), "en-US has no ", british.first);
  }
  CHECK(differ > 20);
  for (const auto& one : american) {
    CAPTURE(one.first);
    CHECK(british_in(one.second) == std::vector<std::string>{});
  }
  CHECK(british_in("{metres} of grey line") == std::vector<std::string>{"grey"});
}

TEST_CASE("American English says nothing over again") {
  const Messages british = messages_of("en-GB");
  for (const auto& one : messages_of("en-US"))
    CHECK_MESSAGE(british.find(one.first)->second != one.second, one.first);
}

// Minor units are those of ISO 4217: two for GBP and USD, none for JPY.
TEST_CASE("money takes its currency's sign and places") {
  const Catalogue british{"en-GB", {}};
  const Catalogue american{"en-US", {}};
  CHECK(british.money(money("1234.5", "GBP")) == "£1,234.50");
  CHECK(british.money(money("12.50", "USD")) == "US$12.50");
  CHECK(american.money(money("12.50", "USD")) == "$12.50");
  CHECK(spaced(british.money(money("12500", "JPY"))) == "JP¥12,500");
  CHECK(american.money(money("12500", "JPY")) == "¥12,500");
}

TEST_CASE("a number keeps the places it was written with") {
  const Catalogue words{"en-GB", {}};
  CHECK(words.number(Decimal::parse("1234567.50").value()) == "1,234,567.50");
  CHECK(words.number(Decimal::parse("0").value()) == "0");
  CHECK(words.number(Decimal::parse("98.40").value()) == "98.40");
}

TEST_CASE("a unit is told by its message, or else by itself, and never parts from its value") {
  const Catalogue words = shared_words("en-GB");
  CHECK(words.measure(Decimal::parse("12").value(), "degree") == "12\u00a0°");
  CHECK(words.measure(Decimal::parse("9.5").value(), "N") == "9.5\u00a0N");
}

TEST_CASE("a pattern that cannot be read is never said, however often it is asked") {
  const Catalogue words{"en-GB", {{"bad", "{name is here"}}};
  for (int again = 0; again < 2; ++again) {
    CHECK_THROWS_AS(static_cast<void>(words.say("bad", {{"name", "Gus"}})), std::out_of_range);
  }
}

TEST_CASE("other words take a message's place even after it was said") {
  Catalogue words = shared_words("en-GB");
  CHECK(words.say("figure.reference", {{"number", "3"}}) == "figure 3");
  words.reword("figure.reference", "picture {number}");
  CHECK(words.say("figure.reference", {{"number", "3"}}) == "picture 3");
  CHECK(words.has("figure.reference"));
  CHECK(words.keys().size() == messages_of("en-GB").size());
}

TEST_CASE("numbers are spelled to any size, and a sentence begins with a capital in any script") {
  const Catalogue words{"en-GB", {}};
  CHECK(words.spelled(0) == "zero");
  CHECK(words.spelled(12, true) == "Twelve");
  CHECK(words.spelled(40) == "forty");
  CHECK(words.capitalised("żuraw") == "Żuraw");
  CHECK(words.capitalised("").empty());
  CHECK(Catalogue("en-GB", {{"number.2", "a pair"}}).spelled(2, true) == "A pair");
}
