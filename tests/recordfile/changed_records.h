#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include "recordfile/change.h"
#include "recordfile/demo_records.h"
#include "recordfile/write_record.h"

inline const winchbook::recordfile::ElementOrder& record_order() {
  static const auto kOrder = [] {
    const auto schema = winchbook::xml::Document::glance(
        "record-1.xsd", file_bytes(WINCHBOOK_SOURCE_DIR "/schemas/record-1.xsd"));
    REQUIRE(schema);
    return winchbook::recordfile::ElementOrder(*schema);
  }();
  return kOrder;
}

/// The file after its values were changed, whatever they are then.
template <class Change>
std::string bytes_after(const winchbook::recordfile::LoadedRecord& before, const Change& change) {
  winchbook::record::Record after = before.record;
  change(after);
  const auto splices = winchbook::recordfile::changes(before, after, record_order());
  REQUIRE(splices);
  return winchbook::xml::spliced(before.bytes, *splices);
}

/// The same; the file, read again, says just what was changed.
template <class Change> std::string changed(const std::string& bytes, const Change& change) {
  const auto before = read_of(bytes);
  winchbook::record::Record after = before.record;
  change(after);
  std::string now = bytes_after(before, change);
  CAPTURE(now);
  CHECK(winchbook::recordfile::write_new(values_of(now)) ==
        winchbook::recordfile::write_new(after));
  return now;
}

inline std::vector<std::string> lines_of(const std::string& bytes) {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < bytes.size();) {
    const std::size_t end = std::min(bytes.find('\n', at), bytes.size() - 1);
    lines.push_back(bytes.substr(at, end + 1 - at));
    at = end + 1;
  }
  return lines;
}

/// The lines that went ("-") and came ("+"), by the longest common sequence.
inline std::string line_difference(const std::string& before, const std::string& after) {
  const auto old = lines_of(before);
  const auto now = lines_of(after);
  std::vector<std::vector<std::size_t>> common(old.size() + 1,
                                               std::vector<std::size_t>(now.size() + 1, 0));
  for (std::size_t i = old.size(); i-- > 0;) {
    for (std::size_t j = now.size(); j-- > 0;) {
      common[i][j] = old[i] == now[j] ? common[i + 1][j + 1] + 1
                                      : std::max(common[i + 1][j], common[i][j + 1]);
    }
  }
  std::string told;
  for (std::size_t i = 0, j = 0; i < old.size() || j < now.size();) {
    if (i < old.size() && j < now.size() && old[i] == now[j]) {
      ++i;
      ++j;
    } else if (i < old.size() && (j == now.size() || common[i + 1][j] >= common[i][j + 1])) {
      told += "-" + old[i++];
    } else {
      told += "+" + now[j++];
    }
  }
  return told;
}

/// What a change of values does to the lines of the file.
template <class Change> std::string difference(const std::string& bytes, const Change& change) {
  return line_difference(bytes, changed(bytes, change));
}
