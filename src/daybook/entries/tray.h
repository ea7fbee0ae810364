#pragma once

#include <string>
#include <vector>

#include "daybook/entry.h"

namespace winchbook::daybook {

/// Where parts went. Each list names parts, with how many behind a colon where not all: "screws:
/// 3".
struct TrayRequest : Entry {
  std::vector<std::string> off;  ///< came off, without a step of its own
  std::vector<std::string> refitted;
  bool refit_all = false;  ///< everything that is off and nowhere else
  std::vector<std::string> found_loose;
  std::vector<std::string> bagged;
  std::string bag;  ///< the label, for `bagged`
  std::vector<std::string> to_owner;
  std::vector<std::string> kept;
  std::vector<std::string> lost;
  std::vector<std::string> scrapped;
  std::string agreed;  ///< the agreement that lets them be kept or scrapped
};

/// Enters where parts of the tray went; a part that leaves the reel for good is taken out of its
/// place. Errors: more goes than came; keeping or scrapping without leave.
[[nodiscard]] base::Result<Said> tray(const TrayRequest& request, Draft& draft);

[[nodiscard]] forms::Job tray_job();

/// Ends the fitting of a piece that left the reel in this visit, on the day since when it is where
/// it is now.
void take_out(record::Record& record, const record::VisitId& visit, const record::PieceId& piece,
              const record::Whereabouts& now);

/// Whether a piece may leave the reel: an error when it must stay by an agreement or its life, and
/// no agreement that lets it go is named. `agreed` is as it was typed; the agreement that it names
/// comes back.
[[nodiscard]] base::Result<std::optional<record::AgreementId>> leave_for(
    const record::Record& record, const record::Visit& visit, const record::Piece& piece,
    const std::string& agreed);

}  // namespace winchbook::daybook
