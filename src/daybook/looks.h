#pragma once

#include <optional>
#include <string>
#include <utility>

#include "daybook/entry.h"
#include "record/looked_for.h"

/// "Looked and found none", in one word of a verb.
namespace winchbook::daybook {

/// The word by which somebody answers that there is none.
inline constexpr const char* kNone = "none";

/// Enters that somebody looked and found none. Errors, of the command: something is entered; nobody
/// is called as `by` says.
[[nodiscard]] base::Diagnostics look_for_none(Draft& draft, record::Visit& visit,
                                              record::LookedFor what, base::Day on,
                                              const std::string& by = {});

/// The same as a change of its own, in the visit that is open.
[[nodiscard]] base::Result<Said> found_none(Draft& draft, record::LookedFor what, base::Day on,
                                            const std::string& by = {});

/// Where "none" stood in the last visit and something is entered by now, "some" stands.
void tell_some(record::Record& record);

/// A word of a closed list, or "none".
template <class Value>
forms::Field or_none_field(std::string name, std::string help, std::optional<Value>& into,
                           bool& none) {
  forms::Field made = forms::field(std::move(name), std::move(help), into);
  made.one_of.emplace_back(kNone);
  made.into = [&none, read = made.into](std::string_view typed) -> base::Diagnostics {
    if (typed != kNone) return read(typed);
    none = true;
    return {};
  };
  return made;
}

}  // namespace winchbook::daybook
