#include "record/ranking.h"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>

#include "base/words_of_text.h"
#include "record/enum_words.h"

namespace winchbook::record {
namespace {

base::Diagnostic no_matter(const std::string& word) {
  std::string known;
  for (const auto& one : enum_words(Matter{}))
    known += (known.empty() ? "" : ", ") + std::string(one.word);
  return base::error(fmt::format("\"{}\" is none of the six matters", word),
                     "write them with commas, the most important first: " + known, "command-rank");
}

}  // namespace

base::Diagnostics read_typed(std::string_view typed, Ranking& into) {
  Ranking ranking;
  std::vector<Matter>& matters = ranking.matters;
  for (std::string_view rest = typed; !rest.empty();) {
    const std::size_t comma = std::min(rest.find(','), rest.size());
    std::string word(base::trimmed(rest.substr(0, comma)));
    std::replace(word.begin(), word.end(), ' ', '-');
    const auto matter = value_of<Matter>(word);
    if (!matter) return {no_matter(word)};
    if (std::find(matters.begin(), matters.end(), *matter) != matters.end()) {
      return {
          base::error(fmt::format("\"{}\" stands twice", word), "leave one out", "command-rank")};
    }
    matters.push_back(*matter);
    rest.remove_prefix(std::min(comma + 1, rest.size()));
  }
  into = std::move(ranking);
  return {};
}

}  // namespace winchbook::record
