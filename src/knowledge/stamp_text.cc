#include "knowledge/stamp_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "base/words_of_text.h"

namespace winchbook::knowledge {
namespace {

constexpr std::size_t kGroup = 3;
constexpr std::size_t kMostFigures = 15;

enum class Kind { letter, figure, apostrophe, dot, comma, other };

/// A character of the text and what it counts as.
struct Sign {
  Kind kind = Kind::other;
  std::string folded;  ///< empty for what is no part of a word
  std::size_t begin = 0;
  std::size_t end = 0;
};

struct Fold {
  std::string_view from;
  std::string_view to;
};

/// Letters beyond ASCII that stamps bear. Anything else beyond it parts words.
constexpr std::array kFolds{
    Fold{"À", "A"},  Fold{"Á", "A"}, Fold{"Â", "A"}, Fold{"Ä", "A"}, Fold{"Å", "A"},
    Fold{"à", "A"},  Fold{"á", "A"}, Fold{"â", "A"}, Fold{"ä", "A"}, Fold{"å", "A"},
    Fold{"Ç", "C"},  Fold{"ç", "C"}, Fold{"È", "E"}, Fold{"É", "E"}, Fold{"Ê", "E"},
    Fold{"Ë", "E"},  Fold{"è", "E"}, Fold{"é", "E"}, Fold{"ê", "E"}, Fold{"ë", "E"},
    Fold{"Í", "I"},  Fold{"í", "I"}, Fold{"î", "I"}, Fold{"ï", "I"}, Fold{"Ñ", "N"},
    Fold{"ñ", "N"},  Fold{"Ò", "O"}, Fold{"Ó", "O"}, Fold{"Ô", "O"}, Fold{"Ö", "O"},
    Fold{"Ø", "O"},  Fold{"ó", "O"}, Fold{"ô", "O"}, Fold{"ö", "O"}, Fold{"ø", "O"},
    Fold{"Ú", "U"},  Fold{"Ü", "U"}, Fold{"ú", "U"}, Fold{"ü", "U"}, Fold{"ß", "SS"},
    Fold{"№", "NO"},
};

std::size_t length_of(char lead) {
  const auto byte = static_cast<unsigned char>(lead);
  if (byte < 0xC0) return 1;
  if (byte < 0xE0) return 2;
  return byte < 0xF0 ? 3 : 4;
}

Sign sign_of(std::string_view text, std::size_t at) {
  Sign sign;
  sign.begin = at;
  sign.end = std::min(at + length_of(text[at]), text.size());
  const std::string_view bytes = text.substr(at, sign.end - at);
  const char c = text[at];
  if (bytes == "’" || bytes == "‘" || c == '\'' || c == '`') {
    sign.kind = Kind::apostrophe;
  } else if (c == '.') {
    sign.kind = Kind::dot;
  } else if (c == ',') {
    sign.kind = Kind::comma;
  } else if (c >= '0' && c <= '9') {
    sign.kind = Kind::figure;
    sign.folded = c;
  } else if ((c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z')) {
    sign.kind = Kind::letter;
    sign.folded = base::in_capitals(c);
  } else if (const auto fold = std::find_if(kFolds.begin(), kFolds.end(),
                                            [&](const Fold& one) { return one.from == bytes; });
             fold != kFolds.end()) {
    sign.kind = Kind::letter;
    sign.folded = fold->to;
  }
  return sign;
}

bool in_word(const Sign& sign) {
  return sign.kind == Kind::letter || sign.kind == Kind::figure;
}

/// The figure that a letter is often typed or read for, or NUL.
char figure_for(char letter) {
  switch (letter) {
    case 'O':
    case 'o':
      return '0';
    case 'I':
    case 'i':
    case 'l':
      return '1';
    case 'Z':
    case 'z':
      return '2';
    case 'S':
    case 's':
      return '5';
    case 'B':
      return '8';
    default:
      return letter >= '0' && letter <= '9' ? letter : '\0';
  }
}

/// Splits a text into words.
class Splitting {
 public:
  explicit Splitting(std::string_view text) : text_(text) {
    for (std::size_t at = 0; at < text.size(); at = signs_.back().end)
      signs_.push_back(sign_of(text, at));
  }

  std::vector<StampWord> words() {
    while (at_ < signs_.size()) {
      if (circle()) continue;
      if (!in_word(signs_[at_])) {
        ++at_;
        continue;
      }
      take_word();
    }
    join_initials();
    return std::move(words_);
  }

 private:
  /// "®", "(R)", "©", "(C)".
  bool circle() {
    const std::string_view rest = text_.substr(signs_[at_].begin);
    for (const auto& [seen, means] : {std::pair<std::string_view, const char*>{"®", "CIRCLER"},
                                      {"(R)", "CIRCLER"},
                                      {"(r)", "CIRCLER"},
                                      {"©", "CIRCLEC"},
                                      {"(C)", "CIRCLEC"},
                                      {"(c)", "CIRCLEC"}}) {
      if (!rest.starts_with(seen)) continue;
      const std::size_t begin = signs_[at_].begin;
      while (at_ < signs_.size() && signs_[at_].begin < begin + seen.size())
        ++at_;
      keep(begin, begin + seen.size(), means, std::nullopt);
      return true;
    }
    return false;
  }

  bool word_at(std::size_t at) const { return at < signs_.size() && in_word(signs_[at]); }

  /// Exactly three characters that can be figures, at least one of which is one, then an end.
  bool group_at(std::size_t at) const {
    bool any = false;
    for (std::size_t i = 0; i < kGroup; ++i) {
      if (!word_at(at + i) || figure_for(text_[signs_[at + i].begin]) == '\0') return false;
      any = any || signs_[at + i].kind == Kind::figure;
    }
    return any && !word_at(at + kGroup);
  }

  /// Figures alone so far, or figures behind letters ("D101").
  bool all_figures_since(std::size_t begin) const {
    while (begin < at_ && signs_[begin].kind == Kind::letter &&
           figure_for(text_[signs_[begin].begin]) == '\0')
      ++begin;
    bool any = false;
    for (std::size_t i = begin; i < at_; ++i) {
      if (!in_word(signs_[i])) continue;
      any = true;
      if (figure_for(text_[signs_[i].begin]) == '\0') return false;
    }
    return any;
  }

  /// "D", "D.R", "S.G.D": single letters with points between, so far.
  bool initials_since(std::size_t begin) const {
    for (std::size_t i = begin; i < at_; ++i) {
      const bool letter_due = (i - begin) % 2 == 0;
      if (signs_[i].kind != (letter_due ? Kind::letter : Kind::dot)) return false;
    }
    return true;
  }

  /// Whether the sign at `at_`, which is no letter or figure, stands inside the word.
  bool goes_on(std::size_t begin, bool& grouped) const {
    const Sign& sign = signs_[at_];
    if (!word_at(at_ + 1)) return false;
    if ((sign.kind == Kind::comma || sign.kind == Kind::dot) && group_at(at_ + 1) &&
        all_figures_since(begin)) {
      grouped = true;
      return true;
    }
    if (sign.kind == Kind::apostrophe) {
      return signs_[at_ - 1].kind == Kind::letter && signs_[at_ + 1].kind == Kind::letter;
    }
    return sign.kind == Kind::dot && signs_[at_ + 1].kind == Kind::letter && !word_at(at_ + 2) &&
           initials_since(begin);
  }

  void take_word() {
    const std::size_t begin = at_;
    bool grouped = false;
    std::string folded;
    while (at_ < signs_.size() && (word_at(at_) || goes_on(begin, grouped)))
      folded += signs_[at_++].folded;
    const std::size_t end = at_;
    const auto number = number_of(begin, end, grouped);
    const std::size_t split = number ? begin : split_before(begin, end);
    if (split == begin) {
      keep(signs_[begin].begin, signs_[end - 1].end, number ? figures_of(begin, end) : folded,
           number);
      return;
    }
    std::string letters;
    for (std::size_t i = begin; i < split; ++i)
      letters += signs_[i].folded;
    keep(signs_[begin].begin, signs_[split - 1].end, letters, std::nullopt);
    keep(signs_[split].begin, signs_[end - 1].end, figures_of(split, end),
         number_of(split, end, grouped));
  }

  std::string figures_of(std::size_t begin, std::size_t end) const {
    std::string figures;
    for (std::size_t i = begin; i < end; ++i) {
      if (in_word(signs_[i])) figures += figure_for(text_[signs_[i].begin]);
    }
    return figures;
  }

  /// A number: every character can be a figure, and at least half of them are.
  std::optional<StampNumber> number_of(std::size_t begin, std::size_t end, bool grouped) const {
    std::size_t real = 0;
    std::string taken;
    StampNumber number;
    number.grouped = grouped;
    for (std::size_t i = begin; i < end; ++i) {
      if (!in_word(signs_[i])) continue;
      const char letter = text_[signs_[i].begin];
      const char figure = figure_for(letter);
      if (figure == '\0' || signs_[i].folded.size() > 1) return std::nullopt;
      if (figure == letter) {
        ++real;
      } else if (taken.find(letter) == std::string::npos) {
        taken += letter;
        number.assumed +=
            fmt::format("{}{} taken for {}", number.assumed.empty() ? "" : ", ", letter, figure);
      }
      if (++number.digits > kMostFigures) return std::nullopt;
      number.value = number.value * 10 + (figure - '0');
    }
    if (real == 0 || real * 2 < number.digits) return std::nullopt;
    if (!number.assumed.empty()) {
      number.assumed += fmt::format(
          " in “{}”", text_.substr(signs_[begin].begin, signs_[end - 1].end - signs_[begin].begin));
    }
    return number;
  }

  /// Where figures begin behind one to three letters ("D101,090", "H4417") or a month ("JULY4");
  /// `begin` when it is not of that shape.
  std::size_t split_before(std::size_t begin, std::size_t end) const {
    std::size_t split = begin;
    while (split < end && signs_[split].kind == Kind::letter)
      ++split;
    if (split == begin || split == end) return begin;
    std::size_t figures = 0;
    for (std::size_t i = split; i < end; ++i) {
      if (in_word(signs_[i]) && figure_for(text_[signs_[i].begin]) == '\0') return begin;
      figures += in_word(signs_[i]) ? 1 : 0;
    }
    const std::size_t letters = split - begin;
    return (letters <= kGroup && figures >= kGroup) || letters > 2 ? split : begin;
  }

  void keep(std::size_t begin, std::size_t end, std::string folded,
            std::optional<StampNumber> number) {
    const std::size_t from = words_.empty() ? 0 : words_.back().end;
    words_.push_back({std::move(folded), begin, end, std::string(text_.substr(from, begin - from)),
                      std::move(number)});
  }

  static bool is_initial(const StampWord& word) {
    return word.folded.size() == 1 && word.folded[0] >= 'A' && word.folded[0] <= 'Z';
  }

  /// "D. R. G. M." and "S G D G": three single letters or more in a row are one word.
  void join_initials() {
    std::vector<StampWord> joined;
    for (std::size_t i = 0; i < words_.size();) {
      std::size_t end = i;
      while (end < words_.size() && is_initial(words_[end]) &&
             (end == i || words_[end].gap.find_first_not_of(" .") == std::string::npos))
        ++end;
      if (end - i < kGroup) {
        joined.push_back(std::move(words_[i++]));
        continue;
      }
      StampWord word = std::move(words_[i]);
      for (++i; i < end; ++i) {
        word.folded += words_[i].folded;
        word.end = words_[i].end;
      }
      joined.push_back(std::move(word));
    }
    words_ = std::move(joined);
  }

  std::string_view text_;
  std::vector<Sign> signs_;
  std::size_t at_ = 0;
  std::vector<StampWord> words_;
};

}  // namespace

std::vector<StampWord> stamp_words(std::string_view text) {
  return Splitting(text).words();
}

std::string folded_phrase(std::string_view text) {
  std::string phrase;
  for (const StampWord& word : stamp_words(text))
    phrase += (phrase.empty() ? "" : " ") + word.folded;
  return phrase;
}

std::size_t phrase_at(const std::vector<StampWord>& words, std::size_t at, std::string_view form) {
  std::size_t count = 0;
  while (!form.empty()) {
    const std::size_t space = std::min(form.find(' '), form.size());
    if (at + count >= words.size() || words[at + count].folded != form.substr(0, space)) return 0;
    ++count;
    form.remove_prefix(std::min(space + 1, form.size()));
  }
  return count;
}

std::string as_typed(std::string_view text, const std::vector<StampWord>& words, std::size_t from,
                     std::size_t to) {
  return std::string(text.substr(words[from].begin, words[to - 1].end - words[from].begin));
}

}  // namespace winchbook::knowledge
