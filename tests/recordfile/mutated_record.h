#pragma once

#include <algorithm>
#include <random>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

#include "recordfile/filled_record.h"

namespace winchbook::recordfile {

/// Changes the field or list that is the `at`-th of a record: another value, nothing, one more, one
/// less, another order. Counts the fields it has passed.
class Mutator {
 public:
  static constexpr bool kReads = true;

  Mutator(std::mt19937& chance, int& number, int at)
      : chance_(&chance), number_(&number), at_(at) {}

  [[nodiscard]] int passed() const { return passed_; }

  template <class Id> void id(Id& /*id*/) {}
  template <class Value> void need(std::string_view name, Value& value) {
    if constexpr (kHasFields<Value>) {
      fields(*this, value);
    } else if (is_it()) {
      Filler(*number_).fill(name, value);
    }
  }
  template <class Value> void may(std::string_view name, Value& value) {
    if (is_it()) {
      Value other{};
      if (chance_->operator()() % 2 == 0) Filler(*number_).fill(name, other);
      value = std::move(other);
      return;
    }
    inside(value);
  }
  template <class Value>
  void may(std::string_view name, Value& value, const std::type_identity_t<Value>& when_left_out) {
    if (!is_it()) return;
    const bool leave_out = value != when_left_out && (*chance_)() % 2 == 0;
    if (leave_out) {
      value = when_left_out;
    } else {
      Filler(*number_).may(name, value, when_left_out);
    }
  }
  template <class Value> void may_told(std::string_view name, Value& value) { may(name, value); }
  template <class Value> void need_lines(std::string_view name, Value& value) { need(name, value); }
  template <class Value> void may_lines(std::string_view name, Value& value) { may(name, value); }
  template <class Value> void many(std::string_view name, std::vector<Value>& values) {
    if (is_it()) {
      Value one{};
      Filler(*number_).fill(name, one);
      change_list(values, std::move(one));
      return;
    }
    for (Value& value : values)
      inside(value);
  }
  template <class One, class Other>
  void many_of_two(std::string_view name, std::string_view /*other*/,
                   std::vector<std::variant<One, Other>>& values) {
    if (is_it()) {
      Other one;
      Filler(*number_).fill(name, one);
      change_list(values, std::variant<One, Other>(std::move(one)));
      return;
    }
    for (auto& value : values)
      std::visit([&](auto& one) { fields(*this, one); }, value);
  }
  template <class List> void need_group(std::string_view /*name*/, const List& list) {
    list(*this);
  }
  template <class List> void may_group(std::string_view /*name*/, const List& list) { list(*this); }

 private:
  template <class Value>
  static constexpr bool kHasFields = requires(Mutator& mutator, Value& value) {
    fields(mutator, value);
  };

  bool is_it() { return passed_++ == at_; }

  template <class Value> void inside(Value& value) {
    if constexpr (kHasFields<Value>) fields(*this, value);
  }
  template <class Value> void inside(std::optional<Value>& value) {
    if (value) inside(*value);
  }

  template <class Value> void change_list(std::vector<Value>& values, Value one) {
    std::mt19937& chance = *chance_;
    const auto place = static_cast<std::ptrdiff_t>(chance() % (values.size() + 1));
    switch (values.empty() ? 0 : chance() % 4) {
      case 0:
        values.insert(values.begin() + place, std::move(one));
        return;
      case 1:
        values.erase(values.begin() + std::min(place, std::ssize(values) - 1));
        return;
      case 2:
        std::swap(values.front(), values[chance() % values.size()]);
        return;
      default:
        values.clear();
        values.push_back(std::move(one));
    }
  }

  std::mt19937* chance_;
  int* number_;
  int at_;
  int passed_ = 0;
};

/// How many fields and lists a record has that can be changed.
inline int count_fields(record::Record& record, std::mt19937& chance, int& number) {
  Mutator mutator(chance, number, -1);
  fields(mutator, record);
  return mutator.passed();
}

/// Changes one field or list of the record.
inline void change_one(record::Record& record, std::mt19937& chance, int& number) {
  const int count = count_fields(record, chance, number);
  Mutator mutator(chance, number, static_cast<int>(chance() % static_cast<unsigned>(count)));
  fields(mutator, record);
}

}  // namespace winchbook::recordfile
