#include "recordfile/element.h"

#include <charconv>
#include <string_view>
#include <utility>

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

}  // namespace

std::string own_text(pugi::xml_node node) {
  std::string text;
  for (const pugi::xml_node child : node.children()) {
    if (child.type() == pugi::node_pcdata || child.type() == pugi::node_cdata)
      text += child.value();
  }
  return text;
}

std::string folded(std::string_view text) {
  std::string out;
  bool space = false;
  for (const char c : text) {
    if (is_space(c)) {
      space = true;
      continue;
    }
    if (space && !out.empty()) out += ' ';
    space = false;
    out += c;
  }
  return out;
}

std::string folded_lines(std::string_view text) {
  std::string out;
  std::size_t empty_lines = 0;
  for (std::size_t begin = 0; begin <= text.size();) {
    const std::size_t end = std::min(text.find('\n', begin), text.size());
    const std::string line = folded(text.substr(begin, end - begin));
    if (line.empty()) {
      ++empty_lines;
    } else {
      if (!out.empty()) out.append(empty_lines + 1, '\n');
      empty_lines = 0;
      out += line;
    }
    begin = end + 1;
  }
  return out;
}

std::vector<Element> Element::all(const char* name) const {
  std::vector<Element> found;
  const std::string_view wanted = name;
  for (const pugi::xml_node child : node_.children()) {
    if (child.type() != pugi::node_element) continue;
    if (wanted.empty() || wanted == child.name()) found.push_back(with(child));
  }
  return found;
}

std::string Element::lines(const char* name) const {
  return folded_lines(own_text(node_.child(name)));
}

std::vector<std::string> Element::texts(const char* name) const {
  std::vector<std::string> found;
  for (const Element& one : all(name))
    found.push_back(one.text());
  return found;
}

bool Element::yes(const char* name, bool when_left_out) const {
  const std::string told = text(name);
  return told.empty() ? when_left_out : told == "yes";
}

int Element::whole(const char* name, int when_left_out) const {
  const std::string told = text(name);
  int value = when_left_out;
  std::from_chars(told.data(), told.data() + told.size(), value);
  return value;
}

void Element::add_fault(base::Diagnostic fault) const {
  fault.where = document_->where(node_);
  faults_->push_back(std::move(fault));
}

base::EdtfDate Element::date(const char* name) const {
  return maybe_date(name).value_or(base::EdtfDate{});
}

std::optional<base::EdtfDate> Element::maybe_date(const char* name) const {
  const Element found = child(name);
  if (!found) return std::nullopt;
  auto read = base::EdtfDate::parse(found.text());
  if (read) return std::move(read).value();
  found.add_fault(read.faults().front());
  return std::nullopt;
}

std::optional<base::Decimal> Element::maybe_decimal(const char* name) const {
  const Element found = child(name);
  if (!found) return std::nullopt;
  const auto read = base::Decimal::parse(found.text());
  if (read) return *read;
  found.add_fault(read.faults().front());
  return std::nullopt;
}

std::optional<base::Money> Element::maybe_money(const char* name) const {
  const Element found = child(name);
  if (!found) return std::nullopt;
  const std::string told = found.text();
  const std::size_t space = std::min(told.find(' '), told.size());
  const auto amount = base::Decimal::parse(std::string_view(told).substr(0, space));
  if (amount) return base::Money{*amount, told.substr(std::min(space + 1, told.size()))};
  found.add_fault(amount.faults().front());
  return std::nullopt;
}

record::MaybeText Element::maybe_text(const char* name) const {
  const pugi::xml_node node = node_.child(name);
  if (const auto withheld = node.child("withheld")) {
    if (!folded(own_text(node)).empty()) {
      child(name).add_fault(base::error(
          std::string("\"") + name + "\" holds a text and a digest that withholds it",
          "keep the text in the full record, or the digest in a withheld edition", "withheld"));
    }
    return record::Withheld{folded(withheld.text().get())};
  }
  return folded(own_text(node));
}

record::MaybeText Element::maybe_lines(const char* name) const {
  const pugi::xml_node node = node_.child(name);
  if (node.child("withheld")) return maybe_text(name);
  return folded_lines(own_text(node));
}

std::optional<record::MaybeText> Element::optional_text(const char* name) const {
  if (!child(name)) return std::nullopt;
  return maybe_text(name);
}

record::Words Element::words() const {
  WordsBuilder builder;
  for (const pugi::xml_node child : node_.children())
    add_child(builder, child);
  return builder.finish();
}

std::vector<record::Words> Element::all_words(const char* name) const {
  std::vector<record::Words> found;
  for (const Element& one : all(name))
    found.push_back(one.words());
  return found;
}

record::Prose Element::paragraphs() const {
  record::Prose prose;
  for (const Element& p : all("p")) {
    record::Paragraph paragraph{p.words(), std::nullopt};
    const std::vector<Element> notes = p.all("note");
    if (!notes.empty()) paragraph.note = notes.front().words();
    if (notes.size() > 1) {
      notes[1].add_fault(base::error("a second note stands in one paragraph, expected one at most",
                                     "put both in one note, or divide the paragraph", "one-note"));
    }
    prose.push_back(std::move(paragraph));
  }
  return prose;
}

}  // namespace winchbook::recordfile
