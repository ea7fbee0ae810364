#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/diagnostic.h"
#include "xml/document.h"

namespace winchbook::recordfile {

/// The record's namespace; it never changes.
inline constexpr const char* kNamespace = "urn:winchbook:record:1";

/// White space folded to single spaces, none at the ends.
[[nodiscard]] std::string folded(std::string_view text);

/// Lines trimmed, empty ones at the ends taken out, joined by "\n".
[[nodiscard]] std::string folded_lines(std::string_view text);

/// The text right inside a node as it is written, elements in it left out.
[[nodiscard]] std::string own_text(pugi::xml_node node);

/// An element of a section that keeps the schema. What the schema cannot say of a value (a date the
/// calendar does not have) is added to the faults.
class Element {
 public:
  Element(const xml::Document& document, base::Diagnostics& faults, pugi::xml_node node)
      : document_(&document), faults_(&faults), node_(node) {}

  [[nodiscard]] explicit operator bool() const { return static_cast<bool>(node_); }
  [[nodiscard]] pugi::xml_node node() const { return node_; }
  [[nodiscard]] Element child(const char* name) const { return with(node_.child(name)); }
  /// The child elements with this name; all of them for an empty name.
  [[nodiscard]] std::vector<Element> all(const char* name) const;

  [[nodiscard]] std::string attribute(const char* name) const {
    return node_.attribute(name).value();
  }
  /// This element's own text, folded.
  [[nodiscard]] std::string text() const { return folded(node_.text().get()); }
  /// The same, all of it and with its lines kept.
  [[nodiscard]] std::string lines() const { return folded_lines(own_text(node_)); }

  void add_fault(base::Diagnostic fault) const;

 private:
  [[nodiscard]] Element with(pugi::xml_node node) const { return {*document_, *faults_, node}; }

  const xml::Document* document_;
  base::Diagnostics* faults_;
  pugi::xml_node node_;
};

}  // namespace winchbook::recordfile
