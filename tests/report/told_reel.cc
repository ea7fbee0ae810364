#include "told_reel.h"

#include <doctest/doctest.h>

#include <type_traits>
#include <utility>

#include "assess/assessment.h"
#include "assess/fitting/recorded.h"
#include "base/files.h"
#include "knowledge/drag.h"
#include "knowledge/knowledge.h"
#include "recordfile/record_file.h"
#include "report/write.h"

namespace report_test {
namespace {

using namespace winchbook;

const std::string kProject = WINCHBOOK_SOURCE_DIR "/";

xml::Document parsed(const std::string& file, const std::string& bytes) {
  auto document = xml::Document::parse(file, bytes);
  REQUIRE(document);
  return std::move(document).value();
}

const xml::Schema& schema() {
  static const auto kSchema =
      xml::Schema::compile("template-1.xsd", bytes_of("schemas/template-1.xsd"));
  REQUIRE(kSchema);
  return kSchema.value();
}

const knowledge::Knowledge& known() {
  static const auto kKnowledge = knowledge::load({base::RealFiles(), kProject});
  REQUIRE(kKnowledge);
  return kKnowledge.value();
}

base::Result<document::Document> write(const record::Record& record, const std::string& bytes,
                                       const report::Edition& edition) {
  const auto design = read_design(bytes);
  REQUIRE(design);
  words::CatalogueFile shipped = british();
  words::Catalogue words("en-GB", std::move(shipped.messages), std::move(shipped.needs));
  for (const auto& [key, pattern, needs] : design->rewordings)
    words.reword(key, pattern, needs);
  report::tell_only_what_was_entered(record, words);
  const assess::Assessment assessment = assess::assess(record, known());
  std::optional<assess::fitting::Recorded> recorded;
  if (const record::Visit* visit = record::last_visit(record)) {
    static const auto kDrag = knowledge::load_drag({base::RealFiles(), kProject});
    REQUIRE(kDrag);
    recorded = assess::fitting::recorded(record, *visit, *kDrag);
  }
  return report::write({record,
                        assessment,
                        *design,
                        words,
                        edition,
                        {},
                        nullptr,
                        nullptr,
                        recorded ? &*recorded : nullptr});
}

report::Edition keepsake() {
  return {"keepsake", 1, {2026, 6, 19}, "7777 7777 7777", std::string(64, 'a')};
}

void add(const document::Figure& figure, std::vector<const document::Figure*>& out) {
  out.push_back(&figure);
}

void add(const std::vector<document::Beside>& beside, std::vector<const document::Figure*>& out) {
  for (const document::Beside& one : beside) {
    if (const auto* figure = std::get_if<document::Figure>(&one)) out.push_back(figure);
  }
}

template <class Block>
void add_block(const Block& block, std::vector<const document::Figure*>& out) {
  if constexpr (std::is_same_v<Block, document::Figure>) {
    add(block, out);
  } else if constexpr (std::is_same_v<Block, document::FigureRow>) {
    for (const document::Figure& figure : block.figures)
      add(figure, out);
  } else if constexpr (std::is_same_v<Block, document::Pair>) {
    if (block.found) add(*block.found, out);
    if (block.left) add(*block.left, out);
  } else if constexpr (requires { block.beside; }) {
    add(block.beside, out);
  }
}

}  // namespace

std::string bytes_of(const std::string& path) {
  auto bytes = base::RealFiles().read(kProject + path, std::uintmax_t{16} << 20U);
  CAPTURE(path);
  REQUIRE(bytes);
  return std::move(bytes).value();
}

record::Record demo(const std::string& reel) {
  auto loaded =
      recordfile::read(base::RealFiles(), kProject + "demo/reels/" + reel, kProject + "schemas");
  CAPTURE(reel);
  REQUIRE(loaded);
  return std::move(loaded).value().record;
}

document::Document told(const record::Record& record, const std::string& design) {
  return told(record, design, keepsake());
}

document::Document told(const record::Record& record, const std::string& design,
                        const report::Edition& edition) {
  auto document = write(record, design, edition);
  REQUIRE(document);
  return std::move(document).value();
}

document::Document told(const record::Record& record) {
  return told(record, bytes_of("report-templates/keepsake.xml"));
}

std::string refusal(const record::Record& record) {
  const auto document = write(record, bytes_of("report-templates/keepsake.xml"), keepsake());
  REQUIRE_FALSE(document);
  return printed(document.faults());
}

base::Result<report::Template> read_design(const std::string& bytes) {
  return report::read_template(parsed("own.xml", bytes), schema());
}

base::Result<document::Style> read_look(const std::string& bytes, const std::string& paper) {
  return report::read_style(parsed("style.xml", bytes), schema(), paper);
}

std::string changed(const std::string& path, const std::string& before, const std::string& after) {
  std::string bytes = bytes_of(path);
  const std::size_t at = bytes.find(before);
  CAPTURE(before);
  REQUIRE(at != std::string::npos);
  return bytes.replace(at, before.size(), after);
}

std::string printed(const base::Diagnostics& faults) {
  std::string text;
  for (const base::Diagnostic& fault : faults)
    text += to_string(fault);
  return text;
}

words::CatalogueFile british() {
  auto file =
      words::read_catalogue(parsed("en-GB.xml", bytes_of("shared/words/en-GB.xml")), schema());
  REQUIRE(file);
  return std::move(file).value();
}

std::vector<std::string> chapters(const document::Document& document) {
  std::vector<std::string> ids;
  for (const document::Chapter& one : document.chapters)
    ids.push_back(one.id);
  return ids;
}

const document::Chapter* chapter(const document::Document& document, const std::string& id) {
  for (const document::Chapter& one : document.chapters) {
    if (one.id == id) return &one;
  }
  return nullptr;
}

std::string words_of(const document::Chapter& chapter) {
  document::Document alone;
  alone.chapters.push_back(chapter);
  return document::dump(alone);
}

std::vector<const document::Figure*> figures(const document::Chapter& chapter) {
  std::vector<const document::Figure*> out;
  for (const document::Block& block : chapter.blocks)
    std::visit([&](const auto& one) { add_block(one, out); }, block);
  return out;
}

std::size_t times(const std::string& text, const std::string& words) {
  std::size_t count = 0;
  for (auto at = text.find(words); at != std::string::npos; at = text.find(words, at + 1))
    ++count;
  return count;
}

}  // namespace report_test
