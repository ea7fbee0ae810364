#include "report/template.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <map>

#include "base/words_of_text.h"
#include "record/enum_words.h"
#include "report/sections.h"

namespace winchbook::report {
namespace {

using base::Diagnostics;
using base::points;
using document::Colour;
using document::Role;
using document::Style;
using document::TypeStyle;

constexpr std::array<std::pair<std::string_view, Role>, document::kRoles> kRoleNames{{
    {"cover-name", Role::cover_name},
    {"cover-name-2", Role::cover_name_2},
    {"cover-name-3", Role::cover_name_3},
    {"chapter-title", Role::chapter_title},
    {"chapter-title-2", Role::chapter_title_2},
    {"chapter-title-3", Role::chapter_title_3},
    {"second-ledger-title", Role::second_ledger_title},
    {"stand-first", Role::stand_first},
    {"reading", Role::reading},
    {"small-reading", Role::small_reading},
    {"subhead", Role::subhead},
    {"eyebrow", Role::eyebrow},
    {"side-note", Role::side_note},
    {"table", Role::table},
    {"label", Role::label},
    {"caption", Role::caption},
    {"chart", Role::chart},
    {"folio", Role::folio},
    {"initial", Role::initial},
    {"entry-letter", Role::entry_letter},
    {"entry-name", Role::entry_name},
    {"seal-code", Role::seal_code},
    {"marks-as-read", Role::marks_as_read},
    {"note-mark", Role::note_mark},
    {"tally", Role::tally},
    {"card-number", Role::card_number},
}};

std::string attribute(pugi::xml_node node, const char* name) {
  return node.attribute(name).as_string();
}

std::vector<SectionChoice> sections_of(const xml::Document& file, pugi::xml_node parent,
                                       Diagnostics& faults) {
  std::vector<SectionChoice> choices;
  for (const pugi::xml_node node : parent.children("section")) {
    SectionChoice choice{attribute(node, "id"), std::nullopt};
    choice.part = attribute(node, "part");
    if (const auto starts = node.attribute("starts-page")) choice.starts_page = starts.as_bool();
    if (const auto keeps = node.attribute("keep-together")) choice.keeps_together = keeps.as_bool();
    if (!knows_section(choice.id)) {
      faults.push_back(base::error_at(file.where(node), "there is no section \"" + choice.id + "\"",
                                      "the sections are " + section_names(), "template-section"));
    }
    choices.push_back(std::move(choice));
  }
  return choices;
}

/// The schema lets no other word through.
Needs needs_of(std::string_view text) {
  Needs needs;
  for (const std::string_view word : base::words_of(text)) {
    needs.tray_closed = needs.tray_closed || word == "tray-closed";
    needs.hand_back = needs.hand_back || word == "hand-back";
    needs.value = needs.value || word == "value";
  }
  return needs;
}

int hexadecimal(std::string_view digits) {
  int value = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), value, 16);
  return value;
}

Colour colour_of(std::string_view text) {
  const auto part = [&](std::size_t at) {
    return static_cast<std::uint8_t>(hexadecimal(text.substr(at, 2)));
  };
  return {part(1), part(3), part(5)};
}

void read_paper(const xml::Document& file, std::string_view paper, Style& style,
                Diagnostics& faults) {
  std::string names;
  for (const pugi::xml_node node : file.root().children("paper")) {
    names += (names.empty() ? "" : ", ") + attribute(node, "name");
    if (attribute(node, "name") != paper) continue;
    const auto measure = [&](const char* name) { return points(node.attribute(name).as_double()); };
    style.paper = {measure("width"), measure("height"), measure("top"),
                   measure("foot"),  measure("left"),   measure("right")};
    const base::Length frame = style.paper.width - style.paper.left - style.paper.right;
    const base::Length off = frame - style.frame_width();
    if (off > points(0.01) || off < points(-0.01)) {
      faults.push_back(base::error_at(
          file.where(node), "the margins leave a frame of another width than 471 points",
          "change left or right until width - left - right is 471", "template-paper"));
    }
    return;
  }
  faults.push_back(base::error_at(file.where(file.root()),
                                  "there is no paper \"" + std::string(paper) + "\"",
                                  "the papers are " + names, "template-paper"));
}

void read_colours(pugi::xml_node node, Style& style) {
  style.ink = colour_of(attribute(node, "ink"));
  style.ink2 = colour_of(attribute(node, "ink2"));
  style.bar = colour_of(attribute(node, "bar"));
  style.accent = colour_of(attribute(node, "accent"));
  style.tint = colour_of(attribute(node, "tint"));
}

std::map<std::string, document::Family> families_of(pugi::xml_node root) {
  std::map<std::string, document::Family> families;
  for (const pugi::xml_node node : root.children("family")) {
    families[attribute(node, "name")] = {attribute(node, "regular"), attribute(node, "italic"),
                                         attribute(node, "bold"), attribute(node, "bold-italic")};
  }
  return families;
}

