#include "recordfile/fuzz_read.h"

#include <string>
#include <string_view>

#include "base/files.h"
#include "recordfile/record_file.h"

using namespace winchbook;  // NOLINT

namespace {

const xml::Schema& schema() {
  static const auto kSchema =
      recordfile::load_schema(base::RealFiles(), WINCHBOOK_SOURCE_DIR "/schemas");
  return *kSchema;
}

}  // namespace

// With clang: -fsanitize=fuzzer,address, linked with the room and without the test's main program.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  std::string bytes;
  bytes.reserve(size);
  for (std::size_t i = 0; i < size; ++i)
    bytes += static_cast<char>(data[i]);
  const auto read = recordfile::read_bytes("record.xml", std::move(bytes), schema());
  const base::Diagnostics& said = read ? read->warnings : read.faults();
  // Whatever it is, it is told with its line and without a control character of its own.
  for (const base::Diagnostic& one : said) {
    if (one.message.empty() || one.where.file.empty()) __builtin_trap();
  }
  if (!read && !base::has_error(said)) __builtin_trap();
  return 0;
}
