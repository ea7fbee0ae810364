#include "words/catalogue.h"

#include <unicode/calendar.h>
#include <unicode/gregocal.h>
#include <unicode/listformatter.h>
#include <unicode/locid.h>
#include <unicode/msgfmt.h>
#include <unicode/numberformatter.h>
#include <unicode/rbnf.h>
#include <unicode/smpdtfmt.h>
#include <unicode/timezone.h>
#include <unicode/ucurr.h>

#include <algorithm>
#include <stdexcept>
#include <utility>

#include "base/words_of_text.h"

namespace winchbook::words {
namespace {

icu::UnicodeString unicode(std::string_view utf8) {
  return icu::UnicodeString::fromUTF8(
      icu::StringPiece(utf8.data(), static_cast<std::int32_t>(utf8.size())));
}

std::string utf8(const icu::UnicodeString& text) {
  std::string out;
  text.toUTF8String(out);
  return out;
}

/// A pattern without arguments, choices or quotes says itself.
bool says_itself(std::string_view pattern) {
  return pattern.find_first_of("{}'#") == std::string_view::npos;
}

}  // namespace

/// ICU's formatters, each made when it is first needed: starting up must not pay for a whole
/// book's.
struct Catalogue::Icu {
  icu::Locale locale;
  std::map<std::string, icu::MessageFormat, std::less<>> patterns = {};
  std::map<std::string, icu::SimpleDateFormat, std::less<>> dates = {};
  std::unique_ptr<icu::ListFormatter> list = {};
  std::unique_ptr<icu::RuleBasedNumberFormat> spelling = {};
};

Catalogue::Catalogue(std::string language, Messages messages, Needs needs)
    : language_(std::move(language)),
      messages_(std::move(messages)),
      needs_(std::move(needs)),
      icu_(std::make_unique<Icu>(Icu{icu::Locale(language_.c_str())})) {}
Catalogue::~Catalogue() = default;
Catalogue::Catalogue(Catalogue&&) noexcept = default;
Catalogue& Catalogue::operator=(Catalogue&&) noexcept = default;

void Catalogue::reword(std::string_view key, std::string pattern,
                       const std::vector<std::string>& needs) {
  messages_.insert_or_assign(std::string(key), std::move(pattern));
  icu_->patterns.erase(std::string(key));
  if (needs.empty()) return;
  auto& all = needs_[std::string(key)];
  all.insert(all.end(), needs.begin(), needs.end());
}

void Catalogue::tell_only(std::set<std::string, std::less<>> entered) {
  entered_ = std::move(entered);
}

const std::vector<std::string>& Catalogue::needs(std::string_view key) const {
  static const std::vector<std::string> kNone;
  const auto found = needs_.find(key);
  return found == needs_.end() ? kNone : found->second;
}

bool Catalogue::may_say(std::string_view key) const {
  if (!entered_) return true;
  const auto& all = needs(key);
  return std::all_of(all.begin(), all.end(),
                     [&](const std::string& one) { return entered_->contains(one); });
}

bool Catalogue::has(std::string_view key) const {
  return messages_.find(key) != messages_.end();
}

std::vector<std::string> Catalogue::keys() const {
  std::vector<std::string> keys;
  for (const auto& [key, pattern] : messages_)
    keys.push_back(key);
  return keys;
}

base::Diagnostics Catalogue::faults() const {
  base::Diagnostics faults;
  for (const auto& [key, pattern] : messages_) {
    UErrorCode code = U_ZERO_ERROR;
    UParseError where{};
    const icu::MessageFormat format(unicode(pattern), icu_->locale, where, code);
    if (U_FAILURE(code) != 0) {
      faults.push_back(base::error("the message \"" + key + "\" cannot be read near character " +
                                       std::to_string(where.offset + 1),
                                   "look for a brace without its fellow", "message-pattern"));
    }
  }
  return faults;
}

std::string Catalogue::say(std::string_view key, Arguments arguments) const {
  const auto found = messages_.find(key);
  if (found == messages_.end()) {
    throw std::out_of_range("no message \"" + std::string(key) + "\" in " + language_);
  }
  if (!may_say(key)) return "";
  if (says_itself(found->second)) return found->second;
  auto known = icu_->patterns.find(key);
  UErrorCode code = U_ZERO_ERROR;
  if (known == icu_->patterns.end()) {
    known = icu_->patterns.try_emplace(std::string(key), unicode(found->second), icu_->locale, code)
                .first;
  }
  std::vector<icu::UnicodeString> names;
  std::vector<icu::Formattable> values;
  for (const Argument& argument : arguments) {
    names.push_back(unicode(argument.name));
    if (const auto* words = std::get_if<std::string>(&argument.value)) {
      values.emplace_back(unicode(*words));
    } else {
      values.emplace_back(std::get<std::int64_t>(argument.value));
    }
  }
  icu::UnicodeString out;
  known->second.format(names.data(), values.data(), static_cast<std::int32_t>(names.size()), out,
                       code);
  if (U_FAILURE(code) != 0) {
    icu_->patterns.erase(known);  // a broken pattern must not be taken for an empty one next time
    throw std::out_of_range("the message \"" + std::string(key) + "\" cannot be said");
  }
  return utf8(out);
}

std::string Catalogue::number(const base::Decimal& value) const {
  UErrorCode code = U_ZERO_ERROR;
  const std::string text = value.text();
  const auto places = value.places();
  return utf8(icu::number::NumberFormatter::withLocale(icu_->locale)
                  .precision(icu::number::Precision::fixedFraction(places))
                  .formatDecimal(icu::StringPiece(text), code)
                  .toString(code));
}

std::string Catalogue::measure(const base::Decimal& value, std::string_view unit) const {
  const std::string key = "unit." + std::string(unit);
  return number(value) + "\u00A0" + (has(key) ? say(key) : std::string(unit));
}

std::string Catalogue::money(const base::Money& amount) const {
  UErrorCode code = U_ZERO_ERROR;
  const std::string text = amount.amount.text();
  const icu::CurrencyUnit unit(icu::StringPiece(amount.currency), code);
  return utf8(icu::number::NumberFormatter::withLocale(icu_->locale)
                  .unit(unit)
                  .formatDecimal(icu::StringPiece(text), code)
                  .toString(code));
}

std::string Catalogue::whole_money(const base::Money& amount) const {
  UErrorCode code = U_ZERO_ERROR;
  const std::string text = amount.amount.text();
  const icu::CurrencyUnit unit(icu::StringPiece(amount.currency), code);
  return utf8(icu::number::NumberFormatter::withLocale(icu_->locale)
                  .unit(unit)
                  .precision(icu::number::Precision::integer())
                  .formatDecimal(icu::StringPiece(text), code)
                  .toString(code));
}

std::string Catalogue::day(const base::Day& day, DateForm form) const {
  base::EdtfPoint exact;
  exact.earliest = exact.latest = day;
  exact.precision = base::EdtfPoint::Precision::day;
  return point(exact, form);
}

std::string Catalogue::point(const base::EdtfPoint& point, DateForm form) const {
  using Precision = base::EdtfPoint::Precision;
  if (point.earliest.year != point.latest.year && point.unspecified_digits > 0) {
    const std::string first = std::to_string(point.earliest.year);
    const std::string last = std::to_string(point.latest.year);
    if (point.latest.year - point.earliest.year == 9) return say("date.decade", {{"year", first}});
    return say("date.between", {{"first", first}, {"last", last}});
  }
  // "1962-XX" is known to the year, "1962-08-XX" to the month.
  const bool some_month = point.earliest.month != point.latest.month;
  const bool some_day = point.earliest.day != point.latest.day;
  if (point.precision == Precision::season) {
    return say("date.season", {{"season", say("season." + std::to_string(point.season))},
                               {"year", std::to_string(point.earliest.year)}});
  }
  if (some_month) return std::to_string(point.earliest.year);
  const bool month_only = some_day;
  const std::string key = std::string("date.pattern.") + (month_only ? "month" : "day") +
                          (form == DateForm::without_year ? ".without-year" : "");
  auto known = icu_->dates.find(key);
  UErrorCode code = U_ZERO_ERROR;
  if (known == icu_->dates.end()) {
    known = icu_->dates.try_emplace(key, unicode(messages_.at(key)), icu_->locale, code).first;
    known->second.setTimeZone(*icu::TimeZone::getGMT());
  }
  icu::GregorianCalendar calendar(*icu::TimeZone::getGMT(), icu_->locale, code);
  calendar.setGregorianChange(-8.64e15, code);  // the record's dates are proleptic
  calendar.clear();
  calendar.set(static_cast<std::int32_t>(point.earliest.year), point.earliest.month - 1,
               point.earliest.day);
  icu::UnicodeString out;
  icu::FieldPosition anywhere(icu::FieldPosition::DONT_CARE);
  known->second.format(calendar, out, anywhere);
  return utf8(out);
}

std::string Catalogue::span(const base::EdtfMember& member, DateForm form) const {
  using Kind = base::EdtfEnd::Kind;
  const auto told = [&](const base::EdtfEnd& end) {
    const bool about = end.point->approximate;
    const bool doubtful = end.point->uncertain;
    std::string words = point(*end.point, form);
    if (about) words = say("date.about", {{"date", words}});
    if (doubtful) words = say("date.perhaps", {{"date", words}});
    return words;
  };
  if (member.from.kind == Kind::told && member.from == member.to) return told(member.from);
  if (member.from.kind == Kind::told && member.to.kind == Kind::told) {
    return say("date.span", {{"first", told(member.from)}, {"last", told(member.to)}});
  }
  if (member.from.kind == Kind::told) {
    return say(member.to.kind == Kind::open ? "date.since" : "date.from",
               {{"first", told(member.from)}});
  }
  if (member.to.kind == Kind::told) return say("date.until", {{"last", told(member.to)}});
  return say("date.unknown");
}

std::string Catalogue::date(const base::EdtfDate& date, DateForm form) const {
  std::vector<std::string> members;
  for (const base::EdtfMember& member : date.members())
    members.push_back(span(member, form));
  if (members.size() == 1) return members.front();
  if (date.form() == base::EdtfDate::Form::all_of) return list(members);
  return say("date.one-of", {{"first", members.front()}, {"last", members.back()}});
}

std::string Catalogue::list(const std::vector<std::string>& items) const {
  if (items.empty()) return {};
  if (items.size() == 1) return items.front();
  UErrorCode code = U_ZERO_ERROR;
  if (!icu_->list) {
    icu_->list.reset(icu::ListFormatter::createInstance(icu_->locale, code));
  }
  std::vector<icu::UnicodeString> parts;
  parts.reserve(items.size());
  for (const std::string& item : items)
    parts.push_back(unicode(item));
  icu::UnicodeString out;
  icu_->list->format(parts.data(), static_cast<std::int32_t>(parts.size()), out, code);
  return utf8(out);
}

std::string Catalogue::joined(std::string_view key, const std::vector<std::string>& items) const {
  std::string all;
  for (const std::string& next : items) {
    if (next.empty()) continue;
    all = all.empty() ? next : say(key, {{"before", all}, {"next", next}});
  }
  return all;
}

std::string Catalogue::spelled(std::int64_t number, bool capital) const {
  const std::string key = "number." + std::to_string(number);
  std::string words;
  if (has(key)) {
    words = say(key);
  } else {
    UErrorCode code = U_ZERO_ERROR;
    if (!icu_->spelling) {
      icu_->spelling =
          std::make_unique<icu::RuleBasedNumberFormat>(icu::URBNF_SPELLOUT, icu_->locale, code);
    }
    icu::UnicodeString out;
    words = utf8(icu_->spelling->format(number, out));
  }
  return capital ? capitalised(words) : words;
}

std::string Catalogue::capitalised(std::string_view words) const {
  icu::UnicodeString text = unicode(words);
  if (text.isEmpty()) return {};
  const std::int32_t end = text.moveIndex32(0, 1);
  icu::UnicodeString first = text.tempSubString(0, end);
  first.toUpper(icu_->locale);
  text.replace(0, end, first);
  return utf8(text);
}

bool is_currency(std::string_view code) {
  if (code.size() != 3 || !base::is_capitals(code)) return false;
  icu::UnicodeString wide = icu::UnicodeString::fromUTF8(
      icu::StringPiece(code.data(), static_cast<std::int32_t>(code.size())));
  return ucurr_getNumericCode(wide.getTerminatedBuffer()) > 0;
}

}  // namespace winchbook::words
