#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <functional>
#include <pugixml.hpp>
#include <regex>
#include <sstream>

#include "catalogue/catalogue.h"
#include "recordfile/write_record.h"
#include "support/on_disk.h"
#include "told_keys.h"

// A sentence needs its entry. (a) A record grows verb by verb from a bare intake, and every
// document is written at every step: what it claims must be licensed by the file as XPath reads it,
// which knows nothing of how the program counts. (b) From each demo record each entry is taken out
// in turn: only what needed it may go, and nothing that claims may appear.
namespace {

using namespace winchbook;
using silence::Keys;
using silence::Teller;

namespace fs = std::filesystem;

const fs::path kProject = WINCHBOOK_SOURCE_DIR;

/// By which elements a word of `needs` is licensed. One row a word of the schema.
const std::map<std::string, std::string>& licences() {
  static const std::map<std::string, std::string> kRows{
      {"arrival", "//visit[last()]/taken-in"},
      {"brought-by", "//visit[last()]/brought-by"},
      {"receiver", "//visit[last()]/hand-back/to"},
      {"arrived", "//visit[last()]/arrived"},
      {"wish", "//visit[last()]/wishes[use or words]"},
      {"must-stay",
       "//visit[last()]/agreement/must-stay | //visit[last()]/agreement/piece-must-stay | "
       "//visit[last()]/agreement/pieces-must-stay | //life//keep-because | "
       "//life//must-stay"},
      {"agreement", "//visit[last()]/agreement"},
      {"cost",
       "//agreement/cost-limit | //agreement/estimate | //work[hours or parts-cost] | "
       "//donor/cost | //advice/course"},
      {"promise", "//visit[last()]/promised-by | //visit[last()]/waiting-for"},
      {"brake", "/reel-record/reel/brake[. != 'not-determined']"},
      {"maker", "/reel-record/reel/maker/name"},
      {"serial", "/reel-record/reel/serial"},
      {"hand", "/reel-record/reel/hand"},
      {"date",
       "//marking | /reel-record/reel/made | //piece[material or finish or made] | "
       "//custody/* | //life/*"},
      {"mark", "//marking"},
      {"no-marks", "//looked-for[what='marks'][found='none']"},
      {"photograph", "//photos/photo"},
      {"no-photographs", "//looked-for[what='photographs'][found='none']"},
      {"story", "//story"},
      {"life", "//life/*"},
      {"custody", "//custody/*"},
      {"part", "//fittings/fitting"},
      {"standing",
       "//piece[of-this-reel/answer[. != 'not-determined'] or "
       "made-by/answer[. != 'not-determined'] or made-by or donor]"},
      {"found",
       "//visit[last()]/findings/piece-finding/found | "
       "//visit[last()]/findings/place-finding"},
      {"surface", "//visit[last()]/findings/piece-finding//surface"},
      {"fault", "//visit[last()]/findings/fault"},
      {"no-faults", "//looked-for[what='faults'][found='none']"},
      {"fault-stays", "//visit[last()]/findings/fault"},
      {"fault-mended", "//visit[last()]/findings/fault"},
      {"remaining", "//visit[last()]/not-put-right"},
      {"no-remaining", "//looked-for[what='remaining'][found='none']"},
      {"test", "//visit[last()]/findings/test"},
      {"tested-twice", "//visit[last()]/findings/test[before and after]"},
      {"step",
       "//visit[last()]/strip-down/step | //visit[last()]/step | //visit[last()]/strip-step"},
      {"closed-tray", "//visit[last()]/tray/line"},
      {"cleaning", "//visit[last()]/cleaning"},
      {"warned", "//visit[last()]/cleaning/against-warning"},
      {"work", "//visit[last()]/work"},
      {"fitting", "//fitting/visit"},
      {"donor", "//piece/donor"},
      {"bag", "//piece/now[kind='bagged']"},
      {"parted",
       "//piece/now[kind='lost' or kind='scrapped' or kind='kept-by-bench' or "
       "kind='to-owner']"},
      {"no-parted", "//looked-for[what='parted'][found='none']"},
      {"content", "//piece[role='content' or role='spare']"},
      {"no-contents", "//looked-for[what='contents'][found='none']"},
      {"no-loose", "//looked-for[what='loose-parts'][found='none']"},
      {"advice", "//visit[last()]/advice[advised or because or course]"},
      {"decision", "//visit[last()]/advice/chosen"},
      {"ranking", "//visit[last()]/wishes/ranking"},
      {"drag", "//visit[last()]/drag"},
      {"care", "//visit[last()]/care"},
      {"next-service", "//visit[last()]/next-service | //visit[last()]/review-by"},
      {"hand-back", "//visit[last()]/hand-back"},
      {"earlier-visit", "//visit[position() < last()]/summary"},
      {"interest", "/reel-record/bench/own-interest"},
      {"no-serial", "//looked-for[what='serial'][found='none']"},
      {"with-it", "//piece[role='content' or role='spare'] | /reel-record/reel/box-and-papers"},
      {"examined",
       "//visit[last()]/findings/piece-finding | //visit[last()]/findings/place-finding "
       "| //visit[last()]/findings/fault | //visit[last()]/findings/test"},
      {"treatment", "//visit[last()]/cleaning | //visit[last()]/work | //fitting/visit"},
      {"counsel", "//visit[last()]/advice | //visit[last()]/care"},
  };
  return kRows;
}

bool licensed(const pugi::xml_document& record, const std::string& word) {
  const auto row = licences().find(word);
  REQUIRE_MESSAGE(row != licences().end(), "no licence is known for ", word);
  return !record.select_nodes(row->second.c_str()).empty();
}

/// Keys, or beginnings of keys ("flag.*"), of messages that need no entry of their own.
const std::vector<std::string>& needs_none() {
  static const std::vector<std::string> kLines = [] {
    std::vector<std::string> lines;
    std::ifstream file(kProject / "tests/catalogue/needs_none.txt");
    for (std::string line; std::getline(file, line);) {
      line = line.substr(0, line.find('#'));
      while (!line.empty() && line.back() == ' ')
        line.pop_back();
      if (!line.empty()) lines.push_back(line);
    }
    return lines;
  }();
  return kLines;
}

bool needs_no_entry(const std::string& key) {
  return std::any_of(needs_none().begin(), needs_none().end(), [&](const std::string& line) {
    if (line.ends_with('*')) return key.starts_with(line.substr(0, line.size() - 1));
    return key == line;
  });
}

/// Whether it is a sentence: words that end with a full stop.
bool is_sentence(const std::string& words) {
  static const std::regex kSentence("[a-z)}\u201D][.!]( |$|\\}|<)");
  return std::regex_search(words, kSentence);
}

/// What a document says and may not.
std::vector<std::string> untruths(const Teller& teller, const Keys& said,
                                  const pugi::xml_document& record) {
  std::vector<std::string> found;
  for (const std::string& key : said) {
    for (const std::string& word : teller.needs(key)) {
      if (!licensed(record, word)) found.push_back(fmt::format("{} without {}", key, word));
    }
    if (teller.needs(key).empty() && is_sentence(teller.words(key)) && !needs_no_entry(key))
      found.push_back(key + " asserts, and needs nothing");
  }
  return found;
}

std::string listed(const std::vector<std::string>& lines) {
  return fmt::format("{}", fmt::join(lines, "\n"));
}

/// A bench in a folder that goes when the test ends; every verb is run by its form.
class Bench {
 public:
  explicit Bench(const char* name) : folder_(fs::temp_directory_path() / name) {
    fs::remove_all(folder_);
    fs::create_directories(folder_);
  }
  ~Bench() {
    std::error_code ignored;
    fs::remove_all(folder_, ignored);
  }
  Bench(const Bench&) = delete;
  Bench& operator=(const Bench&) = delete;

