#include "knowledge/drag.h"

#include <algorithm>
#include <charconv>
#include <utility>

#include "base/words_of_text.h"
#include "knowledge/valid_file.h"

namespace winchbook::knowledge {
namespace {

double number(std::string_view text) {
  double value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  return value;
}

int whole(pugi::xml_attribute attribute) {
  const std::string_view text = attribute.value();
  int value = 0;
  std::from_chars(text.data(), text.data() + text.size(), value);
  return value;
}

/// "0.12 0.2": the schema has refused anything else.
void span(pugi::xml_attribute attribute, std::optional<double>& low, std::optional<double>& high) {
  const auto ends = base::words_of(attribute.value());
  if (ends.size() != 2) return;
  low = number(ends.front());
  high = number(ends.back());
}

std::vector<std::string> names(std::string_view text) {
  std::vector<std::string> all;
  for (const std::string_view part : base::parts_of(text, ',')) {
    if (const std::string_view name = base::trimmed(part); !name.empty()) all.emplace_back(name);
  }
  return all;
}

Friction friction_from(pugi::xml_node node) {
  Friction friction;
  friction.material = node.attribute("name").value();
  friction.also = names(node.attribute("also").value());
  friction.sort = listed(node.attribute("sort"), WasherSort::hazard);
  span(node.attribute("dry"), friction.dry_low, friction.dry_high);
  span(node.attribute("greased"), friction.greased_low, friction.greased_high);
  friction.note = folded(node);
  friction.source = node.attribute("source").value();
  return friction;
}

SeatRules rules_from(pugi::xml_node node) {
  const auto rule = [&](const char* name) {
    return number(node.find_child_by_attribute("rule", "name", name).attribute("mm").value());
  };
  return {rule("same-size"),  rule("one-step"),     rule("most-trim"),
          rule("least-ring"), rule("press-margin"), rule("flats-play")};
}

/// Bands of one zone must follow each other without a gap.
void check_bands(const xml::Document& document, pugi::xml_node zone, base::Diagnostics& faults) {
  int end = -1;
  for (const pugi::xml_node band : zone.children("band")) {
    const int over = whole(band.attribute("over"));
    const int up_to = whole(band.attribute("to"));
    if (over >= up_to || (end >= 0 && over != end)) {
      faults.push_back(base::error_at(document.where(band),
                                      "this band does not begin where the one before it ends",
                                      "the bands follow each other, smallest first", "row-order"));
    }
    end = up_to;
  }
}

}  // namespace

const Friction* find_friction(const DragKnowledge& knowledge, std::string_view material) {
  const std::string wanted = base::in_small_letters(material);
  const auto is_it = [&](const std::string& name) {
    return base::in_small_letters(name) == wanted;
  };
  const auto row =
      std::find_if(knowledge.friction.begin(), knowledge.friction.end(), [&](const Friction& one) {
        return is_it(one.material) || std::any_of(one.also.begin(), one.also.end(), is_it);
      });
  return row == knowledge.friction.end() ? nullptr : &*row;
}

const FitLimit* find_limit(const DragKnowledge& knowledge, std::string_view zone, double size) {
  const auto row =
      std::find_if(knowledge.fits.begin(), knowledge.fits.end(), [&](const FitLimit& one) {
        return one.zone == zone && size > one.over && size <= one.up_to;
      });
  return row == knowledge.fits.end() ? nullptr : &*row;
}

base::Result<DragKnowledge> load_drag(const Source& source) {
  const auto document = read_valid(source, source.shared("drag") / "drag.xml", "drag-table");
  if (!document) return document.faults();
  const pugi::xml_node root = document->root();
  base::Diagnostics faults;
  DragKnowledge knowledge;
  for (const pugi::xml_node node : root.child("friction").children("material")) {
    knowledge.friction.push_back(friction_from(node));
  }
  for (const pugi::xml_node zone : root.child("fits").children("zone")) {
    check_bands(*document, zone, faults);
    for (const pugi::xml_node band : zone.children("band")) {
      knowledge.fits.push_back({zone.attribute("name").value(), whole(band.attribute("over")),
                                whole(band.attribute("to")), whole(band.attribute("upper")),
                                whole(band.attribute("lower"))});
    }
  }
  knowledge.seat = rules_from(root.child("seat"));
  for (const pugi::xml_node node : root.child("settings").children("share")) {
    knowledge.settings.push_back({node.attribute("when").value(), whole(node.attribute("low")),
                                  whole(node.attribute("high")), node.attribute("source").value()});
  }
  if (!faults.empty()) return faults;
  return knowledge;
}

}  // namespace winchbook::knowledge
