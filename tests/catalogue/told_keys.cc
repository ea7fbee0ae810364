#include "told_keys.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <optional>
#include <utility>

#include "answers/assessed.h"
#include "app/design.h"
#include "app/weigh.h"
#include "assess/fitting/recorded.h"
#include "library/world.h"
#include "report/write.h"

namespace silence {
namespace {

using namespace winchbook;

// Two letters of no script in use, from the private use area of Unicode.
const std::string kOpens = "\uE000";
const std::string kCloses = "\uE001";

/// Patterns of dates, and what is compared with the bench's own words, must stay what they are.
bool stays_plain(std::string_view key) {
  return key.starts_with("date.pattern.") || key == "account.free-spool" ||
         key.starts_with("number.");
}

words::Catalogue marked(const words::CatalogueFile& shipped) {
  words::Messages messages;
  for (const auto& [key, words] : shipped.messages)
    messages.emplace(
        key, stays_plain(key) ? words : fmt::format("{}{}{}{}", kOpens, key, kCloses, words));
  return {shipped.language, std::move(messages), shipped.needs};
}

Keys keys_in(const std::string& text) {
  Keys keys;
  for (std::size_t at = text.find(kOpens); at != std::string::npos; at = text.find(kOpens, at)) {
    at += kOpens.size();
    const std::size_t end = text.find(kCloses, at);
    keys.insert(text.substr(at, end - at));
  }
  return keys;
}

}  // namespace

Teller::Teller(library::Library& library) : library_(library) {
  const auto schema = library.schema("template-1.xsd");
  REQUIRE(schema);
  const auto file =
      library::read_xml(library.world(), library.world().data / "shared" / "words" / "en-GB.xml");
  REQUIRE(file);
  auto shipped = words::read_catalogue(*file, **schema);
  REQUIRE(shipped);
  shipped_ = std::move(shipped).value();
  marked_.emplace(marked(shipped_));
  for (const std::string& document : documents()) {
    auto design = app::read_design(library, {document, {}, "a4", "en-GB"});
    REQUIRE(design);
    designs_.emplace(document, std::move(design.value().chapters));
  }
}

const std::vector<std::string>& Teller::documents() {
  static const std::vector<std::string> kDocuments{
      "keepsake", "collector-statement", "intake-receipt",  "hand-back-receipt",
      "labels",   "bench-sheet",         "value-statement", "care-card"};
  return kDocuments;
}

std::map<std::string, Keys> Teller::said(const recordfile::LoadedRecord& record) const {
  std::map<std::string, Keys> all;
  for (const std::string& document : documents())
    all[document] = said_in(document, record);
  return all;
}

const std::vector<std::string>& Teller::needs(const std::string& key) const {
  static const std::vector<std::string> kNone;
  const auto found = shipped_.needs.find(key);
  return found == shipped_.needs.end() ? kNone : found->second;
}

const std::string& Teller::words(const std::string& key) const {
  // A label that is printed in capitals carries its key in capitals: no sentence.
  static const std::string kNone;
  const auto found = shipped_.messages.find(key);
  return found == shipped_.messages.end() ? kNone : found->second;
}

Keys Teller::said_in(const std::string& document, const recordfile::LoadedRecord& loaded) const {
  const record::Record& record = loaded.record;
  const report::Template& design = designs_.at(document);
  const record::Visit* visit = record::last_visit(record);
  if (visit == nullptr || (design.needs.hand_back && !visit->hand_back)) return {};
  words::Catalogue& words = *marked_;
  report::tell_only_what_was_entered(record, words);
  const auto found = answers::assessed(library_, record);
  REQUIRE(found);
  const auto weighed =
      app::weigh(library_, {{}, {}, {2029, 12, 31}}, design.needs.value, loaded, *found);
  if (!weighed) return {};
  const auto drag = library_.drag();
  REQUIRE(drag);
  const auto recorded = assess::fitting::recorded(record, *visit, **drag);
  report::Edition edition{document, 1, {2029, 12, 31}, "7777 7777 7777", std::string(64, 'a')};
  const auto pointer = [](const auto& one) { return one ? &*one : nullptr; };
  const auto written = report::write({record,
                                      *found,
                                      design,
                                      words,
                                      edition,
                                      {},
                                      pointer(weighed->worth),
                                      pointer(weighed->courses),
                                      &recorded});
  if (!written) return {};
  return keys_in(document::dump(*written));
}

}  // namespace silence
