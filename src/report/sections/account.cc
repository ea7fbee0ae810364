#include <algorithm>
#include <set>
#include <utility>

#include "assess/with_the_reel.h"
#include "record/enum_words.h"
#include "record/moments.h"
#include "report/bench_work.h"
#include "report/care_words.h"
#include "report/sections.h"

namespace winchbook::report {
namespace {

using record::TestResult;
using record::Visit;

const std::string kOpens = "\u201C";
const std::string kCloses = "\u201D";

/// The bench's own words as they stand; words that quote somebody already are not quoted twice.
std::string as_written(std::string words) {
  if (words.empty() || words.find(kOpens) != std::string::npos) return words;
  if (words.find_last_of(".!?") != words.size() - 1) words += '.';
  return kOpens + words + kCloses;
}

/// Nothing was done yet: the reel has come, and that is all.
bool only_arrived(const Telling& telling) {
  const Visit& visit = telling.visit;
  return !visit.hand_back && visit.cleaning.empty() && visit.work.empty() &&
         visit.strip_down.empty() && visit.findings.tests.empty() && !visit.advice;
}

bool fitted_here(const Telling& telling) {
  const auto& all = telling.record.fittings;
  return std::any_of(all.begin(), all.end(),
                     [&](const record::Fitting& one) { return one.visit == telling.visit.id; });
}

/// Tells one stay at the bench from its entries, in their order. Days of the year in which the reel
/// came are told without it.
class Account {
 public:
  explicit Account(const Telling& telling) : telling_(telling) {
    const auto came = telling.visit.taken_in.earliest();
    if (came) year_ = came->year;
  }

  /// What the cover says already is told again only where the record says little more.
  [[nodiscard]] std::string arrival() const {
    const bool arrived = only_arrived(telling_);
    return joined(
        {taken_in(), arrived || is_silent() ? entered_as() : "", arrived ? not_yet() : ""});
  }

  /// Whether there is anything that the record does not tell of the reel.
  [[nodiscard]] bool is_silent() const { return !missing(/*as_list=*/true).empty(); }

  /// Goes on from how it came.
  [[nodiscard]] std::vector<document::Paragraph> work(document::Paragraph came) {
    std::vector<document::Paragraph> paragraphs;
    paragraphs.push_back(std::move(came));
    add(decision(), paragraphs);
    for (const record::Cleaning& one : telling_.visit.cleaning) {
      document::Paragraph& told = add(joined({cleaned(one), spite_of(one)}), paragraphs);
      add_beside(cautions_beside(telling_, one), told);
    }
    for (const record::Work& one : telling_.visit.work) {
      document::Paragraph& told = add(worked(one), paragraphs);
      add_beside(cautions_beside(telling_, one), told);
    }
    const auto& tests = telling_.visit.findings.tests;
    if (tests.size() <= kTestsInWords) {
      for (const record::Test& one : tests)
        add(tested(one), paragraphs);
    }
    const bool idle =
        telling_.visit.cleaning.empty() && telling_.visit.work.empty() && !fitted_here(telling_);
    if (idle) add(telling_.words.say("account.no-work"), paragraphs);
    const bool pictured = idle && add_pictures(paragraphs);
    add(home(pictured), paragraphs);
    if (const std::string silent = missing(/*as_list=*/true); !silent.empty())
      add(telling_.words.say("account.not-here", {{"list", silent}}), paragraphs);
    return paragraphs;
  }

 private:
  static void add_beside(CautionList cautions, document::Paragraph& told) {
    std::move(cautions.begin(), cautions.end(), std::back_inserter(told.beside));
  }

  [[nodiscard]] std::string say(std::string_view key, words::Arguments arguments = {}) const {
    return telling_.words.say(key, arguments);
  }

  [[nodiscard]] std::string day(const base::EdtfDate& date) const {
    const auto first = date.earliest();
    const bool same_year = first && first->year == year_;
    return telling_.words.date(date,
                               same_year ? words::DateForm::without_year : words::DateForm::full);
  }

