#include "pdf/text_run.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <string_view>

#include "pdf/syntax.h"

namespace winchbook::pdf {
namespace {

/// What a further glyph of one character says when a reader ignores /ActualText.
constexpr std::string_view kZeroWidthSpace = "\u200B";

bool is_ascii(std::string_view text) {
  return std::all_of(text.begin(), text.end(), [](char c) { return (c & 0x80) == 0; });
}

/// The text without characters that set nothing (soft hyphen, joiners, byte order mark): shaping
/// drops them, and the glyph before one does not mean it.
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

class Run {
 public:
  Run(const layout::TextItem& item, EmbeddedFont& font, std::string& out)
      : item_(item), font_(font), out_(out) {}

  void append() {
    out_ += '[';
    for (std::size_t start = 0; start < item_.glyphs.size();) {
      std::size_t end = start + 1;
      while (end < item_.glyphs.size() && same_cluster(start, end))
        ++end;
      append_cluster(start, end);
      start = end;
    }
    leave_codes();
    out_ += "]TJ\n";
    if (rise_ != 0) out_ += "0 Ts\n";
  }

 private:
  [[nodiscard]] bool same_cluster(std::size_t a, std::size_t b) const {
    return item_.glyphs[a].cluster == item_.glyphs[b].cluster;
  }

  /// The glyphs of one character, or of the several that a ligature stands for.
  void append_cluster(std::size_t start, std::size_t end) {
    const std::size_t from = item_.glyphs[start].cluster;
    const std::size_t to =
        end < item_.glyphs.size() ? item_.glyphs[end].cluster : item_.text.size();
    std::string_view text = std::string_view(item_.text).substr(from, to - from);
    std::string cleaned;
    if (!is_ascii(text)) text = cleaned = without_ignorables(text);
    const bool spans = end - start > 1 && item_.actual_text.empty();
    if (spans) {
      leave_codes();
      out_ += "]TJ/Span<</ActualText";
      append_text(out_, text);
      out_ += ">>BDC[";
    }
    for (std::size_t i = start; i < end; ++i) {
      append_glyph(item_.glyphs[i], i == start ? text : kZeroWidthSpace);
    }
    if (spans) {
      leave_codes();
      out_ += "]TJ EMC[";
    }
  }

  /// Where the shaped advance differs from the width the font states, a number corrects it; what is
  /// less than half a thousandth of an em is carried on.
  void append_glyph(const text::Glyph& glyph, std::string_view text) {
    if (glyph.y_offset != rise_) set_rise(glyph.y_offset);
    const std::int64_t shift = rounded_quotient(owed_ + thousandths(glyph.x_offset), 1000);
    if (shift != 0) {
      leave_codes();
      append_number(out_, -shift);
    }
    const EmbeddedFont::Shown shown = font_.show(glyph.id, text);
    owed_ += thousandths(glyph.advance) - shown.width - shift * 1000;
    if (!in_codes_) out_ += '(';
    in_codes_ = true;
    append_string_byte(out_, shown.code >> 8U);
    append_string_byte(out_, shown.code & 0xFFU);
  }

  void set_rise(std::int32_t rise) {
    leave_codes();
    out_ += "]TJ ";
    append_thousandths(
        out_, rounded_quotient(std::int64_t{rise} * item_.size.thousandths, font_.units_per_em()));
    out_ += " Ts[";
    rise_ = rise;
  }

  void leave_codes() {
    if (in_codes_) out_ += ')';
    in_codes_ = false;
  }

  /// Font units as thousandths of 1/1000 em.
  [[nodiscard]] std::int64_t thousandths(std::int64_t units) const {
    return rounded_quotient(units * 1'000'000, font_.units_per_em());
  }

  const layout::TextItem& item_;
  EmbeddedFont& font_;
  std::string& out_;
  bool in_codes_ = false;
  std::int32_t rise_ = 0;
  std::int64_t owed_ = 0;  ///< how much further right the pen should stand
};

}  // namespace

void append_run(const layout::TextItem& item, EmbeddedFont& font, std::string& out) {
  Run(item, font, out).append();
}

}  // namespace winchbook::pdf
