#include "cli/place.h"

namespace winchbook::cli {

std::filesystem::path data_folder(const char* set) {
  return set != nullptr && *set != '\0' ? std::filesystem::path(set)
                                        : std::filesystem::path(WINCHBOOK_DATA_DIR);
}

std::string version() {
  return WINCHBOOK_VERSION;
}

}  // namespace winchbook::cli
