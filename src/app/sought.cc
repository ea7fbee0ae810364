#include "app/sought.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

#include "base/words_of_text.h"
#include "text/folded_words.h"

namespace winchbook::app {
namespace {

using recordfile::Taken;
using text::FoldedWord;

constexpr std::size_t kAnywhere = 6;     // letters: a word as long is no part of another by chance
constexpr std::size_t kAtAnEnd = 5;      // letters
constexpr std::size_t kInDoubt = 4;      // letters
constexpr std::size_t kApart = 7;        // of two words that only a space parts
constexpr std::size_t kLongNumber = 7;   // digits that no other number shares by chance
constexpr std::size_t kShortNumber = 6;  // digits of a telephone without its area code

bool is_digit(char sign) {
  return sign >= '0' && sign <= '9';
}

/// Of UTF-8: a letter beyond ASCII has several bytes.
std::size_t letters_in(std::string_view word) {
  return static_cast<std::size_t>(std::count_if(word.begin(), word.end(), [](char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
  }));
}

bool is_number(std::string_view word) {
  return !word.empty() && std::all_of(word.begin(), word.end(), is_digit);
}

bool has_digit(std::string_view word) {
  return std::any_of(word.begin(), word.end(), is_digit);
}

/// One word for all the ways in which addresses write it.
std::string_view in_full(std::string_view word) {
  static constexpr std::pair<std::string_view, std::string_view> kStreets[] = {
      {"st", "street"},      {"str", "strasse"},  {"rd", "road"},       {"ln", "lane"},
      {"ave", "avenue"},     {"av", "avenue"},    {"cl", "close"},      {"ct", "court"},
      {"dr", "drive"},       {"gdns", "gardens"}, {"pl", "place"},      {"sq", "square"},
      {"ter", "terrace"},    {"terr", "terrace"}, {"cres", "crescent"}, {"hwy", "highway"},
      {"blvd", "boulevard"}, {"apt", "flat"},     {"apartment", "flat"}};
  const auto* found = std::find_if(std::begin(kStreets), std::end(kStreets),
                                   [&](const auto& one) { return one.first == word; });
  return found == std::end(kStreets) ? word : found->second;
}

std::vector<std::string> words_in(std::string_view text) {
  std::vector<std::string> words;
  for (const FoldedWord& word : text::folded_words(text))
    words.push_back(text::spellings_of(word.folded).front());
  return words;
}

std::string joined(const std::vector<std::string>& words) {
  std::string all;
  for (const std::string& word : words)
    all += word;
  return all;
}

/// What a word may be without the ending of a plural, a genitive or an adjective.
std::vector<std::string> stems_of(const std::string& word) {
  static constexpr std::pair<std::string_view, std::size_t> kEndings[] = {
      // the ending, and how long what stands before it must be
      {"s", 2},  {"es", 3},  {"n", 5},   {"en", 4},   {"e", 5},
      {"er", 5}, {"ers", 5}, {"ens", 4}, {"sche", 4}, {"schen", 4}};
  std::vector<std::string> stems{word};
  for (const auto& [ending, least] : kEndings) {
    if (word.ends_with(ending) && letters_in(word) >= ending.size() + least)
      stems.push_back(word.substr(0, word.size() - ending.size()));
  }
  if (word.size() > 5 && word.ends_with("ies"))
    stems.push_back(word.substr(0, word.size() - 3) + "y");
  return stems;
}

}  // namespace

base::Result<NameWords> read_name_words(library::Library& library) {
  constexpr std::uintmax_t kMostBytes = std::uintmax_t{1} << 20U;
  const std::filesystem::path path = library.world().data / "shared" / "names.txt";
  const auto bytes = library.files().read(path, kMostBytes);
  if (!bytes) return bytes.faults();
  const std::string file = path.string();
  NameWords words;
  int number = 0;
  for (const std::string_view line : base::parts_of(*bytes, '\n')) {
    ++number;
    std::vector<std::string> said = words_in(line.substr(0, line.find('#')));
    if (said.empty()) continue;
    const std::string kind = said.front();
    auto* list = kind == "never"      ? &words.never
                 : kind == "ordinary" ? &words.ordinary
                 : kind == "dated"    ? &words.dated
                                      : nullptr;
    if (list == nullptr) {
      return base::of_machine(base::error_at(
          {file, number, 1},
          fmt::format("the line begins with \"{}\", expected never, ordinary or dated", kind),
          "begin the line with one of the three", "file-names"));
    }
    list->insert(list->end(), std::make_move_iterator(said.begin() + 1),
                 std::make_move_iterator(said.end()));
  }
  return words;
}

// ---- what is looked for -----------------------------------------------------------------------

Sought::Sought(const recordfile::Withholding& withheld, const Seen& seen, const NameWords& names)
    : never_(names.never.begin(), names.never.end()),
      ordinary_(names.ordinary.begin(), names.ordinary.end()),
      dated_(names.dated.begin(), names.dated.end()) {
  ordinary_.insert(dated_.begin(), dated_.end());
  for (const std::string& text : seen.names) {
    for (std::string& word : words_in(text))
      seen_.insert(std::move(word));
  }
  for (std::string& word : words_in(seen.reel))
    reel_.insert(std::move(word));
  for (const Taken& taken : withheld.taken)
    add(taken);
  for (const Taken& taken : withheld.unbound)
    add(taken);
}

std::size_t Sought::size() const {
  std::size_t count = words_.size() + codes_.size() + numbers_.size() + runs_.size();
  for (const auto& [first, phrases] : phrases_)
    count += phrases.size();
  return count;
}

void Sought::add(const Taken& taken) {
  switch (taken.kind) {
    case Taken::Kind::name:
    case Taken::Kind::short_name:
      add_name(taken);
      break;
    case Taken::Kind::mention:
      add_capitalised(taken, false);
      break;
    case Taken::Kind::inscription:
      add_phrase(taken, words_in(taken.text));
      add_capitalised(taken, true);
      break;
    case Taken::Kind::address:
      add_address(taken);
      break;
    case Taken::Kind::contact:
      add_contact(taken);
      break;
    case Taken::Kind::photograph:
      words_.try_emplace(taken.text, Word{&taken});
      add_phrase(taken, words_in(taken.file));
      break;
  }
  if (!taken.salt.empty()) words_.try_emplace(taken.salt, Word{&taken});
}

bool Sought::says_nothing(const std::string& word) const {
  return letters_in(word) < 2 || is_number(word) || never_.contains(word) || seen_.contains(word);
}

void Sought::add_word(const Taken& taken, const std::string& word, bool ordinary) {
  const std::vector<std::string> spellings = text::spellings_of(word);
  if (says_nothing(spellings.front())) return;
  if (text::parts_no_words(word)) {
    runs_.push_back({spellings.front(), &taken});
    return;
  }
  ordinary = ordinary || ordinary_.contains(spellings.front());
  for (const std::string& spelling : spellings) {
    const auto [at, fresh] = words_.try_emplace(spelling, Word{&taken, ordinary});
    if (!fresh) at->second.ordinary = at->second.ordinary && ordinary;
    if (!ordinary && letters_in(spelling) >= kInDoubt) lengths_.insert(spelling.size());
  }
}

void Sought::add_phrase(const Taken& taken, std::vector<std::string> words) {
  if (words.size() == 1) return add_word(taken, words.front());
  const bool told = std::all_of(words.begin(), words.end(), [&](const std::string& word) {
    return seen_.contains(word) || never_.contains(word);
  });
  if (words.empty() || told) return;
  for (std::string& word : words)
    word = in_full(word);
  auto& all = phrases_[words.front()];
  const bool known =
      std::any_of(all.begin(), all.end(), [&](const Phrase& one) { return one.words == words; });
  if (!known) all.push_back({std::move(words), &taken});
}

void Sought::add_code(const Taken& taken, const std::string& code) {
  codes_.try_emplace(code, Word{&taken, is_number(code)});
}

void Sought::add_name(const Taken& taken) {
  const std::vector<std::string> words = words_in(taken.text);
  add_phrase(taken, words);
  for (const FoldedWord& word : text::folded_words(taken.text))
    add_word(taken, word.folded);
  // "ODwyer", "MacDuff"; in an id or a handle the whole of it.
  for (std::size_t i = 0; i + 1 < words.size(); ++i) {
    if (never_.contains(words[i]) || never_.contains(words[i + 1])) continue;
    if (seen_.contains(words[i]) && seen_.contains(words[i + 1])) continue;
    const std::size_t one = letters_in(words[i]);
    const std::size_t other = letters_in(words[i + 1]);
    if (std::min(one, other) <= 3 && one + other >= kInDoubt)
      add_word(taken, words[i] + words[i + 1]);
  }
  const bool told = std::all_of(words.begin(), words.end(), [&](const std::string& word) {
    return seen_.contains(word) || never_.contains(word);
  });
  if (!told && words.size() > 1 && letters_in(joined(words)) >= kAnywhere)
    add_word(taken, joined(words));
}

/// "Gus", "T.V.", but not "her aunt".
void Sought::add_capitalised(const Taken& taken, bool inscription) {
  const auto words = text::folded_words(taken.text);
  const bool capitals =
      std::all_of(words.begin(), words.end(), [](const FoldedWord& word) { return word.capital; });
  if (capitals && words.size() > 1) add_phrase(taken, words_in(taken.text));
  for (const FoldedWord& word : words) {
    if (!word.capital && !text::parts_no_words(word.folded)) continue;
    const bool of_reel = inscription && reel_.contains(text::spellings_of(word.folded).front());
    if (!of_reel) add_word(taken, word.folded, inscription);
  }
}

/// The whole; each part; and a street without its number.
void Sought::add_address(const Taken& taken) {
  add_phrase(taken, words_in(taken.text));
  std::string_view rest = taken.text;
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find_first_of(",;\n"), rest.size());
    add_part_of_address(taken, rest.substr(0, end));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
}

