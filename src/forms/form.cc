#include "forms/form.h"

#include <algorithm>
#include <iterator>

namespace winchbook::forms {

Field&& Field::asks(std::string text) && {
  question = std::move(text);
  needed = [] { return true; };
  return std::move(*this);
}

Field&& Field::asks(std::string text, std::function<bool()> when) && {
  question = std::move(text);
  needed = std::move(when);
  return std::move(*this);
}

Field&& Field::must() && {
  needed = [] { return true; };
  return std::move(*this);
}

Field&& Field::of(std::vector<std::string> words) && {
  one_of = std::move(words);
  return std::move(*this);
}

Field&& Field::resolves(std::string rule, std::string text) && {
  answers = std::move(rule);
  question = std::move(text);
  return std::move(*this);
}

void append(Form& form, Form more) {
  std::move(more.begin(), more.end(), std::back_inserter(form));
}

base::Diagnostics say(Field& field, std::string_view typed) {
  const auto& words = field.one_of;
  const bool may_be = words.empty() || std::find(words.begin(), words.end(), typed) != words.end();
  base::Diagnostics faults = may_be ? field.into(typed) : none_of(typed, words);
  for (base::Diagnostic& fault : faults) {
    if (!field.name.empty()) fault.message = field.name + ": " + fault.message;
    if (fault.rule.empty()) fault.rule = "command-value";
    fault.of = base::FaultOf::command;
  }
  const bool empty = field.kind == Field::Kind::text && typed.empty();
  if (!faults.empty()) return faults;
  field.given = !empty;
  field.said = typed;
  return faults;
}

Field* find(Form& form, std::string_view name) {
  const auto found =
      std::find_if(form.begin(), form.end(), [&](const Field& one) { return one.name == name; });
  return found == form.end() ? nullptr : &*found;
}

Field flag(std::string name, std::string help, bool& into) {
  Field made;
  made.name = std::move(name);
  made.help = std::move(help);
  made.kind = Field::Kind::flag;
  made.into = [&into](std::string_view /*typed*/) {
    into = true;
    return base::Diagnostics{};
  };
  return made;
}

Field day_or_today(std::string name, std::string help, base::Day& into) {
  Field made = field(std::move(name), std::move(help), into);
  made.by_today = true;
  return made;
}

Field day_or_today(std::string name, std::string help, std::optional<base::Day>& into) {
  Field made = field(std::move(name), std::move(help), into);
  made.by_today = true;
  return made;
}

Field today(base::Day& into) {
  Field made = day_or_today("today", {}, into);
  made.kind = Field::Kind::unasked;
  return made;
}

Field confirm(std::string rule, std::string question, bool& into) {
  Field made = flag({}, {}, into);
  made.kind = Field::Kind::confirm;
  made.answers = std::move(rule);
  made.question = std::move(question);
  return made;
}

}  // namespace winchbook::forms
