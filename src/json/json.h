#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "base/decimal.h"
#include "base/diagnostic.h"
#include "base/edtf_date.h"

/// How everything that --json prints is written. Names are in snake_case, what is not known is
/// null.
namespace winchbook::json {

using Json = nlohmann::ordered_json;  // members stay in the order in which they were added

/// An answer as text: its members behind the name of its schema, "urn:winchbook:NAME:1". Ends with
/// a line break. What is not UTF-8, as a file's name may be, is told with the sign for it.
[[nodiscard]] std::string answer(std::string_view name, const Json& members);

/// {"amount": "12.50", "currency": "GBP"}.
[[nodiscard]] Json money(const base::Money& of);
/// The same of what was reckoned, with two places.
[[nodiscard]] Json money(double amount, const std::string& currency);

/// ISO 8601: "1940-01-02".
[[nodiscard]] Json date(const base::Day& of);
/// EDTF, as it was written: "1948~".
[[nodiscard]] Json date(const base::EdtfDate& of);

/// Null where there is none.
template <class Date> [[nodiscard]] Json date(const std::optional<Date>& of) {
  return of ? date(*of) : Json(nullptr);
}

/// A fault, as schemas/faults.schema.json has it.
[[nodiscard]] Json fault(const base::Diagnostic& of);

/// [low, high].
template <class End> [[nodiscard]] Json range(const End& low, const End& high) {
  return Json::array({low, high});
}

/// Null for no text.
[[nodiscard]] Json or_null(const std::string& text);

template <class Value> [[nodiscard]] Json or_null(const std::optional<Value>& value) {
  return value ? Json(*value) : Json(nullptr);
}

template <class Value, class Tell>
[[nodiscard]] Json or_null(const std::optional<Value>& value, const Tell& tell) {
  return value ? Json(tell(*value)) : Json(nullptr);
}

template <class Things, class Tell>
[[nodiscard]] Json list(const Things& things, const Tell& tell) {
  Json all = Json::array();
  for (const auto& thing : things)
    all.push_back(tell(thing));
  return all;
}

}  // namespace winchbook::json
