#include "app/survivors.h"

#include <fmt/format.h>

#include <set>
#include <utility>

#include "base/words_of_text.h"
#include "text/folded_words.h"
#include "xml/document.h"
#include "xml/walk.h"

namespace winchbook::app {
namespace {

using recordfile::Taken;

constexpr std::size_t kMostTold = 20;

/// Where the reel and the bench are named: everybody may see it.
std::vector<std::string> named_openly(const record::Record& record) {
  return {record.reel.model, record.reel.maker.name, record.reel.maker.place, record.reel.sold_by,
          record.bench.name, record.bench.place,     record.bench.address};
}

/// The names of the people whom the reader may know.
std::vector<std::string> known_people(const record::Record& record, record::Reader reader) {
  std::vector<std::string> names;
  for (const record::Person& person : record.people) {
    const std::string* name = record::told(person.name);
    if (name != nullptr && may_see(reader, person.named_to)) names.push_back(*name);
  }
  return names;
}

Sought::Seen seen_anyway(const record::Record& record, record::Reader reader) {
  Sought::Seen seen{named_openly(record), record.reel.name};
  for (std::string& name : known_people(record, reader))
    seen.names.push_back(std::move(name));
  return seen;
}

std::set<std::string> words_of(const std::vector<std::string>& texts) {
  std::set<std::string> words;
  for (const std::string& text : texts) {
    for (const text::FoldedWord& word : text::folded_words(text))
      words.insert(word.folded);
  }
  return words;
}

const char* name_of(record::Reader reader) {
  return reader == record::Reader::insurer ? "an insurer" : "a stranger";
}

/// What to do about a name that stands where no reference guards it.
std::string cure(const Search& search, const Find& find, const std::string& words) {
  const Taken& taken = *find.taken;
  if (taken.kind == Taken::Kind::photograph) return "leave the photograph's name to <file>";
  const record::Person* person = record::find(search.full.record, record::PersonId{taken.person});
  if (taken.kind == Taken::Kind::address || taken.kind == Taken::Kind::contact) {
    return "leave it to <" +
           std::string(taken.kind == Taken::Kind::address ? "address" : "contact") +
           ">, where it can be withheld";
  }
  if (person == nullptr) return "leave the inscription to its <marking>";
  return fmt::format(
      "write <person ref=\"{}\">{}</person> so that it can be withheld, or \"{}\" "
      "where no name can stand",
      person->id.text, words, person->stand_in);
}

/// Names of things: their small letters say nothing.
bool is_name(std::string_view attribute) {
  return attribute == "id" || attribute == "ref" || attribute.starts_with("xmlns");
}

/// Looks through the edition's record and what else the reader gets.
class Searcher {
 public:
  explicit Searcher(const Search& search)
      : search_(search),
        sought_(search.withheld, seen_anyway(search.full.record, search.reader), search.names) {}

  Survey done(const std::vector<Offered>& offered) {
    survey_.looked_for = sought_.size();
    const auto edition = xml::Document::parse(search_.full.file, search_.withheld.bytes);
    if (!edition) {
      survey_.found = edition.faults();
      return std::move(survey_);
    }
    const xml::Source full(search_.full.file, search_.full.bytes);
    ask_about_open_names();
    xml::for_each_text(*edition, [&](const xml::Text& text) { look_at(*edition, full, text); });
    xml::for_each_passage(*edition, [&](const xml::Text& text) { look_at_passage(full, text); });
    for (const Offered& one : offered) {
      ++survey_.texts;
      // What stands in the record was told with its place there.
      if (const auto find = sought_.first_in(one.text, one.how);
          find && !told_.contains(find->taken)) {
        tell(*find, words_of(one.text, *find), one.where, one.what, one.cure);
      }
    }
    if (count_ > kMostTold) {
      survey_.found.push_back(base::error_at({search_.full.file, 0, 0},
                                             fmt::format("and {} more", count_ - kMostTold), "",
                                             "withheld-survives"));
    }
    return std::move(survey_);
  }

