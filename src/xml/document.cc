#include "xml/document.h"

#include <fmt/format.h>
#include <libxml/parser.h>

#include <algorithm>
#include <mutex>
#include <optional>
#include <string_view>
#include <utility>
#include <variant>

namespace winchbook::xml {
namespace {

using base::Diagnostic;
using base::error_at;

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

/// The first fault libxml2 tells of, as it tells it.
struct Told {
  int code = 0;
  int line = 0;
  int column = 0;
  std::string first;   // what the message is about
  std::string second;  // its counterpart
  std::string message;
};

std::string text_of(const char* text) {
  return text == nullptr ? std::string() : std::string(text);
}

#if LIBXML_VERSION >= 21200
void keep_first(void* user, const xmlError* error) {
#else
void keep_first(void* user, xmlError* error) {
#endif
  auto& told = *static_cast<std::optional<Told>*>(user);
  if (told || error == nullptr || error->level < XML_ERR_ERROR) return;
  told = Told{error->code,          error->line,          error->int2,
              text_of(error->str1), text_of(error->str2), text_of(error->message)};
  while (!told->message.empty() && told->message.back() == '\n')
    told->message.pop_back();
}

/// A fault of well-formedness in our own words: what is wrong, and the cure.
std::pair<std::string, std::string> in_our_words(const Told& told) {
  switch (told.code) {
    case XML_ERR_TAG_NAME_MISMATCH:
      return {fmt::format("an end tag does not fit: \"{}\" is open, found the end of \"{}\"",
                          told.first, told.second),
              "close the elements in the order in which they were opened"};
    case XML_ERR_TAG_NOT_FINISHED:
    case XML_ERR_DOCUMENT_END:
      return {"the file ends before its last element is closed",
              "the file may have been cut short: put the last good copy back"};
    case XML_ERR_UNDECLARED_ENTITY:
    case XML_WAR_UNDECLARED_ENTITY:
      return {fmt::format("entity \"&{};\" is not known", told.first),
              "write the character itself; only &amp; &lt; &gt; &apos; &quot; are known"};
    case XML_ERR_NAME_REQUIRED:
    case XML_ERR_ENTITYREF_SEMICOL_MISSING:
      return {"\"&\" or \"<\" stands in a text", "write &amp; for & and &lt; for <"};
    case XML_ERR_INVALID_CHAR:
      return {"a control character stands in the text", "take it out"};
    case XML_ERR_ATTRIBUTE_NOT_STARTED:
    case XML_ERR_ATTRIBUTE_WITHOUT_VALUE:
    case XML_ERR_LT_IN_ATTRIBUTE:
    case XML_ERR_ATTRIBUTE_NOT_FINISHED:
      return {"an attribute is not written as name=\"value\"",
              "put its value between quotation marks"};
    case XML_ERR_ATTRIBUTE_REDEFINED:
      return {fmt::format("attribute \"{}\" stands twice in one tag", told.first),
              "take one of them out"};
    case XML_NS_ERR_UNDEFINED_NAMESPACE:
      return {fmt::format("prefix \"{}\" has no namespace", told.first),
              fmt::format("write xmlns:{}=\"…\" in the root, or take the prefix out", told.first)};
    default:
      return {"this is not well-formed XML: " + told.message, "compare with the last good copy"};
  }
}

Diagnostic fault_of(const Source& source, const Told& told) {
  auto [message, hint] = in_our_words(told);
  base::Location where{source.file(), told.line, told.column};
  return error_at(std::move(where), std::move(message), std::move(hint), "not-xml");
}

}  // namespace

void Document::TwinDeleter::operator()(_xmlDoc* twin) const {
  xmlFreeDoc(twin);
}

base::Result<Document> Document::parse(std::string file, std::string bytes, const Limits& limits) {
  static std::once_flag once;
  std::call_once(once, xmlInitParser);
  Document document;
  document.source_ = std::make_unique<Source>(std::move(file), std::move(bytes));
  const Source& source = *document.source_;
  if (auto fault = fault_of_shape(source, limits)) return *fault;

  std::optional<Told> told;
  const std::unique_ptr<xmlParserCtxt, decltype(&xmlFreeParserCtxt)> context(xmlNewParserCtxt(),
                                                                             &xmlFreeParserCtxt);
  xmlSetStructuredErrorFunc(&told, keep_first);
  document.twin_.reset(xmlCtxtReadMemory(context.get(), source.bytes().data(),
                                         static_cast<int>(source.bytes().size()), nullptr, nullptr,
                                         XML_PARSE_NONET | XML_PARSE_BIG_LINES));
  xmlSetStructuredErrorFunc(nullptr, nullptr);
  if (told) return fault_of(source, *told);
  if (!document.twin_) return error_at(source.where(0), "this is not XML", "", "not-xml");

  if (auto fault = document.build_tree()) return *fault;
  return document;
}

base::Result<Document> Document::glance(std::string file, std::string bytes, const Limits& limits) {
  Document document;
  document.source_ = std::make_unique<Source>(std::move(file), std::move(bytes));
  if (auto fault = fault_of_shape(*document.source_, limits)) return *fault;
  if (auto fault = document.build_tree()) {
    // The validator's parser tells better what is wrong.
    const Source& source = *document.source_;
    auto told = parse(source.file(), std::string(source.bytes()), limits);
    return told ? base::Result<Document>(*fault) : base::Result<Document>(told.faults());
  }
  return document;
}

std::optional<Diagnostic> Document::build_tree() {
  const std::string_view bytes = source_->bytes();
  skipped_ = bytes.starts_with(kByteOrderMark) ? kByteOrderMark.size() : 0;
  tree_ = std::make_unique<pugi::xml_document>();
  const auto read =
      tree_->load_buffer(bytes.data() + skipped_, bytes.size() - skipped_,
                         pugi::parse_default | pugi::parse_ws_pcdata, pugi::encoding_utf8);
  if (read) return std::nullopt;
  return error_at(source_->where(static_cast<std::size_t>(read.offset) + skipped_),
                  "this is not well-formed XML", "compare with the last good copy", "not-xml");
}

std::size_t Document::offset(pugi::xml_node node) const {
  const std::ptrdiff_t told = node.offset_debug();
  if (told < 0) return 0;
  // The tree tells where an element's name begins; its "<" is one byte before.
  const std::size_t before = node.type() == pugi::node_element && told > 0 ? 1 : 0;
  return static_cast<std::size_t>(told) - before + skipped_;
}

base::Location Document::where(pugi::xml_node node) const {
  return source_->where(offset(node));
}

}  // namespace winchbook::xml
