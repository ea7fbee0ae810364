#include "pdf/structure.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <utility>

#include "pdf/syntax.h"

namespace winchbook::pdf {
namespace {

using layout::kArtifact;
using layout::Tag;
using layout::TagId;
using layout::TagType;

constexpr std::size_t kNowhere = std::numeric_limits<std::size_t>::max();

std::size_t index(TagId id) {
  return static_cast<std::size_t>(id);
}

void append_entry(std::string& out, const char* key, const std::string& text) {
  if (text.empty()) return;
  out += key;
  append_text(out, text);
}

}  // namespace

const char* structure_type(TagType type) {
  switch (type) {
    case TagType::document:
      return "Document";
    case TagType::part:
      return "Part";
    case TagType::section:
      return "Sect";
    case TagType::h1:
      return "H1";
    case TagType::h2:
      return "H2";
    case TagType::h3:
      return "H3";
    case TagType::paragraph:
      return "P";
    case TagType::caption:
      return "Caption";
    case TagType::figure:
      return "Figure";
    case TagType::note:
      return "Note";
    case TagType::reference:
      return "Reference";
    case TagType::link:
      return "Link";
    case TagType::span:
      return "Span";
    case TagType::table:
      return "Table";
    case TagType::table_head:
      return "THead";
    case TagType::table_body:
      return "TBody";
    case TagType::row:
      return "TR";
    case TagType::header_cell:
      return "TH";
    case TagType::cell:
      return "TD";
    case TagType::list:
      return "L";
    case TagType::list_item:
      return "LI";
    case TagType::label:
      return "Lbl";
    case TagType::list_body:
      return "LBody";
  }
  return "NonStruct";
}

Structure::Structure(const layout::Pages& pages, const std::vector<PageObject>& page_objects,
                     Haru& haru)
    : pages_(pages),
      page_objects_(page_objects),
      haru_(haru),
      root_(&haru.add_object()),
      elements_(pages.tags.size()),
      contents_(pages.pages.size()) {
  for (std::size_t i = 0; i < elements_.size(); ++i) {
    elements_[i].object = &haru.add_object();
    const TagId parent = pages.tags[i].parent;
    if (parent != kArtifact) {
      elements_.at(index(parent)).children.push_back(static_cast<TagId>(i));
    }
  }
}

int Structure::add_content(TagId tag, int page) {
  std::vector<TagId>& on_page = contents_.at(static_cast<std::size_t>(page));
  const int content = static_cast<int>(on_page.size());
  on_page.push_back(tag);
  elements_.at(index(tag)).pieces.push_back({pieces_++, page, content, nullptr});
  return content;
}

int Structure::add_annotation(TagId tag, int page, const Object& annotation) {
  elements_.at(index(tag)).pieces.push_back({pieces_++, page, -1, &annotation});
  annotations_.push_back(tag);
  return static_cast<int>(contents_.size() + annotations_.size() - 1);
}

/// Children keep the order in which they were made; an element's own pieces stand between them
/// where the pages show them.
void Structure::order_children() {
  for (std::size_t i = elements_.size(); i-- > 0;) {
    Element& element = elements_[i];
    element.first = element.pieces.empty() ? kNowhere : element.pieces.front().order;
    for (const TagId child : element.children) {
      element.first = std::min(element.first, elements_[index(child)].first);
    }
  }
}

void Structure::write() {
  order_children();
  std::string top;
  for (std::size_t i = 0; i < elements_.size(); ++i) {
    write_element(static_cast<TagId>(i));
    if (pages_.tags[i].parent == kArtifact) top += elements_[i].object->reference() + ' ';
  }
  Object& parents = haru_.add_object();
  parents.entries = parent_tree();
  root_->entries = fmt::format("/Type/StructTreeRoot/K[{}]/ParentTree {}/ParentTreeNextKey {}", top,
                               parents.reference(), contents_.size() + annotations_.size());
  const std::string names = identifiers();
  if (!names.empty()) root_->entries += fmt::format("/IDTree<</Names[{}]>>", names);
  for (std::size_t page = 0; page < page_objects_.size(); ++page) {
    haru_.put_number(page_objects_[page].page(), "StructParents", static_cast<int>(page));
    haru_.put_name(page_objects_[page].page(), "Tabs", "S");
  }
  haru_.put(haru_.catalogue(), "StructTreeRoot", *root_);
}

void Structure::write_element(TagId id) {
  const Tag& tag = pages_.tags[index(id)];
  const Element& element = elements_[index(id)];
  const Object& parent = tag.parent == kArtifact ? *root_ : *elements_[index(tag.parent)].object;
  std::string& out = element.object->entries;
  out = fmt::format("/S/{}/P {}", structure_type(tag.type), parent.reference());
  if (!element.pieces.empty()) {
    out +=
        "/Pg " + page_objects_[static_cast<std::size_t>(element.pieces.front().page)].reference();
  }
  out += kids(element);
  out += attributes(id);
  append_entry(out, "/Alt", tag.alternative);
  append_entry(out, "/ActualText", tag.actual_text);
  append_entry(out, "/Lang", tag.language);
  append_entry(out, "/ID", tag.id);
  append_entry(out, "/T", tag.title);
}

std::string Structure::kids(const Element& element) const {
  std::vector<std::string> parts;
  auto piece = element.pieces.begin();
  const auto put_pieces_before = [&](std::size_t order) {
    for (; piece != element.pieces.end() && piece->order < order; ++piece) {
      const std::string page = page_objects_[static_cast<std::size_t>(piece->page)].reference();
      if (piece->annotation != nullptr) {
        parts.push_back(
            fmt::format("<</Type/OBJR/Pg {}/Obj {}>>", page, piece->annotation->reference()));
      } else if (piece->page == element.pieces.front().page) {
        parts.push_back(fmt::format("{}", piece->content));
      } else {
        parts.push_back(fmt::format("<</Type/MCR/Pg {}/MCID {}>>", page, piece->content));
      }
    }
  };
  for (const TagId child : element.children) {
    const Element& below = elements_[index(child)];
    if (below.first != kNowhere) put_pieces_before(below.first);
    parts.push_back(below.object->reference());
  }
  put_pieces_before(kNowhere);
  if (parts.empty()) return {};
  if (parts.size() == 1) return "/K " + parts.front();
  return fmt::format("/K[{}]", fmt::join(parts, " "));
}

std::string Structure::attributes(TagId id) const {
  const Tag& tag = pages_.tags[index(id)];
  switch (tag.type) {
    case TagType::header_cell:
    case TagType::cell: {
      std::string table;
      if (tag.type == TagType::header_cell) {
        table += tag.row_scope ? "/Scope/Row" : "/Scope/Column";
      }
      if (tag.column_span > 1) table += fmt::format("/ColSpan {}", tag.column_span);
      return table.empty() ? table : "/A<</O/Table" + table + ">>";
    }
    case TagType::list: {
      const auto has_label = [&](TagId item) {
        const auto& parts = elements_[index(item)].children;
        return std::any_of(parts.begin(), parts.end(), [&](TagId part) {
          return pages_.tags[index(part)].type == TagType::label;
        });
      };
      const auto& items = elements_[index(id)].children;
      const bool labelled = std::any_of(items.begin(), items.end(), has_label);
      return fmt::format("/A<</O/List/ListNumbering/{}>>", tag.numbered ? "Decimal"
                                                           : labelled   ? "Disc"
                                                                        : "None");
    }
    case TagType::figure: {
      if (tag.page < 0) return {};
      const base::Length height = pages_.pages.at(static_cast<std::size_t>(tag.page)).height;
      std::string out = "/A<</O/Layout/Placement/Block/BBox[";
      append_length(out, tag.box.x);
      out += ' ';
      append_length(out, height - tag.box.y - tag.box.height);
      out += ' ';
      append_length(out, tag.box.x + tag.box.width);
      out += ' ';
      append_length(out, height - tag.box.y);
      return out + "]>>";
    }
    default:
      return {};
  }
}

std::string Structure::parent_tree() const {
  std::string out = "/Nums[";
  for (std::size_t page = 0; page < contents_.size(); ++page) {
    append_number(out, static_cast<std::int64_t>(page));
    out += '[';
    for (const TagId tag : contents_[page])
      out += elements_[index(tag)].object->reference() + ' ';
    out += ']';
  }
  for (std::size_t i = 0; i < annotations_.size(); ++i) {
    append_number(out, static_cast<std::int64_t>(contents_.size() + i));
    out += ' ' + elements_[index(annotations_[i])].object->reference() + ' ';
  }
  return out + ']';
}

std::string Structure::identifiers() const {
  std::vector<std::pair<std::string, std::string>> names;
  for (std::size_t i = 0; i < elements_.size(); ++i) {
    if (pages_.tags[i].id.empty()) continue;
    names.emplace_back(pages_.tags[i].id, elements_[i].object->reference());
  }
  std::sort(names.begin(), names.end());
  std::string out;
  for (const auto& [id, reference] : names) {
    append_text(out, id);
    out += reference + ' ';
  }
  return out;
}

}  // namespace winchbook::pdf
