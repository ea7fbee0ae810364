#pragma once

#include <algorithm>
#include <optional>
#include <pugixml.hpp>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>
#include <vector>

#include "base/decimal.h"
#include "base/edtf_date.h"
#include "record/enum_words.h"
#include "record/record.h"
#include "recordfile/align.h"

namespace winchbook::recordfile {

/// Writes a value into an element by the list of its fields (recordfile/fields.h). A sentence is
/// known by the text in it: one that begins with an element has an empty text before that.
class Writer {
 public:
  static constexpr bool kReads = false;

  explicit Writer(pugi::xml_node element) : element_(element) {}

  template <class Id> void id(const Id& id) const { set("id", id.text); }

  template <class Value> void need(const char* name, const Value& value) const {
    put(element_.append_child(name), value);
  }
  /// A sentence that says nothing is no element, so that the schema tells what is missing.
  void need(const char* name, const record::Words& words) const { may(name, words); }
  void may(const char* name, const std::string& text) const {
    if (!text.empty()) need(name, text);
  }
  void may(const char* name, const record::Words& words) const {
    if (!words.empty()) put(element_.append_child(name), words);
  }
  void may(const char* name, const record::Prose& prose) const {
    if (!prose.empty()) need(name, prose);
  }
  template <class Value> void may(const char* name, const std::optional<Value>& value) const {
    if (value) need(name, *value);
  }
  template <class Value> void may(const char* name, const Value& value) const {
    need(name, value);
    need(name, Value{});
    const pugi::xml_node absent = element_.last_child();
    const bool says_nothing = same(absent.previous_sibling(), absent);
    element_.remove_child(absent);
    if (says_nothing) element_.remove_child(element_.last_child());
  }
  template <class Value>
  void may(const char* name, const Value& value,
           const std::type_identity_t<Value>& when_left_out) const {
    if (value != when_left_out) need(name, value);
  }
  void may_told(const char* name, const std::string& text) const { may(name, text); }
  void need_lines(const char* name, const record::MaybeText& text) const { need(name, text); }
  void may_lines(const char* name, const std::string& text) const { may(name, text); }

  template <class Value> void many(const char* name, const std::vector<Value>& values) const {
    for (const Value& value : values)
      put(element_.append_child(name), value);
  }
  template <class One, class Other>
  void many_of_two(const char* one, const char* other,
                   const std::vector<std::variant<One, Other>>& values) const {
    for (const auto& value : values) {
      const char* name = std::holds_alternative<One>(value) ? one : other;
      std::visit([&](const auto& told) { need(name, told); }, value);
    }
  }
  template <class List> void need_group(const char* name, const List& list) const {
    const Writer inner(element_.append_child(name));
    list(inner);
  }
  template <class List> void may_group(const char* name, const List& list) const {
    need_group(name, list);
    if (!element_.last_child().first_child()) element_.remove_child(element_.last_child());
  }

 private:
  void set(const char* name, const std::string& text) const {
    element_.append_attribute(name) = text.c_str();
  }
  static void put(pugi::xml_node element, const std::string& text);
  static void put(pugi::xml_node element, bool yes);
  static void put(pugi::xml_node element, int whole);
  static void put(pugi::xml_node element, const base::EdtfDate& date);
  static void put(pugi::xml_node element, const base::Decimal& decimal);
  static void put(pugi::xml_node element, const base::Money& money);
  static void put(pugi::xml_node element, const record::Withheld& withheld);
  static void put(pugi::xml_node element, const record::MaybeText& text);
  static void put(pugi::xml_node element, const record::Words& words);
  static void put(pugi::xml_node element, const record::Paragraph& paragraph);
  static void put(pugi::xml_node element, const record::Prose& prose);
  static void put(pugi::xml_node element, const record::FittedBy& by);
  template <class Unit>
  static void put(pugi::xml_node element, const base::Quantity<Unit>& quantity) {
    put(element, quantity.value);
  }
  template <class Tag> static void put(pugi::xml_node element, const record::Id<Tag>& ref) {
    Writer(element).set("ref", ref.text);
  }
  /// A word of a closed list, or a value with fields.
  template <class Value> static void put(pugi::xml_node element, const Value& value) {
    if constexpr (std::is_enum_v<Value>) {
      put(element, std::string(record::word_of(value)));
    } else {
      const Writer inner(element);
      fields(inner, value);
    }
  }

  mutable pugi::xml_node element_;
};

}  // namespace winchbook::recordfile
