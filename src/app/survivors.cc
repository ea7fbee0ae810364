#include "app/survivors.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <utility>

#include "base/words_of_text.h"
#include "text/folded_words.h"
#include "xml/document.h"
#include "xml/walk.h"

namespace winchbook::app {
namespace {

using base::Diagnostics;
using recordfile::Taken;
using text::FoldedWord;

constexpr std::size_t kMostTold = 20;

using Phrase = std::vector<std::string>;  // folded words

/// What is looked for, and whose it is.
struct Wanted {
  Phrase phrase;
  bool ordinary = false;  ///< one word, that also is a word of the language
  const Taken* taken = nullptr;
};

std::set<std::string> set_of(const std::vector<std::string>& words) {
  return {words.begin(), words.end()};
}

bool is_number(std::string_view word) {
  return !word.empty() && std::all_of(word.begin(), word.end(),
                                      [](char sign) { return sign >= '0' && sign <= '9'; });
}

Phrase phrase_of(std::string_view text) {
  Phrase phrase;
  for (FoldedWord& word : text::folded_words(text))
    phrase.push_back(std::move(word.folded));
  return phrase;
}

/// The words in names that everybody may see.
std::set<std::string> seen_anyway(const record::Record& record, record::Reader reader) {
  std::set<std::string> seen;
  const auto add = [&](std::string_view text) {
    for (std::string& word : phrase_of(text))
      seen.insert(std::move(word));
  };
  add(record.reel.model);
  add(record.reel.maker.name);
  add(record.reel.maker.place);
  add(record.reel.sold_by);
  add(record.bench.name);
  add(record.bench.place);
  add(record.bench.address);
  for (const record::Person& person : record.people) {
    const std::string* name = record::told(person.name);
    if (name != nullptr && may_see(reader, person.named_to)) add(*name);
  }
  return seen;
}

/// Everything to look for, out of everything that was taken.
class List {
 public:
  List(const Search& search)
      : never_(set_of(search.names.never)),
        ordinary_(set_of(search.names.ordinary)),
        seen_(seen_anyway(search.full.record, search.reader)) {
    for (const Taken& taken : search.withheld.taken)
      add(taken);
    for (const Taken& taken : search.withheld.unbound)
      add(taken);
  }

  /// What stands at `words[at]`, the longest first; null when nothing does.
  [[nodiscard]] const Wanted* at(const std::vector<FoldedWord>& words, std::size_t at) const {
    const auto found = by_first_.find(words[at].folded);
    if (found == by_first_.end()) return nullptr;
    for (const Wanted& wanted : found->second) {
      if (stands(wanted.phrase, words, at)) return &wanted;
    }
    return nullptr;
  }

 private:
  static bool stands(const Phrase& phrase, const std::vector<FoldedWord>& words, std::size_t at) {
    if (words.size() - at < phrase.size()) return false;
    return std::equal(
        phrase.begin(), phrase.end(), words.begin() + static_cast<std::ptrdiff_t>(at),
        [](const std::string& one, const FoldedWord& two) { return one == two.folded; });
  }

  void add(const Taken& taken) {
    switch (taken.kind) {
      case Taken::Kind::name:
      case Taken::Kind::short_name:
        name(taken);
        break;
      case Taken::Kind::mention:
        mention(taken);
        break;
      case Taken::Kind::address:
        address(taken);
        break;
      case Taken::Kind::contact:
        contact(taken);
        break;
      case Taken::Kind::inscription:
        whole(taken, phrase_of(taken.text));
        break;
      case Taken::Kind::photograph:
        look_for({taken.text}, taken);
        whole(taken, phrase_of(taken.file));
        break;
    }
    if (!taken.salt.empty()) look_for({taken.salt}, taken);
  }

  void name(const Taken& taken) {
    const Phrase phrase = phrase_of(taken.text);
    whole(taken, phrase);
    for (const std::string& word : phrase)
      by_itself(taken, word);
  }

  /// "Gus", "T.V.", but not "her aunt".
  void mention(const Taken& taken) {
    const auto words = text::folded_words(taken.text);
    const bool capitals = std::all_of(words.begin(), words.end(),
                                      [](const FoldedWord& word) { return word.capital; });
    if (capitals && words.size() > 1) whole(taken, phrase_of(taken.text));
    for (const FoldedWord& word : words) {
      if (word.capital) by_itself(taken, word.folded);
    }
  }

