#pragma once

#include <utility>
#include <variant>

#include "base/diagnostic.h"

namespace winchbook::base {

/// A value, or the faults that kept it from being made (at least one of them an error).
template <class T> class Result {
 public:
  // Implicit on purpose: `return value;` and `return error("…");` both read well.
  Result(T value) : state_(std::move(value)) {}                        // NOLINT
  Result(Diagnostic fault) : state_(Diagnostics{std::move(fault)}) {}  // NOLINT
  Result(Diagnostics faults) : state_(std::move(faults)) {}            // NOLINT

  [[nodiscard]] explicit operator bool() const { return std::holds_alternative<T>(state_); }
  [[nodiscard]] const T& value() const& { return std::get<T>(state_); }
  [[nodiscard]] T& value() & { return std::get<T>(state_); }
  [[nodiscard]] T&& value() && { return std::get<T>(std::move(state_)); }
  [[nodiscard]] const T& operator*() const& { return value(); }
  [[nodiscard]] const T* operator->() const { return &value(); }
  [[nodiscard]] const Diagnostics& faults() const { return std::get<Diagnostics>(state_); }

 private:
  std::variant<T, Diagnostics> state_;
};

}  // namespace winchbook::base
