#include "pdf/content.h"

#include <fmt/format.h>

#include <cstddef>
#include <iterator>
#include <utility>

#include "pdf/syntax.h"
#include "pdf/text_run.h"

namespace winchbook::pdf {

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
  append_run(item, font, out_);
  if (!item.actual_text.empty()) out_ += "EMC\n";
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