  [[nodiscard]] fs::path reel() const { return folder_ / "reel"; }
  [[nodiscard]] library::Library& library() { return library_; }

  void enter(const std::string& verb, const daybook::Typed& fields) {
    const auto rows = catalogue::rows();
    const auto row = std::find_if(rows.begin(), rows.end(),
                                  [&](const forms::Row& one) { return one.name == verb; });
    CAPTURE(verb);
    REQUIRE(row != rows.end());
    forms::Job job = row->begin();
    const auto say = [&](const std::string& name, const std::string& text) {
      CAPTURE(name);
      forms::Field* field = forms::find(job.form, name);
      REQUIRE(field != nullptr);
      const auto faults = forms::say(*field, text);
      if (!faults.empty()) FAIL(on_disk::printed(faults));
    };
    say("PATH", reel().string());
    for (const auto& [name, text] : fields)
      say(name, text);
    forms::Setting setting{library_, "winchbook " + verb, false, [](const forms::Outcome&) {}};
    const auto done = forms::fill_and_run(job, setting, nullptr);
    if (!done) FAIL(on_disk::printed(done.faults()));
  }

 private:
  fs::path folder_;
  base::RealFiles files_;
  library::Library library_{{files_, kProject, "test",
                             [] {
                               return base::Day{2026, 6, 30};
                             },
                             [] { return std::string(32, 'a'); }}};
};

struct Step {
  std::string verb;
  daybook::Typed fields;
};

/// From the counter to the shelf, each verb with little more than it must have.
const std::vector<Step>& steps() {
  static const std::vector<Step> kSteps{
      {"intake",
       {{"--kind", "multiplier"},
        {"--bench", "The Lantern Bench"},
        {"--bench-place", "Carrick Sound"},
        {"--restorer", "Ines Thornbury"},
        {"--owner", "Ada Brannock"},
        {"--on", "2026-06-01"}}},
      {"identify", {{"--maker", "Corran Reel Co."}, {"--on", "2026-06-01"}}},
      {"agree", {{"--limit", "40 GBP"}, {"--how", "by letter"}, {"--on", "2026-06-02"}}},
      {"grade",
       {{"PARTS", "spool"}, {"--set", "untouched 90, worn through"}, {"--on", "2026-06-02"}}},
      {"grade", {{"PARTS", "spool"}, {"--set", "original"}, {"--on", "2026-06-02"}}},
      {"grade",
       {{"PARTS", "foot"},
        {"--fault", "bend"},
        {"--fault-name", "bent at the heel"},
        {"--found-severity", "blemish"},
        {"--on", "2026-06-02"}}},
      {"test", {{"WHAT", "free-spool"}, {"--before", "9 s"}, {"--on", "2026-06-02"}}},
      {"strip",
       {{"WHAT", "Tail plate off."}, {"--off", "tail-side-plate"}, {"--on", "2026-06-03"}}},
      {"clean", {{"PARTS", "spool"}, {"--method", "damp cloth"}, {"--on", "2026-06-03"}}},
      {"work", {{"WHAT", "A drop of oil."}, {"--on", "2026-06-03"}}},
      {"tray", {{"--refit", "tail-side-plate"}, {"--on", "2026-06-04"}}},
      {"test", {{"WHAT", "free-spool"}, {"--after", "31 s"}, {"--on", "2026-06-04"}}},
      {"mark", {{"--none", ""}, {"--on", "2026-06-04"}}},
      {"photo add", {{"--none", ""}, {"--on", "2026-06-04"}}},
      {"advise", {{"--decide", "make-it-fish"}, {"--on", "2026-06-04"}}},
      {"handback", {{"--on", "2026-06-05"}}},
  };
  return kSteps;
}

}  // namespace

