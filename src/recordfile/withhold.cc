#include "recordfile/withhold.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <map>
#include <optional>
#include <set>
#include <string_view>
#include <utility>

#include "base/words_of_text.h"
#include "record/enum_words.h"
#include "recordfile/element.h"
#include "recordfile/sections.h"
#include "seal/digest.h"

namespace winchbook::recordfile {
namespace {

using record::Marking;
using record::Person;
using record::Photo;
using record::Reader;
using record::Record;
using xml::Extent;
using xml::Splice;

constexpr std::string_view kSaltHint =
    "write <salt> with 32 hexadecimal digits drawn at random into it";

bool is_any_of(std::string_view name, std::initializer_list<std::string_view> names) {
  return std::find(names.begin(), names.end(), name) != names.end();
}

bool is_hidden(const Record& record, Reader reader, const record::PersonId& id) {
  const Person* person = find(record, id);
  return person != nullptr && !may_see(reader, person->named_to);
}

/// The salt for a mark: its own, or that of the person it names.
std::string salt_of(const Record& record, const Marking& marking) {
  const Person* person = marking.person ? find(record, *marking.person) : nullptr;
  return !marking.salt.empty() || person == nullptr ? marking.salt : person->salt;
}

bool shows(const Marking& marking, const Photo& photo) {
  return std::find(marking.photos.begin(), marking.photos.end(), photo.id) != marking.photos.end();
}

/// The salt for a photograph: its own, or that of whom or what it is withheld with.
std::string salt_of(const Record& record, Reader reader, const Photo& photo) {
  if (!photo.salt.empty()) return photo.salt;
  for (const record::PersonId& id : photo.shows) {
    if (is_hidden(record, reader, id)) return find(record, id)->salt;
  }
  for (const Marking& marking : record.markings) {
    if (shows(marking, photo) && !may_see(record, reader, marking)) return salt_of(record, marking);
  }
  return "";
}

/// The words by which an id would tell a name.
std::set<std::string> telling_parts(const Record& record, Reader reader) {
  std::set<std::string> telling;
  for (const Person& person : record.people) {
    if (may_see(reader, person.named_to)) continue;
    const std::string* name = record::told(person.name);
    for (const std::string& text : {name == nullptr ? "" : *name, person.short_name}) {
      for (std::string& part : base::plain_words_of(text)) {
        if (part.size() > 1) telling.insert(std::move(part));
      }
    }
  }
  return telling;
}

/// New names for the ids that are a withheld person's or hold a withheld name.
class NewIds {
 public:
  NewIds(pugi::xml_node root, const Record& record, Reader reader)
      : telling_(telling_parts(record, reader)) {
    for (const Person& person : record.people) {
      if (!may_see(reader, person.named_to)) people_.insert(person.id.text);
    }
    collect(root);
    for (const auto& [id, element] : found_) {
      if (is_telling(id)) name(id, element);
    }
  }

  [[nodiscard]] const std::string* find(const std::string& id) const {
    const auto found = names_.find(id);
    return found == names_.end() ? nullptr : &found->second;
  }

 private:
  void collect(pugi::xml_node parent) {
    for (const pugi::xml_node child : parent.children()) {
      if (child.type() != pugi::node_element || !is_ours(child)) continue;
      if (const auto id = child.attribute("id")) {
        found_.emplace_back(id.value(), child.name());
        taken_.insert(id.value());
      }
      collect(child);
    }
  }
  [[nodiscard]] bool is_telling(const std::string& id) const {
    if (people_.contains(id)) return true;
    const auto parts = base::plain_words_of(id);
    return std::any_of(parts.begin(), parts.end(), [this](const std::string& part) {
      return telling_.contains(part) || people_.contains(part);
    });
  }
  /// "held-by-2": the element, and which of its kind it is.
  void name(const std::string& id, const std::string& element) {
    int number = 0;
    for (const auto& [other, its_element] : found_) {
      if (its_element == element) ++number;
      if (other == id) break;
    }
    std::string fresh = fmt::format("{}-{}", element, number);
    while (taken_.contains(fresh))
      fresh += "-x";
    taken_.insert(fresh);
    names_.emplace(id, std::move(fresh));
  }

  std::set<std::string> telling_;
  std::set<std::string> people_;
  std::vector<std::pair<std::string, std::string>> found_;  // id, element; in document order
  std::set<std::string> taken_;
  std::map<std::string, std::string> names_;
};

/// One walk over the record in document order, noting what goes and what stands in its place.
class Walk {
 public:
  Walk(const xml::Document& document, const Record& record, Reader reader)
      : document_(document),
        record_(record),
        reader_(reader),
        ids_(document.root(), record, reader) {}

