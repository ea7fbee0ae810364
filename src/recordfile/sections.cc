#include "recordfile/sections.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <string>
#include <string_view>

#include "recordfile/element.h"
#include "recordfile/fields.h"
#include "xml/schema_words.h"

namespace winchbook::recordfile {
namespace {

using base::Diagnostics;
using base::error_at;

/// Goes through the fields of a record for its sections.
class SectionNames {
 public:
  static constexpr bool kReads = false;

  template <class Value> void need(const char* name, const Value& /*value*/) {
    found.push_back({name, true});
  }
  template <class Value> void may(const char* name, const Value& /*value*/) {
    found.push_back({name, false});
  }
  template <class List> void need_group(const char* name, const List& list) { need(name, list); }
  template <class List> void may_group(const char* name, const List& list) { may(name, list); }

  std::vector<Section> found;
};

std::vector<std::string> section_names() {
  std::vector<std::string> names;
  for (const Section& section : sections())
    names.emplace_back(section.name);
  return names;
}

std::ptrdiff_t position(std::string_view name) {
  const auto all = sections();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Section& one) { return name == one.name; });
  return found == all.end() ? -1 : found - all.begin();
}

bool starts_with_own_prefix(pugi::xml_attribute attribute) {
  return std::string_view(attribute.name()).starts_with("xmlns:") &&
         std::string_view(attribute.value()) == kNamespace;
}

/// A prefix bound to the record's namespace, anywhere: the record is written without prefixes.
pugi::xml_node prefixed(pugi::xml_node element) {
  const auto binds = [](pugi::xml_node node) {
    return std::any_of(node.attributes_begin(), node.attributes_end(), starts_with_own_prefix);
  };
  return binds(element) ? element : element.find_node(binds);
}

bool is_language(std::string_view text) {
  std::size_t in_part = 0;
  bool first = true;
  for (const char c : text) {
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
    const bool digit = c >= '0' && c <= '9';
    if (c == '-' && in_part > 0) {
      in_part = 0;
      first = false;
    } else if (!(letter || (digit && !first)) || ++in_part > 8) {
      return false;
    }
  }
  return in_part > 0;
}

void check_version(const xml::Document& document, Diagnostics& faults) {
  const pugi::xml_node root = document.root();
  const std::string_view told = root.attribute("version").value();
  int version = 0;
  const auto [end, code] = std::from_chars(told.data(), told.data() + told.size(), version);
  if (code != std::errc() || end != told.data() + told.size() || version < 1) {
    faults.push_back(
        error_at(document.where(root),
                 fmt::format("the record's version is {}, expected a number such as {}",
                             xml::quoted(told), kVersion),
                 fmt::format("write version=\"{}\" in the root", kVersion), "version"));
  } else if (version > kVersion) {
    faults.push_back(error_at(
        document.where(root),
        fmt::format("the record is of version {}, and this winchbook reads versions up to {}",
                    version, kVersion),
        "use a newer winchbook; this one leaves the file as it is", "version"));
  }
}

void check_root_attributes(const xml::Document& document, Diagnostics& faults) {
  const pugi::xml_node root = document.root();
  for (const pugi::xml_attribute attribute : root.attributes()) {
    const std::string_view name = attribute.name();
    if (name == "version" || name == "lang" || name.find(':') != std::string_view::npos ||
        name == "xmlns") {
      continue;
    }
    faults.push_back(
        error_at(document.where(root),
                 fmt::format("\"reel-record\" has an attribute \"{}\", which it may not", name),
                 "facts stand in elements; attributes hold only ids and references", "schema"));
  }
  const std::string_view language = root.attribute("lang").value();
  if (!is_language(language)) {
    faults.push_back(
        error_at(document.where(root),
                 fmt::format("the record's language is {}, expected a tag such as \"en-GB\"",
                             xml::quoted(language)),
                 "write lang=\"en-GB\" or another tag of BCP 47 in the root", "language"));
  }
}

