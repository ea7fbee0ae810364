#include "daybook/history.h"

#include <fmt/format.h>

#include <charconv>
#include <cstdint>

#include "seal/digest.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;

constexpr std::uintmax_t kMostBytes = std::uintmax_t{64} << 20U;
constexpr std::string_view kWrote = "wrote sha256 ";

fs::path file_of(const fs::path& folder, int number, const char* ending) {
  return folder / ".history" / fmt::format("{:04}.{}", number, ending);
}

/// 12 for "0012.xml", 0 for anything else.
int number_of(std::string_view name) {
  int number = 0;
  const auto [end, fault] = std::from_chars(name.data(), name.data() + name.size(), number);
  const std::string_view rest(end, static_cast<std::size_t>(name.data() + name.size() - end));
  return fault == std::errc() && rest == ".xml" ? number : 0;
}

Version version_of(const base::Files& files, const fs::path& folder, int number) {
  Version version{number, {}, {}};
  const auto text = files.read(file_of(folder, number, "txt"), kMostBytes);
  if (!text) return version;
  version.command = text->substr(0, text->find('\n'));
  const std::size_t at = text->find(kWrote);
  if (at != std::string::npos) version.sha256 = text->substr(at + kWrote.size(), 64);
  return version;
}

}  // namespace

std::vector<Version> versions(const base::Files& files, const fs::path& folder) {
  std::vector<Version> all;
  for (const std::string& name : files.names_in(folder / ".history")) {
    if (const int number = number_of(name)) all.push_back(version_of(files, folder, number));
  }
  return all;
}

base::Result<std::string> version_before(const base::Files& files, const fs::path& folder,
                                         int number) {
  return files.read(file_of(folder, number, "xml"), kMostBytes);
}

base::Diagnostics keep_version(base::Files& files, const fs::path& folder, std::string_view before,
                               std::string_view command, std::string_view after) {
  if (auto faults = files.make_folder(folder / ".history"); base::has_error(faults)) return faults;
  int last = 0;
  for (const std::string& name : files.names_in(folder / ".history"))
    last = std::max(last, number_of(name));
  int number = last + 1;
  if (last > 0) {
    const auto kept = version_before(files, folder, last);
    if (kept && *kept == before) number = last;
  }
  const std::string text =
      fmt::format("{}\n{}{}\n", command, kWrote, seal::hex(seal::fingerprint(after)));
  if (auto faults = files.write_aside(file_of(folder, number, "txt"), text);
      base::has_error(faults)) {
    return faults;
  }
  return files.write_aside(file_of(folder, number, "xml"), before);
}

}  // namespace winchbook::daybook
