#pragma once

#include <span>

#include "base/enum_words.h"
#include "record/record.h"

namespace winchbook::record {

using base::EnumWord;
using base::value_of;
using base::word_of;

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
[[nodiscard]] std::span<const EnumWord<OfThisReel>> enum_words(OfThisReel);
[[nodiscard]] std::span<const EnumWord<Pattern>> enum_words(Pattern);
[[nodiscard]] std::span<const EnumWord<PieceRole>> enum_words(PieceRole);
[[nodiscard]] std::span<const EnumWord<Hazard>> enum_words(Hazard);
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
[[nodiscard]] std::span<const EnumWord<FaultLeft>> enum_words(FaultLeft);
[[nodiscard]] std::span<const EnumWord<LookedFor>> enum_words(LookedFor);
[[nodiscard]] std::span<const EnumWord<Looked>> enum_words(Looked);
[[nodiscard]] std::span<const EnumWord<Verdict>> enum_words(Verdict);
[[nodiscard]] std::span<const EnumWord<TestResult::Kind>> enum_words(TestResult::Kind);
[[nodiscard]] std::span<const EnumWord<Flag::Kind>> enum_words(Flag::Kind);
[[nodiscard]] std::span<const EnumWord<Course>> enum_words(Course);
[[nodiscard]] std::span<const EnumWord<Keyed>> enum_words(Keyed);
[[nodiscard]] std::span<const EnumWord<SaleKind>> enum_words(SaleKind);

}  // namespace winchbook::record
