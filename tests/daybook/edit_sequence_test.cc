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
#include "daybook/entries/life.h"
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

constexpr base::Day kDay{2026, 6, 1};

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

using Verb = std::function<Change(Chance&, int)>;

std::vector<Verb> verbs_that_describe() {
  return {
      [](Chance& chance, int n) {
        return person(filled<PersonRequest>([&](auto& r) {
          r.name = "Person " + std::to_string(n) + " " + chance.one_of(kTexts);
          r.stand_in = "somebody";
          r.named_to = "owner";
        }));
      },
      [](Chance& chance, int) {
        CustodyRequest request;
        if (chance.below(2) == 0) request.holder = "nell";
        request.from = chance.one_of(std::array<std::string, 3>{"1950", "1980~", "20XX"});
        request.source = "told";
        return custody(request);
      },
      [](Chance& chance, int) {
        return story(filled<StoryRequest>([&](auto& r) {
          r.text = "One.\n\n" + chance.one_of(kTexts);
          r.approved_on = "2026-06-01";
        }));
      },
      [](Chance& chance, int n) {
        return life_event(filled<LifeRequest>([&](auto& r) {
          r.kind = "repair";
          r.title = "Event " + std::to_string(n);
          r.what = chance.one_of(kTexts);
          r.parts = {chance.one_of(kParts)};
          r.source = "seen";
        }));
      },
      [](Chance& chance, int n) {
        return measure(filled<MeasureRequest>([&](auto& r) {
          r.on = kDay;
          r.what = "size " + std::to_string(n % 3);
          r.length = std::to_string(chance.below(90) + 1);
        }));
      },
      [](Chance& chance, int) {
        return mark(filled<MarkRequest>([&](auto& r) {
          r.text = chance.one_of(kTexts);
          r.part = chance.one_of(kParts);
        }));
      },
      [](Chance& chance, int n) {
        PartRequest request;
        request.name = "Part " + std::to_string(n);
        request.material = "brass";
        if (chance.below(2) == 0) request.place.said = chance.one_of(kParts);
        return part(request);
      },
      [](Chance& chance, int n) {
        return donor(filled<DonorRequest>([&](auto& r) {
          r.name = "donor " + std::to_string(n);
          r.note = chance.one_of(kTexts);
        }));
      },
      [](Chance& chance, int) {
        return identify(filled<IdentifyRequest>([&](auto& r) {
          r.maker = "Harroway Reel Works";
          r.evidence.because = chance.one_of(kTexts);
        }));
      },
  };
}

std::vector<Verb> verbs_of_the_visit() {
  return {
      [](Chance& chance, int) {
        return agree(filled<AgreeRequest>([&](auto& r) {
          r.on = kDay;
          r.how = "by letter";
          r.may_be_done = {chance.one_of(kTexts)};
        }));
      },
      [](Chance& chance, int) {
        return set_grade(filled<GradeRequest>([&](auto& r) {
          r.on = kDay;
          r.parts = {chance.one_of(kParts)};
          r.phrases = {"born here, likely, untouched 80, worn through"};
          r.left = chance.below(2) == 0;
          r.note = chance.one_of(kTexts);
        }));
      },
      [](Chance& chance, int n) {
        return add_fault(filled<FaultRequest>([&](auto& r) {
          r.on = kDay;
          r.part = chance.one_of(kParts);
          r.kind = "bend";
          r.name = "bend " + std::to_string(n % 4);
          r.found = "blemish";
        }));
      },
      [](Chance& chance, int n) {
        return add_flag(filled<FlagRequest>([&](auto& r) {
          r.on = kDay;
          r.kind = "hazard";
          r.name = "flag " + std::to_string(n % 3);
          r.what = chance.one_of(kTexts);
        }));
      },
      [](Chance& chance, int) {
        StripRequest request;
        request.on = kDay;
        request.what = chance.one_of(kTexts);
        request.off = {chance.one_of(kParts)};
        return strip(request);
      },
      [](Chance& chance, int) {
        return clean(filled<CleanRequest>([&](auto& r) {
          r.on = kDay;
          r.parts = {chance.one_of(kParts)};
          r.method = "damp cloth";
        }));
      },
      [](Chance& chance, int) {
        return work(filled<WorkRequest>([&](auto& r) {
          r.on = kDay;
          r.what = chance.one_of(kTexts);
          r.hours = "0.5";
        }));
      },
      [](Chance& chance, int) {
        TrayRequest request;
        request.on = kDay;
        (chance.below(2) == 0 ? request.refitted : request.bagged) = {chance.one_of(kParts)};
        request.bag = "bag 9";
        return tray(request);
      },
      [](Chance& chance, int n) {
        FitRequest request;
        request.on = kDay;
        request.name = "Pinion " + std::to_string(n);
        request.place = "pinion";
        if (chance.below(2) == 0) request.instead_of = "pinion-new";
        request.material = "brass";
        request.why = chance.one_of(kTexts);
        request.way_back = "100: Fully.";
        request.bag = "bag 8";
        return fit(request);
      },
      [](Chance& chance, int) {
        return test(filled<TestRequest>([&](auto& r) {
          r.on = kDay;
          r.what = "float";
          r.after = chance.below(2) == 0;
          r.reading = "0." + std::to_string(chance.below(9)) + " mm";
        }));
      },
      [](Chance& chance, int) {
        return decide(filled<DecideRequest>([&](auto& r) {
          r.on = kDay;
          r.advised = "make-it-fish";
          r.because = chance.one_of(kTexts);
          r.costs = {"make-it-fish: 30 to 40 GBP: little"};
        }));
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
    const auto done = edit(bench.world(), bench.request(), chance.one_of(verbs)(chance, n));
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
  REQUIRE(undo(bench.world(), bench.request(), static_cast<int>(some) + 1));
  CHECK(bench.now() == states[some]);
}

}  // namespace

TEST_CASE("any sequence of changes keeps the record valid and leaves every other line alone") {
  for (unsigned seed = 1; seed <= 8; ++seed)
    play(seed);
}

}  // namespace winchbook::daybook
