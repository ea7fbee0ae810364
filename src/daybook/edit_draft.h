#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "daybook/edit_order.h"
#include "recordfile/record_file.h"
#include "xml/document.h"
#include "xml/edit.h"

namespace winchbook::daybook {

/// A record while an edit is made to it: the values as they were read, and the file's tree, to
/// which elements are added. What was not touched keeps every byte.
class Draft {
 public:
  /// Error when the bytes of the record are no longer well-formed.
  [[nodiscard]] static base::Result<Draft> of(const recordfile::LoadedRecord& loaded,
                                              const ElementOrder& order);

  /// The record as it was before the edit.
  [[nodiscard]] const record::Record& record() const { return loaded_->record; }
  [[nodiscard]] const recordfile::LoadedRecord& loaded() const { return *loaded_; }

  /// A section of the record; added at its place when it is not there.
  pugi::xml_node section(const char* name);
  /// The element with this id; nothing when there is none.
  [[nodiscard]] pugi::xml_node by_id(std::string_view id) const;
  /// The visit that is going on: the last one.
  [[nodiscard]] pugi::xml_node visit() const;

  /// Adds an element at its place in the order of the schema, behind what is there of its name.
  pugi::xml_node add(pugi::xml_node parent, const char* name, std::string_view text = {});
  /// The same right before a brother of its kind.
  static pugi::xml_node add_before(pugi::xml_node brother, const char* name);
  /// The same with an id.
  pugi::xml_node add_with_id(pugi::xml_node parent, const char* name, std::string_view id);
  /// The same that points at a thing.
  pugi::xml_node add_ref(pugi::xml_node parent, const char* name, std::string_view id);
  /// The same holding a sentence in which the people of the record are named by reference, so that
  /// a name can be withheld, and which may hold elements of a sentence (app/typed_words.h). Nothing
  /// is added for an empty text.
  void add_words(pugi::xml_node parent, const char* name, std::string_view text);
  /// The same; what stands there already is taken out first.
  void set_words(pugi::xml_node parent, const char* name, std::string_view text);
  /// The same for paragraphs, parted by empty lines: one <p> each.
  void add_paragraphs(pugi::xml_node parent, std::string_view text);
  /// Adds the element only when the text is not empty.
  void add_if(pugi::xml_node parent, const char* name, std::string_view text);

  /// The first child of this name; added when it is not there.
  pugi::xml_node need(pugi::xml_node parent, const char* name);
  /// Gives the first child of this name a new text; adds it when it is not there.
  void set(pugi::xml_node parent, const char* name, std::string_view text);
  /// Empties an element, to be filled anew with add().
  void empty(pugi::xml_node element);

  /// An id that is free in the record, as close to the wish as can be: "Tail plate!" gives
  /// "tail-plate", or "tail-plate-2".
  [[nodiscard]] std::string free_id(std::string_view wish);

  /// The id that was asked for, or a free one when none was. Error: something is called so already.
  [[nodiscard]] base::Result<std::string> id_for(const std::string& given, std::string_view wish);

  /// What the edit changes in the file's bytes; empty when nothing was changed.
  [[nodiscard]] std::vector<xml::Splice> splices() const;

 private:
  Draft(const recordfile::LoadedRecord& loaded, const ElementOrder& order, xml::Document document);

  [[nodiscard]] bool is_new(pugi::xml_node node) const;
  void look_through(pugi::xml_node element, std::vector<xml::Splice>& splices) const;
  void put_in(pugi::xml_node parent, const std::vector<pugi::xml_node>& fresh,
              std::vector<xml::Splice>& splices) const;

  const recordfile::LoadedRecord* loaded_;
  const ElementOrder* order_;
  xml::Document document_;
  std::vector<pugi::xml_node> emptied_;
};

}  // namespace winchbook::daybook
