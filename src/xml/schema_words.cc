#include "xml/schema_words.h"

#include <fmt/format.h>
#include <libxml/xmlerror.h>

#include <algorithm>
#include <array>
#include <utility>

#include "base/words_of_text.h"

namespace winchbook::xml {
namespace {

constexpr std::size_t kNone = std::string_view::npos;
constexpr std::size_t kMostQuoted = 60;

/// "{urn:…}name" → "name".
std::string local_name(std::string_view name) {
  const std::size_t brace = name.rfind('}');
  return std::string(brace == kNone ? name : name.substr(brace + 1));
}

/// The first text between single quotes at or after `from`.
std::string in_quotes(std::string_view text, std::size_t from) {
  const std::size_t open = text.find('\'', from);
  if (open == kNone) return {};
  const std::size_t close = text.find('\'', open + 1);
  return std::string(text.substr(open + 1, close == kNone ? kNone : close - open - 1));
}

/// The names in "Expected is one of ( {urn}a, {urn}b )." without wildcards.
std::vector<std::string> expected_names(std::string_view text) {
  std::vector<std::string> names;
  const std::size_t open = text.find("( ", text.find("Expected is"));
  if (open == kNone) return names;
  const std::size_t close = text.rfind(" )");
  const std::string_view list = text.substr(open + 2, close == kNone ? kNone : close - open - 2);
  for (const std::string_view part : base::parts_of(list, ',')) {
    const std::string_view item = base::trimmed(part);
    if (item.find("##other") == kNone && item.find('*') == kNone) names.push_back(local_name(item));
  }
  names.erase(std::remove(names.begin(), names.end(), std::string()), names.end());
  return names;
}

/// The words of "…is not an element of the set {'a', 'b'}."
std::vector<std::string> allowed_words(std::string_view text) {
  std::vector<std::string> words;
  for (std::size_t at = text.find("set {"); at != kNone;) {
    const std::size_t open = text.find('\'', at);
    const std::size_t close = open == kNone ? kNone : text.find('\'', open + 1);
    if (close == kNone) break;
    words.emplace_back(text.substr(open + 1, close - open - 1));
    at = close + 1;
  }
  return words;
}

/// What a value must look like. The validator names the type of a value, or the pattern it fails.
struct Expectation {
  std::string_view type;
  std::string_view pattern;
  std::string_view expected;
  std::string_view hint;
};

constexpr auto kExpectations = std::to_array<Expectation>({
    {"edtf", R"([-0-9XYTZ:+?~%/.,{}\[\]]+)", "a date such as 1948, 1962-08, 1948~ or 1948/1979",
     "write EDTF (ISO 8601-2), with hyphens"},
    {"money", R"([0-9]{1,12}(\.[0-9]{1,4})? [A-Z]{3})",
     "an amount and a currency such as 12.50 GBP",
     "use a point, and the three letters of ISO 4217"},
    {"currency", "[A-Z]{3}", "three capital letters such as GBP", "use the code of ISO 4217"},
    {"digest", "[0-9a-f]{64}", "64 hexadecimal digits in small letters", "copy the whole digest"},
    {"salt", "[0-9a-f]{32}", "32 hexadecimal digits in small letters", "copy the whole salt"},
    {"number", R"([0-9]+(\.[0-9]+)?)", "a number such as 12 or 12.5, not below 0",
     "write the number alone, with a point; the unit is fixed by the element"},
    {"reading", R"(-?[0-9]+(\.[0-9]+)?)", "a number such as -3 or 12.5",
     "write the number alone; the unit has its own element"},
    {"whole", "[0-9]+", "a whole number", "write digits only"},
    {"word", "[a-z0-9]+(-[a-z0-9]+)*", "a word in small letters, digits and hyphens",
     "see the parts list of the reel's kind"},
    {"id", "", "a letter followed by letters, digits or hyphens, at most 64 characters",
     "an id has no spaces"},
});

/// The names of types that are only other names of one above.
constexpr auto kSameAs = std::to_array<std::pair<std::string_view, std::string_view>>({
    {"withheld", "digest"},
    {"millimetres", "number"},
    {"square-millimetres", "number"},
    {"metres", "number"},
    {"grams", "number"},
    {"newtons", "number"},
    {"hours", "number"},
    {"minutes", "number"},
    {"ratio", "number"},
    {"index-weight", "number"},
    {"percent", "number"},
    {"count", "whole"},
    {"pixels", "whole"},
});

const Expectation* expectation_of(std::string_view type) {
  for (const auto& [name, other] : kSameAs) {
    if (name == type) type = other;
  }
  const auto found = std::find_if(kExpectations.begin(), kExpectations.end(),
                                  [&](const Expectation& one) { return one.type == type; });
  return found == kExpectations.end() ? nullptr : &*found;
}

/// The expectation whose pattern is named in "…is not accepted by the pattern '…'."
const Expectation* expectation_of_pattern(std::string_view text) {
  constexpr std::string_view kBefore = "by the pattern '";
  const std::size_t at = text.find(kBefore);
  if (at == kNone) return nullptr;
  const std::size_t open = at + kBefore.size();
  const std::string_view pattern = text.substr(open, text.rfind('\'') - open);
  const auto found = std::find_if(kExpectations.begin(), kExpectations.end(),
                                  [&](const Expectation& one) { return one.pattern == pattern; });
  return found == kExpectations.end() ? nullptr : &*found;
}

/// A facet other than a pattern or a list: what was expected, or empty.
std::string expected_by_facet(std::string_view text) {
  const auto limit = [&] {
    const std::size_t at = text.rfind("('");
    return at == kNone ? std::string() : in_quotes(text, at);
  };
  if (text.find("[facet 'maxInclusive']") != kNone) return "a number of at most " + limit();
  if (text.find("[facet 'minInclusive']") != kNone) return "a number of at least " + limit();
  if (text.find("[facet 'minLength']") != kNone) return "some words";
  if (text.find("[facet 'maxLength']") != kNone) return "fewer characters";
  if (text.find("Digits']") != kNone) return "fewer digits";
  return {};
}

/// The type named in "'x' is not a valid value of the atomic type '{urn}edtf'."
std::string type_named(std::string_view text) {
  const std::size_t at = text.find(" type '");
  return at == kNone ? std::string() : local_name(in_quotes(text, at));
}

ToldFault unexpected_element(std::string_view text, std::string_view element) {
  const std::vector<std::string> names = expected_names(text);
  if (names.empty()) {
    return {fmt::format("\"{}\" is not expected here, expected the end of the element", element),
            "take it out, or look in the schema for where it stands"};
  }
  const std::string like = nearest(element, names);
  std::string hint = like.empty()
                         ? "elements stand in the order of the schema: move it, or take it out"
                         : fmt::format("did you mean \"{}\"?", like);
  return {fmt::format("\"{}\" is not expected here, expected {}", element, either(names)),
          std::move(hint)};
}

ToldFault bad_value(const std::vector<ValidatorMessage>& messages, std::string_view element,
                    std::string_view value) {
  const auto told = [&](std::string_view expected, std::string hint) {
    return ToldFault{fmt::format("\"{}\" holds {}, expected {}", element, quoted(value), expected),
                     std::move(hint)};
  };
  for (const ValidatorMessage& one : messages) {
    const std::vector<std::string> words = allowed_words(one.text);
    if (!words.empty()) {
      const std::string like = nearest(value, words);
      return told(either(words), like.empty() ? "use one of the words of the list"
                                              : fmt::format("did you mean \"{}\"?", like));
    }
    const Expectation* known = expectation_of_pattern(one.text);
    if (known == nullptr) known = expectation_of(type_named(one.text));
    if (known != nullptr) return told(known->expected, std::string(known->hint));
    const std::string expected = expected_by_facet(one.text);
    if (!expected.empty()) return told(expected, "correct it, or take the element out");
  }
  return {fmt::format("\"{}\" holds {}, which it may not", element, quoted(value)),
          "see the element's entry in the schema"};
}

std::string of_attribute(std::string_view text) {
  const std::size_t at = text.find("attribute '");
  return at == kNone ? std::string() : local_name(in_quotes(text, at));
}

}  // namespace

std::string either(const std::vector<std::string>& words) {
  std::string out;
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " or " : ", ";
    out += "\"" + words[i] + "\"";
  }
  return out;
}

