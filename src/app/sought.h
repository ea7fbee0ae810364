#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "base/result.h"
#include "library/library.h"
#include "recordfile/withhold.h"

namespace winchbook::app {

/// How words that stand in names are read: shared/names.txt.
struct NameWords {
  std::vector<std::string> never;     ///< folded; say nothing by themselves: "captain", "van"
  std::vector<std::string> ordinary;  ///< folded; a name only with a capital: "brown", "rose"
  std::vector<std::string> dated;     ///< folded; of them those that stand in dates: "june"
};

/// Reads shared/names.txt, whose lines are "never WORD…", "ordinary WORD…" or "dated WORD…"; '#'
/// begins a comment.
[[nodiscard]] base::Result<NameWords> read_name_words(library::Library& library);

/// How a text is written: in sentences, where a capital says something; or as the name of a thing
/// (an id, a file), where it says nothing.
enum class Written { prose, name };

/// Where a text tells what was withheld.
struct Find {
  const recordfile::Taken* taken = nullptr;
  bool certain = true;    ///< else it may be a word like any other: somebody has to look
  std::size_t begin = 0;  ///< byte offsets
  std::size_t end = 0;
};

/// What a person would write of what was withheld: not only the words of the record, but their
/// plurals and genitives, with accents and without, joined to other words or taken apart; a street
/// without its number; a telephone number however its digits are grouped.
///
/// Words are compared as text::folded_words gives them, in every spelling of text::spellings_of.
/// - A word of a name, a short name, or with a capital of a mention or an inscription: by itself,
///   with a usual ending (-s, -es, -en …), in two parts with a hyphen or an apostrophe between, and
///   in a longer word: one of six letters anywhere, one of five at either end, one of four at
///   either end in doubt. Not words that say nothing by themselves, nor those everybody may see.
///   A word that is also one of the language is certain with a capital inside a sentence, in doubt
///   at the beginning of one or beside a number, and nothing in small letters; in the name of a
///   thing it is in doubt. The name of a month is in doubt at most, and nothing beside a number.
/// - In scripts that part no words, anywhere.
/// - A phrase: a whole name; of an address the whole, each part of two words, and a street without
///   its number ("Rd" is "Road"); of a contact the mail address, its two halves, a web site.
/// - A code of letters and figures, and a postcode of figures (in doubt), with a space or without.
/// - A telephone number: any run of digits that ends as it does, seven digits long; or the whole of
///   a shorter run, six digits at least.
class Sought {
 public:
  /// What everybody may see.
  struct Seen {
    std::vector<std::string> names;  ///< of the maker, the bench, whoever may be named
    std::string
        reel;  ///< what the reel is called: it may tell a person, but an inscription's words
  };

  /// `withheld` must outlive it.
  Sought(const recordfile::Withholding& withheld, const Seen& seen, const NameWords& names);

  /// The first that is certain; or else the first in doubt.
  [[nodiscard]] std::optional<Find> first_in(std::string_view text, Written how) const;

  /// How many words, phrases and numbers are looked for.
  [[nodiscard]] std::size_t size() const;

 private:
  class Search;

  struct Word {
    const recordfile::Taken* taken = nullptr;
    bool ordinary = false;
  };
  struct Phrase {
    std::vector<std::string> words;
    const recordfile::Taken* taken = nullptr;
  };
  struct Number {
    std::string digits;
    const recordfile::Taken* taken = nullptr;
  };

  void add(const recordfile::Taken& taken);
  void add_name(const recordfile::Taken& taken);
  void add_capitalised(const recordfile::Taken& taken, bool inscription);
  void add_address(const recordfile::Taken& taken);
  void add_part_of_address(const recordfile::Taken& taken, std::string_view part);
  void add_contact(const recordfile::Taken& taken);
  void add_phrase(const recordfile::Taken& taken, std::vector<std::string> words);
  void add_word(const recordfile::Taken& taken, const std::string& word, bool ordinary = false);
  void add_code(const recordfile::Taken& taken, const std::string& code);
  [[nodiscard]] bool says_nothing(const std::string& word) const;

  std::set<std::string, std::less<>> never_;
  std::set<std::string, std::less<>> ordinary_;
  std::set<std::string, std::less<>> dated_;
  std::set<std::string, std::less<>> seen_;
  std::set<std::string, std::less<>> reel_;
  std::unordered_map<std::string, Word> words_;
  std::set<std::size_t> lengths_;  ///< of the words that are looked for inside others
  std::map<std::string, std::vector<Phrase>, std::less<>> phrases_;  ///< by their first word
  std::unordered_map<std::string, Word> codes_;                      ///< ordinary: in doubt
  std::vector<Number> numbers_;
  std::vector<Number> runs_;  ///< of scripts that part no words; `digits` are their letters
};

}  // namespace winchbook::app
