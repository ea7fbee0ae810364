#include "layout/frame.h"

#include <utility>

namespace winchbook::layout {
namespace {

using document::TypeStyle;

Point moved(Point point, Point offset) {
  return {point.x + offset.x, point.y + offset.y};
}

Rect moved(Rect box, Point offset) {
  return {box.x + offset.x, box.y + offset.y, box.width, box.height};
}

struct MovedItem {
  Point offset;

  Item operator()(TextItem item) const {
    item.origin = moved(item.origin, offset);
    return item;
  }
  Item operator()(PathItem item) const {
    for (PathItem::Step& step : item.steps) {
      step.to = moved(step.to, offset);
      step.control1 = moved(step.control1, offset);
      step.control2 = moved(step.control2, offset);
    }
    return item;
  }
  Item operator()(ImageItem item) const {
    item.box = moved(item.box, offset);
    return item;
  }
  Item operator()(LinkItem item) const {
    item.box = moved(item.box, offset);
    return item;
  }
};

const std::string& face_name(const document::Family& family, bool italic, bool bold) {
  const std::string& name = italic && bold ? family.bold_italic
                            : bold         ? family.bold
                            : italic       ? family.italic
                                           : family.regular;
  return name.empty() ? family.regular : name;
}

/// `units` of a face's em at a size, in thousandths of a point.
Length at_size(std::int64_t units, int units_per_em, Length size) {
  return base::scaled(size, units, units_per_em);
}

/// Width of an item's first `count` glyphs.
Length width_of_glyphs(const TextItem& item, std::size_t count, const text::FontMetrics& fonts) {
  std::int64_t units = 0;
  for (std::size_t i = 0; i < count; ++i)
    units += item.glyphs[i].advance;
  return at_size(units, fonts.metrics(item.face).units_per_em, item.size) +
         base::scaled(item.size, std::int64_t{item.tracking} * static_cast<std::int64_t>(count),
                      1000);
}

}  // namespace

void place(const Frame& frame, Point offset, std::vector<Item>& out) {
  out.reserve(out.size() + frame.items.size());
  for (const Item& item : frame.items) {
    out.push_back(std::visit(MovedItem{offset}, item));
  }
}

TagId Setting::add_tag(Tag tag) const {
  tags.push_back(std::move(tag));
  return static_cast<TagId>(tags.size() - 1);
}

text::FaceId Setting::face(document::Role role, Manner manner) const {
  const TypeStyle& type = style.of(role);
  const bool italic = type.italic != manner.italic;
  const bool bold = type.bold || manner.bold;
  return fonts.face(face_name(type.family, italic, bold));
}

TextItem Setting::line(document::Role role, std::string_view words, Point baseline, TagId tag,
                       Manner manner) const {
  const TypeStyle& type = style.of(role);
  TextItem item;
  item.origin = baseline;
  item.face = face(role, manner);
  item.size = type.size;
  item.colour = type.colour;
  item.tracking = type.tracking;
  item.tag = tag;
  std::vector<std::string> features = type.features;
  if (manner.small_capitals) features.emplace_back("smcp");
  const std::string set = type.capitals ? text::upper_case(words, language) : std::string(words);
  text::Shaped shaped = fonts.shape(item.face, set, features, language);
  item.glyphs = std::move(shaped.glyphs);
  item.text = std::move(shaped.text);
  return item;
}

Length Setting::width(document::Role role, std::string_view words, Manner manner) const {
  return width_of(line(role, words, {}, kArtifact, manner), fonts);
}

Length width_of(const TextItem& item, const text::FontMetrics& fonts) {
  return width_of_glyphs(item, item.glyphs.size(), fonts);
}

Length seen_width_of(const TextItem& item, const text::FontMetrics& fonts) {
  std::size_t count = item.glyphs.size();
  const auto is_space = [&](const text::Glyph& glyph) {
    return glyph.cluster < item.text.size() && item.text[glyph.cluster] == ' ';
  };
  while (count > 0 && is_space(item.glyphs[count - 1]))
    --count;
  return width_of_glyphs(item, count, fonts);
}

Length first_baseline(document::Role role, const Setting& setting) {
  const TypeStyle& type = setting.style.of(role);
  const text::FaceMetrics metrics = setting.fonts.metrics(setting.face(role));
  const Length above = at_size(metrics.ascender, metrics.units_per_em, type.size);
  const Length below = at_size(-metrics.descender, metrics.units_per_em, type.size);
  return (type.leading - above - below) / 2 + above;
}

}  // namespace winchbook::layout