std::string quoted(std::string_view text) {
  std::string folded;
  for (const char c : text) {
    const bool space = c == ' ' || c == '\t' || c == '\r' || c == '\n';
    if (!space) folded += c;
    if (space && !folded.empty() && folded.back() != ' ') folded += ' ';
  }
  while (!folded.empty() && folded.back() == ' ')
    folded.pop_back();
  std::size_t characters = 0;
  for (std::size_t at = 0; at < folded.size(); ++at) {
    if ((static_cast<unsigned char>(folded[at]) & 0xC0U) == 0x80U) continue;
    if (characters++ == kMostQuoted) return "\"" + folded.substr(0, at) + "…\"";
  }
  return folded.empty() ? "nothing" : "\"" + folded + "\"";
}

namespace {

/// How many letters must be put in, taken out, changed or exchanged with their neighbour.
std::size_t letters_away(std::string_view a, std::string_view b) {
  std::vector<std::vector<std::size_t>> away(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i)
    away[i][0] = i;
  for (std::size_t j = 0; j <= b.size(); ++j)
    away[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t changed = away[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      away[i][j] = std::min({away[i - 1][j] + 1, away[i][j - 1] + 1, changed});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        away[i][j] = std::min(away[i][j], away[i - 2][j - 2] + 1);
      }
    }
  }
  return away[a.size()][b.size()];
}

}  // namespace

