#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/decimal.h"
#include "base/edtf_date.h"
#include "record/enum_words.h"
#include "record/words.h"
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

/// An element of a section that keeps the schema, with what is needed to read values out of it.
/// What the schema cannot say of a value (a date the calendar does not have) is added to the
/// faults.
class Element {
 public:
  Element(const xml::Document& document, base::Diagnostics& faults, pugi::xml_node node)
      : document_(&document), faults_(&faults), node_(node) {}

  [[nodiscard]] explicit operator bool() const { return static_cast<bool>(node_); }
  [[nodiscard]] std::string name() const { return node_.name(); }
  [[nodiscard]] Element child(const char* name) const { return with(node_.child(name)); }
  /// The child elements with this name; all of them for an empty name.
  [[nodiscard]] std::vector<Element> all(const char* name) const;

  template <class Id> [[nodiscard]] Id id() const { return Id{node_.attribute("id").value()}; }
  template <class Id> [[nodiscard]] Id ref() const { return Id{node_.attribute("ref").value()}; }
  template <class Id> [[nodiscard]] Id ref(const char* name) const {
    return child(name).template ref<Id>();
  }
  template <class Id> [[nodiscard]] std::optional<Id> maybe_ref(const char* name) const {
    const Element found = child(name);
    return found ? std::optional<Id>(found.template ref<Id>()) : std::nullopt;
  }
  template <class Id> [[nodiscard]] std::vector<Id> refs(const char* name) const {
    std::vector<Id> ids;
    for (const Element& one : all(name))
      ids.push_back(one.template ref<Id>());
    return ids;
  }

  /// This element's own text, folded.
  [[nodiscard]] std::string text() const { return folded(node_.text().get()); }
  /// A child's text, folded; empty when there is no such child.
  [[nodiscard]] std::string text(const char* name) const { return child(name).text(); }
  [[nodiscard]] std::string lines(const char* name) const;
  [[nodiscard]] std::vector<std::string> texts(const char* name) const;
  [[nodiscard]] bool yes(const char* name, bool when_left_out = false) const;
  [[nodiscard]] int whole(const char* name, int when_left_out) const;

  [[nodiscard]] base::EdtfDate date(const char* name) const;
  [[nodiscard]] std::optional<base::EdtfDate> maybe_date(const char* name) const;
  [[nodiscard]] std::optional<base::Decimal> maybe_decimal(const char* name) const;
  [[nodiscard]] std::optional<base::Money> maybe_money(const char* name) const;
  template <class Quantity> [[nodiscard]] std::optional<Quantity> maybe(const char* name) const {
    const auto value = maybe_decimal(name);
    return value ? std::optional<Quantity>(Quantity{*value}) : std::nullopt;
  }
  template <class Quantity> [[nodiscard]] Quantity quantity(const char* name) const {
    return maybe<Quantity>(name).value_or(Quantity{});
  }

  /// A word of a closed list; the schema has seen to it that it is one.
  template <class Value> [[nodiscard]] std::optional<Value> maybe_word(const char* name) const {
    return record::value_of<Value>(text(name));
  }
  template <class Value> [[nodiscard]] Value word(const char* name, Value when_left_out) const {
    return maybe_word<Value>(name).value_or(when_left_out);
  }
  template <class Value> [[nodiscard]] std::optional<Value> as_word() const {
    return record::value_of<Value>(text());
  }

  [[nodiscard]] record::MaybeText maybe_text(const char* name) const;
  /// The same with its lines kept.
  [[nodiscard]] record::MaybeText maybe_lines(const char* name) const;
  [[nodiscard]] std::optional<record::MaybeText> optional_text(const char* name) const;
  [[nodiscard]] record::Words words() const;
  [[nodiscard]] record::Words words(const char* name) const { return child(name).words(); }
  [[nodiscard]] std::vector<record::Words> all_words(const char* name) const;
  /// The paragraphs <p> of this element.
  [[nodiscard]] record::Prose paragraphs() const;

 private:
  [[nodiscard]] Element with(pugi::xml_node node) const { return {*document_, *faults_, node}; }
  void add_fault(base::Diagnostic fault) const;

  const xml::Document* document_;
  base::Diagnostics* faults_;
  pugi::xml_node node_;
};

}  // namespace winchbook::recordfile
