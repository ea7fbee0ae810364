#include "layout/set_figure.h"

#include <algorithm>
#include <array>
#include <utility>

#include "layout/picture.h"
#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Figure;
using document::Role;
using document::Width;

constexpr Length kUnderPicture = points(3.75);
constexpr Length kColumn = points(66);
constexpr Length kAround = points(15);
constexpr Length kPairHeight = points(171);
constexpr Length kThirdHeight = points(98);
constexpr Length kMainHeight = points(210);

struct Size {
  Length width;
  Length height;
};

/// The three sizes of a single picture, largest first.
std::array<Size, 3> sizes(const document::Style& style) {
  return {
      {{style.frame_width(), points(300)}, {style.main, kMainHeight}, {style.side, kMainHeight}}};
}

document::Text words_of(const document::Caption& caption) {
  document::Text text;
  if (caption.sign) text.parts.emplace_back(document::SignRun{*caption.sign});
  if (caption.number > 0) {
    document::Run number{std::to_string(caption.number)};
    number.bold = true;
    text.parts.emplace_back(std::move(number));
    text.parts.emplace_back(document::Run{"\u00A0 "});
  }
  text.parts.insert(text.parts.end(), caption.words.parts.begin(), caption.words.parts.end());
  text.language = caption.words.language;
  return text;
}

bool has_words(const document::Caption& caption) {
  return caption.sign || caption.number > 0 || !caption.words.empty();
}

TagId figure_tag(const document::Photograph& photograph, TagId parent, const Setting& setting) {
  Tag figure{.type = TagType::figure, .parent = parent};
  figure.alternative = photograph.alternative;
  return setting.add_tag(std::move(figure));
}

Frame set_caption(const document::Caption& caption, Length width, TagId parent,
                  const Setting& setting) {
  if (!has_words(caption)) return {};
  const TagId tag = setting.add_tag({.type = TagType::caption, .parent = parent});
  return set_words(words_of(caption), Role::caption, width, tag, setting);
}

/// Picture in `box`, caption under it over `width`.
Frame set_in_box(const Figure& figure, Rect box, Length width, TagId parent,
                 const Setting& setting) {
  Frame frame;
  frame.width = width;
  add_picture(figure.photograph, box, figure_tag(figure.photograph, parent, setting), setting,
              frame);
  const Frame caption = set_caption(figure.caption, width, parent, setting);
  frame.height = box.y + box.height;
  if (caption.height.thousandths > 0) {
    place(caption, {box.x, frame.height + kUnderPicture}, frame.items);
    frame.height += kUnderPicture + caption.height;
  }
  return frame;
}

/// Figures beside each other, tops level, each `widths[i]` wide from `lefts[i]` on.
Slice row_slice(const std::vector<const Figure*>& figures, const std::vector<Rect>& boxes,
                const std::vector<Length>& widths, TagId parent, const Setting& setting) {
  Slice slice;
  slice.full = true;
  slice.frame.width = setting.style.frame_width();
  for (std::size_t i = 0; i < figures.size(); ++i) {
    Rect box = boxes[i];
    const Length left = box.x;
    box.x = {};
    const Frame one = set_in_box(*figures[i], box, widths[i], parent, setting);
    place(one, {left, {}}, slice.frame.items);
    slice.frame.height = std::max(slice.frame.height, one.height);
  }
  return slice;
}

/// Two pictures at equal height that fill the frame: on the columns where they fit those, else
/// sharing the width as their shapes want.
std::vector<Rect> boxes_of_two(const Figure& first, const Figure& second, const Setting& setting) {
  const document::Style& style = setting.style;
  const Rect a = fitted(first.photograph, style.side, kMainHeight);
  const Rect b = fitted(second.photograph, style.main, kMainHeight);
  const Length height = std::min(a.height, b.height);
  const Rect side = fitted(first.photograph, style.side, height);
  Rect main = fitted(second.photograph, style.main, height);
  const bool fills = side.width * 10 >= style.side * 9 && main.width * 10 >= style.main * 9;
  if (fills) {
    main.x = style.side + style.gutter;
    return {side, main};
  }
  const double shape_a = static_cast<double>(std::max(1, first.photograph.width)) /
                         std::max(1, first.photograph.height);
  const double shape_b = static_cast<double>(std::max(1, second.photograph.width)) /
                         std::max(1, second.photograph.height);
  const double room = base::to_points(style.frame_width() - style.gutter);
  const double shared = std::min(room / (shape_a + shape_b), base::to_points(kMainHeight));
  // A thin picture keeps a column of its own for its caption.
  const Length most = style.frame_width() - style.gutter - kColumn;
  const Rect left =
      fitted(first.photograph, std::min(points(shared * shape_a), most), points(shared));
  const Length beside = std::max(left.width, kColumn) + style.gutter;
  Rect right = fitted(second.photograph, style.frame_width() - beside, points(shared));
  right.x = beside;
  return {left, right};
}