std::string nearest(std::string_view word, const std::vector<std::string>& known) {
  constexpr std::size_t kLongestWord = 64;
  std::string best;
  if (word.size() > kLongestWord) return best;
  std::size_t least = std::clamp<std::size_t>(word.size() / 3, 1, 2) + 1;
  for (const std::string& one : known) {
    if (one.size() > kLongestWord) continue;
    const std::size_t away = letters_away(word, one);
    if (away < least) {
      least = away;
      best = one;
    }
  }
  return best;
}

ToldFault in_our_words(const std::vector<ValidatorMessage>& messages, std::string_view element,
                       std::string_view value) {
  const ValidatorMessage& first = messages.front();
  switch (first.code) {
    case XML_SCHEMAV_ELEMENT_CONTENT:
    case XML_SCHEMAV_CVC_ELT_1:
      if (first.text.find("Missing child") != kNone) {
        return {fmt::format("\"{}\" ends too early, expected {}", element,
                            either(expected_names(first.text))),
                "write what is missing; what is not known may be left out only where the schema "
                "says so"};
      }
      return unexpected_element(first.text, element);
    case XML_SCHEMAV_CVC_COMPLEX_TYPE_4:
      return {fmt::format("\"{}\" has no attribute \"{}\"", element, of_attribute(first.text)),
              fmt::format("write <{} {}=\"…\">", element, of_attribute(first.text))};
    case XML_SCHEMAV_CVC_COMPLEX_TYPE_3_2_1:
      return {fmt::format("\"{}\" has an attribute \"{}\", which it may not", element,
                          of_attribute(first.text)),
              "facts stand in elements; attributes hold only ids and references"};
    case XML_SCHEMAV_CVC_COMPLEX_TYPE_2_3:
      return {fmt::format("text stands between the elements of \"{}\"", element),
              "put it in an element, or make a comment of it"};
    case XML_SCHEMAV_CVC_TYPE_3_1_2:
    case XML_SCHEMAV_CVC_COMPLEX_TYPE_2_1:
    case XML_SCHEMAV_CVC_COMPLEX_TYPE_2_2:
      return {fmt::format("\"{}\" holds something, but may hold {}", element,
                          first.code == XML_SCHEMAV_CVC_COMPLEX_TYPE_2_1 ? "nothing" : "only text"),
              "take out what stands in it"};
    default:
      return bad_value(messages, element, value);
  }
}

}  // namespace winchbook::xml