 private:
  /// A withheld name that is the maker's, the bench's or the model's too is looked for nowhere: it
  /// may be chance, and it may be who had it.
  void ask_about_open_names() {
    const auto open = app::words_of(named_openly(search_.full.record));
    const auto known = app::words_of(known_people(search_.full.record, search_.reader));
    const std::set<std::string> never(search_.names.never.begin(), search_.names.never.end());
    for (const Taken& taken : search_.withheld.taken) {
      const bool name = taken.kind == Taken::Kind::name || taken.kind == Taken::Kind::short_name;
      if (!name) continue;
      for (const std::string& word : app::words_of({taken.text})) {
        if (word.size() < 2 || !open.contains(word) || known.contains(word) || never.contains(word))
          continue;
        survey_.found.push_back(base::warning_at(
            taken.where,
            fmt::format(
                "\"{}\", in a name that is withheld from {}, stands in the name or place of "
                "the maker, the bench or the model, where everybody may see it",
                word, name_of(search_.reader)),
            "look whether it tells who it was", "withheld-survives"));
        break;
      }
    }
  }

  static std::string words_of(std::string_view text, const Find& find) {
    return base::on_one_line(text.substr(find.begin, find.end - find.begin));
  }

  void look_at(const xml::Document& edition, const xml::Source& full, const xml::Text& text) {
    ++survey_.texts;
    const bool attribute = !text.attribute.empty();
    const base::Location here = full.where(search_.withheld.origin(text.offset));
    // xmlns:NAME says its prefix too.
    if (text.attribute.starts_with("xmlns:")) {
      const std::string_view prefix = text.attribute.substr(std::string_view("xmlns:").size());
      if (const auto find = sought_.first_in(prefix, Written::name))
        return tell(*find, std::string(prefix), here, "a prefix", "call the prefix otherwise");
    }
    const auto find = sought_.first_in(
        text.value, attribute && is_name(text.attribute) ? Written::name : Written::prose);
    if (!find) return;
    const std::string words = words_of(text.value, *find);
    tell(*find, words, attribute ? here : place(edition, full, text, *find),
         attribute ? fmt::format("the attribute {}", text.attribute) : std::string(),
         cure(search_, *find, words));
  }

  /// What is split over elements; what stands in one of its texts was told there.
  void look_at_passage(const xml::Source& full, const xml::Text& text) {
    const auto find = sought_.first_in(text.value, Written::prose);
    if (!find || told_.contains(find->taken)) return;
    const std::string words = words_of(text.value, *find);
    tell(*find, words, full.where(search_.withheld.origin(text.offset)), "",
         cure(search_, *find, words));
  }

  /// Where the find stands in the full record; the beginning of its text when that holds references
  /// or other line ends, which count differently in the tree.
  base::Location place(const xml::Document& edition, const xml::Source& full, const xml::Text& text,
                       const Find& find) const {
    const bool as_written =
        std::string_view(edition.source().bytes()).substr(text.offset).starts_with(text.value);
    return full.where(search_.withheld.origin(text.offset + (as_written ? find.begin : 0)));
  }

  void tell(const Find& find, const std::string& words, base::Location where, const std::string& in,
            std::string hint) {
    told_.insert(find.taken);
    if (++count_ > kMostTold) return;
    const std::string here = in.empty() ? "here" : "in " + in;
    if (!find.certain) {
      survey_.found.push_back(
          base::warning_at(std::move(where),
                           fmt::format("\"{}\" may tell what is withheld from {}, and stands {}",
                                       words, name_of(search_.reader), here),
                           "look whether it does; if so, " + std::move(hint), "withheld-survives"));
      return;
    }
    survey_.found.push_back(base::error_at(std::move(where),
                                           fmt::format("\"{}\" is withheld from {}, and stands {}",
                                                       words, name_of(search_.reader), here),
                                           std::move(hint), "withheld-survives"));
  }

  const Search& search_;
  Sought sought_;
  Survey survey_;
  std::set<const Taken*> told_;
  std::size_t count_ = 0;
};

}  // namespace

Survey survivors(const Search& search, const std::vector<Offered>& offered) {
  if (search.withheld.taken.empty()) return {};
  return Searcher(search).done(offered);
}

}  // namespace winchbook::app
