#include "pdf/navigation.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <string_view>

#include "pdf/syntax.h"

namespace winchbook::pdf {
namespace {

constexpr int kNone = -1;

/// One bookmark with its neighbours, as indices.
struct Twig {
  int parent = kNone;
  int previous = kNone;
  int next = kNone;
  int first = kNone;
  int last = kNone;
  int count = 0;  ///< children
};

/// Finds each bookmark's place: below the nearest one before it that has a lower level.
std::vector<Twig> grow(const std::vector<layout::Bookmark>& bookmarks, Twig& root) {
  std::vector<Twig> twigs(bookmarks.size());
  std::vector<int> open;  // the way down to the last bookmark
  const auto at = [&](int i) -> Twig& {
    return i == kNone ? root : twigs[static_cast<std::size_t>(i)];
  };
  for (int i = 0; i < static_cast<int>(bookmarks.size()); ++i) {
    const int level = bookmarks[static_cast<std::size_t>(i)].level;
    while (!open.empty() && bookmarks[static_cast<std::size_t>(open.back())].level >= level) {
      open.pop_back();
    }
    Twig& twig = at(i);
    twig.parent = open.empty() ? kNone : open.back();
    Twig& parent = at(twig.parent);
    twig.previous = parent.last;
    if (twig.previous != kNone) at(twig.previous).next = i;
    if (parent.first == kNone) parent.first = i;
    parent.last = i;
    ++parent.count;
    open.push_back(i);
  }
  return twigs;
}

std::string rectangle(const layout::Rect& box, base::Length page_height) {
  std::string out = "[";
  append_length(out, box.x);
  out += ' ';
  append_length(out, page_height - box.y - box.height);
  out += ' ';
  append_length(out, box.x + box.width);
  out += ' ';
  append_length(out, page_height - box.y);
  return out + ']';
}

/// The entry that says where a click leads; empty for an anchor that is not there.
std::string action(std::string_view target, const layout::Pages& pages,
                   const std::vector<PageObject>& page_objects) {
  if (!target.starts_with('#')) {
    std::string out = "/A<</S/URI/URI";
    append_text(out, target);
    return out + ">>";
  }
  const auto anchor = pages.anchors.find(std::string(target.substr(1)));
  if (anchor == pages.anchors.end()) return {};
  return "/A<</S/GoTo/D" + destination(anchor->second, pages, page_objects) + ">>";
}

}  // namespace

std::string destination(const layout::Anchor& anchor, const layout::Pages& pages,
                        const std::vector<PageObject>& page_objects) {
  const auto page = static_cast<std::size_t>(anchor.page);
  std::string out = '[' + page_objects.at(page).reference() + "/XYZ 0 ";
  append_length(out, pages.pages.at(page).height - anchor.y);
  return out + " null]";
}

base::Diagnostics add_links(int page, const layout::Pages& pages,
                            const std::vector<PageObject>& page_objects, Structure& structure,
                            Haru& haru) {
  base::Diagnostics faults;
  std::vector<const Object*> annotations;
  const layout::Page& sheet = pages.pages.at(static_cast<std::size_t>(page));
  for (const layout::Item& item : sheet.items) {
    const auto* link = std::get_if<layout::LinkItem>(&item);
    if (link == nullptr) continue;
    const std::string leads = action(link->target, pages, page_objects);
    if (leads.empty() || link->tag == layout::kArtifact) {
      faults.push_back(base::error(
          fmt::format("the link \"{}\" to \"{}\" {}", link->words, link->target,
                      leads.empty() ? "leads nowhere" : "stands outside the text"),
          "this is a fault of the program; please report it with the record", "pdf-link"));
      continue;
    }
    Object& annotation = haru.add_object();
    const int key = structure.add_annotation(link->tag, page, annotation);
    annotation.entries =
        fmt::format("/Type/Annot/Subtype/Link/Rect{}/Border[0 0 0]/F 4/StructParent {}{}/Contents",
                    rectangle(link->box, sheet.height), key, leads);
    append_text(annotation.entries, link->words);
    annotations.push_back(&annotation);
  }
  if (!annotations.empty()) {
    haru.put_references(page_objects[static_cast<std::size_t>(page)].page(), "Annots", annotations);
  }
  return faults;
}

void add_outline(const layout::Pages& pages, const std::vector<PageObject>& page_objects,
                 Haru& haru) {
  if (pages.bookmarks.empty()) return;
  Twig root;
  const std::vector<Twig> twigs = grow(pages.bookmarks, root);
  Object& outline = haru.add_object();
  std::vector<Object*> objects;
  for (std::size_t i = 0; i < twigs.size(); ++i)
    objects.push_back(&haru.add_object());
  const auto entry = [&](std::string& out, const char* key, int twig) {
    if (twig == kNone) return;
    out += fmt::format("/{} {}", key, objects[static_cast<std::size_t>(twig)]->reference());
  };
  for (std::size_t i = 0; i < twigs.size(); ++i) {
    std::string& out = objects[i]->entries;
    out = "/Title";
    append_text(out, pages.bookmarks[i].words);
    if (twigs[i].parent == kNone) out += "/Parent " + outline.reference();
    entry(out, "Parent", twigs[i].parent);
    entry(out, "Prev", twigs[i].previous);
    entry(out, "Next", twigs[i].next);
    entry(out, "First", twigs[i].first);
    entry(out, "Last", twigs[i].last);
    if (twigs[i].count > 0) out += fmt::format("/Count -{}", twigs[i].count);
    out += "/Dest" + destination(pages.bookmarks[i].to, pages, page_objects);
  }
  outline.entries = "/Type/Outlines";
  entry(outline.entries, "First", root.first);
  entry(outline.entries, "Last", root.last);
  outline.entries += fmt::format("/Count {}", root.count);
  haru.put(haru.catalogue(), "Outlines", outline);
}

}  // namespace winchbook::pdf
