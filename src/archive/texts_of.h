#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace winchbook::archive {

/// One text of a PDF.
struct Text {
  std::string what;       ///< "a bookmark, a title or an alternative …"
  std::string words;      ///< UTF-8
  bool attached = false;  ///< an attachment, byte for byte
};

/// What a PDF says beside its drawn glyphs, by a library that had no hand in writing it (qpdf):
/// every string of every object (alternatives, bookmarks, titles, names of attachments), the
/// metadata and the attachments. `name` is told in faults. Error: rule "file-pdf" (the machine's):
/// a file that cannot be read.
[[nodiscard]] base::Result<std::vector<Text>> texts_of(std::string_view pdf,
                                                       const std::string& name);

}  // namespace winchbook::archive