void Sought::add_part_of_address(const Taken& taken, std::string_view part) {
  constexpr std::size_t kLeastCode = 4;  // signs: a house has fewer
  const std::vector<std::string> words = words_in(part);
  if (words.size() > 1) add_phrase(taken, words);
  std::vector<std::string> street;
  for (std::size_t i = 0; i < words.size();) {
    // A postcode: one or two words with figures in them.
    const bool two = i + 1 < words.size() && has_digit(words[i]) && has_digit(words[i + 1]);
    const std::string code = two ? words[i] + words[i + 1] : words[i];
    if (has_digit(code)) {
      if (code.size() >= kLeastCode) add_code(taken, code);
    } else {
      street.push_back(words[i]);
    }
    i += two ? 2 : 1;
  }
  if (!street.empty()) add_phrase(taken, street);
}

/// A mail address and its halves, a web site, a handle, a telephone number; not "by letter".
void Sought::add_contact(const Taken& taken) {
  std::string digits;
  const auto close = [&] {
    if (digits.size() >= kShortNumber) numbers_.push_back({digits, &taken});
    digits.clear();
  };
  for (const std::string_view chunk : base::words_of(taken.text)) {
    const std::size_t sign = chunk.find('@');
    const bool site = sign == std::string_view::npos && chunk.find('.') != std::string_view::npos &&
                      !has_digit(chunk);
    if (sign != std::string_view::npos) {
      add_phrase(taken, words_in(chunk));
      add_phrase(taken, words_in(chunk.substr(0, sign)));
      add_phrase(taken, words_in(chunk.substr(sign + 1)));
    } else if (site) {
      std::vector<std::string> words = words_in(chunk);
      std::erase_if(words, [](const std::string& word) {
        return word == "www" || word == "http" || word == "https";
      });
      if (words.size() > 1) {
        add_phrase(taken, words);
        if (letters_in(words.front()) >= kAtAnEnd) add_word(taken, words.front());
      }
    }
    const bool of_number = has_digit(chunk) && sign == std::string_view::npos;
    if (!of_number) {
      close();
      continue;
    }
    std::copy_if(chunk.begin(), chunk.end(), std::back_inserter(digits), is_digit);
    if (chunk.find_first_of(",;") != std::string_view::npos) close();
  }
  close();
}