TypeStyle type_of(pugi::xml_node node, const document::Family& family, const Style& style) {
  TypeStyle type;
  type.family = family;
  type.italic = node.attribute("italic").as_bool();
  type.bold = node.attribute("bold").as_bool();
  type.size = points(node.attribute("size").as_double());
  type.leading = points(node.attribute("leading").as_double());
  const std::string colour = attribute(node, "colour");
  type.colour = colour == "accent" ? style.accent : colour == "ink2" ? style.ink2 : style.ink;
  type.tracking = node.attribute("tracking").as_int();
  type.capitals = node.attribute("capitals").as_bool();
  for (const std::string_view feature : base::words_of(node.attribute("features").value()))
    type.features.emplace_back(feature);
  return type;
}

/// Reads the elements of one name, each the type of a role; says which roles had one.
std::array<bool, document::kRoles> read_types(const xml::Document& file, const char* element,
                                              Style& style, Diagnostics& faults) {
  const auto families = families_of(file.root());
  std::array<bool, document::kRoles> told{};
  for (const pugi::xml_node node : file.root().children(element)) {
    const std::string name = attribute(node, "role");
    const auto* role = std::find_if(kRoleNames.begin(), kRoleNames.end(),
                                    [&](const auto& known) { return known.first == name; });
    const auto family = families.find(attribute(node, "family"));
    if (role == kRoleNames.end() || family == families.end()) {
      const bool no_role = role == kRoleNames.end();
      faults.push_back(
          base::error_at(file.where(node),
                         no_role ? "there is no role \"" + name + "\""
                                 : "there is no family \"" + attribute(node, "family") + "\"",
                         no_role ? "take a role of the house style" : "name a family of this file",
                         "template-type"));
      continue;
    }
    const auto index = static_cast<std::size_t>(role->second);
    style.type[index] = type_of(node, family->second, style);
    told[index] = true;
  }
  return told;
}

void read_all_types(const xml::Document& file, bool dense, Style& style, Diagnostics& faults) {
  const auto told = read_types(file, "type", style, faults);
  for (const auto& [name, role] : kRoleNames) {
    if (told[static_cast<std::size_t>(role)]) continue;
    faults.push_back(base::error_at(file.where(file.root()),
                                    "the role \"" + std::string(name) + "\" has no type",
                                    "copy its line from the house style", "template-type"));
  }
  if (dense) (void)read_types(file, "dense", style, faults);
}

}  // namespace

bool is_template(const xml::Document& file) {
  return std::string_view(file.root().name()) == "template";
}

base::Result<Template> read_template(const xml::Document& file, const xml::Schema& schema) {
  Diagnostics faults = schema.faults_in(file, file.root());
  if (base::has_error(faults)) return faults;
  const pugi::xml_node root = file.root();
  Template out;
  out.document = attribute(root, "document");
  out.style_file = attribute(root, "style");
  out.paper = attribute(root, "paper");
  out.cover = root.attribute("cover").as_bool(true);
  out.dense = root.attribute("dense").as_bool();
  out.nameless = root.attribute("nameless").as_bool();
  out.tightens = root.attribute("tightens").as_bool();
  out.needs = needs_of(attribute(root, "needs"));
  out.reader =
      record::value_of<record::Reader>(attribute(root, "reader")).value_or(record::Reader::owner);
  out.sections = sections_of(file, root, faults);
  if (const pugi::xml_node thin = root.child("thin")) {
    out.thin = ThinChoice{thin.attribute("places").as_uint(),
                          thin.attribute("photographs").as_uint(), sections_of(file, thin, faults)};
  }
  for (const pugi::xml_node node : root.children("words")) {
    Rewording& one = out.rewordings.emplace_back();
    one.key = attribute(node, "key");
    one.words = node.child_value();
    for (const std::string_view word : base::words_of(attribute(node, "needs")))
      one.needs.emplace_back(word);
  }
  if (base::has_error(faults)) return faults;
  return out;
}

base::Result<Style> read_style(const xml::Document& file, const xml::Schema& schema,
                               std::string_view paper, bool dense) {
  Diagnostics faults = schema.faults_in(file, file.root());
  if (base::has_error(faults)) return faults;
  Style style;
  read_colours(file.root().child("colours"), style);
  read_paper(file, paper, style, faults);
  read_all_types(file, dense, style, faults);
  for (const pugi::xml_node node : file.root().children("fallback")) {
    style.fallback.push_back(attribute(node, "face"));
  }
  if (base::has_error(faults)) return faults;
  return style;
}

std::map<std::string, base::Location> faces_of(const xml::Document& file) {
  std::map<std::string, base::Location> faces;
  for (const pugi::xml_node node : file.root().children()) {
    const std::string_view kind = node.name();
    if (kind != "family" && kind != "fallback") continue;
    for (const pugi::xml_attribute attribute : node.attributes()) {
      if (std::string_view(attribute.name()) == "name") continue;
      faces.try_emplace(attribute.value(), file.where(node));
    }
  }
  return faces;
}

}  // namespace winchbook::report
