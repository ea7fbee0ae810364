#include "text/folded_words.h"

#include <unicode/translit.h>
#include <unicode/uchar.h>
#include <unicode/unistr.h>
#include <unicode/unorm2.h>
#include <unicode/uscript.h>
#include <unicode/ustring.h>
#include <unicode/utf8.h>

#include <algorithm>
#include <array>
#include <cstdint>
#include <memory>
#include <stdexcept>

#include "base/words_of_text.h"

namespace winchbook::text {
namespace {

bool belongs_to_word(UChar32 sign) {
  return u_isalnum(sign) != 0 || (U_GET_GC_MASK(sign) & U_GC_M_MASK) != 0 ||
         u_hasBinaryProperty(sign, UCHAR_DEFAULT_IGNORABLE_CODE_POINT) != 0;
}

/// Signs after which a capital says nothing.
bool ends_sentence(UChar32 sign) {
  return sign == '\n' || sign == ':' || u_hasBinaryProperty(sign, UCHAR_S_TERM) != 0;
}

/// Brackets, quotation marks and white space stand between a sentence and the end of the last.
bool is_between(UChar32 sign) {
  constexpr auto kQuotes = U_GC_PS_MASK | U_GC_PE_MASK | U_GC_PI_MASK | U_GC_PF_MASK;
  return sign == '"' || sign == '\'' || u_isUWhiteSpace(sign) != 0 ||
         (U_GET_GC_MASK(sign) & kQuotes) != 0;
}

bool is_ascii(std::string_view word) {
  for (const char letter : word) {
    if (static_cast<unsigned char>(letter) >= 0x80) return false;
  }
  return true;
}

std::string folded(std::string_view word) {
  if (is_ascii(word)) return base::in_small_letters(word);
  UErrorCode code = U_ZERO_ERROR;
  const UNormalizer2* folding = unorm2_getNFKCCasefoldInstance(&code);
  std::u16string wide(word.size(), u'\0');
  std::int32_t length = 0;
  u_strFromUTF8(wide.data(), static_cast<std::int32_t>(wide.size()), &length, word.data(),
                static_cast<std::int32_t>(word.size()), &code);
  // One letter may fold to eighteen (UAX #15, maximum expansion of NFKC).
  std::u16string out(static_cast<std::size_t>(length) * 18 + 1, u'\0');
  const std::int32_t folded_length = unorm2_normalize(folding, wide.data(), length, out.data(),
                                                      static_cast<std::int32_t>(out.size()), &code);
  std::string narrow(static_cast<std::size_t>(folded_length) * 3, '\0');
  std::int32_t bytes = 0;
  u_strToUTF8(narrow.data(), static_cast<std::int32_t>(narrow.size()), &bytes, out.data(),
              folded_length, &code);
  if (U_FAILURE(code) != 0) {
    throw std::runtime_error(std::string("folding a word: ICU says ") + u_errorName(code));
  }
  narrow.resize(static_cast<std::size_t>(bytes));
  return narrow;
}

}  // namespace

std::vector<FoldedWord> folded_words(std::string_view utf8) {
  std::vector<FoldedWord> words;
  const auto* bytes = reinterpret_cast<const std::uint8_t*>(utf8.data());
  const std::size_t length = utf8.size();
  bool opens = true;
  bool in_word = false;
  const auto close = [&](std::size_t end) {
    if (!in_word) return;
    in_word = false;
    FoldedWord& word = words.back();
    word.end = end;
    word.folded = folded(utf8.substr(word.begin, end - word.begin));
    if (word.folded.empty()) words.pop_back();
  };
  for (std::size_t at = 0; at < length;) {
    const std::size_t begin = at;
    UChar32 sign = 0;
    U8_NEXT(bytes, at, length, sign);
    if (sign >= 0 && belongs_to_word(sign)) {
      if (!in_word) {
        words.push_back(
            {"", begin, begin, u_isUUppercase(sign) != 0 || u_istitle(sign) != 0, opens});
        in_word = true;
      }
      opens = false;
      continue;
    }
    close(begin);
    const bool after_initial = sign == '.' && !words.empty() && words.back().end == begin &&
                               words.back().end - words.back().begin == 1;
    if (sign >= 0 && ends_sentence(sign)) {
      opens = !after_initial;
    } else if (sign < 0 || !is_between(sign)) {
      opens = false;
    }
  }
  close(length);
  return words;
}

std::vector<std::string> spellings_of(std::string_view folded) {
  if (is_ascii(folded)) return {std::string(folded)};
  static const std::unique_ptr<icu::Transliterator> kBare = [] {
    UErrorCode code = U_ZERO_ERROR;
    UParseError place;
    std::unique_ptr<icu::Transliterator> made(icu::Transliterator::createInstance(
        "NFD; [:Mn:] Remove; Latin-ASCII; NFC", UTRANS_FORWARD, place, code));
    if (U_FAILURE(code) != 0)
      throw std::runtime_error(std::string("taking accents off: ICU says ") + u_errorName(code));
    return made;
  }();
  const auto word = icu::UnicodeString::fromUTF8({folded.data(), static_cast<int>(folded.size())});
  const auto bare = [](icu::UnicodeString text) {
    kBare->transliterate(text);
    std::string out;
    return text.toUTF8String(out);
  };
  std::vector<std::string> spellings{bare(word)};
  icu::UnicodeString spelled_out = word;
  static constexpr std::pair<const char16_t*, const char16_t*> kOut[] = {
      {u"ä", u"ae"}, {u"ö", u"oe"}, {u"ü", u"ue"}, {u"ø", u"oe"}, {u"å", u"aa"}};
  for (const auto& [sign, letters] : kOut)
    spelled_out.findAndReplace(icu::UnicodeString(sign), icu::UnicodeString(letters));
  for (std::string& other : std::array{std::string(folded), bare(spelled_out)}) {
    if (std::find(spellings.begin(), spellings.end(), other) == spellings.end())
      spellings.push_back(std::move(other));
  }
  return spellings;
}

bool parts_no_words(std::string_view utf8) {
  const auto* bytes = reinterpret_cast<const std::uint8_t*>(utf8.data());
  for (std::size_t at = 0; at < utf8.size();) {
    UChar32 sign = 0;
    U8_NEXT(bytes, at, utf8.size(), sign);
    if (sign < 0x0E00) continue;
    UErrorCode code = U_ZERO_ERROR;
    switch (uscript_getScript(sign, &code)) {
      case USCRIPT_HAN:
      case USCRIPT_HIRAGANA:
      case USCRIPT_KATAKANA:
      case USCRIPT_THAI:
      case USCRIPT_LAO:
      case USCRIPT_KHMER:
      case USCRIPT_MYANMAR:
        return true;
      default:
        break;
    }
  }
  return false;
}

}  // namespace winchbook::text
