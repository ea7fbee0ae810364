#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <functional>
#include <random>
#include <string>
#include <vector>

#include "daybook/entries/agree.h"
#include "daybook/entries/clean.h"
#include "daybook/entries/custody.h"
#include "daybook/entries/decide.h"
#include "daybook/entries/donor.h"
#include "daybook/entries/fit.h"
#include "daybook/entries/grade_set.h"
#include "daybook/entries/identify.h"
#include "daybook/entries/mark.h"
#include "daybook/entries/measure.h"
#include "daybook/entries/part.h"
#include "daybook/entries/person.h"
#include "daybook/entries/story.h"
#include "daybook/entries/strip.h"
#include "daybook/entries/test.h"
#include "daybook/entries/tray.h"
#include "daybook/entries/undo.h"
#include "daybook/entries/work.h"
#include "daybook/history.h"
#include "support/on_disk.h"

namespace winchbook::daybook {
namespace {

/// Chance from a fixed seed: the engine's numbers are the same on every machine.
class Chance {
 public:
  explicit Chance(unsigned seed) : engine_(seed) {}
  std::size_t below(std::size_t end) { return engine_() % end; }
  template <class Things> auto one_of(const Things& things) { return things[below(things.size())]; }

 private:
  std::mt19937 engine_;
};

const std::array<std::string, 5> kParts{"foot", "pinion-new", "pinion old", "pinion", "knob"};
const std::array<std::string, 4> kTexts{"Oiled & wiped.", "For Nell Merrow <b> \"so\".",
                                        "<emphasis>Slow</emphasis> work.", "Ünter “Öl” – é."};

/// A verb, and what is typed for it.
struct Entered {
  forms::Job (*begin)();
  Typed fields;
};
using Verb = std::function<Entered(Chance&, int)>;

std::string number(std::size_t n) {
  return std::to_string(n);
}

std::vector<Verb> verbs_that_describe() {
  return {
      [](Chance& chance, int n) {
        return Entered{person_job,
                       {{"NAME", "Person " + std::to_string(n) + " " + chance.one_of(kTexts)},
                        {"--stand-in", "somebody"},
                        {"--named-to", "owner"}}};
      },
      [](Chance& chance, int) {
        Entered entered{
            custody_job,
            {{"--from", chance.one_of(std::array<std::string, 3>{"1950", "1980~", "20XX"})},
             {"--source", "told"}}};
        if (chance.below(2) == 0) entered.fields.emplace_back("HOLDER", "nell");
        return entered;
      },
      [](Chance& chance, int) {
        return Entered{story_job,
                       {{"TEXT", "One.\n\n" + chance.one_of(kTexts)}, {"--approved", ""}}};
      },
      [](Chance& chance, int n) {
        return Entered{story_job,
                       {{"--event", "repair"},
                        {"--title", "Event " + std::to_string(n)},
                        {"TEXT", chance.one_of(kTexts)},
                        {"--part", chance.one_of(kParts)},
                        {"--source", "seen"}}};
      },
      [](Chance& chance, int n) {
        return Entered{measure_job,
                       {{"WHAT", "size " + std::to_string(n % 3)},
                        {"LENGTH", number(chance.below(90) + 1) + " mm"}}};
      },
      [](Chance& chance, int) {
        return Entered{mark_job,
                       {{"TEXT", chance.one_of(kTexts)}, {"--part", chance.one_of(kParts)}}};
      },
      [](Chance& chance, int n) {
        Entered entered{part_job, {{"NAME", "Part " + std::to_string(n)}, {"--material", "brass"}}};
        if (chance.below(2) == 0) entered.fields.emplace_back("--place", chance.one_of(kParts));
        return entered;
      },
      [](Chance& chance, int n) {
        return Entered{donor_job,
                       {{"NAME", "donor " + std::to_string(n)}, {"--note", chance.one_of(kTexts)}}};
      },
      [](Chance& chance, int) {
        return Entered{identify_job,
                       {{"--maker", "Harroway Reel Works"}, {"--because", chance.one_of(kTexts)}}};
      },
  };
}

std::vector<Verb> verbs_of_the_visit() {
  return {
      [](Chance& chance, int) {
        return Entered{agree_job,
                       {{"--how", "by letter"}, {"--may-be-done", chance.one_of(kTexts)}}};
      },
      [](Chance& chance, int) {
        Entered entered{grade_set_job,
                        {{"PARTS", chance.one_of(kParts)},
                         {"--set", "original, likely, untouched 80, worn through"},
                         {"--note", chance.one_of(kTexts)}}};
        if (chance.below(2) == 0) entered.fields.emplace_back("--left", "");
        return entered;
      },
      [](Chance& chance, int n) {
        return Entered{grade_set_job,
                       {{"PARTS", chance.one_of(kParts)},
                        {"--fault", "bend"},
                        {"--fault-name", "bend " + std::to_string(n % 4)},
                        {"--found-severity", "blemish"}}};
      },
      [](Chance& chance, int n) {
        return Entered{grade_set_job,
                       {{"--flag", "hazard"},
                        {"--flag-name", "flag " + std::to_string(n % 3)},
                        {"--what", chance.one_of(kTexts)}}};
      },
      [](Chance& chance, int) {
        return Entered{strip_job,
                       {{"WHAT", chance.one_of(kTexts)}, {"--off", chance.one_of(kParts)}}};
      },
      [](Chance& chance, int) {
        return Entered{clean_job, {{"PARTS", chance.one_of(kParts)}, {"--method", "damp cloth"}}};
      },
      [](Chance& chance, int) {
        return Entered{work_job, {{"WHAT", chance.one_of(kTexts)}, {"--hours", "0.5"}}};
      },
      [](Chance& chance, int) {
        return Entered{tray_job,
                       {{chance.below(2) == 0 ? "--refit" : "--bag", chance.one_of(kParts)},
                        {"--label", "bag 9"}}};
      },
      [](Chance& chance, int n) {
        Entered entered{fit_job,
                        {{"NAME", "Pinion " + std::to_string(n)},
                         {"--place", "pinion"},
                         {"--material", "brass"},
                         {"--why", chance.one_of(kTexts)},
                         {"--way-back", "fully"},
                         {"--label", "bag 8"}}};
        if (chance.below(2) == 0) entered.fields.emplace_back("--instead-of", "pinion-new");
        return entered;
      },
      [](Chance& chance, int) {
        return Entered{test_job,
                       {{"WHAT", "end-float"},
                        {chance.below(2) == 0 ? "--after" : "--before",
                         "0." + number(chance.below(9)) + " mm"}}};
      },
      [](Chance& chance, int) {
        return Entered{decide_job,
                       {{"--set", "make-it-fish"},
                        {"--because", chance.one_of(kTexts)},
                        {"--cost", "make-it-fish: 30 to 40 GBP: little"}}};
      },
  };
}

std::vector<std::string> lines_of(const std::string& bytes) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < bytes.size();) {
    const std::size_t end = std::min(bytes.find('\n', at), bytes.size() - 1);
    lines.push_back(bytes.substr(at, end + 1 - at));
    at = end + 1;
  }
  return lines;
}