  base::Result<Withholding> done() {
    inside(document_.root());
    for (const Extent& remark : xml::remarks_of(document_)) {
      const Extent lines = xml::lines_of(document_.source().bytes(), remark);
      splices_.push_back({lines.begin, lines.end});
    }
    if (!faults_.empty()) return faults_;
    Withholding out;
    out.splices = outermost(std::move(splices_));
    out.bytes = xml::spliced(document_.source().bytes(), out.splices);
    out.taken = std::move(taken_);
    out.unbound = std::move(unbound_);
    out.digests = std::move(digests_);
    return out;
  }

 private:
  /// What is put in place of a stretch stands for everything in it.
  static std::vector<Splice> outermost(std::vector<Splice> splices) {
    std::stable_sort(splices.begin(), splices.end(), [](const Splice& one, const Splice& other) {
      return one.begin != other.begin ? one.begin < other.begin : one.end > other.end;
    });
    std::vector<Splice> out;
    for (Splice& splice : splices) {
      if (out.empty() || splice.begin >= out.back().end) out.push_back(std::move(splice));
    }
    return out;
  }

  void inside(pugi::xml_node parent) {
    for (const pugi::xml_node child : parent.children()) {
      if (child.type() == pugi::node_element) element(child);
    }
  }

  void element(pugi::xml_node node) {
    const std::string_view name = node.name();
    if (!is_ours(node)) return leave_out(node);
    rename(node, "id");
    rename(node, "ref");
    if (name == "withheld") return digests_.emplace_back(folded(node.text().get())), void();
    if (name == "story" && node.parent() == document_.root()) return leave_out_prose(node);
    const record::PersonId person{name == "person" ? node.attribute("id").value() : ""};
    if (is_hidden(record_, reader_, person)) return hidden_person(node, *find(record_, person));
    const record::PersonId mentioned{name == "person" ? node.attribute("ref").value() : ""};
    if (is_hidden(record_, reader_, mentioned)) return mention(node, *find(record_, mentioned));
    if (name == "marking" && node.attribute("id")) return marking(node);
    if (name == "photo" && node.attribute("id")) return photo(node);
    inside(node);
  }

  void hidden_person(pugi::xml_node node, const Person& person) {
    using Kind = Taken::Kind;
    static constexpr auto kTexts = std::to_array<std::pair<std::string_view, Kind>>({
        {"name", Kind::name},
        {"short-name", Kind::short_name},
        {"address", Kind::address},
        {"contact", Kind::contact},
    });
    for (const pugi::xml_node child : node.children()) {
      if (child.type() != pugi::node_element) continue;
      const auto* text = std::find_if(kTexts.begin(), kTexts.end(),
                                      [&](const auto& one) { return one.first == child.name(); });
      if (text != kTexts.end() && is_ours(child)) {
        replace_text(
            child,
            {text->second, folded(own_text(child)), "", person.salt, "", person.id.text, {}});
      } else if (is_any_of(child.name(), {"who", "lived", "salt"})) {
        leave_out_prose(child);
      } else {
        element(child);
      }
    }
  }

  void mention(pugi::xml_node node, const Person& person) {
    replace_text(
        node,
        {Taken::Kind::mention, folded(own_text(node)), "", person.salt, "", person.id.text, {}});
  }

  void marking(pugi::xml_node node) {
    const Marking* marking = find(record_, record::MarkingId{node.attribute("id").value()});
    if (marking == nullptr || may_see(record_, reader_, *marking)) return inside(node);
    for (const pugi::xml_node child : node.children()) {
      if (child.type() != pugi::node_element) continue;
      const std::string_view name = child.name();
      if (name == "text") {
        replace_text(child, {Taken::Kind::inscription,
                             folded_lines(own_text(child)),
                             "",
                             salt_of(record_, *marking),
                             "",
                             marking->person ? marking->person->text : "",
                             {}});
      } else if (name == "salt") {
        leave_out(child);
      } else {
        element(child);
      }
    }
  }

  void photo(pugi::xml_node node) {
    const Photo* photo = find(record_, record::PhotoId{node.attribute("id").value()});
    if (photo == nullptr || may_see(record_, reader_, *photo)) return inside(node);
    for (const pugi::xml_node child : node.children()) {
      if (child.type() != pugi::node_element) continue;
      const std::string_view name = child.name();
      if (name == "file") {
        put(xml::extent_of(document_, child).whole, child,
            {Taken::Kind::photograph,
             photo->sha256,
             "",
             salt_of(record_, reader_, *photo),
             photo->file,
             "",
             {}});
      } else if (is_any_of(name, {"sha256", "width", "height", "original", "alternative", "rights",
                                  "salt"})) {
        leave_out(child);
      } else if (name == "caption") {
        const Extent words = xml::extent_of(document_, child).content;
        if (words.size() > 0) splices_.push_back({words.begin, words.end});
      } else {
        element(child);
      }
    }
  }

