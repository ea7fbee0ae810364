#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "layout/page.h"
#include "text/font_book.h"

/// Pages to bytes: an archival file (PDF/A-3a and PDF/UA-1 at once). Nothing is decided here.
namespace winchbook::pdf {

/// A photograph's own JPEG bytes, passed through untouched, with what was read from their header.
struct Jpeg {
  std::string id;
  std::string bytes;
  int width = 0;  ///< pixels as stored
  int height = 0;
  int components = 3;           ///< 1, 3 or 4
  int orientation = 1;          ///< EXIF, 1 to 8
  bool adobe_inverted = false;  ///< four components with an Adobe marker
  std::string icc = {};         ///< its colour profile, or empty
};

/// A file travelling inside the document.
struct Attachment {
  std::string name;        ///< "record.xml"
  std::string media_type;  ///< "text/xml"
  std::string description;
  std::string bytes;
  bool source = true;  ///< AFRelationship Source, else Data
};

struct Metadata {
  std::string title;
  std::string author;
  std::string subject;
  std::string language;  ///< BCP 47
  std::string date;      ///< ISO 8601 day of issue, "2026-06-19"; the only date in the file
  std::string producer;  ///< "winchbook 1.0"
};

/// Everything besides the pages that goes into the file.
struct Contents {
  std::vector<Jpeg> photographs;
  std::vector<Attachment> attachments;
  Metadata metadata;
  std::string icc_profile;  ///< bytes of the output intent's sRGB profile
};

/// The same pages, contents and fonts give the same bytes. Errors: a photograph the pages ask for
/// is not there; a font cannot be subset; the PDF library refuses.
[[nodiscard]] base::Result<std::string> draw(const layout::Pages& pages, const Contents& contents,
                                             const text::FontBook& fonts);

}  // namespace winchbook::pdf
