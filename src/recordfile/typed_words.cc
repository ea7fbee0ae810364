#include "recordfile/typed_words.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <pugixml.hpp>
#include <string>
#include <utility>
#include <vector>

#include "base/words_of_text.h"
#include "record/named_people.h"

namespace winchbook::recordfile {
namespace {

constexpr auto kElements =
    std::to_array<std::string_view>({"person", "piece", "photo", "emphasis"});

/// Whether there is nothing in it but words and elements of a sentence, or of a paragraph.
bool is_a_sentence(pugi::xml_node element, bool with_notes) {
  const auto parts = element.children();
  return std::all_of(parts.begin(), parts.end(), [&](pugi::xml_node part) {
    if (part.type() == pugi::node_pcdata) return true;
    if (part.type() != pugi::node_element) return false;
    const std::string_view name = part.name();
    if (name == "note") return with_notes && is_a_sentence(part, false);
    return std::find(kElements.begin(), kElements.end(), name) != kElements.end() &&
           is_a_sentence(part, false);
  });
}

void add_plain(const record::Record& record, std::string_view text, record::Words& words) {
  for (record::NamedStretch& stretch : record::name_people(record, text)) {
    if (stretch.person.empty()) {
      words.runs.emplace_back(record::Plain{std::move(stretch.words)});
    } else {
      words.runs.emplace_back(
          record::PersonMention{std::move(stretch.person), std::move(stretch.words)});
    }
  }
}

void add_parts(const record::Record& record, pugi::xml_node typed, record::Paragraph& into) {
  std::vector<record::Run>& runs = into.words.runs;
  for (const pugi::xml_node part : typed.children()) {
    const std::string_view name = part.name();
    const std::string ref = part.attribute("ref").value();
    const std::string words = part.text().get();
    if (part.type() != pugi::node_element) add_plain(record, part.value(), into.words);
    if (name == "person") runs.emplace_back(record::PersonMention{{ref}, words});
    if (name == "piece") runs.emplace_back(record::PieceMention{{ref}, words});
    if (name == "photo") runs.emplace_back(record::PhotoMention{{ref}});
    if (name == "emphasis") runs.emplace_back(record::Emphasis{words});
    if (name != "note") continue;
    record::Paragraph note;
    add_parts(record, part, note);
    if (!into.note) {
      into.note = std::move(note.words);
      continue;
    }
    into.note->runs.emplace_back(record::Plain{" "});
    std::move(note.words.runs.begin(), note.words.runs.end(), std::back_inserter(into.note->runs));
  }
}

record::Paragraph paragraph_of(const record::Record& record, std::string_view text,
                               bool with_notes) {
  record::Paragraph paragraph;
  if (base::trimmed(text).empty()) return paragraph;
  if (text.find('<') != std::string_view::npos) {
    pugi::xml_document typed;
    const std::string whole = "<typed>" + std::string(text) + "</typed>";
    const bool parsed = static_cast<bool>(
        typed.load_string(whole.c_str(), pugi::parse_default | pugi::parse_ws_pcdata));
    const pugi::xml_node root = typed.document_element();
    if (parsed && !root.next_sibling() && is_a_sentence(root, with_notes)) {
      add_parts(record, root, paragraph);
      return paragraph;
    }
  }
  add_plain(record, text, paragraph.words);
  return paragraph;
}

}  // namespace

record::Words words_of(const record::Record& record, std::string_view typed) {
  return paragraph_of(record, typed, false).words;
}

record::Prose prose_of(const record::Record& record, std::string_view typed) {
  record::Prose prose;
  std::string text;
  const auto end_paragraph = [&] {
    if (!text.empty()) prose.push_back(paragraph_of(record, std::exchange(text, {}), true));
  };
  for (const std::string_view line : base::parts_of(typed, '\n')) {
    const std::string_view words = base::trimmed(line);
    if (words.empty()) {
      end_paragraph();
      continue;
    }
    if (!text.empty()) text += ' ';
    text += words;
  }
  end_paragraph();
  return prose;
}

}  // namespace winchbook::recordfile
