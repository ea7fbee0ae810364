#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "xml/document.h"

namespace winchbook::recordfile {

/// In which order the schema wants the elements of a record: read out of the schema itself, so that
/// there is one table only.
class ElementOrder {
 public:
  /// Of a schema (record-1.xsd); `root` is the name of its document element.
  explicit ElementOrder(const xml::Document& schema, std::string root = "reel-record");

  /// Where `child` stands among the children of `parent`, from 0; children of one choice share a
  /// rank. Nothing when the schema does not know it there (a bench's own notes, words of a text).
  [[nodiscard]] std::optional<std::size_t> rank(pugi::xml_node parent,
                                                std::string_view child) const;

 private:
  struct Slot {
    std::string name;
    std::string type;
    std::size_t rank = 0;
  };
  using Slots = std::vector<Slot>;

  void add_slots(pugi::xml_node particle, bool choice, Slots& slots) const;
  [[nodiscard]] const Slots* slots_of(pugi::xml_node element) const;

  std::string root_;
  std::map<std::string, std::string, std::less<>> global_;  // element to its type
  std::map<std::string, Slots, std::less<>> types_;
};

}  // namespace winchbook::recordfile
