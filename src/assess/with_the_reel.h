#pragma once

#include <optional>
#include <vector>

#include "record/record.h"

/// Who and what belongs to the reel besides its parts.
namespace winchbook::assess {

/// Whether a piece is still with the reel, or may be: not lost, scrapped or kept by the bench.
[[nodiscard]] bool is_with_reel(const record::Piece& piece);

/// Line, box, papers, pouch, a spare spool: what came with the reel to a visit, and not what the
/// bench put with it or what was gone before.
[[nodiscard]] std::vector<const record::Piece*> came_with_it(const record::Record& record,
                                                             const record::Visit& visit);

/// Who owned it in this stay: as the stay says, else by the custody. Empty when nobody is known to.
[[nodiscard]] std::optional<record::PersonId> owner_of(const record::Record& record,
                                                       const record::Visit& visit);

/// For whom the documents of this stay are written: who got it back, else its owner, else who
/// brought it. Empty when nobody of these is known.
[[nodiscard]] std::optional<record::PersonId> client_of(const record::Record& record,
                                                        const record::Visit& visit);

/// Who owns it by the custody: the last holder whose time has no end and who does not merely keep
/// it. Empty when nobody is known to.
[[nodiscard]] std::optional<record::PersonId> owner_now(const record::Record& record);

}  // namespace winchbook::assess
