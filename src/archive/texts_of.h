#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

namespace winchbook::archive {

/// One text of a PDF.
struct Text {
  std::string what;       ///< "page 3 of the finished file", "a bookmark, alternative or title …"
  std::string words;      ///< UTF-8
  bool attached = false;  ///< an attachment, byte for byte
};

/// Everything that can be read in a PDF, by two libraries that had no hand in writing it: what each
/// page says (poppler); every string of every object (alternatives, bookmarks, titles, names of
/// attachments), the metadata and the attachments, by qpdf. `name` is
/// told in faults. Errors: rule "file-pdf" (the machine's): a file that one of them cannot read.
[[nodiscard]] base::Result<std::vector<Text>> texts_of(std::string_view pdf,
                                                       const std::string& name);

}  // namespace winchbook::archive
