#include <algorithm>
#include <map>
#include <utility>
#include <variant>

#include "assess/care/care.h"
#include "base/words_of_text.h"
#include "record/enum_words.h"

namespace winchbook::assess::care {
namespace {

using knowledge::CareTable;
using knowledge::FlagRule;
using knowledge::FlagTrigger;
using knowledge::Substance;
using record::Piece;
using Says = FlagTrigger::Says;
using Words = std::vector<std::string>;

template <class Value> bool holds(const std::vector<Value>& values, const Value& value) {
  return std::find(values.begin(), values.end(), value) != values.end();
}

bool holds(const Words& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

/// Whether the piece is still with the reel, or may be.
bool is_with_reel(const Piece& piece) {
  using Kind = record::Whereabouts::Kind;
  return piece.now.kind != Kind::lost && piece.now.kind != Kind::scrapped &&
         piece.now.kind != Kind::kept_by_bench;
}

/// Whether a text names a substance that may hold it, wherever it sits: felt.
bool names_substance(const CareTable& table, std::string_view text, const FlagRule& rule) {
  const auto substances = knowledge::care_words(table, text).substances;
  return std::any_of(rule.triggers.begin(), rule.triggers.end(), [&](const FlagTrigger& trigger) {
    const bool by_substance = trigger.places.empty() && !trigger.captive_spring;
    return by_substance &&
           std::any_of(substances.begin(), substances.end(),
                       [&](const Substance* one) { return knowledge::names(trigger.of, *one); });
  });
}

/// The flag of a rule; null: it is not raised.
const Flag* flag_of(const std::vector<Flag>& flags, std::string_view word) {
  const auto found = std::find_if(flags.begin(), flags.end(),
                                  [&](const Flag& flag) { return flag.rule->word == word; });
  return found == flags.end() ? nullptr : &*found;
}

bool found_by_laboratory(const Piece& piece, const FlagRule& rule) {
  return std::any_of(piece.tested.begin(), piece.tested.end(), [&](const auto& report) {
    return record::word_of(report.hazard) == rule.word && report.found == record::Looked::some;
  });
}

/// When a piece can have been made: as it says itself; at the bench, on the day it was fitted; with
/// the reel, when it is original; else not after it was fitted.
Made made_of(const record::Record& record, const Piece& piece, const Made& reel) {
  if (piece.made) return {piece.made->earliest(), piece.made->latest()};
  std::optional<base::EdtfDate> fitted;
  for (const record::Fitting& fitting : record.fittings) {
    if (fitting.piece == piece.id && fitting.from) fitted = fitting.from;
  }
  if (piece.made_by.answer == record::MadeBy::bench) {
    return fitted ? Made{fitted->earliest(), fitted->latest()} : Made{};
  }
  if (piece.role == record::PieceRole::content ||
      piece.of_this_reel.answer == record::OfThisReel::yes) {
    return reel;
  }
  return {std::nullopt, fitted ? fitted->latest() : std::nullopt};
}

/// May be older than the day: nothing says that it is not.
bool may_be_older(const Made& made, base::Day day) {
  return !made.first || *made.first < day;
}

/// Whether a caution of the bench's own is of the kind of a rule.
bool is_of_kind(const record::Record& record, const record::Caution& caution,
                const FlagRule& rule) {
  return knowledge::has_phrase(caution.label, rule.also) ||
         knowledge::has_phrase(plain_text(record, caution.words), rule.also);
}

/// Whether the bench's advice on care speaks of that kind, in a caution or beside it.
bool is_in_advice(const record::Record& record, const record::CareAdvice& care,
                  const FlagRule& rule) {
  const auto in_words = [&](const record::Words& words) {
    return knowledge::has_phrase(plain_text(record, words), rule.also);
  };
  return std::any_of(care.cautions.begin(), care.cautions.end(),
                     [&](const auto& one) { return is_of_kind(record, one, rule); }) ||
         std::any_of(care.fish.begin(), care.fish.end(), in_words) ||
         std::any_of(care.keep.begin(), care.keep.end(), in_words);
}

/// The record under the eyes of the rules.
class Watch {
 public:
  Watch(const record::Record& record, const record::Visit& visit, const CareTable& table,
        const Made& reel)
      : record_(record), visit_(visit), table_(table), reel_(reel) {
    for (const Piece& piece : record.pieces) {
      auto& all = substances_[piece.id];
      all = knowledge::substances_in(table, piece.material);
      for (const record::FinishLayer& layer : piece.finish) {
        const auto layers = knowledge::substances_in(table, layer.what);
        all.insert(all.end(), layers.begin(), layers.end());
      }
    }
  }

  /// The flag of a rule, or nothing.
  [[nodiscard]] std::optional<Flag> raised(const FlagRule& rule) const {
    Flag flag{.rule = &rule};
    bool any = false;
    // What is so of one piece leaves open what may be of another.
    const auto take = [&](Says says) {
      if (any && says < flag.says) return false;
      if (any && says > flag.says && flag.says == Says::may_be)
        flag.may_be = std::exchange(flag.pieces, {});
      if (!any || says > flag.says) flag.pieces.clear();
      flag.says = says;
      any = true;
      return true;
    };
    for (const Piece& piece : record_.pieces) {
      if (!is_with_reel(piece)) continue;
      const auto says = said_of(rule, piece);
      if (says && *says == Says::excluded) {
        flag.excluded.push_back(piece.id);
      } else if (says && take(*says)) {
        flag.pieces.push_back(piece.id);
      } else if (says == Says::may_be) {
        flag.may_be.push_back(piece.id);
      }
    }
    if (const FlagTrigger* trigger = first_that_fits(rule, nullptr)) {
      if (!any || trigger->says > flag.says) static_cast<void>(take(trigger->says));
    }
    if (!any && flag.excluded.empty()) return std::nullopt;
    if (!any) flag.says = Says::excluded;
    flag.made = made_together(flag.pieces);
    if (const auto& day = rule.law_date) {
      if (flag.made.last && *flag.made.last < *day) flag.age = Flag::Age::before;
      if (flag.made.first && *flag.made.first >= *day) flag.age = Flag::Age::after;
    }
    compare_with_bench(flag);
    return flag;
  }

 private:
  /// What is known of a piece by a rule; nothing where the rule does not bear on it. A report that
  /// found it outranks every rule.
  [[nodiscard]] std::optional<Says> said_of(const FlagRule& rule, const Piece& piece) const {
    if (found_by_laboratory(piece, rule)) return Says::is;
    const FlagTrigger* trigger = first_that_fits(rule, &piece);
    if (trigger == nullptr) return std::nullopt;
    const auto grounds = excluded_by(piece, rule);
    // What is entered to be of it is no new material; a laboratory may say that it is not.
    const bool excluded = grounds && (grounds->report != nullptr || trigger->says < Says::is);
    return excluded ? Says::excluded : trigger->says;
  }

  /// Words that tell only how a metal was made or looks.
  static bool is_make(std::string_view left_over) {
    static constexpr std::string_view kMakes[] = {
        "turned", "cast",   "sheet",   "plate",    "plated", "hardened", "tempered", "polished",
        "blued",  "rolled", "stamped", "pressed",  "drawn",  "wire",     "solid",    "yellow",
        "red",    "white",  "bright",  "two",      "three",  "four",     "with",     "ears",
        "flats",  "of",     "and",     "machined", "milled", "knurled",  "old",      "new"};
    const auto words = base::plain_words_of(left_over);
    return std::all_of(words.begin(), words.end(), [](const std::string& word) {
      return std::find(std::begin(kMakes), std::end(kMakes), word) != std::end(kMakes);
    });
  }

  static bool asks_of_piece(const FlagTrigger& trigger) {
    return !trigger.of.empty() || !trigger.not_of.empty() || !trigger.places.empty() ||
           !trigger.named.empty() || !trigger.faults.empty() || !trigger.methods.empty() ||
           trigger.content || trigger.captive_spring;
  }

  /// Null for the reel as a whole.
  [[nodiscard]] const FlagTrigger* first_that_fits(const FlagRule& rule, const Piece* piece) const {
    for (const FlagTrigger& trigger : rule.triggers) {
      if (asks_of_piece(trigger) != (piece != nullptr)) continue;
      if (fits_reel(trigger) && (piece == nullptr || fits_piece(trigger, *piece))) {
        const Made made = piece == nullptr ? reel_ : made_of(record_, *piece, reel_);
        const bool too_young = trigger.made_before && !may_be_older(made, *trigger.made_before);
        const bool too_old = trigger.made_after && made.last && *made.last < *trigger.made_after;
        if (!too_young && !too_old) return &trigger;
      }
    }
    return nullptr;
  }

  [[nodiscard]] bool fits_reel(const FlagTrigger& trigger) const {
    if (!trigger.kinds.empty() && !holds(trigger.kinds, record::word_of(record_.reel.kind)))
      return false;
    if (!trigger.brakes.empty() && !holds(trigger.brakes, record::word_of(record_.reel.brake)))
      return false;
    const auto& places = record_.places;
    if (!trigger.no_place.empty() &&
        std::any_of(places.begin(), places.end(), [&](const record::Place& one) {
          return holds(trigger.no_place, one.kind) &&
                 (trigger.says != Says::not_looked_for || is_filled(one));
        }))
      return false;
    if (!trigger.line.empty() &&
        (!visit_.care || !knowledge::has_phrase(visit_.care->line, trigger.line)))
      return false;
    if (trigger.no_line && visit_.care && !visit_.care->line.empty()) return false;
    if (trigger.custody_gap && !has_gap()) return false;
    return trigger.older_than == 0 || is_older_than(trigger.older_than);
  }

  /// A place of a list of which nobody entered anything is one to tick.
  [[nodiscard]] bool is_filled(const record::Place& place) const {
    return std::any_of(record_.fittings.begin(), record_.fittings.end(),
                       [&](const record::Fitting& one) { return one.place == place.id; });
  }

  [[nodiscard]] bool has_gap() const {
    return std::any_of(record_.custody.begin(), record_.custody.end(), [](const auto& step) {
      return std::holds_alternative<record::CustodyGap>(step);
    });
  }

  [[nodiscard]] bool is_older_than(int years) const {
    const auto now = visit_.taken_in.earliest();
    if (!now || !reel_.last) return false;
    base::Day then = *now;
    then.year -= years;
    return *reel_.last <= then;
  }

  [[nodiscard]] bool fits_piece(const FlagTrigger& trigger, const Piece& piece) const {
    if (trigger.content != (piece.role == record::PieceRole::content)) return false;
    if (!trigger.of.empty() && !is_of(piece, trigger.of)) return false;
    if (!trigger.not_of.empty() && is_only_of(piece, trigger.not_of)) return false;
    if (!trigger.named.empty() && !knowledge::has_phrase(piece.name, trigger.named)) return false;
    return sits_right(trigger, piece) && bears_fault(trigger, piece) && was_cleaned(trigger, piece);
  }

  [[nodiscard]] bool is_of(const Piece& piece, const Words& words) const {
    const auto& all = substances_.at(piece.id);
    return std::any_of(all.begin(), all.end(),
                       [&](const Substance* one) { return knowledge::names(words, *one); });
  }

  /// Whether all that its material names is of these: brass with a fibre lining is not.
  [[nodiscard]] bool is_only_of(const Piece& piece, const Words& words) const {
    // Of a lining that nobody knows, or of one in doubt, the rest may be.
    const knowledge::CareWords all = knowledge::care_words(table_, piece.material);
    const bool sure = knowledge::handled_in(table_, piece.material, "asbestos").empty() &&
                      piece.material.find('?') == std::string::npos &&
                      (all.left_over.empty() || is_make(all.left_over));
    return sure && !all.substances.empty() &&
           std::all_of(all.substances.begin(), all.substances.end(),
                       [&](const Substance* one) { return knowledge::names(words, *one); });
  }

  [[nodiscard]] bool sits_right(const FlagTrigger& trigger, const Piece& piece) const {
    if (trigger.places.empty() && !trigger.captive_spring) return true;
    return std::any_of(record_.fittings.begin(), record_.fittings.end(),
                       [&](const record::Fitting& fitting) {
                         const record::Place* place = find(record_, fitting.place);
                         if (fitting.piece != piece.id || place == nullptr) return false;
                         if (trigger.captive_spring && !place->captive_spring) return false;
                         return trigger.places.empty() || holds(trigger.places, place->kind);
                       });
  }

  [[nodiscard]] bool bears_fault(const FlagTrigger& trigger, const Piece& piece) const {
    const auto& faults = visit_.findings.faults;
    return trigger.faults.empty() ||
           std::any_of(faults.begin(), faults.end(), [&](const record::Fault& fault) {
             return fault.piece == piece.id && holds(trigger.faults, record::word_of(fault.kind));
           });
  }

  [[nodiscard]] bool was_cleaned(const FlagTrigger& trigger, const Piece& piece) const {
    if (trigger.methods.empty()) return true;
    return std::any_of(visit_.cleaning.begin(), visit_.cleaning.end(),
                       [&](const record::Cleaning& cleaning) {
                         if (!holds(cleaning.pieces, piece.id)) return false;
                         const auto all = knowledge::methods_in(table_, cleaning.method);
                         return std::any_of(all.begin(), all.end(), [&](const auto* method) {
                           return holds(trigger.methods, method->word);
                         });
                       });
  }

  [[nodiscard]] Made made_together(const std::vector<record::PieceId>& pieces) const {
    if (pieces.empty()) return reel_;
    std::optional<Made> all;
    for (const record::PieceId& id : pieces) {
      const Made one = made_of(record_, *find(record_, id), reel_);
      if (!all) {
        all = one;
        continue;
      }
      all->first = all->first && one.first ? std::min(all->first, one.first) : std::nullopt;
      all->last = all->last && one.last ? std::max(all->last, one.last) : std::nullopt;
    }
    return *all;
  }

  /// What the bench wrote of the same matter comes first; what it does not name is told beside it.
  void compare_with_bench(Flag& flag) const {
    const auto& flags = visit_.findings.flags;
    bool names_none = false;
    bool tested = !flag.rule->unseen;
    std::vector<record::PieceId> named;
    for (std::size_t i = 0; i < flags.size(); ++i) {
      if (!knowledge::has_phrase(flags[i].name, flag.rule->also)) continue;
      flag.written.push_back(i);
      names_none = names_none || flags[i].pieces.empty();
      named.insert(named.end(), flags[i].pieces.begin(), flags[i].pieces.end());
      tested = tested || knowledge::has_phrase(plain_text(record_, flags[i].what), table_.tested);
    }
    flag.needs_test = !flag.written.empty() && !tested;
    flag.in_care = visit_.care && is_in_advice(record_, *visit_.care, *flag.rule);
    const auto in = [&](const auto& one) {
      return one.caution && is_of_kind(record_, *one.caution, *flag.rule);
    };
    flag.in_work = std::any_of(visit_.cleaning.begin(), visit_.cleaning.end(), in) ||
                   std::any_of(visit_.work.begin(), visit_.work.end(), in);
    if (flag.says < Says::may_be || names_none) return;
    for (const record::PieceId& id : flag.pieces) {
      if (!holds(named, id)) flag.not_written.push_back(id);
    }
  }

  const record::Record& record_;
  const record::Visit& visit_;
  const CareTable& table_;
  const Made& reel_;
  std::map<record::PieceId, std::vector<const Substance*>> substances_;  ///< of its layers too
};

std::vector<Judged> judge_cleaning(const record::Record& record, const record::Visit& visit,
                                   const CareTable& table, const record::Cleaning& cleaning) {
  std::vector<Judged> judged;
  for (const record::PieceId& id : cleaning.pieces) {
    const Piece* piece = find(record, id);
    if (piece == nullptr) continue;
    auto one = judge(table, record, visit,
                     {*piece, cleaning.method, cleaning.minutes, {}, cleaning.pieces});
    std::move(one.begin(), one.end(), std::back_inserter(judged));
  }
  std::stable_sort(judged.begin(), judged.end(),
                   [](const Judged& a, const Judged& b) { return a.verdict > b.verdict; });
  return judged;
}

/// The pieces that a text is about: those it is told of, and those that it names.
std::vector<record::PieceId> spoken_of(const record::Record& record,
                                       const std::vector<record::PieceId>& pieces,
                                       std::string_view text) {
  std::vector<record::PieceId> all = pieces;
  for (const Piece& piece : record.pieces) {
    if (!holds(all, piece.id) && knowledge::mentions(text, piece.name)) all.push_back(piece.id);
  }
  return all;
}

/// Whether a text handles what may hold it and is none of the pieces of which the record says that
/// they do not: "the old lining", where only the washers were tested.
bool handles_another(const record::Record& record, const CareTable& table, const FlagRule& rule,
                     const Flag* flag, const std::vector<record::PieceId>& about,
                     std::string_view text) {
  const auto in_doubt = [&](const Piece& piece) {
    return flag != nullptr && (holds(flag->pieces, piece.id) || holds(flag->may_be, piece.id));
  };
  const auto heads = knowledge::handled_in(table, text, rule.word);
  const bool meant_is_known = std::none_of(
      about.begin(), about.end(), [&](const auto& id) { return in_doubt(*find(record, id)); });
  const bool unknown = std::any_of(heads.begin(), heads.end(), [&](const std::string& head) {
    const bool meant = std::any_of(about.begin(), about.end(), [&](const record::PieceId& id) {
      return knowledge::is_called(find(record, id)->name, head);
    });
    if (meant && meant_is_known) return false;
    bool known = false;
    for (const Piece& piece : record.pieces) {
      if (!knowledge::is_called(piece.name, head)) continue;
      if (in_doubt(piece)) return true;
      known = true;
    }
    return !known;
  });
  if (unknown) return true;
  const bool excluded = flag != nullptr && !flag->excluded.empty();
  return heads.empty() && about.empty() && !excluded && names_substance(table, text, rule);
}

/// What an act that makes dust would free of what no eye can see.
std::vector<Dust> dust_of(const record::Record& record, const CareTable& table,
                          const std::vector<Flag>& flags, const std::vector<record::PieceId>& about,
                          std::string_view text, const std::string& act) {
  std::vector<Dust> all;
  for (const FlagRule& rule : table.flags) {
    if (!rule.forbids_dust) continue;
    const Flag* flag = flag_of(flags, rule.word);
    Dust dust{&rule, {}, act};
    if (flag != nullptr && flag->says != Says::excluded) {
      std::copy_if(about.begin(), about.end(), std::back_inserter(dust.pieces),
                   [&](const record::PieceId& id) {
                     return holds(flag->pieces, id) || holds(flag->may_be, id);
                   });
    }
    if (!dust.pieces.empty() || handles_another(record, table, rule, flag, about, text))
      all.push_back(std::move(dust));
  }
  return all;
}

std::vector<std::string> families_of(const record::Record& record, const CareTable& table) {
  std::vector<std::string> families;
  const auto add = [&](const std::string& text) {
    for (const Substance* one : knowledge::substances_in(table, text)) {
      if (!holds(families, one->family)) families.push_back(one->family);
    }
  };
  for (const Piece& piece : record.pieces) {
    if (piece.now.kind != record::Whereabouts::Kind::fitted) continue;
    add(piece.material);
    for (const record::FinishLayer& layer : piece.finish)
      add(layer.what);
  }
  std::sort(families.begin(), families.end());
  return families;
}

}  // namespace

std::optional<Grounds> excluded_by(const Piece& piece, const FlagRule& rule) {
  if (!rule.unseen) return std::nullopt;
  for (const record::LaboratoryReport& report : piece.tested) {
    const bool numbered = report.number.find_first_of("0123456789") != std::string::npos;
    if (record::word_of(report.hazard) == rule.word && report.found == record::Looked::none &&
        numbered && base::says_something(report.laboratory))
      return Grounds{&report};
  }
  const bool new_here = piece.of_this_reel.answer != record::OfThisReel::yes;
  if (new_here && base::says_something(piece.supplier)) return Grounds{};
  return std::nullopt;
}

std::vector<Flag> flags(const record::Record& record, const record::Visit& visit,
                        const CareTable& table, const Made& reel) {
  std::vector<Flag> found;
  const Watch watch(record, visit, table, reel);
  for (const FlagRule& rule : table.flags) {
    if (auto flag = watch.raised(rule)) found.push_back(std::move(*flag));
  }
  return found;
}

Cautions cautions(const record::Record& record, const CareTable& table,
                  const std::vector<Flag>& flags, const std::vector<record::PieceId>& pieces,
                  std::string_view text) {
  Cautions asked;
  if (const std::string act = knowledge::dust_in(table, text); !act.empty())
    asked.dust = dust_of(record, table, flags, spoken_of(record, pieces, text), text, act);
  for (knowledge::AskedCaution& one : knowledge::cautions_in(table, text)) {
    const Flag* flag = flag_of(flags, one.hazard);
    const bool raised = flag != nullptr && flag->says != Says::excluded;
    const bool said = std::any_of(asked.dust.begin(), asked.dust.end(),
                                  [&](const Dust& dust) { return dust.rule->word == one.hazard; });
    if (one.hazard.empty() || (raised && !said)) asked.words.push_back(std::move(one.word));
  }
  return asked;
}

Finding assess(const record::Record& record, const record::Visit& visit, const CareTable& table,
               const Made& reel) {
  Finding finding;
  finding.flags = flags(record, visit, table, reel);
  for (const record::Cleaning& cleaning : visit.cleaning) {
    finding.cleanings.push_back(judge_cleaning(record, visit, table, cleaning));
    finding.cleaning_cautions.push_back(
        cautions(record, table, finding.flags, cleaning.pieces,
                 cleaning.method + ". " + plain_text(record, cleaning.what)));
  }
  for (const record::Work& work : visit.work) {
    finding.work_cautions.push_back(
        cautions(record, table, finding.flags, work.pieces, plain_text(record, work.what)));
  }
  for (const record::StripStep& step : visit.strip_down) {
    finding.step_cautions.push_back(
        cautions(record, table, finding.flags, step.pieces, plain_text(record, step.what)));
  }
  finding.families = families_of(record, table);
  return finding;
}

}  // namespace winchbook::assess::care
