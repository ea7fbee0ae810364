#include "report/care_words.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <utility>

#include "assess/fitting/recorded.h"

namespace winchbook::report {
namespace {

using assess::care::excluded_by;
using assess::care::Flag;
using document::Run;
using document::Text;
using knowledge::Matters;
using Says = knowledge::FlagTrigger::Says;
using MattersTo = std::initializer_list<Matters>;

const std::vector<Flag>& flags_of(const Telling& telling) {
  static const std::vector<Flag> kNone;
  const assess::VisitAssessment* last = telling.assessment.last();
  return last == nullptr ? kNone : last->care.flags;
}

bool matters_to(const Flag& flag, MattersTo wanted) {
  const auto& matters = flag.rule->matters;
  return std::any_of(wanted.begin(), wanted.end(), [&](Matters one) {
    return std::find(matters.begin(), matters.end(), one) != matters.end();
  });
}

bool wants(MattersTo wanted, Matters one) {
  return std::find(wanted.begin(), wanted.end(), one) != wanted.end();
}

std::string key(const Flag& flag, std::string_view part) {
  return "flag." + flag.rule->word + "." + std::string(part);
}

/// "Handle-side plate, Tail-side plate and 3 more".
std::string pieces_named(const Telling& telling, const std::vector<record::PieceId>& pieces) {
  constexpr std::size_t kMost = 4;
  std::vector<std::string> names;
  for (const record::PieceId& id : pieces) {
    std::string name = telling.piece_name(id);
    if (std::find(names.begin(), names.end(), name) == names.end())
      names.push_back(std::move(name));
  }
  if (names.size() <= kMost) return telling.words.list(names);
  const std::size_t more = names.size() + 1 - kMost;
  names.resize(kMost - 1);
  return telling.words.say("flag.more-pieces",
                           {{"names", telling.words.joined("join.comma", names)}, {"count", more}});
}

std::string name_of(const Telling& telling, const Flag& flag) {
  return telling.words.say(key(flag, "name"));
}

std::string law_of(const Telling& telling, const Flag& flag) {
  if (!telling.words.has(key(flag, "law"))) return "";
  return telling.words.say(key(flag, "law"), {{"age", base::word_of(flag.age)}});
}

/// On which grounds pieces are free of it, those of the same grounds together.
std::string excluded_words(const Telling& telling, const Flag& flag) {
  std::map<std::string, std::vector<record::PieceId>> by_grounds;
  for (const record::PieceId& id : flag.excluded) {
    const record::Piece* piece = find(telling.record, id);
    const auto grounds = piece == nullptr ? std::nullopt : excluded_by(*piece, *flag.rule);
    if (!grounds) continue;
    const auto* report = grounds->report;
    by_grounds[report == nullptr ? piece->supplier : report->laboratory + "\n" + report->number]
        .push_back(id);
  }
  std::vector<std::string> sentences;
  for (const auto& [grounds, pieces] : by_grounds) {
    const record::Piece* piece = find(telling.record, pieces.front());
    const auto* report = excluded_by(*piece, *flag.rule)->report;
    sentences.push_back(telling.words.say(
        "flag.excluded", {{"hazard", name_of(telling, flag)},
                          {"pieces", pieces_named(telling, pieces)},
                          {"count", pieces.size()},
                          {"how", report == nullptr ? "new" : "tested"},
                          {"laboratory", report == nullptr ? "" : report->laboratory},
                          {"date", report == nullptr ? "" : telling.words.date(report->on)},
                          {"number", report == nullptr ? "" : report->number},
                          {"supplier", piece->supplier}}));
  }
  return joined(sentences);
}

/// What to do, and with which pieces.
Text brief_words(const Telling& telling, const Flag& flag) {
  const std::string words = telling.words.say(key(flag, "short"));
  std::vector<record::PieceId> pieces = flag.pieces;
  pieces.insert(pieces.end(), flag.may_be.begin(), flag.may_be.end());
  if (pieces.empty()) {
    return document::plain(
        joined({telling.words.say(key(flag, base::word_of(flag.says)), {{"count", 0}}), words}));
  }
  return document::plain(telling.words.say(
      "flag.brief", {{"pieces", pieces_named(telling, pieces)}, {"words", words}}));
}

/// All that is known of it, with its sources.
Text derived_words(const Telling& telling, const Flag& flag, MattersTo matters) {
  if (flag.says == Says::excluded) return document::plain(excluded_words(telling, flag));
  const std::string pieces = pieces_named(telling, flag.pieces);
  std::vector<std::string> sentences{
      telling.words.say(key(flag, base::word_of(flag.says)),
                        {{"pieces", pieces}, {"count", flag.pieces.size()}}),
      telling.words.say(key(flag, "do"))};
  if (!flag.may_be.empty()) {
    sentences.insert(
        std::next(sentences.begin()),
        telling.words.say(key(flag, "may-be"), {{"pieces", pieces_named(telling, flag.may_be)},
                                                {"count", flag.may_be.size()}}));
  }
  if (wants(matters, Matters::deal)) sentences.push_back(law_of(telling, flag));
  sentences.push_back(excluded_words(telling, flag));
  sentences.push_back(telling.words.say("flag.source", {{"source", flag.rule->source}}));
  return document::plain(joined(sentences));
}

/// What the record's materials and dates add to the bench's own words.
std::string addition(const Telling& telling, const Flag& flag, MattersTo matters, bool sources) {
  std::vector<std::string> sentences;
  if (!flag.not_written.empty()) {
    sentences.push_back(telling.words.say(
        "flag.also",
        {{"pieces", pieces_named(telling, flag.not_written)}, {"count", flag.not_written.size()}}));
  }
  if (sources) sentences.push_back(excluded_words(telling, flag));
  if (flag.needs_test) sentences.push_back(telling.words.say("flag.no-test"));
  if (sources && wants(matters, Matters::deal)) sentences.push_back(law_of(telling, flag));
  return joined(sentences);
}

/// The flag of the table that one of the bench's own is about, or null. What it adds is said once.
const Flag* flag_about(const Telling& telling, std::size_t written) {
  for (const Flag& flag : flags_of(telling)) {
    if (!flag.written.empty() && flag.written.front() == written) return &flag;
  }
  return nullptr;
}

void append_sentence(const std::string& sentence, Text& text) {
  if (sentence.empty()) return;
  if (!text.empty()) text.parts.emplace_back(Run{" "});
  text.parts.emplace_back(Run{sentence});
}

document::Caution short_caution(const Telling& telling, const Flag& flag) {
  return {telling.words.capitalised(name_of(telling, flag)),
          document::plain(telling.words.say(key(flag, "short")))};
}

document::Caution method_caution(const Telling& telling, const std::string& word) {
  return {telling.words.say("caution." + word + ".label"),
          document::plain(telling.words.say("caution." + word + ".words"))};
}

bool speaks_of(const Telling& telling, const record::Caution& caution,
               const knowledge::FlagRule& rule) {
  return knowledge::has_phrase(caution.label, rule.also) ||
         knowledge::has_phrase(telling.plain(caution.words), rule.also);
}

/// The bench's own, or what the work asks for.
CautionList cautions_told(const Telling& telling, const std::optional<record::Caution>& written,
                          const assess::care::Cautions* asked) {
  CautionList told;
  if (written) told.push_back(telling.caution(*written));
  if (asked == nullptr) return told;
  for (const assess::care::Dust& dust : asked->dust) {
    if (written && speaks_of(telling, *written, *dust.rule)) continue;
    Flag flag{.rule = dust.rule};
    told.push_back(short_caution(telling, flag));
  }
  if (written) return told;
  for (const std::string& word : asked->words)
    told.push_back(method_caution(telling, word));
  return told;
}

/// The caution of the first piece that asks for one; of what the bench has warned already, only
/// what matters to nobody but who works on it stands there again.
std::optional<document::Caution> caution_for_any(const Telling& telling,
                                                 const std::vector<record::PieceId>& pieces) {
  for (const Flag& flag : flags_of(telling)) {
    if (flag.rule->legal || flag.says < Says::may_be || !matters_to(flag, {Matters::open}))
      continue;
    if (flag.rule->matters.size() > 1 && flag.said_by_bench()) continue;
    for (const record::PieceId& piece : pieces) {
      for (const auto* raised : {&flag.pieces, &flag.may_be}) {
        if (std::find(raised->begin(), raised->end(), piece) != raised->end())
          return short_caution(telling, flag);
      }
    }
  }
  return std::nullopt;
}

/// Position of a thing of the visit in its list.
template <class Thing>
std::optional<std::size_t> position_in(const std::vector<Thing>& all, const Thing& one) {
  for (std::size_t i = 0; i < all.size(); ++i) {
    if (&all[i] == &one) return i;
  }
  return std::nullopt;
}

bool has_place(const record::Record& record, std::initializer_list<std::string_view> beginnings) {
  return std::any_of(record.places.begin(), record.places.end(), [&](const record::Place& place) {
    return std::any_of(beginnings.begin(), beginnings.end(),
                       [&](std::string_view one) { return place.kind.starts_with(one); });
  });
}

/// What would bring a reel that is fished back sooner.
std::vector<const char*> signs_in_use(const record::Record& record) {
  using record::Brake;
  const Brake brake = record.reel.brake;
  std::vector<const char*> signs{"care.sign.gritty"};
  const bool drags = brake == Brake::star || brake == Brake::lever || brake == Brake::front_drag ||
                     brake == Brake::rear_drag;
  if (drags || has_place(record, {"drag-"})) signs.push_back("care.sign.drag");
  if (brake == Brake::click || has_place(record, {"click-", "check-"}))
    signs.push_back("care.sign.click");
  if (has_place(record, {"bail-"})) signs.push_back("care.sign.bail");
  return signs;
}

/// What would bring one that is kept.
std::vector<const char*> signs_on_shelf(const std::vector<std::string>& families) {
  struct Sign {
    const char* family;
    const char* key;
  };
  constexpr Sign kSigns[] = {
      {"nitrate", "care.sign.celluloid"},  {"acetate", "care.sign.celluloid"},
      {"hard-rubber", "care.sign.rubber"}, {"zinc", "care.sign.zinc"},
      {"wood", "care.sign.wood"},          {"animal", "care.sign.animal"},
      {"copper-alloy", "care.sign.green"}, {"iron", "care.sign.rust"}};
  constexpr std::size_t kMost = 3;
  std::vector<const char*> signs;
  for (const Sign& sign : kSigns) {
    const bool there = std::find(families.begin(), families.end(), sign.family) != families.end();
    const bool told = !signs.empty() && std::string_view(signs.back()) == sign.key;
    if (there && !told && signs.size() < kMost) signs.push_back(sign.key);
  }
  return signs;
}

}  // namespace

std::vector<ToldFlag> flags_told(const Telling& telling, MattersTo matters, bool sources) {
  std::vector<ToldFlag> told;
  const auto& written = telling.visit.findings.flags;
  for (std::size_t i = 0; i < written.size(); ++i) {
    const record::Flag& flag = written[i];
    ToldFlag one{flag.kind == record::Flag::Kind::legal,
                 {},
                 flag.name,
                 telling.text(flag.what),
                 flag.pieces,
                 true};
    if (const Flag* about = flag_about(telling, i)) {
      one.word = about->rule->word;
      append_sentence(addition(telling, *about, matters, sources), one.words);
    }
    told.push_back(std::move(one));
  }
  for (const Flag& flag : flags_of(telling)) {
    if (!flag.written.empty() || !matters_to(flag, matters)) continue;
    // A statement tells everything; elsewhere the bench's own cautions say it better, and what
    // nobody entered is not warned of.
    if (!sources && (flag.says < Says::may_be || flag.said_by_bench())) continue;
    told.push_back({flag.rule->legal, flag.rule->word, name_of(telling, flag),
                    sources ? derived_words(telling, flag, matters) : brief_words(telling, flag),
                    flag.pieces, false});
  }
  return told;
}

std::vector<document::Caution> flag_cautions(const Telling& telling, MattersTo matters) {
  std::vector<document::Caution> cautions;
  const auto& written = telling.visit.findings.flags;
  for (std::size_t i = 0; i < written.size(); ++i) {
    if (written[i].kind == record::Flag::Kind::legal) continue;
    const Flag* about = flag_about(telling, i);
    if (about == nullptr || matters_to(*about, matters)) {
      cautions.push_back(
          {telling.words.capitalised(written[i].name), telling.text(written[i].what)});
    }
  }
  for (const Flag& flag : flags_of(telling)) {
    if (flag.says != Says::excluded && flag.written.empty() && !flag.in_care &&
        matters_to(flag, matters))
      cautions.push_back(short_caution(telling, flag));
  }
  return cautions;
}

std::vector<document::Caution> further_cautions(const Telling& telling, MattersTo matters) {
  std::vector<document::Caution> cautions;
  for (const Flag& flag : flags_of(telling)) {
    if (flag.says >= Says::may_be && matters_to(flag, matters) && !flag.said_by_bench())
      cautions.push_back(short_caution(telling, flag));
  }
  return cautions;
}

std::string ratchet_word(const Telling& telling) {
  return telling.words.say("ratchet." + std::string(record::word_of(telling.record.reel.kind)));
}

std::string next_service_words(const Telling& telling) {
  if (!telling.visit.next_service) return "";
  const std::string date = telling.words.date(*telling.visit.next_service);
  const bool fish = assess::fitting::use_of(telling.visit) == assess::fitting::Use::fish;
  const assess::VisitAssessment* last = telling.assessment.last();
  const auto signs =
      fish ? signs_in_use(telling.record)
           : signs_on_shelf(last == nullptr ? std::vector<std::string>{} : last->care.families);
  std::vector<std::string> words;
  const std::string ratchet = ratchet_word(telling);
  for (const char* sign : signs)
    words.push_back(telling.words.say(sign, {{"ratchet", ratchet}}));
  if (words.empty()) words.push_back(telling.words.say("care.sign.any"));
  std::string all = words.back();
  if (words.size() > 1) {
    words.pop_back();
    all = telling.words.say("care.or",
                            {{"first", telling.words.joined("join.comma", words)}, {"last", all}});
  }
  return telling.words.say("care.next-service",
                           {{"use", fish ? "fish" : "shelf"}, {"date", date}, {"signs", all}});
}

CautionList cautions_of_acts(const Telling& telling, const record::StripStep& step) {
  const assess::VisitAssessment* last = telling.assessment.last();
  const auto i = position_in(telling.visit.strip_down, step);
  assess::care::Cautions asked;
  if (last != nullptr && i) asked = last->care.step_cautions[*i];
  // Which springs a step frees, the parts list knows better than its words.
  std::erase(asked.words, "springs");
  return cautions_told(telling, step.caution, &asked);
}

CautionList cautions_beside(const Telling& telling, const record::StripStep& step) {
  CautionList told = cautions_of_acts(telling, step);
  if (!step.caution && step.spring_loose) told.push_back(method_caution(telling, "springs"));
  return told;
}

CautionList cautions_beside(const Telling& telling, const record::Cleaning& cleaning) {
  const assess::VisitAssessment* last = telling.assessment.last();
  const auto i = position_in(telling.visit.cleaning, cleaning);
  return cautions_told(telling, cleaning.caution,
                       last != nullptr && i ? &last->care.cleaning_cautions[*i] : nullptr);
}

CautionList cautions_beside(const Telling& telling, const record::Work& work) {
  const assess::VisitAssessment* last = telling.assessment.last();
  const auto i = position_in(telling.visit.work, work);
  CautionList told = cautions_told(telling, work.caution,
                                   last != nullptr && i ? &last->care.work_cautions[*i] : nullptr);
  if (told.empty()) {
    if (auto caution = caution_for_any(telling, work.pieces)) told.push_back(std::move(*caution));
  }
  return told;
}

}  // namespace winchbook::report
