#include "recordfile/writer.h"

namespace winchbook::recordfile {
namespace {

/// Puts the runs of a sentence into its element.
class RunWriter {
 public:
  explicit RunWriter(pugi::xml_node element) : element_(element) {}

  void operator()(const record::Plain& plain) { add_text(element_, plain.words); }
  void operator()(const record::Emphasis& emphasis) { add_text(add("emphasis"), emphasis.words); }
  void operator()(const record::PersonMention& mention) {
    add_mention("person", mention.person.text, mention.words);
  }
  void operator()(const record::PieceMention& mention) {
    add_mention("piece", mention.piece.text, mention.words);
  }
  void operator()(const record::PhotoMention& mention) {
    add_mention("photo", mention.photo.text, {});
  }

 private:
  static void add_text(pugi::xml_node to, const std::string& words) {
    if (words.empty()) return;
    pugi::xml_node text = to.last_child();
    if (text.type() != pugi::node_pcdata) text = to.append_child(pugi::node_pcdata);
    text.set_value((text.value() + words).c_str());
  }
  pugi::xml_node add(const char* name) {
    if (!element_.first_child()) element_.append_child(pugi::node_pcdata);
    return element_.append_child(name);
  }
  void add_mention(const char* name, const std::string& ref, const std::string& words) {
    pugi::xml_node mention = add(name);
    mention.append_attribute("ref") = ref.c_str();
    add_text(mention, words);
  }

  pugi::xml_node element_;
};

}  // namespace

void Writer::put(pugi::xml_node element, const std::string& text) {
  if (!text.empty()) element.append_child(pugi::node_pcdata).set_value(text.c_str());
}

void Writer::put(pugi::xml_node element, bool yes) {
  put(element, std::string(yes ? "yes" : "no"));
}

void Writer::put(pugi::xml_node element, int whole) {
  put(element, std::to_string(whole));
}

void Writer::put(pugi::xml_node element, const base::EdtfDate& date) {
  put(element, date.text());
}

void Writer::put(pugi::xml_node element, const base::Decimal& decimal) {
  put(element, decimal.text());
}

void Writer::put(pugi::xml_node element, const base::Money& money) {
  put(element, money.amount.text() + " " + money.currency);
}

void Writer::put(pugi::xml_node element, const record::Withheld& withheld) {
  put(element, withheld.digest);
}

void Writer::put(pugi::xml_node element, const record::MaybeText& text) {
  if (const std::string* told = record::told(text)) return put(element, *told);
  put(element.append_child("withheld"), std::get<record::Withheld>(text));
}

void Writer::put(pugi::xml_node element, const record::Words& words) {
  RunWriter writer(element);
  for (const record::Run& run : words.runs)
    std::visit(writer, run);
}

void Writer::put(pugi::xml_node element, const record::Paragraph& paragraph) {
  put(element, paragraph.words);
  if (!paragraph.note) return;
  if (!element.first_child()) element.append_child(pugi::node_pcdata);
  put(element.append_child("note"), *paragraph.note);
}

void Writer::put(pugi::xml_node element, const record::Prose& prose) {
  Writer(element).many("p", prose);
}

void Writer::put(pugi::xml_node element, const record::FittedBy& by) {
  if (const auto* person = std::get_if<record::PersonId>(&by))
    return put(element.append_child("person"), *person);
  const char* answer = std::holds_alternative<record::ByMaker>(by)   ? "maker"
                       : std::holds_alternative<record::ByBench>(by) ? "bench"
                                                                     : "not-known";
  put(element.append_child("answer"), std::string(answer));
}

}  // namespace winchbook::recordfile
