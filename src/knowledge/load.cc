#include <algorithm>
#include <array>
#include <charconv>
#include <iterator>
#include <utility>

#include "knowledge/knowledge.h"
#include "knowledge/valid_file.h"
#include "xml/document.h"

namespace winchbook::knowledge {
namespace {

constexpr std::array kSurfaceStates{"untouched", "cleaned",    "cleaned-with-loss",
                                    "repaired",  "polished",   "worn-through",
                                    "stripped",  "refinished", "darkened-on-purpose"};
constexpr std::array kPatternAnswers{"right", "running-change", "service-spare", "wrong"};

int whole_number(pugi::xml_attribute attribute, int when_absent) {
  const std::string_view text = attribute.value();
  int number = when_absent;
  std::from_chars(text.data(), text.data() + text.size(), number);
  return number;
}

base::Decimal decimal(pugi::xml_attribute attribute) {
  // The schema has already refused what is not a decimal.
  const base::Result<base::Decimal> number = base::Decimal::parse(attribute.value());
  return number ? number.value() : base::Decimal{};
}

bool yes(pugi::xml_attribute attribute) {
  return std::string_view(attribute.value()) == "yes";
}

PartsList parts_list_from(pugi::xml_node root) {
  PartsList list;
  list.reel_kind = root.attribute("reel-kind").value();
  list.other_weight = decimal(root.attribute("other-weight"));
  list.source = folded(root.child("source"));
  for (const pugi::xml_node node : root.children("place")) {
    PartsEntry entry;
    entry.word = node.attribute("word").value();
    entry.name = folded(node.child("name"));
    entry.assembly = folded(node.child("assembly"));
    entry.usual_quantity = whole_number(node.attribute("quantity"), 1);
    entry.weight = decimal(node.attribute("weight"));
    entry.exposed =
        node.attribute("exposed") ? decimal(node.attribute("exposed")) : base::Decimal{};
    entry.consumable = yes(node.attribute("consumable"));
    entry.captive_spring = yes(node.attribute("captive-spring"));
    entry.freed_by = node.attribute("freed-by").value();
    entry.loose_pieces = whole_number(node.attribute("loose-pieces"), 1);
    entry.lubricant = listed(node.attribute("lubricant"), Lubricant::none);
    list.places.push_back(std::move(entry));
  }
  return list;
}

std::vector<Credit> credits_from(pugi::xml_node node) {
  std::vector<Credit> credits;
  for (const pugi::xml_node one : node.children("credit")) {
    credits.push_back(
        {one.attribute("state").value(), whole_number(one.attribute("percent"), 0), folded(one)});
  }
  return credits;
}

ShareAxis share_axis_from(pugi::xml_node node) {
  ShareAxis axis;
  for (const pugi::xml_node one : node.children("word")) {
    axis.words.push_back({one.attribute("name").value(), whole_number(one.attribute("percent"), 0),
                          std::string_view(one.attribute("bound").value()) == "from", folded(one)});
  }
  return axis;
}

std::vector<RuledWord> ruled_axis_from(pugi::xml_node node) {
  std::vector<RuledWord> words;
  for (const pugi::xml_node one : node.children("word")) {
    words.push_back({one.attribute("name").value(), folded(one)});
  }
  return words;
}

void grading_from(pugi::xml_node root, Knowledge& knowledge) {
  const pugi::xml_node originality = root.child("originality");
  knowledge.originality.surface = credits_from(originality.child("surface"));
  knowledge.originality.pattern = credits_from(originality.child("pattern"));
  const pugi::xml_node dominant = originality.child("dominant");
  knowledge.originality.dominant_percent = whole_number(dominant.attribute("percent"), 50);
  knowledge.originality.dominant_reason = folded(dominant);
  knowledge.originality.another_percent =
      whole_number(originality.child("another").attribute("percent"), 20);

  const pugi::xml_node condition = root.child("condition");
  knowledge.condition.surface = share_axis_from(condition.child("surface"));
  knowledge.condition.completeness = share_axis_from(condition.child("completeness"));
  knowledge.condition.structure = ruled_axis_from(condition.child("structure"));
  knowledge.condition.working = ruled_axis_from(condition.child("working"));
  for (const pugi::xml_node one : condition.child("finish").children("state")) {
    knowledge.condition.finish.push_back({one.attribute("name").value(),
                                          listed(one.attribute("counts"), Counts::not_determined),
                                          folded(one)});
  }

  const pugi::xml_node corrosion = root.child("corrosion");
  knowledge.corrosion.source = corrosion.attribute("source").value();
  for (const pugi::xml_node one : corrosion.children("step")) {
    knowledge.corrosion.steps.push_back(
        {decimal(one.attribute("percent")), whole_number(one.attribute("rating"), 0)});
  }
}

/// What the schema cannot say about the credits: none may be missing, none may stand in the wrong
/// table.
template <std::size_t N>
void check_credits(const xml::Document& document, pugi::xml_node node,
                   const std::array<const char*, N>& states, base::Diagnostics& faults) {
  const std::vector<Credit> credits = credits_from(node);
  for (const std::string_view state : states) {
    const bool there = std::any_of(credits.begin(), credits.end(),
                                   [&](const Credit& one) { return one.state == state; });
    if (there) continue;
    faults.push_back(base::error_at(document.where(node),
                                    "no credit for \"" + std::string(state) + "\"",
                                    "add a credit for it, with its reason", "missing-credit"));
  }
  for (const pugi::xml_node one : node.children("credit")) {
    const std::string_view state = one.attribute("state").value();
    if (std::find(states.begin(), states.end(), state) != states.end()) continue;
    faults.push_back(base::error_at(document.where(one),
                                    "\"" + std::string(state) + "\" does not belong in this table",
                                    "take it out", "credit-out-of-place"));
  }
}

/// Rows that must fall from one to the next, read by `value`.
template <class Value>
void check_order(const xml::Document& document, pugi::xml_node node, const char* child,
                 const Value& precedes, base::Diagnostics& faults) {
  pugi::xml_node before;
  for (const pugi::xml_node one : node.children(child)) {
    if (before && !precedes(before, one)) {
      faults.push_back(base::error_at(document.where(one), "this row is out of order",
                                      "the rows go from the best to the worst", "row-order"));
    }
    before = one;
  }
}

void check_grading(const xml::Document& document, pugi::xml_node root, base::Diagnostics& faults) {
  const pugi::xml_node originality = root.child("originality");
  check_credits(document, originality.child("surface"), kSurfaceStates, faults);
  check_credits(document, originality.child("pattern"), kPatternAnswers, faults);
  const auto falls = [](pugi::xml_node a, pugi::xml_node b) {
    return whole_number(a.attribute("percent"), 0) > whole_number(b.attribute("percent"), 0);
  };
  for (const char* axis : {"surface", "completeness"}) {
    const pugi::xml_node node = root.child("condition").child(axis);
    check_order(document, node, "word", falls, faults);
    pugi::xml_node last;
    for (const pugi::xml_node one : node.children("word")) {
      last = one;
    }
    if (whole_number(last.attribute("percent"), 1) != 0) {
      faults.push_back(base::error_at(document.where(last), "the last word does not begin at 0",
                                      "give it percent 0, bound \"from\"", "row-order"));
    }
  }
  check_order(
      document, root.child("corrosion"), "step",
      [](pugi::xml_node a, pugi::xml_node b) {
        return decimal(a.attribute("percent")) < decimal(b.attribute("percent")) &&
               whole_number(a.attribute("rating"), 0) > whole_number(b.attribute("rating"), 0);
      },
      faults);
}

class Loader {
 public:
  explicit Loader(const Source& source) : source_(source) {}