  /// A text that is there gives way to its digest; one that has done so already is kept.
  void replace_text(pugi::xml_node node, Taken taken) {
    if (taken.text.empty()) return inside(node);
    put(xml::extent_of(document_, node).content, node, std::move(taken));
  }

  void put(Extent extent, pugi::xml_node node, Taken taken) {
    taken.where = document_.where(node);
    if (taken.salt.empty()) return lacks_salt(node, taken);
    taken.digest = seal::hex(seal::withheld_digest(taken.salt, taken.text));
    splices_.push_back({extent.begin, extent.end, "<withheld>" + taken.digest + "</withheld>"});
    digests_.push_back(taken.digest);
    taken_.push_back(std::move(taken));
  }

  /// Told once for each thing, where its salt should stand.
  void lacks_salt(pugi::xml_node node, const Taken& taken) {
    while (node && !node.attribute("id"))
      node = node.parent();
    std::string id = node ? node.attribute("id").value() : "";
    base::Location where = node ? document_.where(node) : taken.where;
    std::string kind = node ? node.name() : "text";
    if (taken.kind == Taken::Kind::mention) {
      id = taken.person;
      kind = "person";
    }
    if (!without_salt_.insert(id).second) return;
    faults_.push_back(base::error_at(
        std::move(where),
        fmt::format("{} \"{}\" has to be withheld from {}, and has no salt", kind, id,
                    reader_ == Reader::stranger ? "a stranger" : "an insurer"),
        std::string(kSaltHint) + (kind == "person"
                                      ? ", or let anyone see the name with <named-to>"
                                      : ", or name with <person> somebody whom anyone may see"),
        "withheld-salt"));
  }

  void leave_out(pugi::xml_node node) {
    const Extent lines = xml::lines_of(document_, node);
    splices_.push_back({lines.begin, lines.end});
  }

  /// The names in it are looked for elsewhere all the same.
  void leave_out_prose(pugi::xml_node node) {
    leave_out(node);
    for (const pugi::xpath_node& found : node.select_nodes(".//person[@ref]")) {
      const record::PersonId id{found.node().attribute("ref").value()};
      std::string text = folded(own_text(found.node()));
      if (!is_hidden(record_, reader_, id) || text.empty()) continue;
      unbound_.push_back({Taken::Kind::mention, std::move(text), "", "", "", id.text,
                          document_.where(found.node())});
    }
  }

  void rename(pugi::xml_node node, const char* attribute) {
    const std::string* fresh = ids_.find(node.attribute(attribute).value());
    if (fresh == nullptr) return;
    const auto value = xml::attribute_of(document_, node, attribute);
    if (value) splices_.push_back({value->begin, value->end, *fresh});
  }

  const xml::Document& document_;
  const Record& record_;
  Reader reader_;
  NewIds ids_;
  std::vector<Splice> splices_;
  std::vector<Taken> taken_;
  std::vector<Taken> unbound_;
  std::vector<std::string> digests_;
  std::set<std::string> without_salt_;
  base::Diagnostics faults_;
};

}  // namespace

std::size_t Withholding::origin(std::size_t offset) const {
  std::size_t full = 0;
  std::size_t here = 0;
  for (const Splice& splice : splices) {
    const std::size_t kept = splice.begin - full;
    if (offset < here + kept) break;
    here += kept;
    full = splice.begin;
    if (offset < here + splice.with.size()) return full;
    here += splice.with.size();
    full = splice.end;
  }
  return full + (offset - here);
}

bool may_see(const Record& record, Reader reader, const Marking& marking) {
  const Person* person = marking.person ? find(record, *marking.person) : nullptr;
  if (person != nullptr) return may_see(reader, person->named_to);
  return marking.whose != record::MarkOf::owner || may_see(reader, record::NamedTo::owner);
}

bool may_see(const Record& record, Reader reader, const Photo& photo) {
  const bool shows_somebody =
      std::any_of(photo.shows.begin(), photo.shows.end(),
                  [&](const auto& id) { return is_hidden(record, reader, id); });
  return !shows_somebody &&
         std::none_of(record.markings.begin(), record.markings.end(), [&](const Marking& marking) {
           return shows(marking, photo) && !may_see(record, reader, marking);
         });
}

base::Result<Withholding> withhold(const LoadedRecord& full, Reader reader) {
  if (reader == Reader::owner) return Withholding{full.bytes, {}, {}, {}, {}};
  const auto document = xml::Document::parse(full.file, full.bytes);
  if (!document) return document.faults();
  return Walk(*document, full.record, reader).done();
}

}  // namespace winchbook::recordfile
