#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "layout/frame.h"
#include "support/fake_font.h"

/// What tests read off a frame, in points.
namespace winchbook::drawn {

using base::points;
using base::to_points;

/// A setting in the made-up font, with its own structure tree.
struct Bench {
  document::Style style = fake::style();
  fake::Font fonts;
  std::vector<layout::Tag> tags;
  layout::Setting setting{style, fonts, "en-GB", tags};
};

struct Box {
  double left = 1e9;
  double top = 1e9;
  double right = -1e9;
  double foot = -1e9;

  void add(double x, double y) {
    left = std::min(left, x);
    right = std::max(right, x);
    top = std::min(top, y);
    foot = std::max(foot, y);
  }
  [[nodiscard]] double width() const { return right - left; }
  [[nodiscard]] double height() const { return foot - top; }
  [[nodiscard]] double middle() const { return (left + right) / 2; }
  [[nodiscard]] bool inside(const Box& other, double slack = 0.002) const {
    return left >= other.left - slack && right <= other.right + slack && top >= other.top - slack &&
           foot <= other.foot + slack;
  }
  [[nodiscard]] bool meets(const Box& other, double slack = 0.002) const {
    return left < other.right - slack && other.left < right - slack && top < other.foot - slack &&
           other.top < foot - slack;
  }
};

struct Words {
  std::string text;
  Box box;  ///< from the top of the capitals to the foot of the descenders
  double baseline = 0;
  double size = 0;
  text::FaceId face = 0;
  layout::TagId tag = layout::kArtifact;
};

struct Shape {
  const layout::PathItem* path = nullptr;
  Box box;  ///< strokes included
};

inline Box box_of(const layout::PathItem& path) {
  Box box;
  for (const layout::PathItem::Step& step : path.steps) {
    if (step.kind == layout::PathItem::Step::Kind::close) continue;
    box.add(to_points(step.to.x), to_points(step.to.y));
  }
  if (!path.stroked) return box;
  const double half = to_points(path.stroke.width) / 2;
  // A single line has flat ends: its stroke reaches out to its sides only.
  const bool line = path.steps.size() == 2;
  const bool level = box.height() == 0;
  const bool upright = box.width() == 0;
  if (!line || level) {
    box.top -= half;
    box.foot += half;
  }
  if (!line || upright) {
    box.left -= half;
    box.right += half;
  }
  return box;
}

inline std::vector<Words> words_in(const layout::Frame& frame, const text::FontMetrics& fonts) {
  std::vector<Words> all;
  for (const layout::Item& item : frame.items) {
    const auto* text = std::get_if<layout::TextItem>(&item);
    if (text == nullptr) continue;
    Words words;
    words.text = text->text;
    words.size = to_points(text->size);
    words.baseline = to_points(text->origin.y);
    words.face = text->face;
    words.tag = text->tag;
    words.box.add(to_points(text->origin.x), words.baseline - 0.7 * words.size);
    words.box.add(to_points(text->origin.x + layout::seen_width_of(*text, fonts)),
                  words.baseline + 0.2 * words.size);
    all.push_back(std::move(words));
  }
  return all;
}

/// The shapes point into the frame: keep it.
inline std::vector<Shape> shapes_in(const layout::Frame& frame) {
  std::vector<Shape> all;
  for (const layout::Item& item : frame.items) {
    if (const auto* path = std::get_if<layout::PathItem>(&item)) {
      all.push_back({path, box_of(*path)});
    }
  }
  return all;
}

/// True when the straight outlines of a filled path wind round the spot.
inline bool covers(const layout::PathItem& path, double x, double y) {
  using Kind = layout::PathItem::Step::Kind;
  int winding = 0;
  layout::Point start;
  layout::Point here;
  const auto side = [&](const layout::Point& to) {
    const double x0 = to_points(here.x);
    const double y0 = to_points(here.y);
    const double x1 = to_points(to.x);
    const double y1 = to_points(to.y);
    if ((y0 <= y) != (y1 <= y)) {
      const double crossing = x0 + (y - y0) / (y1 - y0) * (x1 - x0);
      if (crossing > x) winding += y1 > y0 ? 1 : -1;
    }
    here = to;
  };
  for (const layout::PathItem::Step& step : path.steps) {
    if (step.kind == Kind::move) {
      start = here = step.to;
    } else {
      side(step.kind == Kind::close ? start : step.to);
    }
  }
  return winding != 0;
}

/// The words that begin so, or nothing.
inline std::optional<Words> find(const layout::Frame& frame, const text::FontMetrics& fonts,
                                 const std::string& beginning) {
  for (Words& words : words_in(frame, fonts)) {
    if (words.text.rfind(beginning, 0) == 0) return std::move(words);
  }
  return std::nullopt;
}

inline Box whole(const layout::Frame& frame) {
  Box box;
  box.add(0, 0);
  box.add(to_points(frame.width), to_points(frame.height));
  return box;
}

/// What stands outside the frame, as a sentence, or nothing.
inline std::string outside(const layout::Frame& frame, const text::FontMetrics& fonts) {
  const Box all = whole(frame);
  for (const Words& words : words_in(frame, fonts)) {
    if (!words.box.inside(all)) {
      return "words outside: " + words.text + ", at " + std::to_string(words.box.left) + " to " +
             std::to_string(words.box.right) + ", " + std::to_string(words.box.top) + " to " +
             std::to_string(words.box.foot) + " of " + std::to_string(all.right) + " by " +
             std::to_string(all.foot);
    }
  }
  for (const Shape& shape : shapes_in(frame)) {
    if (!shape.box.inside(all)) {
      return "a shape outside, at " + std::to_string(shape.box.left) + " to " +
             std::to_string(shape.box.right) + ", " + std::to_string(shape.box.top) + " to " +
             std::to_string(shape.box.foot) + " of " + std::to_string(all.foot);
    }
  }
  return {};
}

/// Two pieces of words that meet, as a sentence, or nothing.
inline std::string overlapping(const layout::Frame& frame, const text::FontMetrics& fonts) {
  const std::vector<Words> all = words_in(frame, fonts);
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t j = i + 1; j < all.size(); ++j) {
      if (all[i].box.meets(all[j].box)) return all[i].text + " meets " + all[j].text;
    }
  }
  return {};
}

/// Words of up to `most` letters, long ones among them.
template <class Random> std::string some_words(Random& random, unsigned most) {
  std::string words;
  const auto length = random() % (most + 1);
  while (words.size() < length) {
    if (!words.empty()) words += ' ';
    words += std::string(1 + random() % 14, static_cast<char>('a' + random() % 26));
  }
  return words;
}

}  // namespace winchbook::drawn
