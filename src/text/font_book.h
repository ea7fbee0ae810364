#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/result.h"
#include "text/shape.h"
#include "text/subset.h"

namespace winchbook::text {

/// One line of the fonts list: a face's name, where it may be, and who brings it.
struct FaceEntry {
  std::string name;                ///< "vollkorn-regular", as templates call it
  std::string package;             ///< Debian package that installs it
  std::vector<std::string> files;  ///< tried in order; TrueType outlines
};

/// Reads `shared/fonts.txt`: a face a line, "name | package | file | file…", '#' begins a comment.
/// `file` names it in diagnostics. Errors: a line with fewer than three fields, a name given twice.
[[nodiscard]] base::Result<std::vector<FaceEntry>> read_fonts_list(std::string_view bytes,
                                                                   std::string_view file);

/// The faces of the fonts list. A face is opened when it is first asked for; one that cannot be
/// opened has no characters and shapes to nothing, and `faults` tells why: ask after layout, before
/// anything is believed. Not for use by two threads at once.
class FontBook final : public FontMetrics {
 public:
  explicit FontBook(std::vector<FaceEntry> entries);
  FontBook(FontBook&&) noexcept;
  FontBook& operator=(FontBook&&) noexcept;
  FontBook(const FontBook&) = delete;
  FontBook& operator=(const FontBook&) = delete;
  ~FontBook() override;

  [[nodiscard]] FaceId face(std::string_view name) const override;
  /// Runs of one script are shaped apart; glyphs stand left to right.
  [[nodiscard]] Shaped shape(FaceId face, std::string_view utf8,
                             std::span<const std::string> features,
                             std::string_view language) const override;
  [[nodiscard]] FaceMetrics metrics(FaceId face) const override;
  [[nodiscard]] bool has(FaceId face, char32_t character) const override;

  /// True for a name in the list; opens nothing.
  [[nodiscard]] bool knows(std::string_view name) const;
  /// The name in the list.
  [[nodiscard]] const std::string& name(FaceId face) const;
  /// What was wrong with the faces asked for so far: a file that is not there (the hint names its
  /// package), or that is no TrueType font.
  [[nodiscard]] const base::Diagnostics& faults() const;
  /// The advance of a glyph as the face's own table has it, unkerned.
  [[nodiscard]] std::int32_t advance(FaceId face, std::uint32_t glyph) const;
  /// What a font descriptor says of it.
  [[nodiscard]] FaceFacts facts(FaceId face) const;
  /// The face cut down to `glyphs`. Errors: it cannot be opened, its tables are broken.
  [[nodiscard]] base::Result<Subset> subset(FaceId face,
                                            std::span<const std::uint32_t> glyphs) const;

 private:
  struct OpenFace;
  [[nodiscard]] const OpenFace* opened(FaceId face) const;
  [[nodiscard]] Shaped shape_anew(const OpenFace& face, std::string_view utf8,
                                  std::span<const std::string> features,
                                  std::string_view language) const;

  std::vector<FaceEntry> entries_;
  mutable std::vector<std::unique_ptr<OpenFace>> faces_;
  mutable base::Diagnostics faults_;
  /// Layout asks for the same words again: a caption at two widths, a foot on every page.
  mutable std::unordered_map<std::string, Shaped> shaped_;
};

}  // namespace winchbook::text
