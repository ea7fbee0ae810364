#include "pdf/content.h"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <utility>

#include "pdf/syntax.h"

namespace winchbook::pdf {
namespace {

constexpr std::string_view kHex = "0123456789ABCDEF";

std::int64_t rounded_quotient(std::int64_t a, std::int64_t b) {
  return (a >= 0 ? a + b / 2 : a - b / 2) / b;
}

/// Characters that set nothing and are dropped in shaping; a glyph before one does not mean it.
/// (Soft hyphen, joiners, word joiner, byte order mark.)
std::string without_ignorables(std::string_view text) {
  constexpr std::array<std::string_view, 6> kIgnored = {"\u00AD", "\u200B", "\u200C",
                                                        "\u200D", "\u2060", "\uFEFF"};
  std::string out(text);
  for (const std::string_view ignored : kIgnored) {
    for (std::size_t at = out.find(ignored); at != std::string::npos; at = out.find(ignored, at)) {
      out.erase(at, ignored.size());
    }
  }
  return out;
}

bool is_ascii(std::string_view text) {
  for (const char c : text) {
    if ((c & 0x80) != 0) return false;
  }
  return true;
}

}  // namespace

void Content::begin_content(const char* type, int id) {
  end();
  fmt::format_to(std::back_inserter(out_), "/{}<</MCID {}>>BDC\n", type, id);
  marked_ = true;
}

void Content::begin_artifact() {
  end();
  out_ += "/Artifact BMC\n";
  marked_ = true;
}

void Content::end() {
  leave_text();
  if (marked_) out_ += "EMC\n";
  marked_ = false;
}

void Content::leave_text() {
  if (in_text_) out_ += "ET\n";
  in_text_ = false;
}

void Content::append_point(base::Point point) {
  append_length(out_, point.x);
  out_ += ' ';
  append_length(out_, height_ - point.y);
  out_ += ' ';
}

void Content::append_colour(document::Colour colour, std::string_view rgb, std::string_view grey) {
  const auto append_part = [&](int value) {
    append_thousandths(out_, rounded_quotient(value * 1000, 255));
    out_ += ' ';
  };
  append_part(colour.red);
  if (colour.red == colour.green && colour.green == colour.blue) {
    out_ += grey;
  } else {
    append_part(colour.green);
    append_part(colour.blue);
    out_ += rgb;
  }
  out_ += '\n';
}

void Content::set_fill(document::Colour colour) {
  if (colour == fill_) return;
  append_colour(colour, "rg", "g");
  fill_ = colour;
}

void Content::set_stroke(const layout::Stroke& stroke) {
  if (stroke.colour != stroke_) append_colour(stroke.colour, "RG", "G");
  stroke_ = stroke.colour;
  if (stroke.width != width_) {
    append_length(out_, stroke.width);
    out_ += " w\n";
    width_ = stroke.width;
  }
  if (stroke.round_caps != round_caps_) {
    out_ += stroke.round_caps ? "1 J\n" : "0 J\n";
    round_caps_ = stroke.round_caps;
  }
  if (stroke.dashes != dashes_) {
    out_ += '[';
    for (const base::Length dash : stroke.dashes) {
      append_length(out_, dash);
      out_ += ' ';
    }
    out_ += "]0 d\n";
    dashes_ = stroke.dashes;
  }
}

/// Moves from the beginning of the last line, or from the page's corner in a new text object.
void Content::move_to(base::Point origin) {
  if (!in_text_) {
    out_ += "BT\n";
    in_text_ = true;
    append_point(origin);
  } else {
    append_length(out_, origin.x - line_.x);
    out_ += ' ';
    append_length(out_, line_.y - origin.y);
    out_ += ' ';
  }
  out_ += "Td\n";
  line_ = origin;
}

void Content::add_text(const layout::TextItem& item, EmbeddedFont& font) {
  if (item.glyphs.empty()) return;
  move_to(item.origin);
  set_fill(item.colour);
  std::string selected = '/' + font.name() + ' ';
  append_length(selected, item.size);
  selected += " Tf\n";
  if (selected != font_) out_ += selected;
  font_ = std::move(selected);
  const std::int64_t spacing =
      rounded_quotient(std::int64_t{item.tracking} * item.size.thousandths, 1000);
  if (spacing != spacing_) {
    append_thousandths(out_, spacing);
    out_ += " Tc\n";
    spacing_ = spacing;
  }
  if (!item.actual_text.empty()) {
    out_ += "/Span<</ActualText";
    append_text(out_, item.actual_text);
    out_ += ">>BDC\n";
  }
  show(item, font);
  if (!item.actual_text.empty()) out_ += "EMC\n";
}

/// One TJ, or several where the baseline rises. Where the shaped advance differs from the width the
/// font states, a number corrects it; what is less than half a thousandth of an em is carried on.
void Content::show(const layout::TextItem& item, EmbeddedFont& font) {
  const std::int64_t em = font.units_per_em();
  const auto thousandths = [&](std::int64_t units) {  // of 1/1000 em
    return rounded_quotient(units * 1'000'000, em);
  };
  bool in_codes = false;
  const auto leave_codes = [&] {
    if (in_codes) out_ += '>';
    in_codes = false;
  };
  std::int64_t owed = 0;
  std::int32_t rise = 0;
  out_ += '[';
  for (std::size_t i = 0; i < item.glyphs.size(); ++i) {
    const text::Glyph& glyph = item.glyphs[i];
    if (glyph.y_offset != rise) {
      leave_codes();
      out_ += "]TJ ";
      append_thousandths(
          out_, rounded_quotient(std::int64_t{glyph.y_offset} * item.size.thousandths, em));
      out_ += " Ts[";
      rise = glyph.y_offset;
    }
    const std::int64_t shift = rounded_quotient(owed + thousandths(glyph.x_offset), 1000);
    if (shift != 0) {
      leave_codes();
      append_number(out_, -shift);
    }
    owed += thousandths(glyph.advance) - font.width(glyph.id) - shift * 1000;
    std::size_t next = i + 1;
    while (next < item.glyphs.size() && item.glyphs[next].cluster == glyph.cluster)
      ++next;
    const std::size_t end =
        next < item.glyphs.size() ? item.glyphs[next].cluster : item.text.size();
    std::string_view text = std::string_view(item.text).substr(glyph.cluster, end - glyph.cluster);
    std::string cleaned;
    if (!is_ascii(text)) {
      cleaned = without_ignorables(text);
      text = cleaned;
    }
    const bool leads = i == 0 || item.glyphs[i - 1].cluster != glyph.cluster;
    // A second glyph for one character says nothing of its own.
    const unsigned code = font.code(glyph.id, leads ? text : "\u200B");
    if (!in_codes) out_ += '<';
    in_codes = true;
    out_ +=
        {kHex[code >> 12U & 15U], kHex[code >> 8U & 15U], kHex[code >> 4U & 15U], kHex[code & 15U]};
  }
  leave_codes();
  out_ += "]TJ\n";
  if (rise != 0) out_ += "0 Ts\n";
}

bool Content::append_rectangle(const layout::PathItem& item) {
  using Kind = layout::PathItem::Step::Kind;
  const auto& s = item.steps;
  if (s.size() != 5 || s[0].kind != Kind::move || s[4].kind != Kind::close) return false;
  for (std::size_t i = 1; i < 4; ++i) {
    if (s[i].kind != Kind::line) return false;
  }
  const bool square = s[0].to.y == s[1].to.y && s[1].to.x == s[2].to.x && s[2].to.y == s[3].to.y &&
                      s[3].to.x == s[0].to.x;
  if (!square) return false;
  append_point(s[0].to);
  append_length(out_, s[2].to.x - s[0].to.x);
  out_ += ' ';
  append_length(out_, s[0].to.y - s[2].to.y);
  out_ += " re\n";
  return true;
}

void Content::add_path(const layout::PathItem& item) {
  if (!item.filled && !item.stroked) return;
  leave_text();
  if (item.filled) set_fill(item.fill);
  if (item.stroked) set_stroke(item.stroke);
  if (!append_rectangle(item)) {
    for (const auto& step : item.steps) {
      using Kind = layout::PathItem::Step::Kind;
      if (step.kind == Kind::curve) {
        append_point(step.control1);
        append_point(step.control2);
      }
      if (step.kind != Kind::close) append_point(step.to);
      out_ += step.kind == Kind::move    ? "m\n"
              : step.kind == Kind::line  ? "l\n"
              : step.kind == Kind::curve ? "c\n"
                                         : "h\n";
    }
  }
  out_ += item.filled && item.stroked ? "B\n" : item.filled ? "f\n" : "S\n";
}

void Content::add_image(const layout::Rect& box, const std::array<int, 6>& matrix,
                        std::string_view name) {
  leave_text();
  out_ += "q ";
  const base::Length foot = height_ - box.y - box.height;
  for (const base::Length value :
       {box.width * matrix[0], box.height * matrix[1], box.width * matrix[2],
        box.height * matrix[3], box.x + box.width * matrix[4], foot + box.height * matrix[5]}) {
    append_length(out_, value);
    out_ += ' ';
  }
  fmt::format_to(std::back_inserter(out_), "cm/{} Do Q\n", name);
}

}  // namespace winchbook::pdf