  /// Sentences go on in the paragraph before, unless a caution stands beside it.
  document::Paragraph& add(std::string sentence, std::vector<document::Paragraph>& into) const {
    if (into.empty() || !into.back().beside.empty()) into.emplace_back();
    document::Paragraph& last = into.back();
    if (sentence.empty()) return last;
    const std::string space = last.words.empty() ? "" : " ";
    last.words.parts.emplace_back(document::Run{space + std::move(sentence)});
    return last;
  }

  [[nodiscard]] std::string taken_in() const {
    const Visit& visit = telling_.visit;
    const auto owner = assess::owner_of(telling_.record, visit);
    const auto& who = owner ? owner : visit.brought_by;
    std::string use(record::word_of(visit.wishes.use));
    std::erase(use, '-');
    return say("account.taken-in", {{"bench", telling_.record.bench.name},
                                    {"who", owner ? "owner"
                                            : who ? "brought"
                                                  : "nobody"},
                                    {"name", who ? telling_.name(*who) : ""},
                                    {"date", telling_.words.date(visit.taken_in)},
                                    {"use", use}});
  }

  [[nodiscard]] std::string entered_as() const {
    using Maker = assess::Identity::Maker;
    const assess::Identity& reel = telling_.assessment.identity;
    const std::string kind =
        say("reel-kind." + std::string(record::word_of(telling_.record.reel.kind)));
    const char* how = reel.how == Maker::not_known    ? "none"
                      : reel.how == Maker::attributed ? "attributed"
                                                      : "made";
    std::string sentence =
        say("account.entered-as", {{"kind", kind}, {"how", how}, {"maker", reel.maker}});
    // "Reel Co." brings a full stop of its own.
    if (sentence.ends_with("..")) sentence.pop_back();
    return sentence;
  }

  [[nodiscard]] const assess::VisitAssessment* last() const { return telling_.assessment.last(); }

  [[nodiscard]] std::size_t parts() const {
    return last() == nullptr ? 0 : last()->originality.rows.size();
  }

  [[nodiscard]] bool standing_known() const {
    if (last() == nullptr) return false;
    const auto& rows = last()->originality.rows;
    return std::any_of(rows.begin(), rows.end(), [](const auto& row) {
      return row.found.standing != assess::originality::Standing::not_determined;
    });
  }

  /// What the record is silent of: as "parts, marks or age", or for a list.
  [[nodiscard]] std::string missing(bool as_list) const {
    const bool dated = telling_.record.reel.made || telling_.assessment.dating.window.not_before ||
                       telling_.assessment.dating.window.not_after;
    const bool marks = !telling_.record.markings.empty();
    std::vector<std::string> names;
    const auto add_if = [&](bool is_missing, const char* key) {
      if (is_missing) names.push_back(say(key));
    };
    if (as_list) {
      add_if(!dated, "account.missing.age");
      add_if(!marks, "account.missing.marks");
      add_if(parts() == 0, "account.missing.parts");
      add_if(parts() > 0 && !standing_known(), "account.missing.standing");
      return telling_.words.joined("join.comma", names);
    }
    add_if(parts() == 0, "account.missing.parts");
    add_if(!marks, "account.missing.marks");
    add_if(!dated, "account.missing.age");
    if (names.size() < 2) return names.empty() ? "" : names.front();
    const std::string end = names.back();
    names.pop_back();
    return say("account.or",
               {{"before", telling_.words.joined("join.comma", names)}, {"next", end}});
  }

  [[nodiscard]] std::string not_yet() const {
    const std::string silent = missing(/*as_list=*/false);
    return joined(
        {silent.empty() ? "" : say("account.not-yet", {{"list", silent}}), say("account.room")});
  }

