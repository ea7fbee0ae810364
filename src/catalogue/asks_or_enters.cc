#include "catalogue/asks_or_enters.h"

#include <algorithm>
#include <memory>
#include <utility>

namespace winchbook::catalogue {
namespace {

using forms::Field;
using forms::Job;

/// A field of both jobs says what was typed to both.
void share(Field& field, const Field& other) {
  field.into = [first = field.into, second = other.into](std::string_view typed) {
    base::Diagnostics faults = first(typed);
    return faults.empty() ? second(typed) : faults;
  };
}

}  // namespace

Job asks_or_enters(Job answer, Job entry) {
  const auto enters = std::make_shared<bool>(false);
  forms::Form form;
  for (Field& field : entry.form) {
    Field* twin = forms::find(answer.form, field.name);
    if (twin != nullptr) {
      share(field, *twin);
      answer.form.erase(answer.form.begin() + (twin - answer.form.data()));
    } else {
      const bool of_any_entry =
          field.by_today || field.name == "--dry-run" || field.name == "--future";
      field.into = [into = field.into, enters, of_any_entry](std::string_view typed) {
        if (!of_any_entry) *enters = true;
        return into(typed);
      };
      if (field.needed)
        field.needed = [needed = field.needed, enters] { return *enters && needed(); };
    }
    form.push_back(std::move(field));
  }
  forms::append(form, std::move(answer.form));
  return {std::move(form),
          [enters, ask = std::move(answer.run), enter = std::move(entry.run)](
              forms::Setting& setting) { return *enters ? enter(setting) : ask(setting); },
          std::move(answer.more_help)};
}

}  // namespace winchbook::catalogue
