#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "layout/page.h"
#include "pdf/haru.h"

namespace winchbook::pdf {

/// The standard structure type's name: "TH".
[[nodiscard]] const char* structure_type(layout::TagType type);

/// The structure tree: what a reader aloud follows.
class Structure {
 public:
  Structure(const layout::Pages& pages, const std::vector<PageObject>& page_objects, Haru& haru);

  /// Begins another piece of content of `tag` on `page`; returns its marked-content id.
  [[nodiscard]] int add_content(layout::TagId tag, int page);
  /// Puts an annotation under `tag`; returns its /StructParent key.
  [[nodiscard]] int add_annotation(layout::TagId tag, int page, const Object& annotation);
  /// Writes the tree into the catalogue.
  void write();

 private:
  /// Something of an element's own: marked content, or an annotation.
  struct Piece {
    std::size_t order = 0;  ///< place among all pieces of the document
    int page = 0;
    int content = -1;
    const Object* annotation = nullptr;
  };
  struct Element {
    Object* object = nullptr;
    std::vector<Piece> pieces;
    std::vector<layout::TagId> children;
    std::size_t first = 0;  ///< order of the first piece in it or below it
  };
  void order_children();
  void write_element(layout::TagId id);
  [[nodiscard]] std::string kids(const Element& element) const;
  [[nodiscard]] std::string attributes(layout::TagId id) const;
  [[nodiscard]] std::string parent_tree() const;
  [[nodiscard]] std::string identifiers() const;

  const layout::Pages& pages_;
  const std::vector<PageObject>& page_objects_;
  Haru& haru_;
  Object* root_;
  std::vector<Element> elements_;
  std::vector<std::vector<layout::TagId>> contents_;  ///< by page and marked-content id
  std::vector<layout::TagId> annotations_;            ///< by key, which counts on from the pages'
  std::size_t pieces_ = 0;
};

}  // namespace winchbook::pdf
