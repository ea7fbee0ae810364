#include "xml/schema_words.h"

#include <fmt/format.h>
#include <libxml/xmlerror.h>

#include <algorithm>
#include <array>
#include <utility>

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
  std::string_view list = text.substr(open + 2, close == kNone ? kNone : close - open - 2);
  while (!list.empty()) {
    const std::size_t comma = std::min(list.find(", "), list.size());
    const std::string_view item = list.substr(0, comma);
    if (item.find("##other") == kNone && item.find('*') == kNone) names.push_back(local_name(item));
    list.remove_prefix(std::min(comma + 2, list.size()));
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

struct Expectation {
  std::string_view type;
  std::string_view expected;
  std::string_view hint;
};

/// What a value of a named type must look like.
constexpr auto kExpectations = std::to_array<Expectation>({
    {"edtf", "a date such as 1948, 1962-08, 1948~ or 1948/1979",
     "write EDTF (ISO 8601-2), with hyphens"},
    {"money", "an amount and a currency such as 12.50 GBP",
     "use a point, and the three letters of ISO 4217"},
    {"currency", "three capital letters such as GBP", "use the code of ISO 4217"},
    {"digest", "64 hexadecimal digits in small letters", "copy the whole SHA-256"},
    {"withheld", "64 hexadecimal digits in small letters", "copy the whole digest"},
    {"salt", "32 hexadecimal digits in small letters", "copy the whole salt"},
    {"percent", "a number from 0 to 100", "write the share per hundred, without the sign"},
    {"count", "a whole number from 1 to 10000", "write digits only"},
    {"whole", "a whole number from 0 to 10000", "write digits only"},
    {"pixels", "a whole number from 1 to 1000000", "write digits only"},
    {"reading", "a number such as -3 or 12.5",
     "write the number alone; the unit has its own element"},
    {"word", "a word in small letters, digits and hyphens",
     "see the parts list of the reel's kind"},
    {"text", "some words", "write it, or take the element out"},
    {"lines", "some words", "write it, or take the element out"},
    {"path", "a file name", "write it from the reel's folder, such as photos/foot.jpg"},
    {"id", "a letter followed by letters, digits, hyphens",
     "an id has no spaces and at most 64 characters"},
});

constexpr Expectation kNumber{
    "number", "a number such as 12 or 12.5, not below 0",
    "write the number alone, with a point; the unit is fixed by the element"};

bool is_number_type(std::string_view type) {
  static constexpr auto kTypes = std::to_array<std::string_view>(
      {"number", "millimetres", "square-millimetres", "metres", "grams", "newtons", "hours",
       "minutes", "ratio", "index-weight"});
  return std::find(kTypes.begin(), kTypes.end(), type) != kTypes.end();
}

const Expectation* expectation_of(std::string_view type) {
  if (is_number_type(type)) return &kNumber;
  const auto found = std::find_if(kExpectations.begin(), kExpectations.end(),
                                  [&](const Expectation& one) { return one.type == type; });
  return found == kExpectations.end() ? nullptr : &*found;
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
  std::string type;
  for (const ValidatorMessage& one : messages) {
    const std::vector<std::string> words = allowed_words(one.text);
    if (!words.empty()) {
      const std::string like = nearest(value, words);
      return {fmt::format("\"{}\" holds {}, expected {}", element, quoted(value), either(words)),
              like.empty() ? "use one of the words of the list"
                           : fmt::format("did you mean \"{}\"?", like)};
    }
    if (std::string named = type_named(one.text); !named.empty()) type = std::move(named);
  }
  if (const Expectation* known = expectation_of(type)) {
    return {fmt::format("\"{}\" holds {}, expected {}", element, quoted(value), known->expected),
            std::string(known->hint)};
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

std::string nearest(std::string_view word, const std::vector<std::string>& known) {
  const auto distance = [&](std::string_view other) {
    std::vector<std::size_t> row(other.size() + 1);
    for (std::size_t j = 0; j < row.size(); ++j)
      row[j] = j;
    for (std::size_t i = 0; i < word.size(); ++i) {
      std::size_t diagonal = row[0];
      row[0] = i + 1;
      for (std::size_t j = 0; j < other.size(); ++j) {
        const std::size_t replaced = diagonal + (word[i] == other[j] ? 0 : 1);
        diagonal = row[j + 1];
        row[j + 1] = std::min({row[j] + 1, row[j + 1] + 1, replaced});
      }
    }
    return row[other.size()];
  };
  std::string best;
  std::size_t least = std::min<std::size_t>(2, std::max<std::size_t>(1, word.size() / 3)) + 1;
  if (word.size() > 64) return best;
  for (const std::string& one : known) {
    const std::size_t away = distance(one);
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
