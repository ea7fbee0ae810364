#include <unicode/ubrk.h>
#include <unicode/ucasemap.h>
#include <unicode/utext.h>

#include <memory>
#include <stdexcept>
#include <string>
#include <utility>

#include "text/shape.h"

namespace winchbook::text {
namespace {

constexpr std::string_view kSoftHyphen = "\u00AD";

struct TextClose {
  void operator()(UText* text) const { utext_close(text); }
};
struct IteratorClose {
  void operator()(UBreakIterator* iterator) const { ubrk_close(iterator); }
};
struct CaseMapClose {
  void operator()(UCaseMap* map) const { ucasemap_close(map); }
};

void demand(UErrorCode code, const char* what) {
  if (U_FAILURE(code) != 0) {
    throw std::runtime_error(std::string(what) + ": ICU says " + u_errorName(code));
  }
}

/// An iterator kept for the next text in the same language: opening one costs more than a
/// paragraph.
class KeptIterator {
 public:
  explicit KeptIterator(UBreakIteratorType type) : type_(type) {}

  /// The iterator of `language`, standing before the first character of `utf8`.
  UBreakIterator* over(std::string_view utf8, std::string_view language) {
    UErrorCode code = U_ZERO_ERROR;
    if (!iterator_ || language_ != language) {
      language_ = language;
      iterator_.reset(ubrk_open(type_, language_.c_str(), nullptr, 0, &code));
      demand(code, "break iterator");
    }
    text_.reset(utext_openUTF8(text_.release(), utf8.data(), static_cast<std::int64_t>(utf8.size()),
                               &code));
    demand(code, "text");
    ubrk_setUText(iterator_.get(), text_.get(), &code);
    demand(code, "break iterator");
    ubrk_first(iterator_.get());
    return iterator_.get();
  }

 private:
  UBreakIteratorType type_;
  std::string language_;
  std::unique_ptr<UText, TextClose> text_;
  std::unique_ptr<UBreakIterator, IteratorClose> iterator_;
};

}  // namespace

std::vector<BreakOpportunity> line_breaks(std::string_view utf8, std::string_view language) {
  thread_local KeptIterator kept(UBRK_LINE);
  UBreakIterator* iterator = kept.over(utf8, language);
  std::vector<BreakOpportunity> breaks;
  for (std::int32_t at = ubrk_next(iterator); at != UBRK_DONE; at = ubrk_next(iterator)) {
    const auto offset = static_cast<std::uint32_t>(at);
    const bool inside = offset < utf8.size();
    const bool hard = ubrk_getRuleStatus(iterator) >= UBRK_LINE_HARD;
    const bool soft_hyphen = utf8.substr(0, offset).ends_with(kSoftHyphen);
    breaks.push_back({offset, hard && inside, soft_hyphen && inside});
  }
  if (utf8.empty()) breaks.push_back({0, false, false});
  return breaks;
}

std::vector<std::uint32_t> character_ends(std::string_view utf8, std::string_view language) {
  thread_local KeptIterator kept(UBRK_CHARACTER);
  UBreakIterator* iterator = kept.over(utf8, language);
  std::vector<std::uint32_t> ends;
  for (std::int32_t at = ubrk_next(iterator); at != UBRK_DONE; at = ubrk_next(iterator)) {
    ends.push_back(static_cast<std::uint32_t>(at));
  }
  return ends;
}

std::string upper_case(std::string_view utf8, std::string_view language) {
  UErrorCode code = U_ZERO_ERROR;
  const std::unique_ptr<UCaseMap, CaseMapClose> map(
      ucasemap_open(std::string(language).c_str(), 0, &code));
  demand(code, "case map");
  // Three times is the most that upper case can grow by in UTF-8 (U+0390 and its kin).
  std::string upper(3 * utf8.size() + 1, '\0');
  const std::int32_t length =
      ucasemap_utf8ToUpper(map.get(), upper.data(), static_cast<std::int32_t>(upper.size()),
                           utf8.data(), static_cast<std::int32_t>(utf8.size()), &code);
  demand(code, "upper case");
  upper.resize(static_cast<std::size_t>(length));
  return upper;
}

}  // namespace winchbook::text