/// The dashed frame of a picture that nobody took.
void add_missing(const std::string& words, Rect box, TagId parent, const Setting& setting,
                 Frame& frame) {
  const Stroke dashes{points(0.5), setting.style.ink, {points(3), points(2)}};
  frame.items.emplace_back(outlined_box(box, dashes, kArtifact));
  if (words.empty()) return;
  const TagId tag = setting.add_tag({.type = TagType::paragraph, .parent = parent});
  const Frame said =
      set_words(document::plain(words), Role::caption, box.width - points(15), tag, setting);
  const Length spare = std::max(Length{}, box.height - said.height);
  place(said, {box.x + points(7.5), box.y + spare / 2}, frame.items);
  frame.height = std::max({frame.height, box.y + box.height, box.y + said.height});
}

}  // namespace

Rect figure_box(const document::Photograph& photograph, Width width, const document::Style& style) {
  const auto all = sizes(style);
  std::size_t size = width == Width::full ? 0 : width == Width::main ? 1 : 2;
  const Rect wanted = fitted(photograph, all[size].width, all[size].height);
  const int resolution = resolution_at(photograph, wanted.width);
  if (resolution < 75) {
    size = 2;
  } else if (resolution < 150) {
    size = std::min<std::size_t>(size + 1, 2);
  }
  return fitted(photograph, all[size].width, all[size].height);
}

Frame set_figure(const Figure& figure, TagId parent, const Setting& setting) {
  const document::Style& style = setting.style;
  const Length column = figure.width == Width::full   ? style.frame_width()
                        : figure.width == Width::main ? style.main
                                                      : style.side;
  return set_in_box(figure, figure_box(figure.photograph, figure.width, style), column, parent,
                    setting);
}

void add_figure(const Figure& figure, TagId parent, const Setting& setting, Slices& slices) {
  const document::Style& style = setting.style;
  const Rect box = figure_box(figure.photograph, figure.width, style);
  Slice slice;
  slices.start_block(kAround);
  // A wide picture that came out small stands in main like one that was meant for it.
  slice.full = figure.width == Width::full && box.width > style.main;
  const Length left = slice.full ? Length{} : style.side + style.gutter;
  slice.frame.width = style.frame_width();
  slice.shrinkable = box.height / 4;
  if (figure.caption_in_side && !slice.full) {
    Figure bare = figure;
    bare.caption = {};
    const Frame picture = set_in_box(bare, box, style.main, parent, setting);
    place(picture, {left, {}}, slice.frame.items);
    slice.frame.height = picture.height;
    Frame caption = set_caption(figure.caption, style.side, parent, setting);
    if (caption.height.thousandths > 0) slice.beside.push_back({std::move(caption), {}});
  } else {
    const Length column = slice.full ? style.frame_width() : style.main;
    const Frame picture = set_in_box(figure, box, column, parent, setting);
    place(picture, {left, {}}, slice.frame.items);
    slice.frame.height = picture.height;
  }
  slices.add(std::move(slice));
  slices.below = kAround;
}

void add_figure_row(const document::FigureRow& row, TagId parent, const Setting& setting,
                    Slices& slices) {
  const document::Style& style = setting.style;
  if (row.figures.size() == 1) return add_figure(row.figures.front(), parent, setting, slices);
  if (row.figures.size() == 2) {
    const std::vector<const Figure*> both = {&row.figures[0], &row.figures[1]};
    const std::vector<Rect> boxes = boxes_of_two(*both[0], *both[1], setting);
    slices.start_block(kAround);
    const Length first = boxes[1].x - style.gutter;
    const Length second = std::max(boxes[1].width, kColumn);
    slices.add(row_slice(both, boxes, {first, second}, parent, setting));
    slices.below = kAround;
    return;
  }
  for (std::size_t i = 0; i < row.figures.size(); i += 3) {
    std::vector<const Figure*> three;
    std::vector<Rect> boxes;
    for (std::size_t j = i; j < std::min(i + 3, row.figures.size()); ++j) {
      Rect box = fitted(row.figures[j].photograph, style.side, kThirdHeight);
      box.x = (style.side + style.gutter) * static_cast<int>(j - i);
      three.push_back(&row.figures[j]);
      boxes.push_back(box);
    }
    slices.start_block(kAround);
    slices.add(row_slice(three, boxes, {3, style.side}, parent, setting));
    slices.below = kAround;
  }
}

void add_pair(const document::Pair& pair, TagId parent, const Setting& setting, Slices& slices) {
  const document::Style& style = setting.style;
  const Length half = (style.frame_width() - style.gutter) / 2;
  Length height = kPairHeight;
  for (const std::optional<Figure>* one : {&pair.found, &pair.left}) {
    if (*one) height = std::min(height, fitted((*one)->photograph, half, height).height);
  }
  Slice slice;
  slice.full = true;
  slice.frame.width = style.frame_width();
  Length left;
  for (const std::optional<Figure>* one : {&pair.found, &pair.left}) {
    if (*one) {
      const Rect box = fitted((*one)->photograph, half, height);
      const Frame set = set_in_box(**one, box, half, parent, setting);
      place(set, {left, {}}, slice.frame.items);
      slice.frame.height = std::max(slice.frame.height, set.height);
    } else {
      add_missing(pair.not_photographed, {left, {}, half, height}, parent, setting, slice.frame);
    }
    left += half + style.gutter;
  }
  slices.start_block(kAround);
  slices.add(std::move(slice));
  slices.below = kAround;
}

}  // namespace winchbook::layout
