#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>
#include <vector>

#include "record/enum_words.h"
#include "recordfile/fields.h"

namespace winchbook::recordfile {

/// Fills every field of a record with something that is unlike any other, by the lists of
/// recordfile/fields.h. The values are valid each by itself; references point at nothing.
class Filler {
 public:
  static constexpr bool kReads = true;

  explicit Filler(int& number) : number_(&number) {}

  template <class Id> void id(Id& id) { id.text = "filled-" + next(); }
  template <class Value> void need(std::string_view name, Value& value) { fill(name, value); }
  template <class Value> void may(std::string_view name, Value& value) { fill(name, value); }
  template <class Value>
  void may(std::string_view name, Value& value, const std::type_identity_t<Value>& when_left_out) {
    do {
      fill(name, value);
    } while (value == when_left_out);
  }
  template <class Value> void may_told(std::string_view name, Value& value) { fill(name, value); }
  template <class Value> void need_lines(std::string_view name, Value& value) { fill(name, value); }
  template <class Value> void may_lines(std::string_view name, Value& value) { fill(name, value); }
  template <class Value> void many(std::string_view name, std::vector<Value>& values) {
    values.resize(2);
    for (Value& value : values)
      fill(name, value);
  }
  template <class One, class Other>
  void many_of_two(std::string_view name, std::string_view /*other*/,
                   std::vector<std::variant<One, Other>>& values) {
    One one;
    Other other;
    fill(name, one);
    fill(name, other);
    values = {one, other, one};
  }
  template <class List> void need_group(std::string_view /*name*/, const List& list) {
    list(*this);
  }
  template <class List> void may_group(std::string_view /*name*/, const List& list) { list(*this); }

  template <class Value> void fill(std::string_view name, Value& value) {
    if constexpr (std::is_enum_v<Value>) {
      const auto words = record::enum_words(Value{});
      value = words[static_cast<std::size_t>(++*number_) % words.size()].value;
    } else {
      put(name, value);
    }
  }

 private:
  std::string next() { return std::to_string(++*number_); }

  void put(std::string_view name, std::string& text) {
    text = "text-" + next();
    if (name == "sha256") text = digest();
    if (name == "salt") text = digest().substr(0, 32);
    if (name == "currency") text = "GBP";
  }
  std::string digest() {
    const std::string digits = next();
    return std::string(64 - digits.size(), 'a') + digits;
  }
  void put(std::string_view /*name*/, bool& yes) { yes = !yes; }
  void put(std::string_view /*name*/, int& whole) { whole = ++*number_ % 10000 + 2; }
  void put(std::string_view /*name*/, base::EdtfDate& date) {
    date = base::EdtfDate::parse(std::to_string(1000 + ++*number_ % 1000)).value();
  }
  void put(std::string_view /*name*/, base::Decimal& decimal) { decimal = {++*number_ % 1000, 1}; }
  void put(std::string_view name, base::Money& money) {
    put(name, money.amount);
    money.currency = "GBP";
  }
  template <class Unit> void put(std::string_view name, base::Quantity<Unit>& quantity) {
    put(name, quantity.value);
  }
  template <class Tag> void put(std::string_view /*name*/, record::Id<Tag>& ref) {
    ref.text = "to-" + next();
  }
  void put(std::string_view /*name*/, record::Withheld& withheld) { withheld.digest = digest(); }
  void put(std::string_view /*name*/, record::MaybeText& text) { text = "text-" + next(); }
  void put(std::string_view /*name*/, record::Words& words) {
    using namespace winchbook::record;  // NOLINT
    words.runs = {PersonMention{{"to-" + next()}, "said " + next()},
                  Plain{" at " + next() + " "},
                  Emphasis{"so " + next()},
                  PhotoMention{{"to-" + next()}},
                  Plain{" & "},
                  PieceMention{{"to-" + next()}, {}}};
  }
  void put(std::string_view name, record::Paragraph& paragraph) {
    put(name, paragraph.words);
    put(name, paragraph.note.emplace());
  }
  void put(std::string_view name, record::FittedBy& by) {
    record::PersonId person;
    put(name, person);
    by = person;
  }
  template <class Value> void put(std::string_view name, std::optional<Value>& value) {
    fill(name, value.emplace());
  }
  template <class Value> void put(std::string_view name, std::vector<Value>& values) {
    many(name, values);
  }
  template <class Value> void put(std::string_view /*name*/, Value& value) { fields(*this, value); }

  int* number_;
};

/// A record in which every field says something.
inline record::Record filled_record() {
  record::Record record;
  record.language = "en-GB";
  int number = 0;
  Filler filler(number);
  fields(filler, record);
  for (record::Photo& photo : record.photos)
    photo.withheld.reset();
  return record;
}

}  // namespace winchbook::recordfile
