#include <doctest/doctest.h>

#include <array>

#include "layout/drawn_page.h"

namespace winchbook {
namespace {

using document::Sign;
using drawn::points;

constexpr std::array<Sign, 8> kSigns = {Sign::found,        Sign::left,    Sign::original,
                                        Sign::other,        Sign::missing, Sign::same_maker,
                                        Sign::undetermined, Sign::tick_box};

layout::Frame drawn_sign(Sign sign) {
  layout::Frame frame;
  frame.items = layout::draw_sign(sign, {points(10), points(20)}, {0x1A, 0x1A, 0x1A}, 4);
  return frame;
}

drawn::Box all_of(const layout::Frame& frame) {
  drawn::Box box;
  for (const drawn::Shape& shape : drawn::shapes_in(frame)) {
    box.add(shape.box.left, shape.box.top);
    box.add(shape.box.right, shape.box.foot);
  }
  return box;
}

TEST_CASE("state marks are 6 by 6 and stand on the baseline") {
  for (const Sign sign :
       {Sign::original, Sign::same_maker, Sign::other, Sign::missing, Sign::undetermined}) {
    const drawn::Box box = all_of(drawn_sign(sign));
    CHECK(box.left == doctest::Approx(10));
    CHECK(box.right == doctest::Approx(16));
    CHECK(box.top == doctest::Approx(14));
    CHECK(box.foot == doctest::Approx(20));
  }
}

TEST_CASE("ring and disc are of one size, and only the disc is filled") {
  const layout::Frame ring = drawn_sign(Sign::found);
  const layout::Frame disc = drawn_sign(Sign::left);
  CHECK(all_of(ring).width() == doctest::Approx(7.2));
  CHECK(all_of(disc).width() == doctest::Approx(7.2));
  CHECK_FALSE(drawn::shapes_in(ring)[0].path->filled);
  CHECK(drawn::shapes_in(disc)[0].path->filled);
}

TEST_CASE("half filled means the lower left half") {
  const layout::Frame frame = drawn_sign(Sign::same_maker);
  const layout::PathItem* half = nullptr;
  for (const drawn::Shape& shape : drawn::shapes_in(frame)) {
    if (shape.path->filled) half = shape.path;
  }
  REQUIRE(half != nullptr);
  CHECK(drawn::covers(*half, 10.5, 19.5));
  CHECK(drawn::covers(*half, 12, 18));
  CHECK_FALSE(drawn::covers(*half, 15.5, 14.5));
  CHECK_FALSE(drawn::covers(*half, 14, 16));
}

TEST_CASE("every sign draws differently, so that no meaning hangs on colour") {
  for (const Sign one : kSigns) {
    for (const Sign other : kSigns) {
      if (one == other) continue;
      const layout::Frame a = drawn_sign(one);
      const layout::Frame b = drawn_sign(other);
      bool same = a.items.size() == b.items.size();
      for (std::size_t i = 0; same && i < a.items.size(); ++i) {
        const auto& p = std::get<layout::PathItem>(a.items[i]);
        const auto& q = std::get<layout::PathItem>(b.items[i]);
        same = p.filled == q.filled && p.stroked == q.stroked && p.steps.size() == q.steps.size() &&
               drawn::box_of(p).width() == drawn::box_of(q).width();
      }
      CHECK_FALSE(same);
    }
  }
}

TEST_CASE("a sign keeps inside its advance and carries its tag") {
  for (const Sign sign : kSigns) {
    const layout::Frame frame = drawn_sign(sign);
    CHECK(all_of(frame).right < 10 + drawn::to_points(layout::sign_advance(sign)) - 2);
    for (const drawn::Shape& shape : drawn::shapes_in(frame))
      CHECK(shape.path->tag == 4);
  }
}

}  // namespace
}  // namespace winchbook
