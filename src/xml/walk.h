#pragma once

#include <cstddef>
#include <functional>
#include <string_view>

#include "xml/document.h"

namespace winchbook::xml {

/// One text of a document: an attribute's value, or what stands between two tags.
struct Text {
  std::string_view element;    ///< in which it stands
  std::string_view attribute;  ///< empty: between tags
  std::string_view value;
  std::size_t offset = 0;  ///< of the element's "<", or of the text's first byte
};

/// Hands over every text, in the order of the file; an element's attributes before what is in it.
void for_each_text(const Document& document, const std::function<void(const Text&)>& take);

/// Hands over what is read in one: of each element that has words beside other elements, all that
/// stands in it, as it runs on ("Quill<emphasis>feather</emphasis>"). Of elements in each other the
/// outermost.
void for_each_passage(const Document& document, const std::function<void(const Text&)>& take);

}  // namespace winchbook::xml
