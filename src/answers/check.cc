#include "answers/check.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>
#include <utility>

#include "answers/assessed.h"
#include "json/json.h"
#include "library/photographs.h"
#include "photo/jpeg.h"
#include "photo/print_size.h"
#include "recordfile/record_file.h"
#include "seal/digest.h"

namespace winchbook::answers {
namespace {

namespace fs = std::filesystem;
using base::Diagnostic;
using base::Diagnostics;

void compare(const record::Photo& photo, const photo::JpegFacts& facts, const std::string& bytes,
             Diagnostics& found) {
  if (facts.width != photo.width || facts.height != photo.height) {
    found.push_back(
        base::error(fmt::format("photograph \"{}\" is {} × {} pixels, and the record says {} × {}",
                                photo.file, facts.width, facts.height, photo.width, photo.height),
                    "put the right file back, or correct <width> and <height>", "photo-pixels"));
  }
  const std::string digest = seal::hex(seal::fingerprint(bytes));
  if (digest != photo.sha256) {
    found.push_back(base::error(
        fmt::format("photograph \"{}\" has changed since it was recorded", photo.file),
        fmt::format("put the right file back; if this one is right, its SHA-256 is {}", digest),
        "photo-changed"));
  }
  if (facts.tells_where_taken) {
    found.push_back({base::Severity::warning,
                     {},
                     fmt::format("photograph \"{}\" tells where it was taken (GPS)", photo.file),
                     "take the camera's data out before it is given to anyone",
                     "photo-gps"});
  }
}

void check_original(const base::Files& files, const fs::path& folder, const record::Photo& photo,
                    Diagnostics& found) {
  if (!photo.original) return;
  const fs::path path = folder / photo.original->file;
  if (!files.exists(path)) {
    found.push_back({base::Severity::warning,
                     {},
                     fmt::format("the original \"{}\" is not here", photo.original->file),
                     "nothing is lost for printing; find it before the medium it is on is gone",
                     "photo-original"});
    return;
  }
  const auto bytes = files.read(path, photo::kMostCameraBytes);
  if (bytes && seal::hex(seal::fingerprint(*bytes)) == photo.original->sha256) return;
  found.push_back(
      {base::Severity::warning,
       {},
       fmt::format("the original \"{}\" has changed since it was recorded", photo.original->file),
       "nothing is lost for printing; bring it back from the camera or the backup",
       "photo-original"});
}

/// One photograph against the record. Errors and warnings without a place.
Diagnostics check_photograph(const base::Files& files, const fs::path& folder,
                             const record::Photo& photo) {
  Diagnostics found;
  if (photo.withheld) return found;
  if (auto fault = library::fault_of_place(files, folder, photo.file)) return {*fault};
  const auto bytes = files.read(folder / photo.file, photo::kMostBytes);
  if (!bytes) return bytes.faults();
  auto facts = photo::decode(*bytes);
  if (facts) {
    compare(photo, *facts, *bytes, found);
  } else {
    Diagnostic fault = facts.faults().front();
    constexpr std::string_view kUnnamed = "the photograph";
    if (fault.message.starts_with(kUnnamed)) {
      fault.message.replace(0, kUnnamed.size(), fmt::format("photograph \"{}\"", photo.file));
    }
    found.push_back(std::move(fault));
  }
  check_original(files, folder, photo, found);
  return found;
}

std::string counted(std::size_t number, const char* one) {
  return fmt::format("{} {}{}", number, one, number == 1 ? "" : "s");
}

struct CheckRequest {
  fs::path path;
  bool json = false;
};

forms::Form form(CheckRequest& request) {
  return {forms::field("PATH", "the reel's folder, or its record.xml", request.path).must(),
          forms::flag("--json", "what is found as JSON (schemas/check.schema.json)", request.json)};
}

std::string check_as_json(const CheckReport& report) {
  return json::answer("check", {{"record", report.record.string()},
                                {"found", json::list(report.found, json::fault)},
                                {"photographs", report.photographs}});
}

/// Errors are what it finds, and are told with how many there are.
base::Result<forms::Outcome> run(const CheckRequest& request, forms::Setting& setting) {
  CheckReport report = check(setting.library, request.path);
  const auto errors = static_cast<std::size_t>(
      std::count_if(report.found.begin(), report.found.end(),
                    [](const Diagnostic& one) { return one.severity == base::Severity::error; }));
  const std::string warnings = counted(report.found.size() - errors, "warning");
  forms::Outcome outcome;
  if (request.json) {
    outcome.text = check_as_json(report);
  } else if (errors > 0) {
    outcome.note =
        fmt::format("{}: {}, {}\n", report.record.string(), counted(errors, "error"), warnings);
  } else {
    outcome.text = fmt::format("{}: in order, {} seen, {}\n", report.record.string(),
                               counted(report.photographs, "photograph"), warnings);
  }
  outcome.doubts = std::move(report.found);
  return outcome;
}

/// Each cleaning that the care table speaks against and for which no reason was written.
Diagnostics unanswered_cleanings(library::Library& library,
                                 const recordfile::LoadedRecord& loaded) {
  const auto& visits = loaded.record.visits;
  const bool all_answered = std::all_of(visits.begin(), visits.end(), [](const auto& visit) {
    return std::all_of(visit.cleaning.begin(), visit.cleaning.end(),
                       [](const auto& one) { return !one.against_warning.empty(); });
  });
  if (all_answered) return {};
  const auto assessment = assessed(library, loaded.record);
  if (!assessment) return assessment.faults();
  Diagnostics found;
  for (std::size_t v = 0; v < visits.size(); ++v) {
    const record::Visit& visit = visits[v];
    const auto& judged = assessment->visits[v].care.cleanings;
    for (std::size_t i = 0; i < judged.size() && i < visit.cleaning.size(); ++i) {
      if (!visit.cleaning[i].against_warning.empty()) continue;
      const auto worst =
          std::find_if(judged[i].begin(), judged[i].end(), [](const assess::care::Judged& one) {
            return one.verdict >= knowledge::CareVerdict::harms && one.row != nullptr;
          });
      if (worst == judged[i].end()) continue;
      found.push_back(base::warning_at(
          loaded.where(visit.id.text, "cleaning", i),
          fmt::format("the care table speaks against this ({}), and no reason was written: {}",
                      worst->method->name, worst->row->reason),
          "write the reason into <against-warning>, or correct the method", "care"));
    }
  }
  return found;
}

}  // namespace

CheckReport check(library::Library& library, const fs::path& path) {
  CheckReport report;
  report.record = recordfile::record_path(library.files(), path);
  const auto loaded = library.record(path);
  if (!loaded) {
    report.found = loaded.faults();
    return report;
  }
  report.found = loaded->warnings;
  const Diagnostics unanswered = unanswered_cleanings(library, *loaded);
  report.found.insert(report.found.end(), unanswered.begin(), unanswered.end());
  for (const record::Photo& photo : loaded->record.photos) {
    Diagnostics found = check_photograph(library.files(), loaded->folder, photo);
    if (!base::has_error(found) && !photo.withheld) ++report.photographs;
    for (Diagnostic& one : found) {
      one.where = loaded->where(photo.id.text);
      report.found.push_back(std::move(one));
    }
  }
  return report;
}

forms::Job check_job() {
  return forms::job_of(form, run);
}

}  // namespace winchbook::answers