  void parts_list_at(const std::filesystem::path& path) {
    const std::optional<xml::Document> document = checked(path, "parts-list");
    if (!document) return;
    PartsList list = parts_list_from(document->root());
    if (parts_list(knowledge_, list.reel_kind) != nullptr) {
      faults_.push_back(base::error_at(document->where(document->root()),
                                       "a second parts list for \"" + list.reel_kind + "\"",
                                       "keep one of them", "parts-list-twice"));
      return;
    }
    knowledge_.parts_lists.push_back(std::move(list));
  }

  void grading_at(const std::filesystem::path& path) {
    const std::optional<xml::Document> document = checked(path, "grading");
    if (!document) return;
    check_grading(*document, document->root(), faults_);
    grading_from(document->root(), knowledge_);
  }

  void marks_and_care() {
    take(load_marks(source_), knowledge_.marks);
    take(load_makers(source_), knowledge_.makers);
    take(load_care(source_), knowledge_.care);
  }

  base::Result<Knowledge> done() && {
    if (base::has_error(faults_)) return std::move(faults_);
    return std::move(knowledge_);
  }

 private:
  /// The file, read and valid; its faults are kept.
  std::optional<xml::Document> checked(const std::filesystem::path& path, std::string_view root) {
    base::Result<xml::Document> document = read_valid(source_, path, root);
    if (document) return std::move(document).value();
    keep(document.faults());
    return std::nullopt;
  }

  template <class Value> void take(base::Result<Value> read, Value& into) {
    if (read) {
      into = std::move(read).value();
    } else {
      keep(read.faults());
    }
  }

  void keep(const base::Diagnostics& faults) {
    faults_.insert(faults_.end(), faults.begin(), faults.end());
  }

  const Source& source_;
  Knowledge knowledge_;
  base::Diagnostics faults_;
};

}  // namespace

base::Result<Knowledge> load(const Source& source, std::string_view reel_kind) {
  if (const auto schema = source.schema("knowledge-1.xsd"); !schema) return schema.faults();
  Loader loader(source);
  const std::filesystem::path parts = source.shared("parts");
  for (const std::string& name : source.files().names_in(parts)) {
    const bool wanted = reel_kind.empty() || name == std::string(reel_kind) + ".xml";
    if (wanted && name.ends_with(".xml")) loader.parts_list_at(parts / name);
  }
  loader.grading_at(source.shared("grading") / "grading.xml");
  loader.marks_and_care();
  return std::move(loader).done();
}

}  // namespace winchbook::knowledge
