#include "record/find_named.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <iterator>
#include <map>
#include <optional>
#include <utility>

#include "base/words_of_text.h"
#include "record/entered.h"

namespace winchbook::record {
namespace {

using base::Diagnostic;
using base::Diagnostics;
using base::Result;
using namespace record;  // NOLINT: what is found is of the record

constexpr std::size_t kMostListed = 8;

struct Candidate {
  std::string id;
  std::vector<std::string> names;  ///< the first is told
  int count = 1;                   ///< of like things
};

std::optional<int> as_number(std::string_view text) {
  int number = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), number);
  const bool whole = fault == std::errc() && end == text.data() + text.size() && number > 0;
  return whole ? std::optional(number) : std::nullopt;
}

/// Each wanted word begins another word of the name, in this order.
bool holds_words(const std::string& name, const std::vector<std::string>& wanted) {
  const std::vector<std::string> words = base::plain_words_of(name);
  auto word = words.begin();
  for (const std::string& one : wanted) {
    word = std::find_if(word, words.end(), [&](const auto& it) { return it.starts_with(one); });
    if (word == words.end()) return false;
    ++word;
  }
  return !wanted.empty();
}

template <class Test>
std::vector<const Candidate*> matching(const std::vector<Candidate>& all, const Test& test) {
  std::vector<const Candidate*> found;
  for (const Candidate& one : all) {
    if (test(one)) found.push_back(&one);
  }
  return found;
}

Diagnostic nothing_called(std::string_view kind, std::string_view said,
                          const std::vector<Candidate>& all) {
  std::string known;
  for (std::size_t i = 0; i < std::min(all.size(), kMostListed); ++i)
    known += (known.empty() ? "" : ", ") + all[i].id;
  if (all.size() > kMostListed) known += fmt::format(" and {} more", all.size() - kMostListed);
  return base::of_command(base::error(
      fmt::format("there is no {} called \"{}\"", kind, said),
      known.empty() ? fmt::format("the record has no {} yet", kind) : "there are " + known,
      "command-name"));
}

Diagnostic several_called(std::string_view kind, std::string_view said,
                          const std::vector<const Candidate*>& found) {
  std::string list;
  for (const Candidate* one : found)
    list += fmt::format("{}{} ({})", list.empty() ? "" : ", ", one->id, one->names.front());
  return base::of_command(
      base::error(fmt::format("\"{}\" may be any of {} {}s", said, found.size(), kind),
                  "say which: " + list, "command-name"));
}

/// The so-many-th of like things, counted through everything that matches.
const Candidate* nth(const std::vector<const Candidate*>& found, int number) {
  for (const Candidate* one : found) {
    if (number <= one->count) return one;
    number -= one->count;
  }
  return nullptr;
}

/// The id of what was meant.
Result<std::string> meant(std::string_view kind, std::string_view said,
                          const std::vector<Candidate>& all) {
  const std::string wanted = base::in_small_letters(said);
  std::string as_id = wanted;
  std::replace(as_id.begin(), as_id.end(), ' ', '-');
  const auto by_id =
      matching(all, [&](const Candidate& one) { return one.id == said || one.id == as_id; });
  if (!by_id.empty()) return by_id.front()->id;
  const auto by_name = matching(all, [&](const Candidate& one) {
    return std::any_of(one.names.begin(), one.names.end(), [&](const std::string& name) {
      return base::in_small_letters(name) == wanted;
    });
  });
  if (by_name.size() == 1) return by_name.front()->id;
  const auto by_beginning = matching(
      all, [&](const Candidate& one) { return !wanted.empty() && one.id.starts_with(as_id); });
  if (by_name.empty() && by_beginning.size() == 1) return by_beginning.front()->id;

  std::vector<std::string> words = base::plain_words_of(said);
  std::optional<int> number = words.size() > 1 ? as_number(words.back()) : std::nullopt;
  if (number) words.pop_back();
  auto by_words = matching(all, [&](const Candidate& one) {
    return std::any_of(one.names.begin(), one.names.end(),
                       [&](const std::string& name) { return holds_words(name, words); });
  });
  if (number) {
    const Candidate* one = nth(by_words, *number);
    return one == nullptr ? Result<std::string>(nothing_called(kind, said, all)) : one->id;
  }
  if (by_words.empty()) by_words = by_name.empty() ? by_beginning : by_name;
  if (by_words.size() == 1) return by_words.front()->id;
  if (by_words.empty()) return nothing_called(kind, said, all);
  return several_called(kind, said, by_words);
}

template <class Thing, class Describe>
Result<const Thing*> find_in(const std::vector<Thing>& things, std::string_view kind,
                             std::string_view said, const Describe& describe) {
  std::vector<Candidate> all;
  all.reserve(things.size());
  for (const Thing& thing : things)
    all.push_back(describe(thing));
  const auto id = meant(kind, said, all);
  if (!id) return id.faults();
  const auto found = std::find_if(things.begin(), things.end(),
                                  [&](const Thing& thing) { return thing.id.text == *id; });
  return &*found;
}

}  // namespace