/// The lines of `before` that are not in `after` in their order: by the longest common sequence.
std::size_t lines_lost(const std::vector<std::string>& before,
                       const std::vector<std::string>& after) {
  std::vector<std::size_t> row(after.size() + 1, 0);
  for (const std::string& line : before) {
    std::size_t diagonal = 0;
    for (std::size_t i = 0; i < after.size(); ++i) {
      const std::size_t above = row[i + 1];
      row[i + 1] = line == after[i] ? diagonal + 1 : std::max(row[i + 1], row[i]);
      diagonal = above;
    }
  }
  return before.size() - row.back();
}

/// A file as a person leaves it: remarks, odd spaces, a note of the bench's own.
const std::array<std::string, 4> kByHand{
    "  <!-- a remark > with <tags> & marks -->\n",
    "    <place   id='pl-odd' ><name>Odd</name>\t"
    "<kind>foot</kind></place   >\n",
    "      <!--second--><!--third-->\n",
    "  <mine:note xmlns:mine='urn:somebody:else'>  two  spaces </mine:note>\n"};

std::string by_hand(std::string bytes) {
  const auto before = [&](const std::string& words, const std::string& put_in) {
    const std::size_t at = bytes.find(words);
    REQUIRE(at != std::string::npos);
    bytes.insert(bytes.rfind('\n', at) + 1, put_in);
  };
  before("<people>", kByHand[0]);
  before("</places>", kByHand[1]);
  before("<findings>", kByHand[2]);
  before("</reel-record>", kByHand[3]);
  return bytes;
}

void play(unsigned seed) {
  CAPTURE(seed);
  Chance chance(seed);
  OpenBench bench("winchbook-edit-sequence");
  bench.put(by_hand(bench.now()));
  std::vector<Verb> verbs = verbs_that_describe();
  for (Verb& verb : verbs_of_the_visit())
    verbs.push_back(std::move(verb));
  std::vector<std::string> states{bench.now()};
  int made = 0;
  for (int n = 0; n < 40; ++n) {
    CAPTURE(n);
    const std::string before = bench.now();
    const Entered entered = chance.one_of(verbs)(chance, n);
    const auto done = bench.typed(entered.begin(), entered.fields);
    const std::string after = bench.now();
    if (!done) {
      CHECK(after == before);
      continue;
    }
    ++made;
    CHECK(recordfile::read(base::RealFiles(), bench.folder(), kProject / "schemas"));
    // What is set anew (an answer, a state, a count) is a few lines; all others are as they were.
    constexpr std::size_t kMostLinesOfOneElement = 12;
    CHECK(lines_lost(lines_of(before), lines_of(after)) <= kMostLinesOfOneElement);
    for (const std::string& line : kByHand)
      CHECK(says(after, line));
    if (after != before) states.push_back(after);
  }
  CHECK(made > 10);
  // Every state can be gone back to, byte for byte.
  const auto kept = versions(base::RealFiles(), bench.folder());
  REQUIRE(kept.size() + 1 == states.size());
  const std::size_t some = chance.below(kept.size());
  REQUIRE(undo(bench.library(), bench.request(), static_cast<int>(some) + 1));
  CHECK(bench.now() == states[some]);
}

}  // namespace

TEST_CASE("any sequence of changes keeps the record valid and leaves every other line alone") {
  for (unsigned seed = 1; seed <= 8; ++seed)
    play(seed);
}

}  // namespace winchbook::daybook
