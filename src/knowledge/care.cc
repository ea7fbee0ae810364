#include "knowledge/care.h"

#include <algorithm>
#include <cstddef>

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
  return word == "NO" || word == "NOT" || word == "NEVER" || word == "WITHOUT" || word == "NOR" ||
         word == "INSTEAD";
}

/// A denial reaches over "or": "no water or soap".
bool denied_at(const std::vector<StampWord>& words, std::size_t at) {
  constexpr std::size_t kReach = 4;
  for (std::size_t back = 1; back <= kReach && back <= at; ++back) {
    const std::size_t i = at - back;
    if (words[i + 1].gap.find_first_of(",;.:") != std::string::npos) return false;
    if (denies(words[i].folded)) return true;
  }
  return false;
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
      if (length > found.length) found = {row, length};
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
  const std::vector<StampWord> words = stamp_words(text);
  std::vector<const Substance*> all;
  for (std::size_t at = 0; at < words.size();) {
    const Found found = longest_at(table.substances, words, at);
    if (found.length > 0) add_once(all, table.substances[found.row]);
    at += std::max<std::size_t>(found.length, 1);
  }
  return all;
}

CareWords care_words(const CareTable& table, std::string_view text) {
  const std::vector<StampWord> words = stamp_words(text);
  CareWords all;
  for (std::size_t at = 0; at < words.size();) {
    const Found substance = longest_at(table.substances, words, at);
    const Found method = longest_at(table.methods, words, at);
    if (method.length >= substance.length && method.length > 0) {
      if (!denied_at(words, at)) add_once(all.methods, table.methods[method.row]);
    } else if (substance.length > 0) {
      add_once(all.substances, table.substances[substance.row]);
    }
    at += std::max<std::size_t>({substance.length, method.length, 1});
  }
  return all;
}

std::vector<const CareMethod*> methods_in(const CareTable& table, std::string_view text) {
  return care_words(table, text).methods;
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