  [[nodiscard]] std::string decision() const {
    const auto& advice = telling_.visit.advice;
    if (!advice || !advice->chosen) return "";
    const std::string because = as_written(telling_.plain(advice->chosen_because));
    return say(
        "account.chose",
        {{"who", advice->chosen_by ? "named" : "owner"},
         {"name",
          advice->chosen_by ? telling_.words.capitalised(telling_.name(*advice->chosen_by)) : ""},
         {"course", say("course." + std::string(record::word_of(*advice->chosen)))},
         {"because", because.empty() ? "no" : "yes"},
         {"words", because}});
  }

  /// Whether it is every part of which anything is entered.
  [[nodiscard]] bool is_every_part(const std::vector<record::PieceId>& pieces) const {
    if (parts() < 2) return false;
    const std::set<record::PieceId> named(pieces.begin(), pieces.end());
    const auto& rows = last()->originality.rows;
    return std::all_of(rows.begin(), rows.end(), [&](const auto& row) {
      return row.left.piece && named.contains(*row.left.piece);
    });
  }

  [[nodiscard]] std::string cleaned(const record::Cleaning& cleaning) const {
    // Where the bench typed a method alone, that is what it said; a sentence of its own names what
    // was cleaned.
    std::string words = telling_.plain(cleaning.what);
    const bool method_alone = words.empty() || words.substr(1) == cleaning.method.substr(1) + '.';
    if (method_alone) words = cleaning.method;
    std::vector<std::string> names;
    for (const record::PieceId& piece : cleaning.pieces)
      names.push_back(telling_.piece_name(piece));
    const bool all = is_every_part(cleaning.pieces);
    return say("account.cleaned",
               {{"which", all                              ? "all"
                          : names.empty() || !method_alone ? "none"
                                                           : "some"},
                {"dated", cleaning.on ? "yes" : "no"},
                {"date", cleaning.on ? day(*cleaning.on) : ""},
                {"parts", telling_.words.spelled(static_cast<std::int64_t>(parts()))},
                {"names", telling_.words.list(names)},
                {"count", names.size()},
                {"words", as_written(std::move(words))}});
  }

  /// What came away, and why it was done in spite of a warning.
  [[nodiscard]] std::string spite_of(const record::Cleaning& cleaning) const {
    const std::string loss = telling_.plain(cleaning.loss);
    const std::string reason = telling_.plain(cleaning.against_warning);
    return joined({loss, reason.empty() ? "" : joined({say("bench.against-warning"), reason})});
  }

  [[nodiscard]] std::string worked(const record::Work& work) const {
    return say("account.worked", {{"dated", work.on ? "yes" : "no"},
                                  {"date", work.on ? day(*work.on) : ""},
                                  {"words", as_written(telling_.plain(work.what))}});
  }

  /// A run of the spool that a sentence can tell: whole seconds, and nothing beside them.
  static bool is_run(const TestResult& result) {
    return result.reading && !result.reading_high && result.reading->places() == 0 &&
           result.words.empty() && !result.load_limit;
  }

  [[nodiscard]] std::string tested(const record::Test& test) const {
    const bool before = record::is_written(test.before);
    const bool after = record::is_written(test.after);
    if (!before && !after) return "";
    const bool spool = test.what == say("account.free-spool") && test.unit == "s" &&
                       (!before || is_run(test.before)) && (!after || is_run(test.after));
    const auto reading = [&](bool is_told, const TestResult& result) {
      if (!is_told) return std::string();
      return spool ? say("account.seconds", {{"count", result.reading->text()}})
                   : limited_reading(telling_, result, test.unit);
    };
    return say("account.tested", {{"ends", before && after ? "both"
                                           : after         ? "after"
                                                           : "before"},
                                  {"kind", spool ? "spool" : "other"},
                                  {"test", test.what},
                                  {"before", reading(before, test.before)},
                                  {"after", reading(after, test.after)}});
  }