Result<const Piece*> find_piece(const Record& record, std::string_view said) {
  return find_in(record.pieces, "part", said, [](const Piece& piece) {
    return Candidate{piece.id.text, {piece.name}, piece.count};
  });
}

Result<NamedPart> find_part(const Record& record, std::string_view said) {
  std::vector<Candidate> all;
  for (const Piece& piece : record.pieces)
    all.push_back({piece.id.text, {piece.name}, piece.count});
  // A place is called as its piece will be.
  std::map<std::string, const Place*> listed;
  for (const Place* place : places_without_piece(record)) {
    const std::string& id = place->id.text;
    const std::string called = id.starts_with("pl-") ? id.substr(3) : id;
    const bool taken = find(record, PieceId{called}) != nullptr;
    all.push_back({taken ? id : called, {place->name}, place->quantity});
    listed[all.back().id] = place;
  }
  const auto id = meant("part", said, all);
  if (!id) return id.faults();
  const auto place = listed.find(*id);
  if (place != listed.end()) return NamedPart{nullptr, place->second};
  return NamedPart{find(record, PieceId{*id}), nullptr};
}

Result<const Place*> find_place(const Record& record, std::string_view said) {
  return find_in(record.places, "place", said, [](const Place& place) {
    return Candidate{place.id.text, {place.name, place.kind}, place.quantity};
  });
}

Result<const Person*> find_person(const Record& record, std::string_view said) {
  return find_in(record.people, "person", said, [](const Person& person) {
    const std::string* name = told(person.name);
    Candidate one{person.id.text, {name == nullptr ? person.stand_in : *name}, 1};
    if (!person.short_name.empty()) one.names.push_back(person.short_name);
    one.names.push_back(person.stand_in);
    return one;
  });
}

Result<const Photo*> find_photo(const Record& record, std::string_view said) {
  return find_in(record.photos, "photograph", said, [](const Photo& photo) {
    return Candidate{photo.id.text, {photo.file}, 1};
  });
}

Result<const Marking*> find_marking(const Record& record, std::string_view said) {
  return find_in(record.markings, "mark", said, [](const Marking& mark) {
    const std::string* text = told(mark.text);
    return Candidate{mark.id.text, {text == nullptr ? mark.where : *text}, 1};
  });
}

Result<const Donor*> find_donor(const Record& record, std::string_view said) {
  return find_in(record.donors, "donor", said, [](const Donor& donor) {
    return Candidate{donor.id.text, {donor.name}, 1};
  });
}

Result<const Agreement*> find_agreement(const Record& record, std::string_view said) {
  std::vector<Candidate> all;
  for (const Visit& visit : record.visits) {
    for (const Agreement& one : visit.agreements)
      all.push_back({one.id.text, {one.on.text() + " " + one.how}, 1});
  }
  const auto id = meant("agreement", said, all);
  if (!id) return id.faults();
  for (const Visit& visit : record.visits) {
    for (const Agreement& one : visit.agreements)
      if (one.id.text == *id) return &one;
  }
  return nothing_called("agreement", said, all);
}

Result<std::vector<CountedPiece>> find_counted(const Record& record,
                                               const std::vector<std::string>& said) {
  std::vector<CountedPiece> counted;
  Diagnostics faults;
  for (const std::string& one : said) {
    const std::size_t colon = one.rfind(':');
    const std::string name = one.substr(0, colon);
    const auto piece = find_piece(record, name);
    if (!piece) {
      faults.insert(faults.end(), piece.faults().begin(), piece.faults().end());
      continue;
    }
    int count = piece.value()->count;
    if (colon != std::string::npos) {
      const std::size_t first = one.find_first_not_of(' ', colon + 1);
      const auto number =
          as_number(first == std::string::npos ? "" : std::string_view(one).substr(first));
      if (!number) {
        faults.push_back(base::of_command(base::error(
            fmt::format("\"{}\" does not say how many, expected a number behind the colon", one),
            fmt::format("say \"{}: 2\", or leave the colon out for all of it", name),
            "command-count")));
        continue;
      }
      count = *number;
    }
    counted.push_back({*piece, count});
  }
  if (!faults.empty()) return faults;
  return counted;
}

bool holds_words(std::string_view text, std::string_view wanted) {
  return holds_words(std::string(text), base::plain_words_of(wanted));
}

std::string listed(const std::vector<const Piece*>& pieces) {
  constexpr std::size_t kMost = 3;
  if (pieces.empty()) return "nothing";
  std::string text = pieces.front()->name;
  const std::size_t shown = pieces.size() <= kMost ? pieces.size() : kMost - 1;
  for (std::size_t i = 1; i < shown; ++i) {
    const bool last = i + 1 == pieces.size();
    text += (last ? " and " : ", ") + pieces[i]->name;
  }
  if (shown < pieces.size()) text += fmt::format(" and {} more", pieces.size() - shown);
  return text;
}

}  // namespace winchbook::record
