#include "forms/fill_and_run.h"

#include <algorithm>

namespace winchbook::forms {
namespace {

using base::Diagnostic;
using base::Diagnostics;

Diagnostic missing(const Field& field) {
  Diagnostic fault = base::of_command(base::error(
      field.name + " is missing", field.question.empty() ? "" : "it answers: " + field.question,
      "command-missing"));
  fault.of = base::FaultOf::command;
  return fault;
}

/// Today: as it was said, or by the clock.
std::string today(Form& form, const Setting& setting) {
  const Field* said = find(form, "--today");
  return said != nullptr && said->given ? said->said : base::iso_text(setting.library.today());
}

/// Asks for what is needed and was left out, and fills in today where nothing was said.
Diagnostics fill(Form& form, const Setting& setting, const Ask& ask) {
  Diagnostics faults;
  for (Field& field : form) {
    if (field.given) continue;
    if (field.by_today) {
      static_cast<void>(field.into(today(form, setting)));
      continue;
    }
    if (!field.needed || !field.needed()) continue;
    const auto typed = ask && !field.question.empty() ? ask({}, field.question) : std::nullopt;
    if (!typed || typed->empty()) {
      faults.push_back(missing(field));
      continue;
    }
    const Diagnostics wrong = say(field, *typed);
    faults.insert(faults.end(), wrong.begin(), wrong.end());
  }
  return faults;
}

/// What stands against the job and a field resolves that was not said yet.
struct Objection {
  Field* field = nullptr;
  Diagnostics faults;
};

Objection objection_in(Form& form, const Diagnostics& faults) {
  for (Field& field : form) {
    if (field.given || field.answers.empty()) continue;
    Objection objection{&field, {}};
    for (const Diagnostic& fault : faults) {
      if (fault.rule == field.answers) objection.faults.push_back(fault);
    }
    if (!objection.faults.empty()) return objection;
  }
  return {};
}

}  // namespace

base::Result<Done> fill_and_run(Job& job, Setting& setting, const Ask& ask) {
  setting.somebody_there = static_cast<bool>(ask);
  if (auto faults = fill(job.form, setting, ask); !faults.empty()) return faults;
  for (;;) {
    auto outcome = job.run(setting);
    if (outcome) return Done{std::move(outcome).value(), false, {}};
    const Objection objection = ask ? objection_in(job.form, outcome.faults()) : Objection{};
    if (objection.field == nullptr) return outcome.faults();
    const auto typed = ask(objection.faults, objection.field->question);
    const bool confirmed = objection.field->kind == Field::Kind::confirm && typed;
    if (!confirmed && (!typed || typed->empty())) {
      const bool only_warned = !base::has_error(objection.faults);
      return Done{{}, only_warned, only_warned ? Diagnostics{} : objection.faults};
    }
    if (auto wrong = say(*objection.field, *typed); !wrong.empty()) return wrong;
  }
}

}  // namespace winchbook::forms
