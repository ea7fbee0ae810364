#pragma once

#include <cstddef>
#include <optional>
#include <pugixml.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "xml/document.h"

/// Changing a file at its byte offsets, so that everything else in it stays as it was typed.
namespace winchbook::xml {

/// A stretch of bytes, from `begin` up to but not `end`.
struct Extent {
  std::size_t begin = 0;
  std::size_t end = 0;

  [[nodiscard]] std::size_t size() const { return end - begin; }
  friend bool operator==(const Extent&, const Extent&) = default;
};

/// Bytes to take out, and what stands in their place. An empty stretch puts `with` in before the
/// byte at `begin`.
struct Splice {
  std::size_t begin = 0;
  std::size_t end = 0;
  std::string with = {};
};

/// The bytes with all splices made at once; their offsets are those of `bytes`, their order does
/// not matter, except that what is put in at one and the same offset stands in the order given,
/// before what replaces the bytes there. Throws std::logic_error when two splices overlap or one
/// reaches over the end: a fault of the program.
[[nodiscard]] std::string spliced(std::string_view bytes, std::vector<Splice> splices);

/// Where an element stands in its file.
struct ElementExtent {
  Extent whole;               ///< from its "<" to behind its last ">"
  Extent content;             ///< between start tag and end tag; empty for <a/>, at its end
  bool self_closing = false;  ///< written as <a/>
};

/// `element` must be an element of the document's tree. Comments, CDATA, instructions and ">" in
/// attributes are seen for what they are.
[[nodiscard]] ElementExtent extent_of(const Document& document, pugi::xml_node element);

/// The lines an element has to itself: from the first byte of its indentation to behind its line
/// break, so that taking them out leaves no empty line. When something else stands on its first or
/// last line, the element alone.
[[nodiscard]] Extent lines_of(const Document& document, pugi::xml_node element);

/// The same for any stretch that is not empty: a comment, several elements.
[[nodiscard]] Extent lines_of(std::string_view bytes, Extent whole);

/// The value of an element's attribute as it is written, without its quotation marks; nothing when
/// there is no such attribute.
[[nodiscard]] std::optional<Extent> attribute_of(const Document& document, pugi::xml_node element,
                                                 std::string_view name);

/// The white space between the beginning of the line and the element; empty when something else
/// stands between.
[[nodiscard]] std::string_view indentation_of(const Document& document, pugi::xml_node element);

/// How the file ends its lines: "\r\n" when its first line ends so, else "\n".
[[nodiscard]] std::string_view line_end_of(std::string_view bytes);

/// A text as it is written between tags: & < > and carriage return as references.
[[nodiscard]] std::string escaped(std::string_view text);

/// Every comment and instruction in the root element or beside it, in document order; the XML
/// declaration is neither.
[[nodiscard]] std::vector<Extent> remarks_of(const Document& document);

}  // namespace winchbook::xml