// ---- where it is looked for --------------------------------------------------------------------

/// One text.
class Sought::Search {
 public:
  Search(const Sought& sought, std::string_view text, Written how)
      : sought_(sought), text_(text), how_(how), words_(text::folded_words(text)) {
    for (const FoldedWord& word : words_)
      spellings_.push_back(text::spellings_of(word.folded));
  }

  std::optional<Find> done() && {
    for (std::size_t at = 0; at < words_.size() && !certain(); ++at) {
      at_phrase(at);
      at_word(at);
      at_pair(at);
      at_code(at);
      inside(at);
      in_run(at);
    }
    if (!certain()) in_numbers();
    return found_;
  }

 private:
  [[nodiscard]] bool certain() const { return found_ && found_->certain; }

  void take(const Taken* taken, bool is_certain, std::size_t begin, std::size_t end) {
    if (found_ && (found_->certain || !is_certain)) return;
    found_ = Find{taken, is_certain, begin, end};
  }

  void at_phrase(std::size_t at) {
    const auto found = sought_.phrases_.find(in_full(spellings_[at].front()));
    if (found == sought_.phrases_.end()) return;
    for (const Phrase& phrase : found->second) {
      if (words_.size() - at < phrase.words.size()) continue;
      bool stands = true;
      for (std::size_t i = 0; stands && i < phrase.words.size(); ++i)
        stands = in_full(spellings_[at + i].front()) == phrase.words[i];
      if (stands)
        take(phrase.taken, true, words_[at].begin, words_[at + phrase.words.size() - 1].end);
    }
  }

