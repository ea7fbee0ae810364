#include "tabular/rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/words_of_text.h"

namespace winchbook::tabular {
namespace {

constexpr std::size_t kMostRowBytes = std::size_t{1} << 20U;
constexpr int kEnd = std::char_traits<char>::eof();

/// How many bytes a UTF-8 character of this first byte has; 0 when none begins so.
std::size_t length_of(unsigned char lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead < 0xE0) return 2;
  if (lead >= 0xE0 && lead < 0xF0) return 3;
  if (lead >= 0xF0 && lead < 0xF5) return 4;
  return 0;
}

bool is_utf8(std::string_view text) {
  for (std::size_t at = 0; at < text.size();) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
    const std::size_t length = length_of(byte(at));
    if (length == 0 || at + length > text.size()) return false;
    for (std::size_t i = 1; i < length; ++i) {
      if ((byte(at + i) & 0xC0U) != 0x80U) return false;
    }
    const bool overlong =
        (byte(at) == 0xE0 && byte(at + 1) < 0xA0) || (byte(at) == 0xF0 && byte(at + 1) < 0x90);
    const bool beyond =
        (byte(at) == 0xED && byte(at + 1) > 0x9F) || (byte(at) == 0xF4 && byte(at + 1) > 0x8F);
    if (overlong || beyond) return false;
    at += length;
  }
  return true;
}

}  // namespace

int RowReader::take() {
  const int c = in_.get();
  if (c == '\n') ++line_;
  if (c != kEnd) ++row_bytes_;
  return c;
}

int RowReader::peek() {
  return in_.peek();
}

base::Diagnostic RowReader::fault(std::string message, std::string hint, std::string rule) {
  broken_ = true;
  return base::error_at({name_, row_line_, 0}, std::move(message), std::move(hint),
                        std::move(rule));
}

base::Diagnostics RowReader::read_quoted(Row& row) {
  for (;;) {
    const int c = take();
    if (c == kEnd) {
      return {fault("a quote is opened in this row and never closed",
                    "close it; a quote inside a quoted field is written twice", "table-quote")};
    }
    if (row_bytes_ > kMostRowBytes) {
      return {fault("this row is longer than a mebibyte; a quote may never be closed",
                    "close the quote, or cut the row", "table-quote")};
    }
    if (c != '"') {
      row.fields.back() += static_cast<char>(c);
      continue;
    }
    if (peek() == '"') {
      row.fields.back() += static_cast<char>(take());
      continue;
    }
    const int after = peek();
    if (after == kEnd || after == ',' || after == '\n' || after == '\r') return {};
    return {fault("there is text behind a closing quote",
                  "put the whole field in quotes, and write a quote inside it twice",
                  "table-quote")};
  }
}

base::Result<std::optional<Row>> RowReader::next() {
  if (broken_) return fault("the table could not be read further", {}, "table-quote");
  if (!begun_) {
    begun_ = true;
    for (const int mark : {0xEF, 0xBB, 0xBF}) {
      if (peek() != mark) break;
      static_cast<void>(in_.get());
    }
  }
  while (peek() == '\n' || peek() == '\r')
    static_cast<void>(take());
  if (peek() == kEnd) return std::optional<Row>();
  return read();
}

