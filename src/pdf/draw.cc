#include "pdf/draw.h"

#include <fmt/format.h>

#include <memory>
#include <type_traits>
#include <variant>

#include "pdf/content.h"
#include "pdf/embedded_font.h"
#include "pdf/haru.h"
#include "pdf/metadata.h"
#include "pdf/navigation.h"
#include "pdf/photograph.h"
#include "pdf/structure.h"

namespace winchbook::pdf {
namespace {

using layout::Pages;
using layout::TagId;

/// The faces used so far, by id, in the order of use.
class Fonts {
 public:
  Fonts(const text::FontBook& book, Haru& haru) : book_(book), haru_(haru) {}

  EmbeddedFont& use(text::FaceId face) {
    for (const auto& [id, font] : used_) {
      if (id == face) return *font;
    }
    used_.emplace_back(
        face, std::make_unique<EmbeddedFont>(book_, face, fmt::format("F{}", used_.size()), haru_));
    return *used_.back().second;
  }

  base::Diagnostics embed() {
    base::Diagnostics faults;
    for (const auto& [id, font] : used_) {
      for (auto& fault : font->embed())
        faults.push_back(std::move(fault));
    }
    return faults;
  }

  [[nodiscard]] std::string resources() const {
    std::string out;
    for (const auto& [id, font] : used_) {
      out += fmt::format("/{} {}", font->name(), font->object().reference());
    }
    return out;
  }

 private:
  const text::FontBook& book_;
  Haru& haru_;
  std::vector<std::pair<text::FaceId, std::unique_ptr<EmbeddedFont>>> used_;
};

/// Visits the items of one page after another.
class Pen {
 public:
  Pen(const Pages& pages, const Contents& contents, const text::FontBook& book, Haru& haru,
      Structure& structure)
      : pages_(pages),
        structure_(structure),
        fonts_(book, haru),
        photographs_(contents.photographs, haru) {}

  /// The content stream of page number `page`.
  std::string draw_page(int page) {
    const layout::Page& sheet = pages_.pages[static_cast<std::size_t>(page)];
    Content content(sheet.height);
    TagId open = kNothing;
    for (const layout::Item& item : sheet.items) {
      if (std::holds_alternative<layout::LinkItem>(item)) continue;
      const TagId tag = std::visit([](const auto& any) { return any.tag; }, item);
      if (tag != open) begin(content, tag, page);
      open = tag;
      if (const auto* text = std::get_if<layout::TextItem>(&item)) {
        content.add_text(*text, fonts_.use(text->face));
      }
      if (const auto* path = std::get_if<layout::PathItem>(&item)) content.add_path(*path);
      if (const auto* image = std::get_if<layout::ImageItem>(&item)) add(content, *image);
    }
    content.end();
    return content.bytes();
  }

  /// Finishes fonts and returns the resources that all pages share.
  std::string finish() {
    for (auto& fault : fonts_.embed())
      faults_.push_back(std::move(fault));
    return fmt::format("/Font<<{}>>/XObject<<{}>>", fonts_.resources(), photographs_.resources());
  }

  [[nodiscard]] const base::Diagnostics& faults() const { return faults_; }

 private:
  static constexpr TagId kNothing = -2;

  void begin(Content& content, TagId tag, int page) {
    if (tag == layout::kArtifact) {
      content.begin_artifact();
      return;
    }
    const auto type = pages_.tags.at(static_cast<std::size_t>(tag)).type;
    content.begin_content(structure_type(type), structure_.add_content(tag, page));
  }

  void add(Content& content, const layout::ImageItem& image) {
    const Jpeg* jpeg = photographs_.find(image.photograph);
    if (jpeg == nullptr) {
      faults_.push_back(base::error(
          fmt::format("the pages show photograph \"{}\", which was not given", image.photograph),
          "check that the record lists it and that its file is there", "photo-missing"));
      return;
    }
    base::Result<std::string> name = photographs_.name(*jpeg);
    if (!name) {
      faults_.insert(faults_.end(), name.faults().begin(), name.faults().end());
      return;
    }
    content.add_image(image.box, upright(jpeg->orientation), *name);
  }

  const Pages& pages_;
  Structure& structure_;
  Fonts fonts_;
  Photographs photographs_;
  base::Diagnostics faults_;
};

}  // namespace

base::Result<std::string> draw(const Pages& pages, const Contents& contents,
                               const text::FontBook& fonts) {
  const std::string packet = xmp_packet(contents.metadata);
  Haru haru;
  std::vector<PageObject> page_objects;
  for (const layout::Page& page : pages.pages) {
    page_objects.push_back(haru.add_page(page.width, page.height));
  }
  Structure structure(pages, page_objects, haru);
  Pen pen(pages, contents, fonts, haru, structure);
  Object& resources = haru.add_object();
  base::Diagnostics faults;
  for (int page = 0; page < static_cast<int>(page_objects.size()); ++page) {
    const PageObject& object = page_objects[static_cast<std::size_t>(page)];
    haru.set_content(object, pen.draw_page(page));
    haru.put(object.page(), "Resources", resources);
    for (auto& fault : add_links(page, pages, page_objects, structure, haru)) {
      faults.push_back(std::move(fault));
    }
  }
  // From here on every page is written; what they share follows.
  resources.entries = pen.finish();
  faults.insert(faults.end(), pen.faults().begin(), pen.faults().end());
  if (!faults.empty()) return faults;
  structure.write();
  add_outline(pages, page_objects, haru);
  attach(contents, haru);
  describe(contents, packet, haru);
  return haru.bytes();
}

}  // namespace winchbook::pdf
