#include "archive/texts_of.h"

#include <exception>
#include <memory>
#include <qpdf/QPDF.hh>
#include <set>

namespace winchbook::archive {
namespace {

base::Diagnostic unreadable(const std::string& name, const std::string& why) {
  return base::of_machine(base::error_at({name, 0, 0},
                                         "the finished file cannot be read back: " + why,
                                         "nothing was written; report this", "file-pdf"));
}

/// The strings of an object and of what it holds; what it only refers to comes by itself.
void add_strings(QPDFObjectHandle object, std::set<std::string>& strings) {
  if (object.isString()) {
    strings.insert(object.getUTF8Value());
  } else if (object.isArray()) {
    for (const QPDFObjectHandle& one : object.getArrayAsVector()) {
      if (!one.isIndirect()) add_strings(one, strings);
    }
  } else if (object.isDictionary()) {
    for (const auto& [key, value] : object.getDictAsMap()) {
      if (!value.isIndirect()) add_strings(value, strings);
    }
  }
}

void add_objects(std::string_view pdf, const std::string& name, std::vector<Text>& texts) {
  QPDF file;
  file.setSuppressWarnings(true);
  file.processMemoryFile(name.c_str(), pdf.data(), pdf.size());
  std::set<std::string> strings;
  for (QPDFObjectHandle object : file.getAllObjects()) {
    if (!object.isStream()) {
      add_strings(object, strings);
      continue;
    }
    add_strings(object.getDict(), strings);
    QPDFObjectHandle type = object.getDict().getKey("/Type");
    const bool attached = type.isNameAndEquals("/EmbeddedFile");
    if (!attached && !type.isNameAndEquals("/Metadata")) continue;
    const auto data = object.getStreamData();
    texts.push_back({attached ? "an attachment" : "the metadata of the finished file",
                     {reinterpret_cast<const char*>(data->getBuffer()), data->getSize()},
                     attached});
  }
  for (const std::string& one : strings)
    texts.push_back({"a bookmark, a title or an alternative of the finished file", one});
}

}  // namespace

base::Result<std::vector<Text>> texts_of(std::string_view pdf, const std::string& name) {
  std::vector<Text> texts;
  try {
    add_objects(pdf, name, texts);
  } catch (const std::exception& fault) {
    return unreadable(name, fault.what());
  }
  return texts;
}

}  // namespace winchbook::archive
