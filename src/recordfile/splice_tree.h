#pragma once

#include <string_view>
#include <vector>

#include "recordfile/element_order.h"
#include "xml/document.h"
#include "xml/edit.h"

namespace winchbook::recordfile {

/// The tree of a record's file while it is changed: elements are put in, filled anew and taken out,
/// and the splices tell what that is in the file's bytes. What was not touched keeps every byte.
class SpliceTree {
 public:
  SpliceTree(xml::Document document, const ElementOrder& order)
      : document_(std::move(document)), order_(&order) {}

  [[nodiscard]] pugi::xml_node root() const { return document_.root(); }

  /// Puts a copy of `element` in at its place in the order of the schema, behind what is there of
  /// its name.
  pugi::xml_node put_in(pugi::xml_node parent, pugi::xml_node element) const;
  /// Whether elements of these two names stand among each other in `parent`.
  [[nodiscard]] bool stand_together(pugi::xml_node parent, std::string_view one,
                                    std::string_view other) const;
  /// Gives an element the text, and the elements in it, of another.
  void fill(pugi::xml_node element, pugi::xml_node like);
  /// Takes an element of the file out.
  void take_out(pugi::xml_node element) { taken_.push_back(element); }

  /// What was changed, in the file's bytes; empty when nothing was.
  [[nodiscard]] std::vector<xml::Splice> splices() const;

 private:
  void look_through(pugi::xml_node element, std::vector<xml::Splice>& splices) const;
  [[nodiscard]] xml::Splice refilled(pugi::xml_node element) const;
  [[nodiscard]] xml::Splice added(pugi::xml_node parent,
                                  const std::vector<pugi::xml_node>& fresh) const;
  [[nodiscard]] xml::Splice added_alone(pugi::xml_node parent,
                                        const std::vector<pugi::xml_node>& fresh) const;
  [[nodiscard]] std::string in_lines(const std::vector<pugi::xml_node>& fresh,
                                     const std::string& indentation) const;

  xml::Document document_;
  const ElementOrder* order_;
  std::vector<pugi::xml_node> filled_;
  std::vector<pugi::xml_node> taken_;
};

}  // namespace winchbook::recordfile