void check_text_between(const xml::Document& document, Diagnostics& faults) {
  for (const pugi::xml_node child : document.root().children()) {
    if (child.type() == pugi::node_element) continue;
    const std::string_view text = child.value();
    if (text.find_first_not_of(" \t\r\n") == std::string_view::npos) continue;
    faults.push_back(
        error_at(document.where(child),
                 fmt::format("text stands between the sections: {}", xml::quoted(text)),
                 "put it in a section, or make a comment of it", "schema"));
  }
}

}  // namespace

std::span<const Section> sections() {
  static const std::vector<Section> kSections = [] {
    SectionNames names;
    const record::Record record;
    fields(names, record);
    return names.found;
  }();
  return kSections;
}

bool is_ours(pugi::xml_node element) {
  const std::string_view name = element.name();
  if (name.find(':') != std::string_view::npos) return false;
  const pugi::xml_attribute space = element.attribute("xmlns");
  return !space || std::string_view(space.value()) == kNamespace;
}

Diagnostics faults_of_root(const xml::Document& document) {
  Diagnostics faults;
  const pugi::xml_node root = document.root();
  const std::string_view name = root.name();
  if (const pugi::xml_node node = prefixed(root)) {
    faults.push_back(error_at(
        document.where(node), "the record's namespace has a prefix here, expected none",
        fmt::format("write xmlns=\"{}\" in the root, and element names without prefix", kNamespace),
        "namespace"));
    return faults;
  }
  if (name != "reel-record") {
    faults.push_back(
        error_at(document.where(root),
                 fmt::format("the root element is \"{}\", expected \"reel-record\"", name),
                 "give the record.xml of a reel's folder", "root"));
    return faults;
  }
  const std::string_view space = root.attribute("xmlns").value();
  if (space != kNamespace) {
    faults.push_back(error_at(document.where(root),
                              fmt::format("the record's namespace is {}, expected \"{}\"",
                                          xml::quoted(space), kNamespace),
                              fmt::format("write xmlns=\"{}\" in the root", kNamespace),
                              "namespace"));
    return faults;
  }
  check_version(document, faults);
  return faults;
}

Diagnostics faults_of_order(const xml::Document& document) {
  Diagnostics faults;
  check_root_attributes(document, faults);
  check_text_between(document, faults);
  std::ptrdiff_t last = -1;
  std::vector<bool> seen(sections().size());
  for (const pugi::xml_node child : document.root().children()) {
    if (child.type() != pugi::node_element || !is_ours(child)) continue;
    const std::string_view name = child.name();
    const std::ptrdiff_t at = position(name);
    if (at < 0) {
      const std::string like = xml::nearest(name, section_names());
      faults.push_back(error_at(document.where(child),
                                fmt::format("\"{}\" is not a section of a record", name),
                                like.empty() ? "take it out, or give it a namespace of your own"
                                             : fmt::format("did you mean \"{}\"?", like),
                                "schema"));
      continue;
    }
    const auto index = static_cast<std::size_t>(at);
    if (seen[index]) {
      faults.push_back(error_at(document.where(child),
                                fmt::format("section \"{}\" stands twice, expected once", name),
                                "put both into one", "schema"));
    } else if (at < last) {
      faults.push_back(
          error_at(document.where(child),
                   fmt::format("section \"{}\" stands after \"{}\", expected before it", name,
                               sections()[static_cast<std::size_t>(last)].name),
                   "move it up", "schema"));
    }
    seen[index] = true;
    last = std::max(last, at);
  }
  for (std::size_t i = 0; i < sections().size(); ++i) {
    if (!sections()[i].required || seen[i]) continue;
    faults.push_back(error_at(
        document.where(document.root()),
        fmt::format("section \"{}\" is missing", sections()[i].name),
        fmt::format("write <{}>…</{}>", sections()[i].name, sections()[i].name), "schema"));
  }
  return faults;
}

}  // namespace winchbook::recordfile
