#pragma once

#include <cstdint>
#include <initializer_list>
#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/decimal.h"
#include "base/edtf_date.h"
#include "base/result.h"

/// Every word that is not the bench's own: messages, dates, numbers, money, lists, by language.
namespace winchbook::words {

/// What stands for a name in a message: words, or a whole number that plurals can turn on.
struct Argument {
  std::string_view name;
  std::variant<std::string, std::int64_t> value;

  Argument(std::string_view the_name, std::string words)
      : name(the_name), value(std::move(words)) {}
  Argument(std::string_view the_name, std::string_view words)
      : name(the_name), value(std::string(words)) {}
  Argument(std::string_view the_name, const char* words)
      : name(the_name), value(std::string(words)) {}
  Argument(std::string_view the_name, int number) : name(the_name), value(std::int64_t{number}) {}
  Argument(std::string_view the_name, std::size_t number)
      : name(the_name), value(static_cast<std::int64_t>(number)) {}
};
using Arguments = std::initializer_list<Argument>;

using Messages = std::map<std::string, std::string, std::less<>>;
/// The words by which a message names what must have been entered before it may be said; a message
/// that is not here asks for nothing.
using Needs = std::map<std::string, std::vector<std::string>, std::less<>>;

/// How a date is told: "3 March 2026", or "3 March" where the year is plain from its surroundings.
enum class DateForm { full, without_year };

/// The messages of one language, each an ICU MessageFormat pattern under a dotted key.
class Catalogue {
 public:
  /// `language` is a BCP 47 tag that ICU knows. A pattern is read when it is first said.
  Catalogue(std::string language, Messages messages, Needs needs = {});
  ~Catalogue();
  Catalogue(Catalogue&&) noexcept;
  Catalogue& operator=(Catalogue&&) noexcept;
  Catalogue(const Catalogue&) = delete;
  Catalogue& operator=(const Catalogue&) = delete;

  [[nodiscard]] const std::string& language() const { return language_; }
  /// Puts other words in the place of a message: how a template rewords one. What the message needs
  /// it needs still, and more where more is given.
  void reword(std::string_view key, std::string pattern,
              const std::vector<std::string>& needs = {});
  /// From now on a message is said only when all that it needs is among these words.
  void tell_only(std::set<std::string, std::less<>> entered);
  /// What a message needs.
  [[nodiscard]] const std::vector<std::string>& needs(std::string_view key) const;
  [[nodiscard]] bool has(std::string_view key) const;
  /// Every key, sorted.
  [[nodiscard]] std::vector<std::string> keys() const;
  /// Reads every pattern; one diagnostic for each that ICU cannot read.
  [[nodiscard]] base::Diagnostics faults() const;

  /// The message with its arguments set in; nothing where what it needs was not entered. Throws
  /// std::out_of_range for a key that is not there, which is a fault of the program, never of the
  /// record.
  [[nodiscard]] std::string say(std::string_view key, Arguments arguments = {}) const;

  /// "1,234.5", with the decimal places it has.
  [[nodiscard]] std::string number(const base::Decimal& value) const;
  /// A measured value and its unit with a no-break space: "98.4 mm"; the unit's name is the message
  /// "unit.mm", or the unit itself when there is none.
  [[nodiscard]] std::string measure(const base::Decimal& value, std::string_view unit) const;
  /// "£12.50".
  [[nodiscard]] std::string money(const base::Money& amount) const;
  /// The same rounded to whole units: "£12".
  [[nodiscard]] std::string whole_money(const base::Money& amount) const;
  [[nodiscard]] std::string day(const base::Day& day, DateForm form = DateForm::full) const;
  /// "3 March 2026", "August 1962", "about 1994", "between 1938 and 1940", "since 2025".
  [[nodiscard]] std::string date(const base::EdtfDate& date, DateForm form = DateForm::full) const;
  /// "a, b and c".
  [[nodiscard]] std::string list(const std::vector<std::string>& items) const;
  /// The items put one behind the other by a message with {before} and {next}, such as
  /// "join.comma"; empty items are left out.
  [[nodiscard]] std::string joined(std::string_view key,
                                   const std::vector<std::string>& items) const;
  /// "twenty-one"; with capital: "Twenty-one".
  [[nodiscard]] std::string spelled(std::int64_t number, bool capital = false) const;
  /// The first letter as a sentence begins.
  [[nodiscard]] std::string capitalised(std::string_view words) const;

 private:
  struct Icu;
  [[nodiscard]] std::string point(const base::EdtfPoint& point, DateForm form) const;
  [[nodiscard]] std::string span(const base::EdtfMember& member, DateForm form) const;
  std::string language_;
  [[nodiscard]] bool may_say(std::string_view key) const;
  Messages messages_;
  Needs needs_;
  std::optional<std::set<std::string, std::less<>>> entered_;  ///< empty: nobody asked
  std::unique_ptr<Icu> icu_;
};

/// True for the three capitals of a currency that ISO 4217 knows, now or once.
[[nodiscard]] bool is_currency(std::string_view code);

}  // namespace winchbook::words
