#pragma once

#include <memory>
#include <optional>
#include <pugixml.hpp>
#include <string>

#include "base/result.h"
#include "xml/shape.h"
#include "xml/source.h"

struct _xmlDoc;

namespace winchbook::xml {

/// A well-formed XML file: its bytes, its tree, and the way from a node back to its line.
/// Comments and instructions are not in the tree; white space in text is.
class Document {
 public:
  /// Error (one, with its place) when the bytes are over the limits, not UTF-8, carry a document
  /// type, or are not well-formed. No entity but the five of XML is known; nothing is fetched.
  [[nodiscard]] static base::Result<Document> parse(std::string file, std::string bytes,
                                                    const Limits& limits = {});

  /// The same without what the validator sees, some ten times as fast: for looking through many
  /// files, none of which is taken for valid.
  [[nodiscard]] static base::Result<Document> glance(std::string file, std::string bytes,
                                                     const Limits& limits = {});

  [[nodiscard]] const Source& source() const { return *source_; }
  [[nodiscard]] pugi::xml_node root() const { return tree_->document_element(); }
  /// Where the node's tag or text begins.
  [[nodiscard]] base::Location where(pugi::xml_node node) const;
  /// Byte offset of the node's "<", or of the first byte of a text.
  [[nodiscard]] std::size_t offset(pugi::xml_node node) const;
  /// The same file as the validator sees it.
  [[nodiscard]] _xmlDoc* validated_tree() const { return twin_.get(); }

 private:
  struct TwinDeleter {
    void operator()(_xmlDoc* twin) const;
  };

  Document() = default;

  /// Builds the tree; nothing when that went well.
  [[nodiscard]] std::optional<base::Diagnostic> build_tree();

  std::unique_ptr<Source> source_;
  std::unique_ptr<pugi::xml_document> tree_;
  std::unique_ptr<_xmlDoc, TwinDeleter> twin_;
  std::size_t skipped_ = 0;  // bytes of a byte order mark, which the tree does not count
};

}  // namespace winchbook::xml