base::Result<std::optional<Row>> RowReader::read() {
  row_line_ = line_;
  row_bytes_ = 0;
  Row row{line_, {std::string()}};
  bool quoted = false;
  for (;;) {
    const int c = take();
    if (row_bytes_ > kMostRowBytes) {
      return fault("this row is longer than a mebibyte", "cut it into rows", "table-row");
    }
    if (c == '"' && row.fields.back().empty() && !quoted) {
      quoted = true;
      if (auto faults = read_quoted(row); !faults.empty()) return faults;
    } else if (c == ',') {
      row.fields.emplace_back();
      quoted = false;
    } else if (c == '\n' || c == kEnd || (c == '\r' && (peek() == '\n' || peek() == kEnd))) {
      if (c == '\r') static_cast<void>(take());
      break;
    } else if (c == '"') {
      return fault("there is a quote inside a field that is not quoted",
                   "put the whole field in quotes, and write a quote inside it twice: \"7/8\"\"\"",
                   "table-quote");
    } else if (c == '\0' || c == '\r') {
      return fault("there is a control character in this row", "save the table as plain CSV",
                   "table-bytes");
    } else {
      row.fields.back() += static_cast<char>(c);
    }
  }
  if (!std::all_of(row.fields.begin(), row.fields.end(), is_utf8)) {
    return fault("this row is not UTF-8", "save the table as UTF-8", "table-bytes");
  }
  return std::optional<Row>(std::move(row));
}

base::Result<Header> Header::read(const Row& row, std::string_view file,
                                  const std::vector<std::string>& required,
                                  const std::vector<std::string>& known) {
  Header header;
  base::Diagnostics faults;
  const base::Location where{std::string(file), row.line, 0};
  if (row.fields.size() == 1 && row.fields[0].find_first_of(";\t") != std::string::npos) {
    return base::error_at(where, "the columns are not kept apart by commas",
                          "save the table as CSV with commas", "table-columns");
  }
  for (const std::string& field : row.fields) {
    std::string name = base::in_small_letters(base::trimmed(field));
    if (std::find(known.begin(), known.end(), name) == known.end()) {
      faults.push_back(base::error_at(where, fmt::format("there is no column \"{}\"", name),
                                      fmt::format("the columns are {}", fmt::join(known, ", ")),
                                      "table-columns"));
    } else if (std::find(header.names_.begin(), header.names_.end(), name) != header.names_.end()) {
      faults.push_back(base::error_at(where, fmt::format("column \"{}\" stands twice", name),
                                      "keep one of them", "table-columns"));
    }
    header.names_.push_back(std::move(name));
  }
  for (const std::string& name : required) {
    if (std::find(header.names_.begin(), header.names_.end(), name) == header.names_.end()) {
      faults.push_back(
          base::error_at(where, fmt::format("column \"{}\" is missing", name),
                         fmt::format("the first row names the columns: {}", fmt::join(known, ", ")),
                         "table-columns"));
    }
  }
  if (!faults.empty()) return faults;
  return header;
}

std::string_view Header::field(const Row& row, std::string_view column) const {
  const auto found = std::find(names_.begin(), names_.end(), column);
  const auto at = static_cast<std::size_t>(found - names_.begin());
  if (at >= row.fields.size()) return {};
  return base::trimmed(row.fields[at]);
}

void each_row(std::istream& in, const std::string& name, const Table& table,
              const std::function<void(const Header&, const Row&)>& take,
              const std::function<void(const base::Diagnostics&)>& tell) {
  RowReader rows(in, name);
  const auto first = rows.next();
  if (!first) return tell(first.faults());
  if (!*first) {
    return tell({base::error_at({name, 1, 0}, fmt::format("the {} is empty", table.what),
                                fmt::format("its first row names the columns: {}", table.columns),
                                "table-columns")});
  }
  std::vector<std::string> known;
  for (const std::string_view column : base::parts_of(table.columns, ','))
    known.emplace_back(base::trimmed(column));
  const auto header = Header::read(**first, name, table.required, known);
  if (!header) return tell(header.faults());
  for (;;) {
    const auto row = rows.next();
    if (!row) return tell(row.faults());
    if (!*row) return;
    if (table.whole_rows && (*row)->fields.size() != header->columns()) {
      tell({base::error_at({name, (*row)->line, 0},
                           fmt::format("this row has {} fields, the first row names {}",
                                       (*row)->fields.size(), header->columns()),
                           "put a field with a comma or a quote in quotes", "table-row")});
    } else {
      take(*header, **row);
    }
  }
}

}  // namespace winchbook::tabular
