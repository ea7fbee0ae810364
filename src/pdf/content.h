#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "layout/page.h"
#include "pdf/embedded_font.h"

namespace winchbook::pdf {

/// The content stream of one page (ISO 32000-1, 8 and 9): operators appended, state remembered, so
/// that nothing is said twice. Takes positions as layout gives them, y downwards.
class Content {
 public:
  explicit Content(base::Length page_height) : height_(page_height) {}

  /// Begins marked content of an element, ending what was open; `type` is its structure type.
  void begin_content(const char* type, int id);
  /// Begins furniture, ending what was open.
  void begin_artifact();
  /// Ends what is open.
  void end();

  void add_text(const layout::TextItem& item, EmbeddedFont& font);
  void add_path(const layout::PathItem& item);
  /// `matrix` takes the unit square to the upright picture.
  void add_image(const layout::Rect& box, const std::array<int, 6>& matrix, std::string_view name);

  [[nodiscard]] const std::string& bytes() const { return out_; }

 private:
  void leave_text();
  void move_to(base::Point origin);
  void set_fill(document::Colour colour);
  void set_stroke(const layout::Stroke& stroke);
  void append_colour(document::Colour colour, std::string_view rgb, std::string_view grey);
  void append_point(base::Point point);
  [[nodiscard]] bool append_rectangle(const layout::PathItem& item);

  base::Length height_;
  std::string out_;
  bool marked_ = false;
  bool in_text_ = false;
  base::Point line_{};  ///< where the current text line begins
  std::string font_;    ///< "/F0 11 Tf"
  std::int64_t spacing_ = 0;
  document::Colour fill_{};    ///< PDF begins in black
  document::Colour stroke_{};  ///< likewise
  base::Length width_ = base::points(1);
  bool round_caps_ = false;
  std::vector<base::Length> dashes_;
};

}  // namespace winchbook::pdf
