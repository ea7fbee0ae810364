#include <algorithm>
#include <charconv>
#include <string>
#include <utility>

#include "base/words_of_text.h"
#include "knowledge/care.h"
#include "knowledge/stamp_text.h"
#include "knowledge/valid_file.h"

namespace winchbook::knowledge {
namespace {

using Words = std::vector<std::string>;

bool yes(pugi::xml_attribute attribute) {
  return std::string_view(attribute.value()) == "yes";
}

int whole(pugi::xml_attribute attribute) {
  const std::string_view text = attribute.value();
  int value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

Words words_of(pugi::xml_node node, const char* attribute) {
  const auto words = base::words_of(node.attribute(attribute).value());
  return {words.begin(), words.end()};
}

Words phrases_of(pugi::xml_node node, const char* attribute) {
  Words phrases;
  for (const std::string_view part : base::parts_of(node.attribute(attribute).value(), ',')) {
    if (!base::trimmed(part).empty()) phrases.push_back(folded_phrase(part));
  }
  return phrases;
}

/// Its name is one of its forms, and so is its word: "chromium-plate" is "chromium plate".
Words forms_of(pugi::xml_node node, std::string_view name) {
  Words forms = phrases_of(node, "also");
  std::string word = node.attribute("word").value();
  std::replace(word.begin(), word.end(), '-', ' ');
  forms.push_back(folded_phrase(word));
  forms.push_back(folded_phrase(name));
  return forms;
}

Substance substance_from(pugi::xml_node node) {
  const std::string name = folded(node);
  return {node.attribute("word").value(),
          name,
          node.attribute("family").value(),
          listed(node.attribute("layer"), Substance::Layer::no),
          node.attribute("imitated-by").value(),
          forms_of(node, name),
          false};
}

Qualifier qualifier_from(pugi::xml_node node) {
  return {listed(node.attribute("word"), Qualifier::Kind::likeness), phrases_of(node, "before"),
          phrases_of(node, "after"), phrases_of(node, "also")};
}

Act act_from(pugi::xml_node node) {
  return {node.attribute("word").value(),
          folded(node.child("name")),
          node.attribute("caution").value(),
          yes(node.attribute("dust")),
          node.attribute("hazard").value(),
          phrases_of(node, "also"),
          node.attribute("source").value(),
          listed(node.attribute("known"), CareGrounds::common_practice)};
}

CareMethod method_from(pugi::xml_node node) {
  CareMethod method;
  method.word = node.attribute("word").value();
  method.name = folded(node.child("name"));
  method.advice = folded(node.child("advice"));
  method.reach = listed(node.attribute("reach"), CareMethod::Reach::through);
  method.bath = yes(node.attribute("bath"));
  method.flammable = yes(node.attribute("flammable"));
  method.dust = yes(node.attribute("dust"));
  method.most_minutes = whole(node.attribute("most"));
  method.most_heat = whole(node.attribute("most-heat"));
  method.caution = node.attribute("caution").value();
  method.forms = forms_of(node, method.name);
  return method;
}

CareRow row_from(pugi::xml_node node) {
  return {words_of(node, "on"),
          words_of(node, "methods"),
          words_of(node, "with"),
          words_of(node, "beside"),
          whole(node.attribute("most")),
          whole(node.attribute("most-heat")),
          listed(node.attribute("says"), CareVerdict::never),
          folded(node),
          node.attribute("source").value(),
          listed(node.attribute("known"), CareGrounds::common_practice)};
}

FlagTrigger trigger_from(pugi::xml_node node) {
  FlagTrigger trigger;
  trigger.says = listed(node.attribute("says"), FlagTrigger::Says::not_looked_for);
  trigger.of = words_of(node, "of");
  trigger.not_of = words_of(node, "not-of");
  trigger.places = words_of(node, "places");
  trigger.no_place = words_of(node, "no-place");
  trigger.named = phrases_of(node, "named");
  trigger.faults = words_of(node, "faults");
  trigger.methods = words_of(node, "methods");
  trigger.kinds = words_of(node, "kinds");
  trigger.brakes = words_of(node, "brakes");
  trigger.line = phrases_of(node, "line");
  trigger.no_line = yes(node.attribute("no-line"));
  trigger.content = yes(node.attribute("content"));
  trigger.captive_spring = yes(node.attribute("captive-spring"));
  trigger.custody_gap = yes(node.attribute("custody-gap"));
  trigger.older_than = whole(node.attribute("older-than"));
  if (const auto day = base::parse_day(node.attribute("made-before").value()); day)
    trigger.made_before = *day;
  if (const auto day = base::parse_day(node.attribute("made-after").value()); day)
    trigger.made_after = *day;
  return trigger;
}

FlagRule flag_from(pugi::xml_node node) {
  FlagRule rule;
  rule.word = node.attribute("word").value();
  rule.legal = std::string_view(node.attribute("kind").value()) == "legal";
  for (const std::string& word : words_of(node, "matters"))
    rule.matters.push_back(base::value_of<Matters>(word).value_or(Matters::hand));
  rule.also = phrases_of(node, "also");
  rule.unseen = yes(node.attribute("unseen"));
  rule.forbids_dust = std::string_view(node.attribute("forbids").value()) == "dust";
  if (const auto day = base::parse_day(node.attribute("law-date").value()); day)
    rule.law_date = *day;
  rule.source = node.attribute("source").value();
  rule.grounds = listed(node.attribute("known"), CareGrounds::common_practice);
  for (const pugi::xml_node when : node.children("when"))
    rule.triggers.push_back(trigger_from(when));
  return rule;
}

/// Words by which rows may point: what is there, and "any".
struct Known {
  Words substances;
  Words methods;
};

Known known_words(const CareTable& table) {
  Known known{{"any"}, {"any"}};
  for (const Substance& one : table.substances) {
    known.substances.push_back(one.word);
    known.substances.push_back(one.family);
  }
  for (const CareMethod& one : table.methods)
    known.methods.push_back(one.word);
  return known;
}

void check_words(const xml::Document& document, pugi::xml_node node, const char* attribute,
                 const Words& known, base::Diagnostics& faults) {
  for (const std::string& word : words_of(node, attribute)) {
    if (std::find(known.begin(), known.end(), word) != known.end()) continue;
    faults.push_back(base::error_at(
        document.where(node), "the care table has no \"" + word + "\"",
        "name a substance, a family or a method that stands in it, or add one", "care-word"));
  }
}

constexpr const char* kAct = "act";

void check_forms(const xml::Document& document, pugi::xml_node list, const char* child,
                 base::Diagnostics& faults) {
  Words seen;
  for (const pugi::xml_node node : list.children(child)) {
    const bool method = node.child("name");
    Words forms = std::string_view(child) == kAct
                      ? phrases_of(node, "also")
                      : forms_of(node, folded(method ? node.child("name") : node));
    std::sort(forms.begin(), forms.end());
    forms.erase(std::unique(forms.begin(), forms.end()), forms.end());
    for (const std::string& form : forms) {
      if (std::find(seen.begin(), seen.end(), form) != seen.end()) {
        faults.push_back(base::error_at(document.where(node),
                                        "\"" + form + "\" is the name of another row already",
                                        "keep it at one of them", "care-word"));
      }
      seen.push_back(form);
    }
  }
}

/// What a flag that no eye can exclude says is so.
void mark_hazards(CareTable& table) {
  for (const FlagRule& rule : table.flags) {
    if (!rule.unseen) continue;
    for (const FlagTrigger& trigger : rule.triggers) {
      if (trigger.says != FlagTrigger::Says::is) continue;
      for (Substance& one : table.substances)
        one.hazard = one.hazard || names(trigger.of, one);
    }
  }
}

/// A name of several words is also known as one word, where that is no other's: "hardrubber".
void add_joined_forms(std::vector<Substance>& substances) {
  Words all;
  for (const Substance& one : substances)
    all.insert(all.end(), one.forms.begin(), one.forms.end());
  for (Substance& one : substances) {
    for (std::size_t i = 0, count = one.forms.size(); i < count; ++i) {
      std::string joined = one.forms[i];
      std::erase(joined, ' ');
      if (std::find(all.begin(), all.end(), joined) != all.end()) continue;
      all.push_back(joined);
      one.forms.push_back(std::move(joined));
    }
  }
}

}  // namespace

base::Result<CareTable> load_care(const Source& source) {
  const std::filesystem::path folder = source.shared("care");
  const auto document = read_valid(source, folder / "care.xml", "care-table");
  if (!document) return document.faults();
  const auto acts = read_valid(source, folder / "acts.xml", "acts");
  if (!acts) return acts.faults();
  const auto flags = read_valid(source, folder / "flags.xml", "flags");
  if (!flags) return flags.faults();

  CareTable table;
  const pugi::xml_node root = document->root();
  for (const pugi::xml_node node : root.child("qualifiers").children("qualifier"))
    table.qualifiers.push_back(qualifier_from(node));
  for (const pugi::xml_node node : root.child("substances").children("substance"))
    table.substances.push_back(substance_from(node));
  for (const pugi::xml_node node : acts->root().children(kAct))
    table.acts.push_back(act_from(node));
  table.tested = phrases_of(flags->root(), "tested");
  for (const pugi::xml_node node : root.child("methods").children("method"))
    table.methods.push_back(method_from(node));
  const Known known = known_words(table);
  base::Diagnostics faults;
  check_forms(*document, root.child("substances"), "substance", faults);
  check_forms(*document, root.child("methods"), "method", faults);
  check_forms(*acts, acts->root(), kAct, faults);
  for (const pugi::xml_node node : root.child("substances").children("substance"))
    check_words(*document, node, "imitated-by", known.substances, faults);
  for (const pugi::xml_node node : root.child("rows").children("row")) {
    check_words(*document, node, "on", known.substances, faults);
    check_words(*document, node, "methods", known.methods, faults);
    check_words(*document, node, "with", known.substances, faults);
    check_words(*document, node, "beside", known.methods, faults);
    table.rows.push_back(row_from(node));
  }
  for (const pugi::xml_node node : flags->root().children("flag")) {
    for (const pugi::xml_node when : node.children("when")) {
      check_words(*flags, when, "of", known.substances, faults);
      check_words(*flags, when, "not-of", known.substances, faults);
      check_words(*flags, when, "methods", known.methods, faults);
    }
    table.flags.push_back(flag_from(node));
  }
  if (!faults.empty()) return faults;
  mark_hazards(table);
  add_joined_forms(table.substances);
  return table;
}

}  // namespace winchbook::knowledge
