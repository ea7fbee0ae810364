#include "cli/place.h"

#include <system_error>

namespace winchbook::cli {

std::filesystem::path data_folder(const char* set) {
  return set != nullptr && *set != '\0' ? std::filesystem::path(set)
                                        : std::filesystem::path(WINCHBOOK_DATA_DIR);
}

std::filesystem::path picture_program() {
  std::error_code code;
  const std::filesystem::path here = std::filesystem::read_symlink("/proc/self/exe", code);
  return here.parent_path() / "winchbook-picture";
}

std::filesystem::path colour_profile() {
  return "/usr/share/color/icc/sRGB.icc";
}

std::string version() {
  return WINCHBOOK_VERSION;
}

}  // namespace winchbook::cli
