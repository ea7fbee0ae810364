#include "library/lock.h"

namespace winchbook::library {

base::Result<std::unique_ptr<base::HeldLock>> lock_reel(const World& world,
                                                        const std::filesystem::path& folder,
                                                        std::string_view command) {
  return world.files.lock(folder / ".lock", command);
}

}  // namespace winchbook::library
