#pragma once

#include <filesystem>

#include "answers/telling.h"
#include "assess/tray/tray.h"
#include "forms/job.h"

namespace winchbook::answers {

/// Whose tray is asked for.
struct TrayRequest {
  std::filesystem::path path;  ///< the reel's folder, or its record.xml
  bool json = false;
};

/// The tray of a visit as a list: what is off, what is back, what is unaccounted, and places not
/// filled.
[[nodiscard]] Blocks tray_told(const assess::tray::Account& account, const words::Catalogue& words);

/// The same as JSON that keeps schemas/tray.schema.json.
[[nodiscard]] std::string tray_as_json(const assess::tray::Account& account);

/// Tells the tray of the last visit. Error: there is none.
[[nodiscard]] forms::Job tray_job();

}  // namespace winchbook::answers
