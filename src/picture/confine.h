#pragma once

#include <cstddef>

namespace winchbook::picture {

/// What this program may use, whatever the file it was given says: decoders of strangers' files
/// break, and a broken one can do what its process can. Set before a byte of it is looked at.
inline constexpr std::size_t kMostMemory = std::size_t{2} << 30U;
inline constexpr std::size_t kMostWritten = std::size_t{64} << 20U;
inline constexpr int kMostSeconds = 40;  ///< of the processor

/// Limits memory, processor time and what is written (setrlimit(2)); this process ends with whoever
/// started it. Not under AddressSanitizer, which needs more address space than that.
void confine_resources();

/// From here on the kernel refuses every call but those to compute and to write to what is open
/// (seccomp(2)): no file can be opened, renamed or taken away, no connection made, nothing run. A
/// kernel without seccomp leaves the limits above.
void confine_calls();

}  // namespace winchbook::picture
