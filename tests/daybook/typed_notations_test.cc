#include <doctest/doctest.h>

#include <string>

#include "daybook/entries/identify.h"
#include "daybook/entries/mark.h"
#include "daybook/entries/measure.h"
#include "daybook/entries/part.h"

namespace winchbook::daybook {
namespace {

template <class Value> Value read(std::string_view typed) {
  Value value{};
  CAPTURE(std::string(typed));
  REQUIRE(read_typed(typed, value).empty());
  return value;
}

template <class Value> std::string fault(std::string_view typed) {
  Value value{};
  CAPTURE(std::string(typed));
  const base::Diagnostics faults = read_typed(typed, value);
  REQUIRE(faults.size() == 1);
  return faults.front().message;
}

}  // namespace

TEST_CASE("a layer of finish is its name, whose and from when in brackets, and a note") {
  const auto finish = read<TypedFinish>("nickel plate (life, 1962~): worn at the ends");
  CHECK(finish.what == "nickel plate");
  CHECK(finish.by == record::FinishBy::life);
  REQUIRE(finish.when);
  CHECK(finish.when->text() == "1962~");
  CHECK(finish.note == "worn at the ends");
  const auto bare = read<TypedFinish>("black lacquer: thin (see the rim)");
  CHECK(bare.what == "black lacquer");
  CHECK(bare.note == "thin (see the rim)");
  CHECK(read<TypedFinish>("nickel: bright").what == "nickel");
  CHECK(read<TypedFinish>("nickel").by == record::FinishBy::not_determined);
  CHECK(fault<TypedFinish>("nickel (nobody)") == "\"nobody\" is none of its words");
  CHECK_FALSE(fault<TypedFinish>("nickel (life, once)").empty());
}

TEST_CASE("an end of a mark's window is soft when it does not say") {
  CHECK(read<TypedEnd>("1940-01 hard").end.firmness == record::EndFirmness::hard);
  CHECK(read<TypedEnd>("1949").end.firmness == record::EndFirmness::soft);
  CHECK(read<TypedEnd>("1949 soft").end.date.text() == "1949");
  CHECK(fault<TypedEnd>("1949 firm") == "\"firm\" is none of its words");
  CHECK_FALSE(fault<TypedEnd>("the war").empty());
}

TEST_CASE("one hand is the hand as it came, and of the other moments nothing is said") {
  using record::Hand;
  const auto one = read<TypedHands>("left");
  CHECK(one.found == Hand::left);
  CHECK(one.made == Hand::not_determined);
  CHECK(one.left == Hand::not_determined);
  const auto three = read<TypedHands>("right, left,either");
  CHECK(three.made == Hand::right);
  CHECK(three.found == Hand::left);
  CHECK(three.left == Hand::either);
  CHECK(fault<TypedHands>("right, left") == "\"right, left\" does not say three hands");
  CHECK(fault<TypedHands>("right, wrong, left") == "\"wrong\" is none of its words");
}

TEST_CASE("a figure in the record's own unit keeps its places, any other is reckoned") {
  CHECK(read<Figure<Unit::millimetres>>("74.0 mm").value.text() == "74.0");
  CHECK(read<Figure<Unit::millimetres>>("3 7/8 in").value.text() == "98.425");
  CHECK(read<Figure<Unit::millimetres>>("10 cm").value.text() == "100");
  CHECK(read<Figure<Unit::metres>>("210 m").value.text() == "210");
  CHECK(read<Figure<Unit::metres>>("230 yd").value.text() == "210.312");
  CHECK(read<Figure<Unit::grams>>("1.5 kg").value.text() == "1500");
  CHECK(read<Figure<Unit::newtons>>("2 kg").value.text() == "19.613");
  CHECK(fault<Figure<Unit::grams>>("0 g") == "\"0 g\" is not above zero");
  CHECK_FALSE(fault<Figure<Unit::newtons>>("12").empty());
}

TEST_CASE("a gear ratio is told by turns or by teeth, to three places") {
  CHECK(read<TypedRatio>("3.5:1").turns.text() == "3.500");
  CHECK(read<TypedRatio>("60:14").turns.text() == "4.286");
  CHECK(read<TypedRatio>("4").turns.text() == "4.000");
  for (const char* wrong : {"3:0", "three", "3:1:2", ":", "-3:1"})
    CHECK_FALSE(fault<TypedRatio>(wrong).empty());
}

TEST_CASE("a washer is a part, how it is held, and as many of its three measures as were taken") {
  const auto washer = read<TypedWasher>("metal-eared: to-gear 7.4 23.6 0.90");
  CHECK(washer.part == "metal-eared");
  CHECK(washer.held.keyed == record::Keyed::to_gear);
  REQUIRE(washer.held.thickness);
  CHECK(washer.held.thickness->value.text() == "0.90");
  CHECK_FALSE(read<TypedWasher>("cork: free 7.4").held.outside);
  CHECK(fault<TypedWasher>("star 1 2 3") == "\"star 1 2 3\" does not say how the washer is held");
  CHECK(fault<TypedWasher>("star: to-shaft 1") == "\"to-shaft\" is none of its words");
  CHECK_FALSE(fault<TypedWasher>("star: free 7,4").empty());
}

}  // namespace winchbook::daybook