  /// The whole address; and its house by itself: the part with the number, or the first of several
  /// words.
  void address(const Taken& taken) {
    whole(taken, phrase_of(taken.text));
    std::string_view rest = taken.text;
    for (bool first = true; !rest.empty(); first = false) {
      const std::size_t end = std::min(rest.find_first_of(",;"), rest.size());
      const Phrase part = phrase_of(rest.substr(0, end));
      const bool numbered = std::any_of(part.begin(), part.end(), is_number);
      if (part.size() > 1 && (numbered || first)) whole(taken, part);
      rest.remove_prefix(std::min(end + 1, rest.size()));
    }
  }

  /// A mail address as a whole; the long numbers of a telephone; not "by letter".
  void contact(const Taken& taken) {
    constexpr std::size_t kLongNumber = 6;
    if (taken.text.find('@') != std::string::npos) whole(taken, phrase_of(taken.text));
    Phrase digits;
    std::size_t length = 0;
    const auto close = [&] {
      if (length >= kLongNumber) look_for(digits, taken);
      digits.clear();
      length = 0;
    };
    for (std::string& word : phrase_of(taken.text)) {
      if (is_number(word)) {
        length += word.size();
        digits.push_back(std::move(word));
      } else {
        close();
      }
    }
    close();
  }

  void whole(const Taken& taken, const Phrase& phrase) {
    if (phrase.size() == 1) return by_itself(taken, phrase.front());
    const bool told = std::all_of(phrase.begin(), phrase.end(),
                                  [&](const std::string& word) { return seen_.contains(word); });
    if (!told) look_for(phrase, taken);
  }

  void by_itself(const Taken& taken, const std::string& word) {
    if (word.size() < 2 || is_number(word) || never_.contains(word) || seen_.contains(word)) return;
    look_for({word}, taken, ordinary_.contains(word));
  }

  void look_for(Phrase phrase, const Taken& taken, bool ordinary = false) {
    if (phrase.empty() || !known_.insert(phrase).second) return;
    auto& list = by_first_[phrase.front()];
    list.push_back({std::move(phrase), ordinary, &taken});
    std::stable_sort(list.begin(), list.end(), [](const Wanted& one, const Wanted& other) {
      return one.phrase.size() > other.phrase.size();
    });
  }

  std::set<std::string> never_;
  std::set<std::string> ordinary_;
  std::set<std::string> seen_;
  std::set<Phrase> known_;
  std::map<std::string, std::vector<Wanted>, std::less<>> by_first_;
};

/// How sure a hit is: an error, a warning, or nothing at all.
std::optional<base::Severity> weight_of(const Wanted& wanted, const std::vector<FoldedWord>& words,
                                        std::size_t at) {
  if (!wanted.ordinary) return base::Severity::error;
  const bool beside_number = (at > 0 && is_number(words[at - 1].folded)) ||
                             (at + 1 < words.size() && is_number(words[at + 1].folded));
  if (!words[at].capital || beside_number) return std::nullopt;
  return words[at].opens_sentence ? base::Severity::warning : base::Severity::error;
}

struct Hit {
  const Wanted* wanted = nullptr;
  base::Severity severity = base::Severity::error;
  std::size_t begin = 0;
  std::string words;  ///< as written
};

/// The first error in a text, or else the first doubt.
std::optional<Hit> first_hit(const List& list, std::string_view text) {
  std::optional<Hit> found;
  const auto words = text::folded_words(text);
  for (std::size_t at = 0; at < words.size(); ++at) {
    const Wanted* wanted = list.at(words, at);
    const auto weight = wanted == nullptr ? std::nullopt : weight_of(*wanted, words, at);
    if (!weight || (found && *weight != base::Severity::error)) continue;
    const std::size_t end = words[at + wanted->phrase.size() - 1].end;
    found = Hit{wanted, *weight, words[at].begin,
                base::on_one_line(text.substr(words[at].begin, end - words[at].begin))};
    if (*weight == base::Severity::error) break;
  }
  return found;
}

const char* name_of(record::Reader reader) {
  return reader == record::Reader::insurer ? "an insurer" : "a stranger";
}

/// What to do about a name that stands where no reference guards it.
std::string cure(const Search& search, const Hit& hit) {
  const Taken& taken = *hit.wanted->taken;
  if (taken.kind == Taken::Kind::photograph) return "leave the photograph's name to <file>";
  const record::Person* person = find(search.full.record, record::PersonId{taken.person});
  if (taken.kind == Taken::Kind::address || taken.kind == Taken::Kind::contact) {
    return "leave it to <" +
           std::string(taken.kind == Taken::Kind::address ? "address" : "contact") +
           ">, where it can be withheld";
  }
  if (person == nullptr) return "leave the inscription to its <marking>";
  return fmt::format(
      "write <person ref=\"{}\">{}</person> so that it can be withheld, or \"{}\" "
      "where no name can stand",
      person->id.text, hit.words, person->stand_in);
}

/// Looks through the edition's record and what else the reader gets.
class Searcher {
 public:
  explicit Searcher(const Search& search) : search_(search), list_(search) {}

