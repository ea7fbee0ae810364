#include "record/named_people.h"

#include <algorithm>
#include <cctype>
#include <utility>

#include "base/words_of_text.h"

namespace winchbook::record {
namespace {

struct Name {
  std::string words;
  PersonId person;
};

/// The longest first.
std::vector<Name> names_of(const Record& record) {
  std::vector<Name> names;
  for (const Person& person : record.people) {
    const std::string* full = told(person.name);
    if (full != nullptr && !full->empty()) names.push_back({*full, person.id});
    if (!person.short_name.empty() && (full == nullptr || person.short_name != *full)) {
      names.push_back({person.short_name, person.id});
    }
  }
  std::stable_sort(names.begin(), names.end(), [](const Name& one, const Name& other) {
    return one.words.size() > other.words.size();
  });
  std::vector<Name> alone;
  for (const Name& name : names) {
    if (std::count_if(names.begin(), names.end(),
                      [&](const Name& one) { return one.words == name.words; }) == 1) {
      alone.push_back(name);
    }
  }
  return alone;
}

/// A letter, a digit, or the first byte of a letter beyond ASCII. Quotation marks and dashes begin
/// with E2.
bool is_of_a_word(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return (byte >= 0xC3 && byte != 0xE2) || std::isalnum(byte) != 0;
}

bool stands_alone(std::string_view text, std::size_t at, std::size_t length) {
  const bool before = at > 0 && is_of_a_word(text[at - 1]);
  const bool after = at + length < text.size() && is_of_a_word(text[at + length]);
  return !before && !after;
}

}  // namespace

std::vector<NamedStretch> name_people(const Record& record, std::string_view text) {
  const std::vector<Name> names = names_of(record);
  std::vector<NamedStretch> stretches;
  std::string plain;
  const auto end_plain = [&] {
    if (!plain.empty()) stretches.push_back({std::exchange(plain, {}), {}});
  };
  for (std::size_t at = 0; at < text.size();) {
    const auto named = std::find_if(names.begin(), names.end(), [&](const Name& name) {
      return text.substr(at).starts_with(name.words) && stands_alone(text, at, name.words.size());
    });
    if (named == names.end()) {
      plain += text[at++];
      continue;
    }
    end_plain();
    stretches.push_back({named->words, named->person});
    at += named->words.size();
  }
  end_plain();
  return stretches;
}

namespace {

/// Every word of every full name, but those of the maker's and "and" or "of".
std::vector<std::string> words_of_names(const Record& record) {
  constexpr std::size_t kShortest = 3;
  std::vector<std::string> words;
  for (const Person& person : record.people) {
    const std::string* full = told(person.name);
    if (full == nullptr) continue;
    for (const std::string_view part : base::parts_of(*full, ' ')) {
      std::string word(part);
      const bool of_maker = record.reel.maker.name.find(word) != std::string::npos;
      if (word.size() >= kShortest && !of_maker &&
          std::isupper(static_cast<unsigned char>(word[0])))
        words.push_back(std::move(word));
    }
  }
  return words;
}

}  // namespace

std::string without_names(const Record& record, std::string_view text) {
  std::string out;
  for (const NamedStretch& stretch : name_people(record, text)) {
    const Person* person = stretch.person.empty() ? nullptr : find(record, stretch.person);
    out += person == nullptr ? stretch.words : person->stand_in;
  }
  for (const std::string& word : words_of_names(record)) {
    for (std::size_t at = out.find(word); at != std::string::npos; at = out.find(word, at + 1)) {
      if (stands_alone(out, at, word.size())) out.replace(at, word.size(), "…");
    }
  }
  return out;
}

}  // namespace winchbook::record
