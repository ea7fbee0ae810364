#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <iterator>
#include <regex>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "base/words_of_text.h"
#include "catalogue/catalogue.h"
#include "recordfile/record_file.h"
#include "recordfile/write_record.h"
#include "support/on_disk.h"

// No command writes what nobody gave: each verb with its fewest arguments on a record that says
// nothing yet. What it adds comes from these arguments, or is an id, the day of the entry, a salt,
// or one of the few words that a verb itself says.

namespace winchbook::catalogue {
namespace {

using daybook::OpenBench;
using daybook::Typed;

/// A verb with its fewest arguments.
struct Call {
  std::string row;
  Typed typed;
  /// What the verb, or the name of a field, says by itself: "original" is yes.
  std::vector<std::string> says = {};
};

const Call kIntake{"intake",
                   {{"--kind", "multiplier"},
                    {"--maker", "Harroway"},
                    {"--owner", "Ada Brannock"},
                    {"--bench", "The Lantern Bench"},
                    {"--bench-place", "Carrick Sound"},
                    {"--restorer", "Ines Thornbury"}},
                   // Who the two are is said by the names of their fields; a restorer signs.
                   {"en-GB", "made-by", "the owner", "the restorer", "anyone"}};

std::vector<Call> calls() {
  return {
      {"grade", {{"PARTS", "spool"}, {"--set", "original"}}, {"yes"}},
      {"grade", {{"PARTS", "spool"}, {"--set", "untouched"}}, {"100"}},
      {"grade", {{"--rest", "untouched 80"}}},
      {"grade", {{"PARTS", "spool"}, {"--set", "finish nickel plate"}}},
      {"grade", {{"--fault", "crack"}, {"--fault-name", "crack"}, {"--found-severity", "unsafe"}}},
      {"grade", {{"--fault", "none"}}, {"faults"}},
      {"grade", {{"--flag", "none"}}, {"hazards"}},
      {"grade", {{"--flag", "hazard"}, {"--flag-name", "old washers"}, {"--what", "black"}}},
      {"grade", {{"--place", "spool"}, {"--set", "filled"}}, {"yes"}},
      {"sales for",
       {{"--purpose", "sale"},
        {"--effective", "2026-05"},
        {"--basis", "what is paid"},
        {"--currency", "GBP"}}},
      {"sales add",
       {{"--date", "2026-05"},
        {"--price", "12.00 GBP"},
        {"--included", "reel"},
        {"--kind", "private"},
        {"--state", "worn"},
        {"--source", "told"}}},
      {"advise", {{"--set", "make-it-fish"}}},
      {"advise", {{"--decide", "keep-as-found"}}},
      {"agree", {{"--how", "by letter"}, {"--part-must-stay", "spool"}}},
      {"identify", {{"--maker", "Corran"}}, {"made-by"}},
      {"identify", {{"--made", "1934/1958"}}},
      {"part", {{"NAME", "Line"}, {"--role", "content"}}, {"with-reel"}},
      {"part", {{"NAME", "Cover"}, {"--place", "Cover"}, {"--kind", "plate"}}},
      {"part", {{"NAME", "Cover"}, {"--empty", ""}, {"--kind", "plate"}}, {"empty"}},
      {"person", {{"NAME", "Nell Merrow"}, {"--stand-in", "a friend"}}},
      {"custody", {{"HOLDER", "ada"}, {"--source", "her word"}}},
      {"custody", {}},
      {"story", {{"TEXT", "It lay in a tin."}}},
      {"story",
       {{"--event", "repair"},
        {"--title", "A screw"},
        {"TEXT", "It was changed."},
        {"--source", "told"}}},
      {"story", {{"--event", "none"}}, {"life"}},
      {"measure", {{"--weight", "612 g"}}},
      {"measure", {{"--washer", "spool: free"}}},
      {"mark", {{"TEXT", "No. 40"}, {"--part", "spool"}}},
      {"mark", {{"--none", ""}}, {"marks", "none"}},
      {"strip", {{"WHAT", "Lift the spool."}, {"--off", "spool"}}, {"1"}},
      {"clean", {{"PARTS", "spool"}, {"--method", "damp cloth"}}},
      {"clean", {{"--all", ""}, {"--method", "damp cloth"}}},
      {"work", {{"WHAT", "Oiled."}}},
      {"donor", {{"NAME", "a broken No. 30"}}},
      {"laboratory",
       {{"PARTS", "spool"},
        {"--for", "asbestos"},
        {"--found", "none"},
        {"--laboratory", "Fell Laboratory"},
        {"--number", "4471"}}},
      {"fit",
       {{"NAME", "Pinion"},
        {"--place", "spool"},
        {"--material", "brass"},
        {"--why", "worn"},
        {"--way-back", "100: Fully."},
        {"--donor", "a broken No. 30"}},
       {"bench", "no"}},
      {"tray", {{"--off", "spool"}}, {"1"}},
      {"tray", {{"--found-loose", "none"}}, {"loose-parts"}},
      {"test", {{"WHAT", "thumb"}, {"--before", "9 s"}}, {"done"}},
      {"photo add", {{"--none", ""}}, {"photographs", "none"}},
      {"handback", {}},
      {"handback", {{"--not-put-right", "none"}, {"--kept", "none"}}, {"remaining", "parted"}},
  };
}

/// Rows that ask; and those that write what only a camera or a measured seat can give them.
const std::set<std::string_view> kNotCalled{
    "check", "date",  "lookup",      "drag",  "line", "sales", "sales check", "value",
    "issue", "shelf", "photo watch", "photo", "seat", "undo",  "photo pair",
};

Call call_of(std::string_view row) {
  const auto all = calls();
  const auto found =
      std::find_if(all.begin(), all.end(), [&](const Call& one) { return one.row == row; });
  REQUIRE(found != all.end());
  return *found;
}

struct Leaf {
  std::string element;
  std::string text;
  friend auto operator<=>(const Leaf&, const Leaf&) = default;
};

/// What a record says: the texts of its elements, and what they point at.
struct Told {
  std::multiset<Leaf> texts;
  std::multiset<Leaf> references;
  std::multiset<std::string> ids;
};

Told told_by(const record::Record& record) {
  std::string xml = recordfile::write_new(record, {});
  // A list to tick is no finding.
  const std::size_t places = xml.find("<places>");
  if (places != std::string::npos) xml.erase(places, xml.find("</places>") - places);
  Told told;
  const auto each = [&](const char* pattern, const auto& take) {
    const std::regex expression(pattern);
    for (std::sregex_iterator at(xml.begin(), xml.end(), expression), end; at != end; ++at)
      take((*at)[1].str(), (*at)[2].str());
  };
  each("<([a-z0-9-]+)[^>]*>([^<]*[^<\\s][^<]*)<", [&](const auto& name, const auto& text) {
    told.texts.insert({name, text});
  });
  each("<([a-z0-9-]+) ref=\"([^\"]*)\"", [&](const auto& name, const auto& ref) {
    told.references.insert({name, ref});
  });
  each("<([a-z0-9-]+) id=\"([^\"]*)\"", [&](const auto&, const auto& id) { told.ids.insert(id); });
  return told;
}

template <class Things> Things more(const Things& after, const Things& before) {
  Things added;
  std::set_difference(after.begin(), after.end(), before.begin(), before.end(),
                      std::inserter(added, added.end()));
  return added;
}

/// Small letters and figures, and nothing between them.
std::string bare(std::string_view text) {
  std::string letters;
  for (const char c : base::in_small_letters(text)) {
    if (std::isalnum(static_cast<unsigned char>(c)) != 0) letters += c;
  }
  return letters;
}

/// What somebody gave, or the verb says.
class Given {
 public:
  explicit Given(const Call& call) {
    for (const auto& [name, text] : call.typed)
      all_ += "|" + bare(text);
    for (const std::string& one : call.says)
      all_ += "|" + bare(one);
    all_ += "|20260601|" + std::string(32, 'a');
  }
  [[nodiscard]] bool has(std::string_view text) const {
    return all_.find(bare(text)) != std::string::npos;
  }

