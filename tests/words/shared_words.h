#pragma once

#include <doctest/doctest.h>

#include <pugixml.hpp>
#include <string>
#include <utility>

#include "words/catalogue.h"

/// The messages of one file of shared/words/ alone, whatever it falls back to.
inline winchbook::words::Messages messages_of(const std::string& language) {
  pugi::xml_document file;
  const std::string path = WINCHBOOK_SOURCE_DIR "/shared/words/" + language + ".xml";
  CAPTURE(path);
  REQUIRE(file.load_file(path.c_str()));
  winchbook::words::Messages messages;
  for (const pugi::xml_node node : file.document_element().children("m")) {
    const std::string key = node.attribute("key").as_string();
    CAPTURE(key);
    CHECK_MESSAGE(messages.emplace(key, node.child_value()).second, "told twice: ", key);
  }
  REQUIRE_FALSE(messages.empty());
  return messages;
}

/// A language as the program speaks it: its own messages, then those of British English.
inline winchbook::words::Catalogue shared_words(const std::string& language) {
  winchbook::words::Messages messages = messages_of(language);
  messages.merge(messages_of("en-GB"));
  return {language, std::move(messages)};
}

/// With plain spaces in the place of no-break ones.
inline std::string spaced(std::string text) {
  for (const std::string space : {"\u00a0", "\u202f"}) {
    for (auto at = text.find(space); at != std::string::npos; at = text.find(space)) {
      text.replace(at, space.size(), 1, ' ');
    }
  }
  return text;
}
