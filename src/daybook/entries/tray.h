#pragma once

#include <string>
#include <vector>

#include "assess/tray/tray.h"
#include "base/edtf_date.h"
#include "daybook/edit.h"

namespace winchbook::daybook {

/// Where parts went. Each list names parts, with how many behind a colon where not all: "screws:
/// 3".
struct TrayRequest {
  base::Day on;
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
[[nodiscard]] Change tray(TrayRequest request);

/// The tray of the last visit as a list: what is off, what is back, what is unaccounted, and places
/// not filled. Ends with a line break.
[[nodiscard]] std::string tray_in_words(const assess::tray::Account& account);

/// Ends the fitting of a piece that left the reel in this visit, and says where it is now.
void take_out(Draft& draft, const record::Visit& visit, const record::Piece& piece, base::Day on,
              const char* where, const std::string& bag, const std::string& leave);

/// Whether a piece may leave the reel: an error when it must stay by an agreement or its life, and
/// no agreement that lets it go is named. `agreed` is as it was typed; the agreement's id comes
/// back (empty when none was needed).
[[nodiscard]] base::Result<std::string> leave_for(const record::Record& record,
                                                  const record::Visit& visit,
                                                  const record::Piece& piece,
                                                  const std::string& agreed);

}  // namespace winchbook::daybook