  Diagnostics done(const std::vector<Offered>& offered) {
    const auto edition = xml::Document::parse(search_.full.file, search_.withheld.bytes);
    if (!edition) return edition.faults();
    const xml::Source full(search_.full.file, search_.full.bytes);
    xml::for_each_text(*edition, [&](const xml::Text& text) { look_at(*edition, full, text); });
    for (const Offered& one : offered) {
      // What stands in the record was told with its place there.
      if (const auto hit = first_hit(list_, one.text); hit && !told_.contains(hit->wanted)) {
        tell(*hit, one.where, one.what, one.cure);
      }
    }
    if (count_ > kMostTold) {
      found_.push_back(base::error_at({search_.full.file, 0, 0},
                                      fmt::format("and {} more", count_ - kMostTold), "",
                                      "withheld-survives"));
    }
    return std::move(found_);
  }

 private:
  void look_at(const xml::Document& edition, const xml::Source& full, const xml::Text& text) {
    const auto hit = first_hit(list_, text.value);
    if (!hit) return;
    const bool attribute = !text.attribute.empty();
    tell(*hit,
         attribute ? full.where(search_.withheld.origin(text.offset))
                   : place(edition, full, text, *hit),
         attribute ? fmt::format("the attribute {}", text.attribute) : std::string(),
         cure(search_, *hit));
  }

  /// Where the hit stands in the full record; the beginning of its text when that holds references
  /// or other line ends, which count differently in the tree.
  base::Location place(const xml::Document& edition, const xml::Source& full, const xml::Text& text,
                       const Hit& hit) const {
    const bool as_written =
        std::string_view(edition.source().bytes()).substr(text.offset).starts_with(text.value);
    return full.where(search_.withheld.origin(text.offset + (as_written ? hit.begin : 0)));
  }

  void tell(const Hit& hit, base::Location where, const std::string& in, std::string hint) {
    told_.insert(hit.wanted);
    if (++count_ > kMostTold) return;
    const std::string here = in.empty() ? "here" : "in " + in;
    if (hit.severity == base::Severity::warning) {
      found_.push_back(base::warning_at(
          std::move(where),
          fmt::format("\"{}\" may be a name that is withheld from {}, and stands {}", hit.words,
                      name_of(search_.reader), here),
          std::move(hint), "withheld-survives"));
      return;
    }
    found_.push_back(base::error_at(std::move(where),
                                    fmt::format("\"{}\" is withheld from {}, and stands {}",
                                                hit.words, name_of(search_.reader), here),
                                    std::move(hint), "withheld-survives"));
  }

  const Search& search_;
  List list_;
  Diagnostics found_;
  std::set<const Wanted*> told_;
  std::size_t count_ = 0;
};

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
    Phrase said = phrase_of(line.substr(0, line.find('#')));
    if (said.empty()) continue;
    const std::string kind = said.front();
    if (kind != "never" && kind != "ordinary") {
      return base::of_machine(base::error_at(
          {file, number, 1},
          fmt::format("the line begins with \"{}\", expected never or ordinary", kind),
          "begin the line with one of the two", "file-names"));
    }
    auto& list = kind == "never" ? words.never : words.ordinary;
    list.insert(list.end(), std::make_move_iterator(said.begin() + 1),
                std::make_move_iterator(said.end()));
  }
  return words;
}

Diagnostics survivors(const Search& search, const std::vector<Offered>& offered) {
  if (search.withheld.taken.empty()) return {};
  return Searcher(search).done(offered);
}

}  // namespace winchbook::app
