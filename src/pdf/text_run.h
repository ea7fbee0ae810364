#pragma once

#include <string>

#include "layout/page.h"
#include "pdf/embedded_font.h"

namespace winchbook::pdf {

/// Appends the operators that show a run's glyphs from the current point on (ISO 32000-1, 9.4.3),
/// font and size being selected already: one TJ, or several where the baseline rises or one
/// character takes several glyphs.
void append_run(const layout::TextItem& item, EmbeddedFont& font, std::string& out);

}  // namespace winchbook::pdf
