#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <sstream>
#include <utility>

#include "knowledge/bound_file.h"
#include "knowledge/marks.h"
#include "knowledge/valid_file.h"
#include "tabular/rows.h"

namespace winchbook::knowledge {
namespace {

constexpr std::uintmax_t kTableLimit = std::uintmax_t{1} << 20U;

std::optional<std::int64_t> whole(std::string_view text) {
  std::int64_t value = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  const bool good = read.ec == std::errc() && read.ptr == text.data() + text.size() && value > 0;
  return good ? std::optional(value) : std::nullopt;
}

/// Reads a table of first numbers.
class NumberTable {
 public:
  NumberTable(std::string name, std::string bytes)
      : name_(std::move(name)), in_(std::move(bytes)), rows_(in_, name_) {}

  base::Result<std::vector<FirstNumber>> read() {
    const auto first = rows_.next();
    if (!first) return first.faults();
    if (!*first) return fault(1, "the table is empty");
    const std::vector<std::string> needed{"year", "first", "known", "source"};
    std::vector<std::string> known = needed;
    known.insert(known.end(), {"also", "settled", "note"});
    const auto header = tabular::Header::read(**first, name_, needed, known);
    if (!header) return header.faults();
    std::vector<FirstNumber> table;
    for (;;) {
      const auto row = rows_.next();
      if (!row) return row.faults();
      if (!*row) break;
      auto entry = entry_of(*header, **row);
      if (!entry) return entry.faults();
      if (!table.empty() &&
          (entry->year <= table.back().year || entry->first <= table.back().first)) {
        return fault((*row)->line,
                     fmt::format("{} begins with {} where {} began with {}", entry->year,
                                 entry->first, table.back().year, table.back().first));
      }
      table.push_back(std::move(entry).value());
    }
    if (table.size() < 2) return fault(1, "a table of first numbers has two years at least");
    return table;
  }

 private:
  base::Diagnostic fault(int line, std::string message) const {
    return base::error_at({name_, line, 1}, std::move(message),
                          "years and first numbers rise from row to row", "row-order");
  }

  base::Result<FirstNumber> entry_of(const tabular::Header& header, const tabular::Row& row) const {
    const auto year = whole(header.field(row, "year"));
    const auto first = whole(header.field(row, "first"));
    const auto known = base::value_of<Known>(header.field(row, "known"));
    const std::string_view also = header.field(row, "also");
    if (!year || !first || !known || (!also.empty() && !whole(also))) {
      return fault(row.line, "expected a year, its first number, and read or recalled");
    }
    FirstNumber entry;
    entry.year = *year;
    entry.first = *first;
    entry.known = *known;
    entry.source = header.field(row, "source");
    entry.also = whole(also);
    entry.settled = header.field(row, "settled") != "no";
    entry.note = header.field(row, "note");
    return entry;
  }

  std::string name_;
  std::istringstream in_;
  tabular::RowReader rows_;
};

IssueDay issue_day_from(pugi::xml_node node) {
  IssueDay issue;
  const auto day = [&](const char* name) {
    const auto read = base::parse_day(node.attribute(name).value());
    return read ? *read : base::Day{};
  };
  issue.since = day("since");
  issue.opened = day("opened");
  issue.weekday = node.attribute("weekday").as_int();
  issue.basis = folded(node);
  issue.source = node.attribute("source").value();
  return issue;
}

void add(base::Diagnostics& to, const base::Diagnostics& more) {
  to.insert(to.end(), more.begin(), more.end());
}

}  // namespace

base::Result<Marks> load_marks(const Source& source) {
  const std::filesystem::path folder = source.shared("marks");
  const auto document = read_valid(source, folder / "marks.xml", "marks");
  if (!document) return document.faults();
  Marks marks;
  base::Diagnostics faults;
  const pugi::xml_node root = document->root();
  marks.us_issue = issue_day_from(root.child("issue-day"));
  for (const pugi::xml_node node : root.children("series")) {
    const std::string table = node.attribute("table").value();
    auto bytes = source.files().read(folder / table, kTableLimit);
    if (!bytes) return bytes.faults();
    auto rows = NumberTable(table, std::move(bytes).value()).read();
    if (!rows) {
      add(faults, rows.faults());
      continue;
    }
    marks.series.push_back({node.attribute("word").value(), folded(node.child("name")),
                            forms_from(node), node.attribute("term").as_int(),
                            folded(node.child("basis")), folded(node.child("source")),
                            std::move(rows).value()});
  }
  for (const pugi::xml_node node : root.children("mark")) {
    marks.marks.push_back({node.attribute("word").value(),
                           listed(node.attribute("sort"), MarkSort::mark),
                           folded(node.child("name")), forms_from(node),
                           node.attribute("where").value(), bound_from(*document, node, faults)});
  }
  if (!faults.empty()) return faults;
  return marks;
}

}  // namespace winchbook::knowledge
