#pragma once

#include <optional>
#include <span>
#include <string_view>

#include "record/record.h"

namespace winchbook::record {

/// A value of a closed list and its word in the file: small letters and hyphens, "worn-through".
/// The word is also the last part of its key in the message catalogues.
template <class Value> struct EnumWord {
  Value value;
  std::string_view word;
};

/// Every value of the list, in the order of the schema. The argument only chooses the list.
[[nodiscard]] std::span<const EnumWord<Certainty>> enum_words(Certainty);
[[nodiscard]] std::span<const EnumWord<ReelKind>> enum_words(ReelKind);
[[nodiscard]] std::span<const EnumWord<Brake>> enum_words(Brake);
[[nodiscard]] std::span<const EnumWord<Hand>> enum_words(Hand);
[[nodiscard]] std::span<const EnumWord<MakerStatement::Kind>> enum_words(MakerStatement::Kind);
[[nodiscard]] std::span<const EnumWord<NamedTo>> enum_words(NamedTo);
[[nodiscard]] std::span<const EnumWord<Reader>> enum_words(Reader);
[[nodiscard]] std::span<const EnumWord<Held>> enum_words(Held);
[[nodiscard]] std::span<const EnumWord<LifeEventKind>> enum_words(LifeEventKind);
[[nodiscard]] std::span<const EnumWord<FinishBy>> enum_words(FinishBy);
[[nodiscard]] std::span<const EnumWord<MadeBy>> enum_words(MadeBy);
[[nodiscard]] std::span<const EnumWord<BornHere>> enum_words(BornHere);
[[nodiscard]] std::span<const EnumWord<Pattern>> enum_words(Pattern);
[[nodiscard]] std::span<const EnumWord<PieceRole>> enum_words(PieceRole);
[[nodiscard]] std::span<const EnumWord<Whereabouts::Kind>> enum_words(Whereabouts::Kind);
[[nodiscard]] std::span<const EnumWord<MarkMethod>> enum_words(MarkMethod);
[[nodiscard]] std::span<const EnumWord<MarkOf>> enum_words(MarkOf);
[[nodiscard]] std::span<const EnumWord<MarkState>> enum_words(MarkState);
[[nodiscard]] std::span<const EnumWord<Legibility>> enum_words(Legibility);
[[nodiscard]] std::span<const EnumWord<EndFirmness>> enum_words(EndFirmness);
[[nodiscard]] std::span<const EnumWord<Stage>> enum_words(Stage);
[[nodiscard]] std::span<const EnumWord<Use>> enum_words(Use);
[[nodiscard]] std::span<const EnumWord<Matter>> enum_words(Matter);
[[nodiscard]] std::span<const EnumWord<Presence>> enum_words(Presence);
[[nodiscard]] std::span<const EnumWord<Filled>> enum_words(Filled);
[[nodiscard]] std::span<const EnumWord<SurfaceState>> enum_words(SurfaceState);
[[nodiscard]] std::span<const EnumWord<FaultKind>> enum_words(FaultKind);
[[nodiscard]] std::span<const EnumWord<Severity>> enum_words(Severity);
[[nodiscard]] std::span<const EnumWord<Verdict>> enum_words(Verdict);
[[nodiscard]] std::span<const EnumWord<TestResult::Kind>> enum_words(TestResult::Kind);
[[nodiscard]] std::span<const EnumWord<Flag::Kind>> enum_words(Flag::Kind);
[[nodiscard]] std::span<const EnumWord<Course>> enum_words(Course);
[[nodiscard]] std::span<const EnumWord<Keyed>> enum_words(Keyed);
[[nodiscard]] std::span<const EnumWord<SaleKind>> enum_words(SaleKind);

/// The word of a value.
template <class Value> [[nodiscard]] std::string_view word_of(Value value) {
  for (const auto& one : enum_words(value)) {
    if (one.value == value) return one.word;
  }
  return {};
}

/// The value of a word, or nothing.
template <class Value> [[nodiscard]] std::optional<Value> value_of(std::string_view word) {
  for (const auto& one : enum_words(Value{})) {
    if (one.word == word) return one.value;
  }
  return std::nullopt;
}

}  // namespace winchbook::record