  bool add_pictures(std::vector<document::Paragraph>& into) const {
    int number = 0;
    for (const record::Photo& photo : telling_.record.photos) {
      if (photo.withheld || !photo.taken) continue;
      add(say("account.picture",
              {{"number", std::to_string(++number)}, {"date", telling_.words.date(*photo.taken)}}),
          into);
    }
    return number > 0;
  }

  [[nodiscard]] std::string home(bool short_form) const {
    const Visit& visit = telling_.visit;
    const std::string wrote = as_written(telling_.plain(visit.summary));
    std::string handed;
    if (visit.hand_back) {
      const auto& to = visit.hand_back->to;
      handed = say("account.handed-back", {{"form", short_form ? "short" : "whole"},
                                           {"who", to ? "named" : "nobody"},
                                           {"name", to ? telling_.name(*to) : ""},
                                           {"date", day(visit.hand_back->on)}});
    }
    return joined({handed, wrote.empty() ? "" : say("account.wrote", {{"words", wrote}})});
  }

  const Telling& telling_;
  std::int64_t year_ = 0;
};

/// What to beware of, beside the last words; what matters to whoever fishes it stands with its
/// care.
void add_hazards(const Telling& telling, document::Chapter& chapter) {
  using knowledge::Matters;
  auto& last = std::get<document::Paragraph>(chapter.blocks.back());
  std::set<std::string> with_care;
  if (assess::fitting::use_of(telling.visit) == assess::fitting::Use::fish) {
    for (const ToldFlag& flag : flags_told(telling, {Matters::use})) {
      if (!flag.written) with_care.insert(flag.word);
    }
  }
  for (const ToldFlag& flag : flags_told(telling, {Matters::keep})) {
    if (with_care.contains(flag.word)) continue;
    last.beside.emplace_back(document::Caution{telling.words.capitalised(flag.name), flag.words});
  }
}

/// The reel as it came, beside the last words.
void add_picture(const Telling& telling, document::Chapter& chapter) {
  const auto& pictures = telling.pictures.of("work");
  if (pictures.empty() || pictures.front() == nullptr) return;
  auto& last = std::get<document::Paragraph>(chapter.blocks.back());
  last.beside.emplace_back(telling.figure(*pictures.front(), document::Width::side));
}

/// More tests than can be told in words.
void add_tests(const Telling& telling, document::Chapter& chapter) {
  if (telling.visit.findings.tests.size() <= kTestsInWords) return;
  document::Table tests = tests_table(telling);
  tests.title.clear();
  tests.beside.clear();
  chapter.blocks.emplace_back(std::move(tests));
}

}  // namespace

// A small job in the order of its days: what was entered and nothing else. Warmth is the bench's
// own words and the names of people; what the record is silent of is said once, at the end.
std::optional<document::Chapter> tell_account(const Telling& telling) {
  document::Chapter chapter = telling.chapter("account");
  const bool arrived = only_arrived(telling);
  chapter.title = telling.words.say("account.title", {{"stage", arrived ? "arrival" : "stay"}});
  Account account(telling);
  document::Paragraph first = telling.sentence(account.arrival());
  first.manner = document::ParagraphManner::unindented;
  if (arrived) {
    chapter.blocks.emplace_back(std::move(first));
    return chapter;
  }
  for (document::Paragraph& one : account.work(std::move(first))) {
    if (!one.words.empty()) chapter.blocks.emplace_back(std::move(one));
  }
  add_hazards(telling, chapter);
  add_picture(telling, chapter);
  add_tests(telling, chapter);
  return chapter;
}

/// Ruled lines for the pen: for what the family remembers, and for what is not written here.
std::optional<document::Chapter> tell_room(const Telling& telling) {
  if (!only_arrived(telling) && !Account(telling).is_silent()) return std::nullopt;
  document::Chapter chapter = telling.chapter("room");
  constexpr int kLines = 6;
  chapter.blocks.emplace_back(document::RuledLines{{telling.words.say("room.remembered")}, kLines});
  return chapter;
}

}  // namespace winchbook::report
