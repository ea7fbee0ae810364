#pragma once

#include <compare>
#include <string>

namespace winchbook::record {

/// A name by which one thing of the record points at another. The tag keeps a person's id from
/// being taken for a piece's. Unique among all ids of the record.
template <class Tag> struct Id {
  std::string text;

  [[nodiscard]] bool empty() const { return text.empty(); }
  friend auto operator<=>(const Id&, const Id&) = default;
};

using PersonId = Id<struct PersonTag>;
using PlaceId = Id<struct PlaceTag>;
using PieceId = Id<struct PieceTag>;
using DonorId = Id<struct DonorTag>;
using FittingId = Id<struct FittingTag>;
using MarkingId = Id<struct MarkingTag>;
using LifeEventId = Id<struct LifeEventTag>;
using CustodyId = Id<struct CustodyTag>;
using VisitId = Id<struct VisitTag>;
using AgreementId = Id<struct AgreementTag>;
using FaultId = Id<struct FaultTag>;
using StepId = Id<struct StepTag>;
using PhotoId = Id<struct PhotoTag>;
using SaleId = Id<struct SaleTag>;

}  // namespace winchbook::record
