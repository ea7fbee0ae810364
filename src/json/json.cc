#include "json/json.h"

#include <fmt/format.h>

#include "json/faults.h"

namespace winchbook::json {
namespace {

std::string_view word_of(base::FaultOf of) {
  switch (of) {
    case base::FaultOf::record:
      return "record";
    case base::FaultOf::command:
      return "command";
    case base::FaultOf::machine:
      break;
  }
  return "machine";
}

/// Lines and columns count from 1; 0 is not known.
Json place(int number) {
  return number > 0 ? Json(number) : Json(nullptr);
}

}  // namespace

std::string answer(std::string_view name, const Json& members) {
  Json all{{"schema", fmt::format("urn:winchbook:{}:1", name)}};
  all.update(members);
  return all.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Json money(const base::Money& of) {
  return {{"amount", of.amount.text()}, {"currency", of.currency}};
}

Json money(double amount, const std::string& currency) {
  return {{"amount", fmt::format("{:.2f}", amount)}, {"currency", currency}};
}

Json date(const base::Day& of) {
  return base::iso_text(of);
}

Json date(const base::EdtfDate& of) {
  return of.text();
}

Json fault(const base::Diagnostic& of) {
  return {{"severity", of.severity == base::Severity::error ? "error" : "warning"},
          {"file", or_null(of.where.file)},
          {"line", place(of.where.line)},
          {"column", place(of.where.column)},
          {"message", of.message},
          {"hint", or_null(of.hint)},
          {"rule", or_null(of.rule)},
          {"of", word_of(of.of)}};
}

std::string faults_as_json(const base::Diagnostics& faults) {
  return answer("faults", {{"faults", list(faults, fault)}});
}

Json or_null(const std::string& text) {
  return text.empty() ? Json(nullptr) : Json(text);
}

}  // namespace winchbook::json
