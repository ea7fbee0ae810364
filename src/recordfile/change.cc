#include "recordfile/change.h"

#include <algorithm>
#include <string_view>
#include <utility>

#include "recordfile/align.h"
#include "recordfile/sections.h"
#include "recordfile/splice_tree.h"
#include "recordfile/write_record.h"

namespace winchbook::recordfile {
namespace {

using Nodes = std::vector<pugi::xml_node>;

bool holds_text(pugi::xml_node element) {
  const auto parts = element.children();
  return std::any_of(parts.begin(), parts.end(),
                     [](pugi::xml_node part) { return part.type() == pugi::node_pcdata; });
}

/// The record's own elements in an element of the file.
Nodes own_elements(pugi::xml_node element) {
  Nodes own;
  for (const pugi::xml_node child : element.children()) {
    if (child.type() == pugi::node_element && is_ours(child)) own.push_back(child);
  }
  return own;
}

Nodes children_of(pugi::xml_node element) {
  const auto children = element.children();
  return {children.begin(), children.end()};
}

/// An element of the file as the values would be written: nothing between its elements.
void copy_bare(pugi::xml_node from, pugi::xml_node into) {
  const Nodes own = own_elements(from);
  for (const pugi::xml_attribute one : from.attributes())
    into.append_copy(one);
  if (own.empty() && !from.text().empty()) into.text().set(from.text().get());
  for (const pugi::xml_node child : own)
    copy_bare(child, into.append_child(child.name()));
}

/// Brings the difference between two written trees into the tree of the file.
class Bringer {
 public:
  explicit Bringer(SpliceTree& tree) : tree_(&tree) {}

  /// `element` is in the file what `before` is among the values.
  void bring(pugi::xml_node before, pugi::xml_node after, pugi::xml_node element) {
    if (holds_text(before) || holds_text(after)) {
      tree_->fill(element, after);
      return;
    }
    Brothers here{children_of(before), children_of(after), {}, own_elements(element), {}};
    here.pairs = aligned(here.before, here.after);
    for (const pugi::xml_node one : here.before)
      here.files.push_back(claimed(here.unclaimed, one.name()));
    for (std::size_t i = 0; i < here.pairs.size(); ++i)
      bring_pair(element, here, i);
  }

 private:
  struct Brothers {
    Nodes before;
    Nodes after;
    std::vector<Pair> pairs;
    Nodes unclaimed;  ///< elements of the file of which the values say nothing
    Nodes files;      ///< for each of `before`, its element in the file; nothing when it has none

    /// The element in the file of the first pair from the `from`-th on that stays.
    [[nodiscard]] pugi::xml_node next_in_file(std::size_t from) const {
      for (; from < pairs.size(); ++from) {
        if (pairs[from].before && pairs[from].after && files[*pairs[from].before])
          return files[*pairs[from].before];
      }
      return {};
    }
  };

  /// The first element of that name, which is no longer unclaimed then.
  static pugi::xml_node claimed(Nodes& unclaimed, std::string_view name) {
    const auto found = std::find_if(unclaimed.begin(), unclaimed.end(),
                                    [&](pugi::xml_node one) { return name == one.name(); });
    if (found == unclaimed.end()) return {};
    const pugi::xml_node element = *found;
    unclaimed.erase(found);
    return element;
  }

  void bring_pair(pugi::xml_node parent, Brothers& here, std::size_t at) {
    const Pair& pair = here.pairs[at];
    if (pair.same) return;
    const pugi::xml_node file = pair.before ? here.files[*pair.before] : pugi::xml_node();
    if (!pair.after) {
      if (file) tree_->take_out(file);
      return;
    }
    const pugi::xml_node after = here.after[*pair.after];
    if (pair.before) {
      if (same(here.before[*pair.before], after)) return;
      if (file) return bring(here.before[*pair.before], after, file);
    }
    if (const pugi::xml_node there = claimed(here.unclaimed, after.name())) {
      pugi::xml_document bare;
      pugi::xml_node said = bare.append_child(there.name());
      copy_bare(there, said);
      return bring(said, after, there);
    }
    const pugi::xml_node next = here.next_in_file(at + 1);
    if (next && tree_->stand_together(parent, after.name(), next.name())) {
      parent.insert_copy_before(after, next);
    } else {
      tree_->put_in(parent, after);
    }
  }

  SpliceTree* tree_;
};

}  // namespace

base::Result<std::vector<xml::Splice>> changes(const LoadedRecord& before,
                                               const record::Record& after,
                                               const ElementOrder& order) {
  const pugi::xml_document was = written_tree(before.record);
  const pugi::xml_document is = written_tree(after);
  auto file = xml::Document::glance(before.file, before.bytes);
  if (!file) return file.faults();
  SpliceTree tree(std::move(file).value(), order);
  Bringer(tree).bring(was.document_element(), is.document_element(), tree.root());
  return tree.splices();
}

}  // namespace winchbook::recordfile