TEST_CASE("every word that a message may need is known to this test, and the other way round") {
  const std::string schema = on_disk::bytes_of(kProject / "schemas/template-1.xsd");
  const std::size_t begin = schema.find("<xs:simpleType name=\"entered\">");
  REQUIRE(begin != std::string::npos);
  const std::string type = schema.substr(begin, schema.find("name=\"file\"", begin) - begin);
  std::set<std::string> words;
  const std::regex word("<xs:enumeration value=\"([^\"]+)\"");
  for (std::sregex_iterator at(type.begin(), type.end(), word), end; at != end; ++at)
    words.insert((*at)[1].str());
  std::set<std::string> known;
  for (const auto& [one, path] : licences())
    known.insert(one);
  CHECK(words == known);
}

TEST_CASE("a record that grows verb by verb is told without a sentence that nobody entered") {
  Bench bench("silence_grows");
  const Teller teller(bench.library());
  std::size_t told = 0;
  for (const Step& step : steps()) {
    bench.enter(step.verb, step.fields);
    const auto record = bench.library().record(bench.reel());
    REQUIRE(record);
    pugi::xml_document file;
    REQUIRE(file.load_string(record->bytes.c_str()));
    for (const auto& one : teller.said(*record)) {
      const auto wrong = untruths(teller, one.second, file);
      CHECK_MESSAGE(wrong.empty(), "after ", step.verb, ", the ", one.first, " says:\n",
                    listed(wrong));
      told += one.second.size();
    }
  }
  CHECK(told > 1000);
}

