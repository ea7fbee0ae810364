#pragma once

#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/edtf_date.h"
#include "base/enum_words.h"
#include "base/result.h"
#include "knowledge/source.h"

namespace winchbook::knowledge {

using base::word_of;

/// What the table says of a method on a material, the mildest first: a worse one outranks it.
enum class CareVerdict {
  usual,      ///< benches do it, and nothing was read against it
  with_care,  ///< with what the reason says in mind
  not_known,  ///< nobody wrote it down: try it on a hidden place
  harms,      ///< it takes something away that does not come back
  never,      ///< it ruins the piece, or hurts whoever does it
};

[[nodiscard]] constexpr auto enum_words(CareVerdict /*list*/) {
  return std::to_array<base::EnumWord<CareVerdict>>({
      {CareVerdict::usual, "usual"},
      {CareVerdict::with_care, "with-care"},
      {CareVerdict::not_known, "not-known"},
      {CareVerdict::harms, "harms"},
      {CareVerdict::never, "never"},
  });
}

/// How a fact came to the table.
enum class CareGrounds { read, recalled, common_practice };

[[nodiscard]] constexpr auto enum_words(CareGrounds /*list*/) {
  return std::to_array<base::EnumWord<CareGrounds>>({
      {CareGrounds::read, "read"},
      {CareGrounds::recalled, "recalled"},
      {CareGrounds::common_practice, "practice"},
  });
}

/// Of what a thing, or a layer on it, is: "hard-rubber", "nickel-plate".
struct Substance {
  enum class Layer {
    no,
    part,   ///< may lie on a part only, as paint in letters does
    whole,  ///< closes over what is below it, as a plate does
  };
  std::string word;
  std::string name;    ///< "hard rubber"
  std::string family;  ///< rows may speak of a whole family: "copper-alloy"
  Layer layer = Layer::no;
  std::string
      imitated_by;  ///< word of the substance that an imitation of it is taken for; or empty
  std::vector<std::string> forms;  ///< phrases by which it is known, folded (stamp_text.h)
  bool hazard = false;             ///< a flag that no eye can exclude names it
};

/// Words beside a material that make something else of it.
struct Qualifier {
  enum class Kind {
    likeness,  ///< "imitation ivory"
    absence,   ///< "asbestos-free", "no lead"
    colour,    ///< "ivory paint"
    other,     ///< "wood screw": its phrases name no material and no work
  };
  Kind kind = Kind::likeness;
  std::vector<std::string> before;  ///< phrases before the material, folded
  std::vector<std::string> after;   ///< phrases behind it, folded
  std::vector<std::string> forms;   ///< whole phrases, folded
};

[[nodiscard]] constexpr auto enum_words(Qualifier::Kind /*list*/) {
  return std::to_array<base::EnumWord<Qualifier::Kind>>({
      {Qualifier::Kind::likeness, "likeness"},
      {Qualifier::Kind::absence, "absence"},
      {Qualifier::Kind::colour, "colour"},
      {Qualifier::Kind::other, "other"},
  });
}

[[nodiscard]] constexpr auto enum_words(Substance::Layer /*list*/) {
  return std::to_array<base::EnumWord<Substance::Layer>>({
      {Substance::Layer::no, "no"},
      {Substance::Layer::part, "part"},
      {Substance::Layer::whole, "whole"},
  });
}

/// A way to clean, as the bench says it.
struct CareMethod {
  enum class Reach {
    outside,  ///< touches what lies outermost: a polish, a wax
    through,  ///< gets into pores and under edges: water, spirit, heat
  };
  std::string word;  ///< "ultrasonic"
  std::string name;  ///< "ultrasonic bath"
  Reach reach = Reach::through;
  bool bath = false;       ///< the piece goes in whole: what is captive or joined to it goes too
  bool flammable = false;  ///< what it is done with burns
  bool dust = false;       ///< raises dust from what is dry
  int most_minutes = 0;    ///< 0: no longest time is told
  int most_heat = 0;       ///< in degrees Celsius; 0: none is told
  std::string caution;  ///< the caution that stands beside it: "caution.WORD.label"; may be empty
  std::string advice;   ///< what to mind whatever the material, in a sentence; may be empty
  std::vector<std::string> forms;  ///< folded
};

[[nodiscard]] constexpr auto enum_words(CareMethod::Reach /*list*/) {
  return std::to_array<base::EnumWord<CareMethod::Reach>>({
      {CareMethod::Reach::outside, "outside"},
      {CareMethod::Reach::through, "through"},
  });
}

/// One row: these methods on these substances or families.
struct CareRow {
  std::vector<std::string> on;  ///< words of substances or families; "any" is every one
  std::vector<std::string> methods;
  std::vector<std::string> with;    ///< only where another piece in the bath is of these; or empty
  std::vector<std::string> beside;  ///< only where one of these methods is used too; or empty
  int most_minutes = 0;             ///< on these, where it is less than the method's; or 0
  int most_heat = 0;                ///< the same, in degrees Celsius
  CareVerdict verdict = CareVerdict::not_known;
  std::string reason;  ///< a sentence
  std::string source;  ///< where it was read; "common practice"
  CareGrounds grounds = CareGrounds::common_practice;
};

/// Work that can hurt whoever does it, as the bench tells it.
struct Act {
  std::string word;                ///< "soft-solder"
  std::string name;                ///< "soft soldering"
  std::string caution;             ///< what stands beside it: "caution.WORD.label"
  bool dust = false;               ///< raises dust from what is dry
  std::string hazard;              ///< word of the flag of what it handles: "asbestos"; or empty
  std::vector<std::string> forms;  ///< folded
  std::string source;
  CareGrounds grounds = CareGrounds::common_practice;
};

/// What must hold of a piece, or of the reel, for a flag to be raised; what is empty asks nothing.
struct FlagTrigger {
  /// How much the record says: that it is excluded (by a laboratory, or as new material), that
  /// nobody looked, that it may be, that it is so. The more outranks the less. No rule says
  /// "excluded" by itself: no eye can.
  enum class Says { excluded, not_looked_for, may_be, is };
  Says says = Says::may_be;
  std::vector<std::string> of;      ///< words of substances or families of the piece or its layers
  std::vector<std::string> not_of;  ///< none of these may be known of it
  std::vector<std::string> places;  ///< kinds of place it sits in, or sat in
  std::vector<std::string> no_place;  ///< the reel has no place of these kinds
  std::vector<std::string> named;     ///< phrases in its name, folded
  std::vector<std::string> faults;    ///< kinds of fault that it bears
  std::vector<std::string> methods;   ///< it was cleaned so
  std::vector<std::string> kinds;     ///< of reel
  std::vector<std::string> brakes;
  std::vector<std::string> line;         ///< phrases in the advice on the line, folded
  bool no_line = false;                  ///< no advice on the line is written
  bool content = false;                  ///< it came with the reel and is no part of it
  bool captive_spring = false;           ///< a spring under load sits in its place
  bool custody_gap = false;              ///< nobody knows who had it for a while
  int older_than = 0;                    ///< years it certainly has at the visit; 0 asks nothing
  std::optional<base::Day> made_before;  ///< it may be older than this day
  std::optional<base::Day> made_after;   ///< it may be younger than this day
};

[[nodiscard]] constexpr auto enum_words(FlagTrigger::Says /*list*/) {
  return std::to_array<base::EnumWord<FlagTrigger::Says>>({
      {FlagTrigger::Says::excluded, "excluded"},
      {FlagTrigger::Says::not_looked_for, "not-looked-for"},
      {FlagTrigger::Says::may_be, "may-be"},
      {FlagTrigger::Says::is, "is"},
  });
}

/// Where a flag matters.
enum class Matters {
  use,   ///< on the water
  keep,  ///< on the shelf
  open,  ///< under the screwdriver
  deal,  ///< when it is sold, sent or insured
  hand,  ///< when it goes over the counter
};

[[nodiscard]] constexpr auto enum_words(Matters /*list*/) {
  return std::to_array<base::EnumWord<Matters>>({
      {Matters::use, "use"},
      {Matters::keep, "keep"},
      {Matters::open, "open"},
      {Matters::deal, "deal"},
      {Matters::hand, "hand"},
  });
}

/// A hazard or a legal trap that follows from a record.
struct FlagRule {
  std::string word;  ///< "asbestos": its messages are "flag.WORD.name" and "flag.WORD.is" …
  bool legal = false;
  std::vector<Matters> matters;
  std::vector<std::string> also;  ///< phrases by which the bench's own words speak of it, folded
  bool unseen = false;            ///< no eye can exclude it: a laboratory, or new material
  bool forbids_dust = false;      ///< where it is raised, work that makes dust of it is refused
  std::optional<base::Day> law_date;  ///< what was made before it may be exempt
  std::string source;
  CareGrounds grounds = CareGrounds::recalled;
  std::vector<FlagTrigger> triggers;  ///< the first that fits a piece counts
};

/// `shared/care/`: how to clean what, what can hurt, and what to beware of.
struct CareTable {
  std::vector<Qualifier> qualifiers;
  std::vector<Substance> substances;
  std::vector<CareMethod> methods;
  std::vector<CareRow> rows;
  std::vector<Act> acts;
  std::vector<FlagRule> flags;
  std::vector<std::string> tested;  ///< phrases by which a bench's flag says that it was tested
};

/// The row that speaks of a substance and a method by themselves: one that names the substance,
/// else its family, else "any"; of several, the worst. Null: not known.
[[nodiscard]] const CareRow* find_row(const CareTable& table, const Substance& substance,
                                      const CareMethod& method);
/// Whether a row speaks of them at all.
[[nodiscard]] bool speaks_of(const CareRow& row, const Substance& substance,
                             const CareMethod& method);
/// Whether a list names a substance, by its word or its family.
[[nodiscard]] bool names(const std::vector<std::string>& words, const Substance& substance);

[[nodiscard]] const Substance* find_substance(const CareTable& table, std::string_view word);
[[nodiscard]] const CareMethod* find_method(const CareTable& table, std::string_view word);

/// Every substance that a text names, in its order; the longest phrase wins: "nickel silver" is no
/// nickel. "Bronze, brass and steel" names three, and so does a word of two, "corkleather", name
/// two. What is denied ("asbestos-free", "no lead") or tells a colour ("ivory paint") is not named;
/// a likeness ("faux ivory") is what it is imitated by, where that is known.
[[nodiscard]] std::vector<const Substance*> substances_in(const CareTable& table,
                                                          std::string_view text);
/// Every method that a text names. What follows "no", "not", "never" or "without" was not done.
[[nodiscard]] std::vector<const CareMethod*> methods_in(const CareTable& table,
                                                        std::string_view text);
/// Every act that a text tells, with the same denials.
[[nodiscard]] std::vector<const Act*> acts_in(const CareTable& table, std::string_view text);
/// What a text handles that may hold a hazard, by the last word of its name in the singular:
/// "WASHER", "LINING".
[[nodiscard]] std::vector<std::string> handled_in(const CareTable& table, std::string_view text,
                                                  std::string_view hazard);
/// Whether a flag of the table is raised by a substance alone: work on it can hurt somebody.
[[nodiscard]] bool is_hazardous(const CareTable& table, const Substance& substance);
/// Whether a name has that word, in the singular or the plural.
[[nodiscard]] bool is_called(std::string_view name, std::string_view head);
/// The first method or act of a text that raises dust, by its name; empty: none does.
[[nodiscard]] std::string dust_in(const CareTable& table, std::string_view text);
/// A caution that a method or an act asks for.
struct AskedCaution {
  std::string word;    ///< "solvent"
  std::string hazard;  ///< it is asked for only where this flag is raised; empty: always
};
/// The cautions that a text asks for, each once, in its order.
[[nodiscard]] std::vector<AskedCaution> cautions_in(const CareTable& table, std::string_view text);
/// The substance that a word nobody knows is likely to mean ("abestos"): one letter off, or two in
/// a long word. Null when there is none.
[[nodiscard]] const Substance* meant_in(const CareTable& table, std::string_view text);
/// Both in one text, "steel wool on nickel plate": of two phrases that begin at one word the longer
/// counts.
struct CareWords {
  std::vector<const Substance*> substances;
  std::vector<const CareMethod*> methods;
  std::string left_over;  ///< what is neither, as it was typed: "EDTA"
};
[[nodiscard]] CareWords care_words(const CareTable& table, std::string_view text);
/// Whether the words of a name stand in the text, whatever their capitals.
[[nodiscard]] bool mentions(std::string_view text, std::string_view name);
/// Whether one of the phrases stands in the text.
[[nodiscard]] bool has_phrase(std::string_view text, const std::vector<std::string>& phrases);

/// Reads `care.xml`, `acts.xml` and `flags.xml` of `shared/care/`, validated by
/// `schemas/knowledge-1.xsd`. Errors: a row that names a substance, family or method that the table
/// does not have; a name that stands at two rows.
[[nodiscard]] base::Result<CareTable> load_care(const Source& source);

}  // namespace winchbook::knowledge
