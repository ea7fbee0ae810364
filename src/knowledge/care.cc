#include "knowledge/care.h"

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>

#include "knowledge/stamp_text.h"

namespace winchbook::knowledge {
namespace {

constexpr std::string_view kAny = "any";

bool holds(const std::vector<std::string>& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// How narrowly a list speaks of a substance: 0 not at all, 1 "any", 2 its family, 3 itself.
int narrowness(const CareRow& row, const Substance& substance) {
  if (holds(row.on, substance.family)) return 2;
  if (holds(row.on, substance.word)) return 3;
  return holds(row.on, kAny) ? 1 : 0;
}

/// The same with the method, which decides between rows that name the same.
int rank_of(const CareRow& row, const Substance& substance, const CareMethod& method) {
  const int of_substance = narrowness(row, substance);
  if (of_substance == 0) return 0;
  if (holds(row.methods, method.word)) return 2 * of_substance + 1;
  return holds(row.methods, kAny) ? 2 * of_substance : 0;
}

/// Words behind which something was not done.
bool denies(const std::string& word) {
  static constexpr std::array<std::string_view, 13> kDenials{
      "NO",    "NOT",    "NEVER", "WITHOUT", "NOR",     "INSTEAD", "ISNT",
      "WASNT", "WERENT", "DIDNT", "CANNOT",  "NOTHING", "NONE"};
  return std::find(kDenials.begin(), kDenials.end(), word) != kDenials.end();
}

bool is_any_of(std::string_view word, std::initializer_list<std::string_view> words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// "Could not avoid sanding", "did not fit until sanded", "no water so acetone".
bool ends_denial(std::string_view word) {
  return is_any_of(word, {"AVOID", "MIND", "HELP", "UNTIL", "UNLESS", "BEFORE", "BUT", "SO", "THEN",
                          "AFTER", "BECAUSE", "SINCE", "TILL", "REPLACING"});
}

/// "Sanded", "ground".
bool is_past(std::string_view word) {
  return word.ends_with("ED") || is_any_of(word, {"GROUND", "BLEW", "BLOWN", "SAWN", "CUT"});
}

/// A denial reaches over "or": "no water or soap".
bool denied_at(const std::vector<StampWord>& words, std::size_t at) {
  constexpr std::size_t kReach = 4;
  bool was = false;
  for (std::size_t back = 1; back <= kReach && back <= at; ++back) {
    const std::size_t i = at - back;
    const std::string& word = words[i].folded;
    if (words[i + 1].gap.find_first_of(",;.:") != std::string::npos) return false;
    if (ends_denial(word)) return false;
    was = was || is_any_of(word, {"WAS", "WERE", "IS", "ARE", "BE", "BEEN"});
    if (!denies(word)) continue;
    if (words[i + 1].folded == "ONLY") return false;
    // "Without a mask sanded": what was done is denied by "not", or by "nothing was".
    const bool of_things = is_any_of(word, {"NO", "WITHOUT", "NON", "INSTEAD"});
    return !of_things || was || !is_past(words[at].folded);
  }
  return false;
}

/// Whether one of the signs parts a word from the one before it.
bool is_parted(const std::vector<StampWord>& words, std::size_t at, const char* signs) {
  return words[at].gap.find_first_of(signs) != std::string::npos;
}

/// No comma stands in it: "nickel, silver and brass" has no nickel silver.
bool is_of_one_piece(const std::vector<StampWord>& words, std::size_t at, std::size_t length) {
  for (std::size_t i = at + 1; i < at + length; ++i) {
    if (is_parted(words, i, ",;:(")) return false;
  }
  return true;
}

/// The longest form of a list that stands at a word.
struct Found {
  std::size_t row = 0;     ///< position in the list
  std::size_t length = 0;  ///< words; 0: none stands there
};

template <class Row>
Found longest_at(const std::vector<Row>& rows, const std::vector<StampWord>& words,
                 std::size_t at) {
  Found found;
  for (std::size_t row = 0; row < rows.size(); ++row) {
    for (const std::string& form : rows[row].forms) {
      if (!form.starts_with(words[at].folded)) continue;  // most end here
      const std::size_t length = phrase_at(words, at, form);
      if (length > found.length && is_of_one_piece(words, at, length)) found = {row, length};
    }
  }
  return found;
}

template <class Row> void add_once(std::vector<const Row*>& all, const Row& one) {
  if (std::find(all.begin(), all.end(), &one) == all.end()) all.push_back(&one);
}

template <class Row> const Row* find_by_word(const std::vector<Row>& rows, std::string_view word) {
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const Row& one) { return one.word == word; });
  return found == rows.end() ? nullptr : &*found;
}

/// How many letters must be struck, added, changed or swapped to make one word of another; more
/// than `most` is not reckoned on.
std::size_t slips(std::string_view a, std::string_view b, std::size_t most) {
  if (std::max(a.size(), b.size()) - std::min(a.size(), b.size()) > most) return most + 1;
  std::vector<std::vector<std::size_t>> cost(a.size() + 1, std::vector<std::size_t>(b.size() + 1));
  for (std::size_t i = 0; i <= a.size(); ++i) {
    for (std::size_t j = 0; j <= b.size(); ++j) {
      if (i == 0 || j == 0) {
        cost[i][j] = i + j;
        continue;
      }
      const std::size_t change = a[i - 1] == b[j - 1] ? 0 : 1;
      cost[i][j] = std::min({cost[i - 1][j] + 1, cost[i][j - 1] + 1, cost[i - 1][j - 1] + change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        cost[i][j] = std::min(cost[i][j], cost[i - 2][j - 2] + 1);
    }
  }
  return cost[a.size()][b.size()];
}

/// Whether a word is most likely another, mistyped.
bool is_slip_of(std::string_view typed, std::string_view meant) {
  constexpr std::size_t kShortest = 6;
  constexpr std::size_t kLong = 8;
  if (meant.size() < kShortest || meant.find(' ') != std::string_view::npos) return false;
  const std::size_t most = meant.size() < kLong ? 1 : 2;
  return slips(typed, meant, most) <= most;
}

/// Words that tell nothing of how or of what.
bool is_small(const std::string& word) {
  static constexpr std::array<std::string_view, 17> kSmall{
      "A",  "AN", "AND", "AT", "BY",  "CLEAN", "CLEANED", "CLEANING", "FOR",
      "IN", "IT", "OF",  "ON", "THE", "TO",    "USING",   "WITH"};
  return std::find(kSmall.begin(), kSmall.end(), word) != kSmall.end();
}

/// Right before a word, or before the one word that describes it: "imitation carved ivory".
bool stands_before(const CareTable& table, const std::vector<StampWord>& words, std::size_t at,
                   const std::string& phrase, bool reaches) {
  const auto count = static_cast<std::size_t>(std::count(phrase.begin(), phrase.end(), ' ')) + 1;
  if (at == 0 || is_parted(words, at, ",;.:()/+")) return false;
  if (count <= at && phrase_at(words, at - count, phrase) == count) return true;
  const bool described = reaches && count + 1 <= at && !is_parted(words, at - 1, ",;.:()/+") &&
                         longest_at(table.substances, words, at - 1).length == 0;
  return described && phrase_at(words, at - 1 - count, phrase) == count;
}

/// "Free" behind a material, but not "celluloid free of cracks", "brass like new", "steel type
/// 303".
bool stands_behind(const std::vector<StampWord>& words, std::size_t at, const std::string& phrase,
                   const char* parted_by) {
  if (at >= words.size() || is_parted(words, at, parted_by)) return false;
  const std::size_t count = phrase_at(words, at, phrase);
  if (count == 0) return false;
  const std::size_t next = at + count;
  if (next >= words.size() || is_parted(words, next, ",;.:()")) return true;
  static constexpr std::array<std::string_view, 4> kOther{"OF", "FROM", "NEW", "SPOOL"};
  return !words[next].number &&
         std::find(kOther.begin(), kOther.end(), words[next].folded) == kOther.end();
}

/// What the words beside a phrase make of it; nothing: it is what it says.
std::optional<Qualifier::Kind> qualified(const CareTable& table,
                                         const std::vector<StampWord>& words, std::size_t at,
                                         std::size_t length) {
  for (const Qualifier& one : table.qualifiers) {
    const bool reaches = one.kind == Qualifier::Kind::likeness;
    // "Ivory (imitation)" and "asbestos: none"; but "steel, white" is steel.
    const char* parted_by = one.kind == Qualifier::Kind::colour ? ",;.:()/+" : ",;./+";
    const bool before =
        std::any_of(one.before.begin(), one.before.end(), [&](const std::string& phrase) {
          return stands_before(table, words, at, phrase, reaches);
        });
    const bool after =
        std::any_of(one.after.begin(), one.after.end(), [&](const std::string& phrase) {
          return stands_behind(words, at + length, phrase, parted_by);
        });
    if (before || after) return one.kind;
  }
  return std::nullopt;
}

/// The words of a phrase that names nothing, though a word of it does: "wood screw".
std::size_t other_at(const CareTable& table, const std::vector<StampWord>& words, std::size_t at) {
  return longest_at(table.qualifiers, words, at).length;
}

/// A method or an act that was not done, or only told of by what lacks it: "acid-free tissue".
bool is_absent(const CareTable& table, const std::vector<StampWord>& words, std::size_t at,
               std::size_t length) {
  return denied_at(words, at) || qualified(table, words, at, length) == Qualifier::Kind::absence;
}

std::string singular(std::string_view folded) {
  const bool plural = folded.size() > 3 && folded.ends_with('S');
  return std::string(folded.substr(0, folded.size() - (plural ? 1 : 0)));
}

Found act_at(const CareTable& table, const std::vector<StampWord>& words, std::size_t at) {
  return other_at(table, words, at) > 0 ? Found{} : longest_at(table.acts, words, at);
}

/// Reads what a text names, from its first word to its last.
class MaterialReading {
 public:
  MaterialReading(const CareTable& table, std::string_view text, bool methods_too)
      : table_(table), text_(text), words_(stamp_words(text)), methods_too_(methods_too) {}

  CareWords read() && {
    for (std::size_t at = 0; at < words_.size();)
      at += take_at(at);
    return std::move(all_);
  }

 private:
  /// Takes what stands at a word, and says how many words it has.
  std::size_t take_at(std::size_t at) {
    if (const std::size_t other = other_at(table_, words_, at); other > 0) return other;
    const Found substance = longest_at(table_.substances, words_, at);
    const Found method = methods_too_ ? longest_at(table_.methods, words_, at) : Found{};
    if (method.length > 0 && method.length >= substance.length) {
      if (!is_absent(table_, words_, at, method.length))
        add_once(all_.methods, table_.methods[method.row]);
      return method.length;
    }
    if (substance.length > 0) {
      take_substance(table_.substances[substance.row], at, substance.length);
      return substance.length;
    }
    if (!take_two(words_[at].folded)) take_left_over(at);
    return 1;
  }

  void take_substance(const Substance& substance, std::size_t at, std::size_t length) {
    // A denial reaches over "or": "no asbestos or lead".
    const bool after_or =
        at > 0 && (words_[at - 1].folded == "OR" || words_[at - 1].folded == "NOR");
    const auto made_of_it = absent_ && (after_or || is_in_denied_list(at))
                                ? std::optional(Qualifier::Kind::absence)
                                : qualified(table_, words_, at, length);
    absent_ = made_of_it == Qualifier::Kind::absence;
    // "Celluloid white" is celluloid, and so is "imitation tortoiseshell celluloid".
    const bool stays =
        substance.hazard && (made_of_it == Qualifier::Kind::colour ||
                             (made_of_it == Qualifier::Kind::likeness && length > 1));
    if (!made_of_it || stays) {
      add_once(all_.substances, substance);
    } else if (made_of_it == Qualifier::Kind::likeness) {
      if (const Substance* other = find_substance(table_, substance.imitated_by))
        add_once(all_.substances, *other);
    }
  }

  /// "No lead, cadmium or asbestos" denies three; "not brass, steel" is steel.
  [[nodiscard]] bool is_in_denied_list(std::size_t at) const {
    if (words_[at].gap.find(',') == std::string::npos) return false;
    while (at < words_.size()) {
      const std::size_t length = longest_at(table_.substances, words_, at).length;
      if (length == 0) return false;
      at += length;
      if (at >= words_.size()) return false;
      if (words_[at].folded == "OR" || words_[at].folded == "NOR") return true;
      if (words_[at].gap.find(',') == std::string::npos) return false;
    }
    return false;
  }

  /// A word of two materials: "corkleather".
  bool take_two(const std::string& word) {
    constexpr std::size_t kShortest = 4;
    for (std::size_t split = kShortest; split + kShortest <= word.size(); ++split) {
      const Substance* first = by_form(word.substr(0, split));
      const Substance* second = by_form(word.substr(split));
      if (first == nullptr || second == nullptr) continue;
      add_once(all_.substances, *first);
      add_once(all_.substances, *second);
      return true;
    }
    return false;
  }

  [[nodiscard]] const Substance* by_form(const std::string& form) const {
    for (const Substance& one : table_.substances) {
      if (holds(one.forms, form)) return &one;
    }
    return nullptr;
  }

  void take_left_over(std::size_t at) {
    if (is_small(words_[at].folded)) return;
    if (all_.left_over.empty() || at != left_to_) {
      if (!all_.left_over.empty()) return;  // the first run is told
      left_from_ = at;
    }
    left_to_ = at + 1;
    all_.left_over = as_typed(text_, words_, left_from_, left_to_);
  }

  const CareTable& table_;
  std::string_view text_;
  std::vector<StampWord> words_;
  bool methods_too_ = false;
  bool absent_ = false;  ///< the substance before was denied
  std::size_t left_from_ = 0;
  std::size_t left_to_ = 0;
  CareWords all_;
};

}  // namespace

const CareRow* find_row(const CareTable& table, const Substance& substance,
                        const CareMethod& method) {
  const CareRow* best = nullptr;
  int highest = 0;
  for (const CareRow& row : table.rows) {
    if (!row.with.empty() || !row.beside.empty()) continue;
    const int rank = rank_of(row, substance, method);
    if (rank == 0 || rank < highest) continue;
    if (rank == highest && row.verdict <= best->verdict) continue;
    highest = rank;
    best = &row;
  }
  return best;
}

bool speaks_of(const CareRow& row, const Substance& substance, const CareMethod& method) {
  return rank_of(row, substance, method) > 0;
}

bool names(const std::vector<std::string>& words, const Substance& substance) {
  return holds(words, substance.word) || holds(words, substance.family);
}

const Substance* find_substance(const CareTable& table, std::string_view word) {
  return find_by_word(table.substances, word);
}

const CareMethod* find_method(const CareTable& table, std::string_view word) {
  return find_by_word(table.methods, word);
}

std::vector<const Substance*> substances_in(const CareTable& table, std::string_view text) {
  return MaterialReading(table, text, false).read().substances;
}

CareWords care_words(const CareTable& table, std::string_view text) {
  return MaterialReading(table, text, true).read();
}

std::vector<const CareMethod*> methods_in(const CareTable& table, std::string_view text) {
  return care_words(table, text).methods;
}

std::vector<const Act*> acts_in(const CareTable& table, std::string_view text) {
  const std::vector<StampWord> words = stamp_words(text);
  std::vector<const Act*> all;
  for (std::size_t at = 0; at < words.size();) {
    const Found act = act_at(table, words, at);
    if (act.length > 0 && !is_absent(table, words, at, act.length))
      add_once(all, table.acts[act.row]);
    at += std::max<std::size_t>({act.length, other_at(table, words, at), 1});
  }
  return all;
}

std::vector<std::string> handled_in(const CareTable& table, std::string_view text,
                                    std::string_view hazard) {
  const std::vector<StampWord> words = stamp_words(text);
  std::vector<std::string> heads;
  for (std::size_t at = 0; at < words.size();) {
    const Found act = act_at(table, words, at);
    if (act.length > 0 && table.acts[act.row].hazard == hazard &&
        !is_absent(table, words, at, act.length))
      heads.push_back(singular(words[at + act.length - 1].folded));
    at += std::max<std::size_t>({act.length, other_at(table, words, at), 1});
  }
  return heads;
}

bool is_hazardous(const CareTable& table, const Substance& substance) {
  return std::any_of(table.flags.begin(), table.flags.end(), [&](const FlagRule& rule) {
    return !rule.legal &&
           std::any_of(rule.triggers.begin(), rule.triggers.end(), [&](const FlagTrigger& one) {
             return one.methods.empty() && one.places.empty() && names(one.of, substance);
           });
  });
}

bool is_called(std::string_view name, std::string_view head) {
  const std::vector<StampWord> words = stamp_words(name);
  return std::any_of(words.begin(), words.end(),
                     [&](const StampWord& word) { return singular(word.folded) == head; });
}

std::string dust_in(const CareTable& table, std::string_view text) {
  for (const CareMethod* method : methods_in(table, text)) {
    if (method->dust) return method->name;
  }
  for (const Act* act : acts_in(table, text)) {
    if (act->dust) return act->name;
  }
  return {};
}

std::vector<AskedCaution> cautions_in(const CareTable& table, std::string_view text) {
  const std::vector<StampWord> words = stamp_words(text);
  std::vector<AskedCaution> cautions;
  const auto add = [&](const std::string& word, const std::string& hazard) {
    const bool known = std::any_of(cautions.begin(), cautions.end(),
                                   [&](const AskedCaution& one) { return one.word == word; });
    if (!word.empty() && !known) cautions.push_back({word, hazard});
  };
  for (std::size_t at = 0; at < words.size();) {
    const Found act = act_at(table, words, at);
    const std::size_t other = other_at(table, words, at);
    const Found method = other > 0 ? Found{} : longest_at(table.methods, words, at);
    const std::size_t length = std::max({act.length, method.length, other, std::size_t{1}});
    // Of an act and a method at the same words, the act says it more narrowly.
    if (act.length > 0) {
      if (!is_absent(table, words, at, act.length))
        add(table.acts[act.row].caution, table.acts[act.row].hazard);
    } else if (method.length > 0 && !is_absent(table, words, at, method.length)) {
      add(table.methods[method.row].caution, "");
    }
    at += length;
  }
  return cautions;
}

const Substance* meant_in(const CareTable& table, std::string_view text) {
  const std::vector<StampWord> words = stamp_words(text);
  for (std::size_t at = 0; at < words.size(); ++at) {
    if (longest_at(table.substances, words, at).length > 0) continue;
    for (const Substance& substance : table.substances) {
      const bool near =
          std::any_of(substance.forms.begin(), substance.forms.end(),
                      [&](const std::string& form) { return is_slip_of(words[at].folded, form); });
      if (near) return &substance;
    }
  }
  return nullptr;
}

bool mentions(std::string_view text, std::string_view name) {
  const std::string phrase = folded_phrase(name);
  return !phrase.empty() && has_phrase(text, {phrase});
}

bool has_phrase(std::string_view text, const std::vector<std::string>& phrases) {
  if (phrases.empty() || text.empty()) return false;
  const std::vector<StampWord> words = stamp_words(text);
  return std::any_of(phrases.begin(), phrases.end(), [&](const std::string& phrase) {
    for (std::size_t at = 0; at < words.size(); ++at) {
      if (phrase_at(words, at, phrase) > 0) return true;
    }
    return false;
  });
}

}  // namespace winchbook::knowledge
