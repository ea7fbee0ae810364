#pragma once

#include <string>
#include <string_view>

#include "pdf/draw.h"
#include "pdf/haru.h"

/// What the file says of itself, and what travels inside it.
namespace winchbook::pdf {

/// Text safe between XML tags: & < > " escaped, characters that XML 1.0 cannot hold left out.
[[nodiscard]] std::string escaped_for_xml(std::string_view text);

/// The XMP packet of a PDF/A-3a and PDF/UA-1 file (ISO 16684-1, ISO 19005-3, ISO 14289-1), with the
/// extension schema that declares the pdfuaid namespace.
[[nodiscard]] std::string xmp_packet(const Metadata& metadata);

/// Puts title, language, dates, XMP, output intent and viewer preferences into the catalogue.
/// `packet` and `contents` must outlive the file.
void describe(const Contents& contents, std::string_view packet, Haru& haru);

/// Attaches files to the document as a whole (ISO 19005-3, 6.8): catalogue /AF and the name tree.
void attach(const Contents& contents, Haru& haru);

}  // namespace winchbook::pdf