 private:
  std::string all_;
};

/// A part that is named for the first time sits in its place, put there by nobody known.
bool is_of_a_named_place(const Leaf& leaf) {
  return leaf == Leaf{"kind", "fitted"} || leaf == Leaf{"answer", "not-known"};
}

base::Result<forms::Done> run(OpenBench& bench, const Call& call) {
  for (const forms::Row& row : rows()) {
    if (row.name == call.row) return bench.typed(row.begin(), call.typed);
  }
  FAIL("no such row: " << call.row);
  return forms::Done{};
}

record::Record record_of(OpenBench& bench) {
  auto loaded = bench.library().record(bench.folder());
  if (!loaded) FAIL(on_disk::printed(loaded.faults()));
  return std::move(loaded).value().record;
}

void check_added(const Call& call, const Told& before, const Told& after) {
  CAPTURE(call.row);
  CAPTURE(call.typed);
  const Given given(call);
  const auto new_ids = more(after.ids, before.ids);
  const bool all = std::any_of(call.typed.begin(), call.typed.end(), [](const auto& one) {
    return one.first == "--all" || one.first == "--rest";
  });
  for (const Leaf& leaf : more(after.texts, before.texts)) {
    const bool name_of_place = leaf.element == "name" && all;
    INFO("<" << leaf.element << ">" << leaf.text);
    CHECK((name_of_place || given.has(leaf.text) || is_of_a_named_place(leaf)));
  }
  for (const Leaf& leaf : more(after.references, before.references)) {
    const std::string& ref = leaf.text;
    const std::string called = ref.starts_with("pl-") ? ref.substr(3) : ref;
    const bool structure = leaf.element == "visit" || (all && leaf.element == "place");
    INFO("<" << leaf.element << " ref=" << ref);
    CHECK((structure || new_ids.contains(ref) || given.has(called)));
  }
}

/// A record of which intake alone has told.
std::string bare_record(OpenBench& bench) {
  std::filesystem::remove(bench.record());
  const auto taken_in = run(bench, kIntake);
  if (!taken_in) FAIL(on_disk::printed(taken_in.faults()));
  return bench.now();
}

}  // namespace

TEST_CASE("every verb of the catalogue is tried, or known to ask only") {
  std::set<std::string> tried{kIntake.row};
  for (const Call& call : calls())
    tried.insert(call.row);
  for (const forms::Row& row : rows()) {
    CAPTURE(row.name);
    CHECK(tried.contains(std::string(row.name)) != kNotCalled.contains(row.name));
  }
}

TEST_CASE("no command writes what nobody gave") {
  OpenBench bench("winchbook-nothing-unsaid");
  const std::string intake = bare_record(bench);
  check_added(kIntake, told_by({}), told_by(record_of(bench)));
  for (const Call& call : calls()) {
    CAPTURE(call.row);
    CAPTURE(call.typed);
    bench.put(intake);
    if (call.row == "sales add") REQUIRE(run(bench, call_of("sales for")));
    const Told before = told_by(record_of(bench));
    const auto done = run(bench, call);
    if (!done) FAIL_CHECK(on_disk::printed(done.faults()));
    if (done) check_added(call, before, told_by(record_of(bench)));
  }
}

TEST_CASE("a list of places is written without a piece, a fitting or a number") {
  OpenBench bench("winchbook-list-of-places");
  bare_record(bench);
  const record::Record record = record_of(bench);
  CHECK(record.places.size() == 8);
  CHECK(record.pieces.empty());
  CHECK(record.fittings.empty());
  for (const record::Place& place : record.places)
    CHECK(place.quantity == 1);
}

}  // namespace winchbook::catalogue
