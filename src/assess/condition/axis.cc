#include <algorithm>

#include "assess/condition/condition.h"

namespace winchbook::assess::condition {

using base::Ratio;

int word_of(const knowledge::ShareAxis& axis, Ratio share) {
  for (std::size_t word = 0; word < axis.words.size(); ++word) {
    const knowledge::WordThreshold& threshold = axis.words[word];
    const Ratio bound(threshold.percent, 100);
    if (share > bound || (threshold.inclusive && share == bound)) return static_cast<int>(word);
  }
  return static_cast<int>(axis.words.size()) - 1;
}

Ratio position_of(const knowledge::ShareAxis& axis, Ratio share) {
  const int word = word_of(axis, share);
  const auto words = static_cast<int>(axis.words.size());
  const Ratio low(axis.words[static_cast<std::size_t>(word)].percent, 100);
  const Ratio high =
      word == 0 ? Ratio(1, 1) : Ratio(axis.words[static_cast<std::size_t>(word) - 1].percent, 100);
  const Ratio step(1, words);
  const Ratio begin(words - 1 - word, words);
  if (high == low) return begin + step;  // a word for one single share stands at its end
  const Ratio width = high - low;
  return begin + (share - low) * Ratio(width.whole(), width.part()) * step;
}

}  // namespace winchbook::assess::condition
