#pragma once

#include <filesystem>
#include <string>

namespace winchbook::cli {

/// The folder with schemas/, report-templates/ and shared/: what `set` says, or where this program
/// was built from. `set` may be null.
[[nodiscard]] std::filesystem::path data_folder(const char* set);
/// The program that reads cameras' files: winchbook-picture in the folder of this program.
[[nodiscard]] std::filesystem::path picture_program();
/// Where Debian keeps the sRGB profile that every PDF carries.
[[nodiscard]] std::filesystem::path colour_profile();
/// "0.1.0".
[[nodiscard]] std::string version();

}  // namespace winchbook::cli