  void at_word(std::size_t at) {
    for (const std::string& spelling : spellings_[at]) {
      for (const std::string& stem : stems_of(spelling)) {
        const auto found = sought_.words_.find(stem);
        if (found == sought_.words_.end()) continue;
        if (!found->second.ordinary) {
          take(found->second.taken, true, words_[at].begin, words_[at].end);
        } else if (const auto sure = weight_of_ordinary(at)) {
          take(found->second.taken, *sure, words_[at].begin, words_[at].end);
        }
      }
    }
  }

  /// Certain, in doubt, or nothing.
  [[nodiscard]] std::optional<bool> weight_of_ordinary(std::size_t at) const {
    if (how_ == Written::name) return false;
    if (!words_[at].capital) return std::nullopt;
    const bool beside_number = (at > 0 && is_number(words_[at - 1].folded)) ||
                               (at + 1 < words_.size() && is_number(words_[at + 1].folded));
    if (sought_.dated_.contains(spellings_[at].front()))
      return beside_number ? std::nullopt : std::optional(false);
    return !beside_number && !words_[at].opens_sentence;
  }

  /// "Quill-feather", "O'Dwyer" for "Odwyer"; with a space between in doubt.
  void at_pair(std::size_t at) {
    if (at + 1 >= words_.size()) return;
    const std::string_view gap =
        text_.substr(words_[at].end, words_[at + 1].begin - words_[at].end);
    const bool tied = gap == "-" || gap == "'" || gap == "’" || gap == "‐" || gap == "‑" ||
                      gap == "_" || gap == ".";
    if (!tied && !base::trimmed(gap).empty()) return;
    const std::string both = spellings_[at].front() + spellings_[at + 1].front();
    if (letters_in(both) < (tied ? kAtAnEnd : kApart)) return;
    for (const std::string& stem : stems_of(both)) {
      const auto found = sought_.words_.find(stem);
      if (found != sought_.words_.end() && !found->second.ordinary)
        take(found->second.taken, tied, words_[at].begin, words_[at + 1].end);
    }
  }

