#include "recordfile/glance.h"

#include <fmt/format.h>

#include <map>
#include <string_view>

#include "recordfile/element.h"

namespace winchbook::recordfile {
namespace {

std::string text_of(pugi::xml_node parent, const char* name) {
  return folded(parent.child(name).text().get());
}

std::string_view ref_of(pugi::xml_node parent, const char* name) {
  return parent.child(name).attribute("ref").value();
}

pugi::xml_node with_id(pugi::xml_node section, const char* name, std::string_view id) {
  for (const pugi::xml_node one : section.children(name)) {
    if (id == one.attribute("id").value()) return one;
  }
  return {};
}

pugi::xml_node last_of(pugi::xml_node section, const char* name) {
  pugi::xml_node last;
  for (const pugi::xml_node one : section.children(name))
    last = one;
  return last;
}

/// The last who was given it for good and has it still; else the last who had it in hand; else who
/// brought it.
std::string_view holder_of(pugi::xml_node root, pugi::xml_node visit) {
  std::string_view owner;
  std::string_view in_hand;
  for (const pugi::xml_node one : root.child("custody").children("held-by")) {
    if (one.child("until")) continue;
    const std::string_view held = one.child("held").text().get();
    (held == "possession" ? in_hand : owner) = ref_of(one, "holder");
  }
  if (!owner.empty()) return owner;
  return in_hand.empty() ? ref_of(visit, "brought-by") : in_hand;
}

std::string owner_of(pugi::xml_node root, pugi::xml_node visit) {
  const pugi::xml_node person = with_id(root.child("people"), "person", holder_of(root, visit));
  const bool withheld = static_cast<bool>(person.child("name").child("withheld"));
  return text_of(person, withheld ? "stand-in" : "name");
}

/// How many parts of the visit's tray are neither back nor anywhere else.
int parts_open(pugi::xml_node visit) {
  int open = 0;
  for (const pugi::xml_node line : visit.child("tray").children("line")) {
    int count = 0;
    for (const char* came : {"taken-off", "found-loose"})
      count += line.child(came).text().as_int();
    for (const char* went : {"refitted", "bagged", "to-owner", "kept-by-bench", "lost", "scrapped"})
      count -= line.child(went).text().as_int();
    open += count > 0 ? count : 0;
  }
  return open;
}

std::vector<std::string> open_in(pugi::xml_node visit) {
  std::vector<std::string> open;
  const bool back = static_cast<bool>(visit.child("hand-back"));
  if (const int parts = parts_open(visit); parts > 0) {
    open.push_back(fmt::format("{} part{} off", parts, parts == 1 ? "" : "s"));
  }
  if (back) return open;
  for (const pugi::xml_node one : visit.children("waiting-for"))
    open.push_back("waiting for " + folded(one.text().get()));
  const std::string promised = text_of(visit, "promised-by");
  if (!promised.empty()) open.push_back("promised by " + promised);
  return open;
}

std::vector<GlancedFitting> fittings_of(pugi::xml_node root) {
  std::vector<GlancedFitting> fitted;
  for (const pugi::xml_node one : root.child("fittings").children("fitting")) {
    if (!one.child("visit")) continue;
    const pugi::xml_node piece = with_id(root.child("pieces"), "piece", ref_of(one, "piece"));
    const pugi::xml_node place = with_id(root.child("places"), "place", ref_of(one, "place"));
    const pugi::xml_node donor = with_id(root.child("donors"), "donor", ref_of(piece, "donor"));
    fitted.push_back({text_of(piece, "name"), text_of(place, "name"), text_of(one, "from"),
                      donor ? text_of(donor, "name") : text_of(piece, "supplier"),
                      text_of(one.child("seat"), "bore"), text_of(one.child("seat"), "outside")});
  }
  return fitted;
}

}  // namespace

Glance glance(const xml::Document& record) {
  const pugi::xml_node root = record.root();
  const pugi::xml_node reel = root.child("reel");
  const pugi::xml_node visit = last_of(root.child("visits"), "visit");
  Glance told;
  told.name = text_of(reel, "name");
  told.maker = text_of(reel.child("maker"), "name");
  told.model = text_of(reel, "model");
  told.kind = text_of(reel, "kind");
  told.owner = owner_of(root, visit);
  told.taken_in = text_of(visit, "taken-in");
  told.handed_back = text_of(visit.child("hand-back"), "on");
  told.open = open_in(visit);
  told.fitted = fittings_of(root);
  return told;
}

}  // namespace winchbook::recordfile
