#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/edtf_date.h"
#include "forms/read_typed.h"

/// What a job asks of whoever wants it done, as data. The command line, its help and its questions
/// are made from it, and a page can be.
namespace winchbook::forms {

/// One thing that may be said of a job, and where it goes.
struct Field {
  enum class Kind {
    text,     ///< one text
    texts,    ///< as many as are given
    flag,     ///< said or not
    unasked,  ///< never typed, never asked: filled in by itself
    confirm,  ///< never typed: whoever is there is asked, and may stop
  };

  std::string name;  ///< "--method"; in capitals, by its place: "PARTS"
  std::string help;  ///< one line
  Kind kind = Kind::text;
  /// Reads one typed text into the request; faults without the field's name.
  std::function<base::Diagnostics(std::string_view)> into;
  std::string question;             ///< asked of somebody who is there, when it is left out
  std::function<bool()> needed;     ///< it cannot be left out; empty: it can
  std::vector<std::string> one_of;  ///< the words it may be; empty: any
  std::string answers;              ///< the rule of the objection that it resolves
  bool by_today = false;            ///< left out, it is today

  bool given = false;  ///< somebody said it
  std::string said;    ///< as it was said

  Field&& asks(std::string text) &&;
  /// The same, only when it is asked for at all.
  Field&& asks(std::string text, std::function<bool()> when) &&;
  /// It cannot be left out.
  Field&& must() &&;
  Field&& of(std::vector<std::string> words) &&;
  Field&& resolves(std::string rule, std::string text) &&;
};

using Form = std::vector<Field>;

/// Puts the fields of another form behind those of this one.
void append(Form& form, Form more);

/// Says one field: reads what was typed; an empty text leaves it not given. Faults name it
/// ("--minutes: …"), of the kind of a command.
[[nodiscard]] base::Diagnostics say(Field& field, std::string_view typed);

/// The field of this name, or null.
[[nodiscard]] Field* find(Form& form, std::string_view name);

/// A text, a number, a date, a word of a closed list: whatever read_typed knows.
template <class Value> Field field(std::string name, std::string help, Value& into) {
  Field made;
  made.name = std::move(name);
  made.help = std::move(help);
  made.into = [&into](std::string_view typed) { return read_typed(typed, into); };
  made.one_of = words_of_type<Value>();
  return made;
}

/// As many as are given.
template <class Value> Field field(std::string name, std::string help, std::vector<Value>& into) {
  Field made;
  made.name = std::move(name);
  made.help = std::move(help);
  made.kind = Field::Kind::texts;
  made.into = [&into](std::string_view typed) {
    Value one{};
    base::Diagnostics faults = read_typed(typed, one);
    if (faults.empty()) into.push_back(std::move(one));
    return faults;
  };
  made.one_of = words_of_type<Value>();
  return made;
}

/// Said or not.
[[nodiscard]] Field flag(std::string name, std::string help, bool& into);

/// A day; left out, today: as the field "--today" of the form says, or by the clock.
[[nodiscard]] Field day_or_today(std::string name, std::string help, base::Day& into);
[[nodiscard]] Field day_or_today(std::string name, std::string help,
                                 std::optional<base::Day>& into);

/// Never typed: today, for a question about what has been by now.
[[nodiscard]] Field today(base::Day& into);

/// Never typed: `rule` names the objection that waits for it, and whoever is there says go on.
[[nodiscard]] Field confirm(std::string rule, std::string question, bool& into);

}  // namespace winchbook::forms
