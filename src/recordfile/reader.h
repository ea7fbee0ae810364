#pragma once

#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include "base/decimal.h"
#include "base/edtf_date.h"
#include "record/enum_words.h"
#include "record/record.h"
#include "recordfile/element.h"

namespace winchbook::recordfile {

/// Reads a value out of an element by the list of its fields (recordfile/fields.h). A child that is
/// not there leaves its field as a new value has it.
class Reader {
 public:
  static constexpr bool kReads = true;

  explicit Reader(Element element) : element_(element) {}

  template <class Id> void id(Id& id) const { id.text = element_.attribute("id"); }

  template <class Value> void need(const char* name, Value& value) const { may(name, value); }
  template <class Value> void may(const char* name, Value& value) const {
    if (const Element found = element_.child(name)) get(found, value);
  }
  template <class Value> void may(const char* name, std::optional<Value>& value) const {
    Value told{};
    const Element found = element_.child(name);
    if (found && get(found, told)) value = std::move(told);
  }
  template <class Value>
  void may(const char* name, Value& value, std::type_identity_t<Value> when_left_out) const {
    value = std::move(when_left_out);
    may(name, value);
  }
  /// A text that may be withheld, of which only the text is a value.
  void may_told(const char* name, std::string& text) const {
    record::MaybeText told;
    may(name, told);
    if (auto* words = std::get_if<std::string>(&told)) text = std::move(*words);
  }
  void need_lines(const char* name, record::MaybeText& text) const;
  void may_lines(const char* name, std::string& text) const { text = element_.child(name).lines(); }

  template <class Value> void many(const char* name, std::vector<Value>& values) const {
    for (const Element& one : element_.all(name)) {
      Value told{};
      if (get(one, told)) values.push_back(std::move(told));
    }
  }
  template <class One, class Other>
  void many_of_two(const char* one, const char* other,
                   std::vector<std::variant<One, Other>>& values) const {
    for (const Element& element : element_.all("")) {
      if (element.node().name() == std::string_view(one)) values.emplace_back(got<One>(element));
      if (element.node().name() == std::string_view(other))
        values.emplace_back(got<Other>(element));
    }
  }
  template <class List> void need_group(const char* name, const List& list) const {
    may_group(name, list);
  }
  template <class List> void may_group(const char* name, const List& list) const {
    const Reader inner(element_.child(name));
    list(inner);
  }

 private:
  template <class Value> static Value got(const Element& element) {
    Value value{};
    get(element, value);
    return value;
  }

  // Each false when there is no such value; what it should have been is added to the faults.
  static bool get(const Element& element, std::string& text);
  static bool get(const Element& element, bool& yes);
  static bool get(const Element& element, int& whole);
  static bool get(const Element& element, base::EdtfDate& date);
  static bool get(const Element& element, base::Decimal& decimal);
  static bool get(const Element& element, base::Money& money);
  static bool get(const Element& element, record::Withheld& withheld);
  static bool get(const Element& element, record::MaybeText& text);
  static bool get(const Element& element, record::Words& words);
  static bool get(const Element& element, record::Paragraph& paragraph);
  static bool get(const Element& element, record::Prose& prose);
  static bool get(const Element& element, record::FittedBy& by);
  template <class Unit> static bool get(const Element& element, base::Quantity<Unit>& quantity) {
    return get(element, quantity.value);
  }
  template <class Tag> static bool get(const Element& element, record::Id<Tag>& ref) {
    ref.text = element.attribute("ref");
    return true;
  }
  /// A word of a closed list, or a value with fields.
  template <class Value> static bool get(const Element& element, Value& value) {
    if constexpr (std::is_enum_v<Value>) {
      const auto word = record::value_of<Value>(element.text());
      if (word) value = *word;
      return word.has_value();
    } else {
      const Reader inner(element);
      fields(inner, value);
      return true;
    }
  }

  Element element_;
};

}  // namespace winchbook::recordfile