  void at_code(std::size_t at) {
    const std::string& word = spellings_[at].front();
    if (!has_digit(word) || sought_.codes_.empty()) return;
    if (const auto found = sought_.codes_.find(word); found != sought_.codes_.end())
      take(found->second.taken, !found->second.ordinary, words_[at].begin, words_[at].end);
    if (at + 1 >= words_.size()) return;
    const auto found = sought_.codes_.find(word + spellings_[at + 1].front());
    if (found != sought_.codes_.end())
      take(found->second.taken, !found->second.ordinary, words_[at].begin, words_[at + 1].end);
  }

  /// In a longer word, by looking up each stretch of it that is as long as something sought.
  void inside(std::size_t at) {
    for (const std::string& word : spellings_[at]) {
      for (const std::size_t length : sought_.lengths_) {
        if (length >= word.size()) break;
        const std::size_t last = word.size() - length;
        for (std::size_t begin = 0; begin <= last; ++begin) {
          const auto found = sought_.words_.find(word.substr(begin, length));
          if (found == sought_.words_.end() || found->second.ordinary) continue;
          const bool at_an_end = begin == 0 || begin == last;
          const std::size_t letters = letters_in(found->first);
          if (!at_an_end && letters < kAtAnEnd) continue;
          const bool sure = letters >= kAnywhere || (letters >= kAtAnEnd && at_an_end);
          take(found->second.taken, sure, words_[at].begin, words_[at].end);
        }
      }
    }
  }

  void in_run(std::size_t at) {
    if (sought_.runs_.empty() || !text::parts_no_words(words_[at].folded)) return;
    const std::string& word = spellings_[at].front();
    if (sought_.seen_.contains(word)) return;
    constexpr std::size_t kTwoSigns = 6;  // bytes of UTF-8
    for (const Number& run : sought_.runs_) {
      if (word.find(run.digits) != std::string::npos) {
        take(run.taken, true, words_[at].begin, words_[at].end);
      } else if (run.digits.size() > kTwoSigns &&
                 word.find(run.digits.substr(0, kTwoSigns)) != std::string::npos) {
        take(run.taken, false, words_[at].begin, words_[at].end);
      }
    }
  }

  /// Runs of digits, however they are grouped.
  void in_numbers() {
    if (sought_.numbers_.empty()) return;
    std::string run;
    std::size_t begin = 0;
    std::size_t end = 0;
    std::size_t between = 0;
    for (std::size_t i = 0; i <= text_.size(); ++i) {
      const char sign = i < text_.size() ? text_[i] : 'x';
      if (is_digit(sign)) {
        if (run.empty()) begin = i;
        run += sign;
        end = i + 1;
        between = 0;
        continue;
      }
      // At most three signs between two groups: ") ", a no-break space.
      const bool parts = std::string_view(" .-/()+\t\n\u00A0\u2009\u202F\u2011\u2013").find(sign) !=
                         std::string_view::npos;
      if (parts && ++between <= 3) continue;
      is_number_of(run, begin, end);
      run.clear();
      between = 0;
    }
  }

  void is_number_of(const std::string& run, std::size_t begin, std::size_t end) {
    if (run.size() < kShortNumber) return;
    for (const Number& number : sought_.numbers_) {
      const std::size_t tail = std::min(number.digits.size(), kLongNumber);
      const std::string last = number.digits.substr(number.digits.size() - tail);
      const bool whole = tail == kLongNumber && run.find(last) != std::string::npos;
      if (whole || number.digits.ends_with(run)) take(number.taken, true, begin, end);
    }
  }

  const Sought& sought_;
  std::string_view text_;
  Written how_;
  std::vector<FoldedWord> words_;
  std::vector<std::vector<std::string>> spellings_;
  std::optional<Find> found_;
};

std::optional<Find> Sought::first_in(std::string_view text, Written how) const {
  return Search(*this, text, how).done();
}

}  // namespace winchbook::app