TEST_CASE("the demo's documents claim nothing without its entry") {
  Bench bench("silence_demo");
  const Teller teller(bench.library());
  std::size_t reels = 0;
  for (const auto& folder : fs::directory_iterator(kProject / "demo/reels")) {
    const auto record = bench.library().record(folder.path());
    REQUIRE(record);
    pugi::xml_document file;
    REQUIRE(file.load_string(record->bytes.c_str()));
    for (const auto& one : teller.said(*record)) {
      const auto wrong = untruths(teller, one.second, file);
      CHECK_MESSAGE(wrong.empty(), folder.path().filename().string(), ", the ", one.first,
                    " says:\n", listed(wrong));
    }
    ++reels;
  }
  CHECK(reels == 4);
}

namespace {

/// A kind of entry: which words its going may take away, and the record without each in turn.
struct Taken {
  std::string kind;
  std::set<std::string> words;
  std::function<std::vector<record::Record>(const record::Record&)> without;
};

/// Of the list that `of` finds in a record, each entry left out in turn.
template <class Of>
std::function<std::vector<record::Record>(const record::Record&)> each_of(Of of) {
  return [of](const record::Record& whole) {
    record::Record counted = whole;
    std::vector<record::Record> all;
    for (std::size_t i = 0; i < of(counted).size(); ++i) {
      auto& entries = of(all.emplace_back(whole));
      entries.erase(entries.begin() + static_cast<std::ptrdiff_t>(i));
    }
    return all;
  };
}

template <class List> auto each_of(List record::Visit::*list) {
  return each_of([list](record::Record& one) -> List& { return one.visits.back().*list; });
}

template <class List> auto each_of(List record::Findings::*list) {
  return each_of([list](record::Record& one) -> List& { return one.visits.back().findings.*list; });
}

/// A member of the last visit, emptied.
template <class Member>
std::function<std::vector<record::Record>(const record::Record&)> without(
    Member record::Visit::*member) {
  return [member](const record::Record& whole) {
    record::Record one = whole;
    one.visits.back().*member = {};
    return std::vector<record::Record>{std::move(one)};
  };
}

const std::vector<Taken>& kinds() {
  static const std::vector<Taken> kKinds{
      {"cleaning", {"cleaning", "warned", "treatment"}, each_of(&record::Visit::cleaning)},
      {"work", {"work", "treatment", "cost"}, each_of(&record::Visit::work)},
      {"step", {"step"}, each_of(&record::Visit::strip_down)},
      {"tray", {"closed-tray"}, each_of(&record::Visit::tray)},
      {"agreement", {"agreement", "must-stay", "cost"}, each_of(&record::Visit::agreements)},
      {"what remains", {"remaining"}, each_of(&record::Visit::not_put_right)},
      {"fault",
       {"fault", "fault-stays", "fault-mended", "examined"},
       each_of(&record::Findings::faults)},
      {"test", {"test", "tested-twice", "examined"}, each_of(&record::Findings::tests)},
      {"part looked at", {"found", "surface", "examined"}, each_of(&record::Findings::pieces)},
      {"place looked at", {"found", "examined"}, each_of(&record::Findings::places)},
      {"flag", {}, each_of(&record::Findings::flags)},
      {"look",
       {"no-marks", "no-photographs", "no-faults", "no-remaining", "no-parted", "no-contents",
        "no-loose", "no-serial", "examined"},
       each_of(&record::Findings::looked_for)},
      {"life event", {"life", "must-stay", "date", "standing"}, each_of([
       ](record::Record & one) -> auto& { return one.life; })},
      {"advice", {"advice", "decision", "cost", "counsel"}, without(&record::Visit::advice)},
      {"wishes", {"wish", "ranking"}, without(&record::Visit::wishes)},
      {"drag", {"drag"}, without(&record::Visit::drag)},
      {"care", {"care", "counsel"}, without(&record::Visit::care)},
      {"hand-back", {"hand-back", "receiver"}, without(&record::Visit::hand_back)},
      {"next service", {"next-service"}, without(&record::Visit::next_service)},
      {"arrived", {"arrived"}, without(&record::Visit::arrived)},
      {"promise", {"promise"}, without(&record::Visit::promised_by)},
      {"who brought it", {"brought-by"}, without(&record::Visit::brought_by)},
      {"story",
       {"story"},
       [](const record::Record& whole) {
         record::Record one = whole;
         one.story.reset();
         return std::vector{one};
       }},
      {"the year as written",
       {"date"},
       [](const record::Record& whole) {
         record::Record one = whole;
         one.reel.made.reset();
         return std::vector{one};
       }},
      {"custody",
       {"custody", "date"},
       [](const record::Record& whole) {
         record::Record one = whole;
         one.custody.clear();
         return std::vector{one};
       }},
  };
  return kKinds;
}

/// What went that did not need the entry, and what came though it claims.
std::vector<std::string> not_silent(const Teller& teller, const Taken& taken, const Keys& before,
                                    const Keys& after) {
  std::vector<std::string> wrong;
  const auto needed = [&](const std::string& key) {
    const auto& needs = teller.needs(key);
    return std::any_of(needs.begin(), needs.end(),
                       [&](const std::string& word) { return taken.words.contains(word); });
  };
  for (const std::string& key : before) {
    if (!after.contains(key) && !teller.needs(key).empty() && !needed(key))
      wrong.push_back(key + " went");
  }
  for (const std::string& key : after) {
    if (!before.contains(key) && !teller.needs(key).empty() && !needed(key))
      wrong.push_back(key + " came");
  }
  return wrong;
}

}  // namespace

TEST_CASE("with an entry taken out, what needed it falls silent and nothing else speaks up") {
  Bench bench("silence_taken");
  const Teller teller(bench.library());
  std::size_t tried = 0;
  for (const auto& folder : fs::directory_iterator(kProject / "demo/reels")) {
    const auto whole = bench.library().record(folder.path());
    REQUIRE(whole);
    const auto before = teller.said(*whole);
    for (const Taken& taken : kinds()) {
      for (record::Record& less : taken.without(whole->record)) {
        recordfile::LoadedRecord loaded = *whole;
        loaded.record = std::move(less);
        const auto after = teller.said(loaded);
        ++tried;
        for (const std::string& document : Teller::documents()) {
          if (after.at(document).empty()) continue;  // it is not written without the entry
          const auto wrong = not_silent(teller, taken, before.at(document), after.at(document));
          CHECK_MESSAGE(wrong.empty(), folder.path().filename().string(), " without a ", taken.kind,
                        ", the ", document, ":\n", listed(wrong));
        }
      }
    }
  }
  CHECK(tried > 100);
}
