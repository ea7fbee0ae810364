#include "xml/schema.h"

#include <fmt/format.h>
#include <libxml/parser.h>
#include <libxml/xmlschemas.h>

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "xml/schema_words.h"

namespace winchbook::xml {
namespace {

using base::Diagnostic;
using base::Diagnostics;

#if LIBXML_VERSION >= 21200
using ToldError = const xmlError*;
#else
using ToldError = xmlError*;
#endif

/// All that was said about one element, one after the other.
struct SaidOf {
  const xmlNode* node = nullptr;
  std::vector<ValidatorMessage> messages;
};

std::string message_of(ToldError error) {
  std::string text = error->message == nullptr ? "" : error->message;
  while (!text.empty() && text.back() == '\n')
    text.pop_back();
  return text;
}

/// A message about a value: the facets it fails, then its type.
bool is_of_value(int code) {
  return code == XML_SCHEMAV_CVC_DATATYPE_VALID_1_2_1 ||
         code == XML_SCHEMAV_CVC_DATATYPE_VALID_1_2_2 ||
         code == XML_SCHEMAV_CVC_DATATYPE_VALID_1_2_3 ||
         (code >= XML_SCHEMAV_CVC_FACET_VALID && code <= XML_SCHEMAV_CVC_ENUMERATION_VALID);
}

bool continues(const SaidOf& said, const xmlNode* node, int code) {
  return said.node == node && is_of_value(code) && is_of_value(said.messages.back().code);
}

void collect(void* user, ToldError error) {
  auto& all = *static_cast<std::vector<SaidOf>*>(user);
  const auto* node = static_cast<const xmlNode*>(error->node);
  // An element in a text is told once; that the text is then no value of its type follows from it.
  const bool follows = !all.empty() && all.back().node == node && is_of_value(error->code) &&
                       !is_of_value(all.back().messages.back().code);
  if (follows) return;
  if (all.empty() || !continues(all.back(), node, error->code)) all.push_back({node, {}});
  all.back().messages.push_back({error->code, message_of(error)});
}

void collect_text(void* user, ToldError error) {
  auto& text = *static_cast<std::string*>(user);
  if (!text.empty()) text += "; ";
  text += message_of(error);
}

bool is_element(const xmlNode* node) {
  return node->type == XML_ELEMENT_NODE;
}

/// The place of an element among its parent's elements, for every step from the root down.
std::vector<std::size_t> path_to(const xmlNode* node) {
  std::vector<std::size_t> path;
  while (node->parent != nullptr && node->parent->type == XML_ELEMENT_NODE) {
    std::size_t before = 0;
    for (const xmlNode* at = node->prev; at != nullptr; at = at->prev)
      before += is_element(at) ? 1 : 0;
    path.insert(path.begin(), before);
    node = node->parent;
  }
  return path;
}

pugi::xml_node nth_element(pugi::xml_node parent, std::size_t index) {
  for (const pugi::xml_node child : parent.children()) {
    if (child.type() != pugi::node_element) continue;
    if (index-- == 0) return child;
  }
  return {};
}

pugi::xml_node ours(const Document& document, const xmlNode* node) {
  pugi::xml_node at = document.root();
  for (const std::size_t index : path_to(node))
    at = nth_element(at, index);
  return at;
}

xmlNode* theirs(const Document& document, pugi::xml_node element) {
  std::vector<std::size_t> path;
  for (pugi::xml_node at = element; at != document.root() && at; at = at.parent()) {
    std::size_t before = 0;
    for (auto left = at.previous_sibling(); left; left = left.previous_sibling()) {
      before += left.type() == pugi::node_element ? 1 : 0;
    }
    path.insert(path.begin(), before);
  }
  xmlNode* at = xmlDocGetRootElement(document.validated_tree());
  for (std::size_t index : path) {
    at = at->children;
    while (at != nullptr && (!is_element(at) || index-- > 0))
      at = at->next;
    if (at == nullptr) return nullptr;
  }
  return at;
}

std::string value_of(pugi::xml_node element, const std::vector<ValidatorMessage>& messages) {
  const std::string& text = messages.front().text;
  const std::size_t at = text.find("', attribute '");
  if (at == std::string::npos) return element.text().get();
  const std::size_t open = at + 14;
  return element.attribute(text.substr(open, text.find('\'', open) - open).c_str()).value();
}

Diagnostic told(const Document& document, const SaidOf& said) {
  const xmlNode* node = said.node;
  if (node != nullptr && node->type == XML_ATTRIBUTE_NODE) node = node->parent;
  const pugi::xml_node element = node == nullptr ? document.root() : ours(document, node);
  ToldFault fault = in_our_words(said.messages, element.name(), value_of(element, said.messages));
  return base::error_at(document.where(element), std::move(fault.message), std::move(fault.hint),
                        "schema");
}

}  // namespace

void Schema::Deleter::operator()(_xmlSchema* schema) const {
  xmlSchemaFree(schema);
}

base::Result<Schema> Schema::compile(std::string_view file, std::string_view xsd) {
  xmlInitParser();
  std::string said;
  const std::unique_ptr<xmlSchemaParserCtxt, decltype(&xmlSchemaFreeParserCtxt)> context(
      xmlSchemaNewMemParserCtxt(xsd.data(), static_cast<int>(xsd.size())),
      &xmlSchemaFreeParserCtxt);
  xmlSchemaSetParserStructuredErrors(context.get(), collect_text, &said);
  Schema schema;
  schema.schema_.reset(xmlSchemaParse(context.get()));
  if (!schema.schema_) {
    return base::of_machine(
        base::error_at({std::string(file), 0, 0}, "the schema is not in order: " + said,
                       "this is the program's own file: install winchbook again", "schema-own"));
  }
  return schema;
}

Diagnostics Schema::faults_in(const Document& document, pugi::xml_node element) const {
  xmlNode* node = theirs(document, element);
  if (node == nullptr) return {};
  std::vector<SaidOf> all;
  const std::unique_ptr<xmlSchemaValidCtxt, decltype(&xmlSchemaFreeValidCtxt)> context(
      xmlSchemaNewValidCtxt(schema_.get()), &xmlSchemaFreeValidCtxt);
  xmlSchemaSetValidStructuredErrors(context.get(), collect, &all);
  xmlSchemaValidateOneElement(context.get(), node);
  Diagnostics faults;
  faults.reserve(all.size());
  for (const SaidOf& said : all)
    faults.push_back(told(document, said));
  return faults;
}

}  // namespace winchbook::xml
