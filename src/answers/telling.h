#pragma once

#include <fmt/format.h>

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "base/enum_words.h"
#include "base/result.h"
#include "document/document.h"
#include "forms/job.h"
#include "words/catalogue.h"

/// How an answer becomes a document: blocks in one untitled chapter, in the words of a catalogue.
namespace winchbook::answers {

using Blocks = std::vector<document::Block>;

/// The language of an answer that is about no record.
inline constexpr std::string_view kNoRecord = "en-GB";

/// What the catalogue calls a value of a list: the message of `stem` and the value's word.
template <class Value>
[[nodiscard]] std::string called(const words::Catalogue& words, std::string_view stem,
                                 Value value) {
  return words.say(fmt::format("{}.{}", stem, base::word_of(value)));
}

/// A paragraph under a blank line; each line feed begins a line.
[[nodiscard]] document::Paragraph paragraph(std::string_view words);
/// The same, going on under the block before it.
[[nodiscard]] document::Paragraph next_line(std::string_view words);
/// A list whose items hold line feeds.
[[nodiscard]] document::List list_of(const std::vector<std::string>& items);
/// A row of a table.
[[nodiscard]] document::Row row_of(const std::vector<std::string>& cells);

/// Tells an answer in a language; it is the job's outcome.
[[nodiscard]] base::Result<forms::Outcome> tell(
    forms::Setting& setting, std::string_view language,
    const std::function<Blocks(const words::Catalogue&)>& blocks);

}  // namespace winchbook::answers
