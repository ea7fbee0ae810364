// winchbook-picture: a camera's file on its standard input, the JPEG to print on its standard
// output, what there is to say of it in lines on its standard error (photo/print_answer.h). Exit
// code 0 when there is a JPEG, 1 when the photograph is refused.

#include <unistd.h>

#include <cerrno>
#include <exception>
#include <new>
#include <string>
#include <string_view>

#include "photo/print_answer.h"
#include "picture/confine.h"
#include "picture/prepare.h"
#include "picture/raster.h"

namespace {

namespace picture = winchbook::picture;
namespace photo = winchbook::photo;

constexpr int kFine = 0;
constexpr int kRefused = 1;
constexpr int kCannotAnswer = 3;

/// Everything on the standard input; more than is allowed when it is too long.
bool read_all(std::string& bytes) {
  constexpr std::size_t kAtOnce = std::size_t{1} << 20U;
  while (bytes.size() <= photo::kMostCameraBytes) {
    const std::size_t there = bytes.size();
    bytes.resize(there + kAtOnce);
    const ssize_t count = ::read(STDIN_FILENO, bytes.data() + there, kAtOnce);
    if (count < 0 && errno != EINTR) return false;
    bytes.resize(there + (count > 0 ? static_cast<std::size_t>(count) : 0));
    if (count == 0) break;
  }
  return true;
}

bool write_all(int descriptor, std::string_view bytes) {
  while (!bytes.empty()) {
    const ssize_t count = ::write(descriptor, bytes.data(), bytes.size());
    if (count < 0 && errno == EINTR) continue;
    if (count <= 0) return false;
    bytes.remove_prefix(static_cast<std::size_t>(count));
  }
  return true;
}

int refuse(const winchbook::base::Diagnostics& faults) {
  return write_all(STDERR_FILENO, photo::written(faults)) ? kRefused : kCannotAnswer;
}

int run() {
  std::string bytes;
  if (!read_all(bytes)) return refuse({picture::damaged("it cannot be read")});
  picture::confine_calls();
  if (bytes.size() > photo::kMostCameraBytes) {
    return refuse({picture::refuse(
        "is longer than " + std::to_string(photo::kMostCameraBytes >> 20U) + " MB",
        "save it smaller: 2000 pixels on the longer side print well", "photo-large")});
  }
  const auto prepared = picture::prepare(bytes);
  if (!prepared) return refuse(prepared.faults());
  const bool told = write_all(STDERR_FILENO, photo::written(prepared->answer)) &&
                    write_all(STDOUT_FILENO, prepared->jpeg);
  return told ? kFine : kCannotAnswer;
}

}  // namespace

int main() {
  picture::confine_resources();
  try {
    return run();
  } catch (const std::bad_alloc&) {
    return refuse({picture::fault_of_decoder("no memory")});
  } catch (const std::exception& fault) {
    return refuse({picture::damaged(fault.what())});
  }
}
