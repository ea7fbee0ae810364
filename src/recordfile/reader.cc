#include "recordfile/reader.h"

#include <algorithm>
#include <charconv>
#include <string_view>

namespace winchbook::recordfile {
namespace {

bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

/// Puts runs one after the other and folds the white space between them.
class WordsBuilder {
 public:
  void add_text(std::string_view text) {
    for (const char c : text) {
      if (is_space(c)) {
        wants_space_ = true;
        continue;
      }
      open_space();
      plain_ += c;
    }
  }

  template <class Run> void add_run(Run run) {
    open_space();
    close_plain();
    words_.runs.emplace_back(std::move(run));
  }

  record::Words finish() {
    close_plain();
    return std::move(words_);
  }

 private:
  void open_space() {
    const bool at_start = plain_.empty() && words_.runs.empty();
    if (wants_space_ && !at_start) plain_ += ' ';
    wants_space_ = false;
  }
  void close_plain() {
    if (!plain_.empty()) words_.runs.emplace_back(record::Plain{std::exchange(plain_, {})});
  }

  record::Words words_;
  std::string plain_;
  bool wants_space_ = false;
};

void add_child(WordsBuilder& builder, pugi::xml_node child) {
  const std::string_view name = child.name();
  std::string ref = child.attribute("ref").value();
  if (child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata) {
    builder.add_text(child.value());
  } else if (name == "person") {
    builder.add_run(record::PersonMention{{std::move(ref)}, folded(own_text(child))});
  } else if (name == "piece") {
    builder.add_run(record::PieceMention{{std::move(ref)}, folded(own_text(child))});
  } else if (name == "photo") {
    builder.add_run(record::PhotoMention{{std::move(ref)}});
  } else if (name == "emphasis") {
    builder.add_run(record::Emphasis{folded(own_text(child))});
  }
}

/// The value, or its fault told at the element.
template <class Value> bool taken(const Element& element, base::Result<Value> read, Value& into) {
  if (!read) {
    element.add_fault(read.faults().front());
    return false;
  }
  into = std::move(read).value();
  return true;
}

}  // namespace

bool Reader::get(const Element& element, std::string& text) {
  text = element.text();
  return true;
}

bool Reader::get(const Element& element, bool& yes) {
  const std::string told = element.text();
  if (!told.empty()) yes = told == "yes";
  return true;
}

bool Reader::get(const Element& element, int& whole) {
  const std::string told = element.text();
  std::from_chars(told.data(), told.data() + told.size(), whole);
  return true;
}

bool Reader::get(const Element& element, base::EdtfDate& date) {
  return taken(element, base::EdtfDate::parse(element.text()), date);
}

bool Reader::get(const Element& element, base::Decimal& decimal) {
  return taken(element, base::Decimal::parse(element.text()), decimal);
}

bool Reader::get(const Element& element, base::Money& money) {
  const std::string told = element.text();
  const std::size_t space = std::min(told.find(' '), told.size());
  if (!taken(element, base::Decimal::parse(std::string_view(told).substr(0, space)), money.amount))
    return false;
  money.currency = told.substr(std::min(space + 1, told.size()));
  return true;
}

bool Reader::get(const Element& element, record::Withheld& withheld) {
  withheld.digest = element.text();
  return true;
}

bool Reader::get(const Element& element, record::MaybeText& text) {
  const std::string told = folded(own_text(element.node()));
  text = told;
  if (const Element withheld = element.child("withheld")) {
    if (!told.empty()) {
      element.add_fault(base::error(
          "\"" + std::string(element.node().name()) +
              "\" holds a text and a digest that withholds it",
          "keep the text in the full record, or the digest in a withheld edition", "withheld"));
    }
    text = got<record::Withheld>(withheld);
  }
  return true;
}

void Reader::need_lines(const char* name, record::MaybeText& text) const {
  const Element found = element_.child(name);
  if (found.child("withheld")) {
    get(found, text);
  } else {
    text = found.lines();
  }
}

bool Reader::get(const Element& element, record::Words& words) {
  WordsBuilder builder;
  for (const pugi::xml_node child : element.node().children())
    add_child(builder, child);
  words = builder.finish();
  return true;
}

bool Reader::get(const Element& element, record::Paragraph& paragraph) {
  get(element, paragraph.words);
  const std::vector<Element> notes = element.all("note");
  if (!notes.empty()) paragraph.note = got<record::Words>(notes.front());
  if (notes.size() > 1) {
    notes[1].add_fault(base::error("a second note stands in one paragraph, expected one at most",
                                   "put both in one note, or divide the paragraph", "one-note"));
  }
  return true;
}

bool Reader::get(const Element& element, record::Prose& prose) {
  Reader(element).many("p", prose);
  return true;
}

bool Reader::get(const Element& element, record::FittedBy& by) {
  if (const Element person = element.child("person")) {
    by = got<record::PersonId>(person);
    return true;
  }
  const std::string answer = element.child("answer").text();
  if (answer == "maker") by = record::ByMaker{};
  if (answer == "bench") by = record::ByBench{};
  return true;
}

}  // namespace winchbook::recordfile
