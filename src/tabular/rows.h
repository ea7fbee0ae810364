#pragma once

#include <cstdint>
#include <functional>
#include <istream>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"

/// Tables as people keep them: CSV (RFC 4180) read row by row in bounded memory.
namespace winchbook::tabular {

/// One row and the line of the file in which it begins, from 1.
struct Row {
  int line = 0;
  std::vector<std::string> fields;
};

/// Reads rows of comma-separated values as RFC 4180 writes them: CRLF or LF ends a row, a field in
/// quotes may hold commas, line ends and doubled quotes. A byte-order mark is passed over, an empty
/// line is no row. Nothing else is bent: a quote inside an unquoted field, text behind a closing
/// quote, a quote that is never closed, a NUL or bytes that are not UTF-8 are errors with their
/// line. Never holds more than one row; a row of over a mebibyte is an error.
class RowReader {
 public:
  /// `name` is the file's name in messages.
  RowReader(std::istream& in, std::string name) : in_(in), name_(std::move(name)) {}

  /// The next row, nothing at the end, or what is wrong. After an error only errors follow.
  [[nodiscard]] base::Result<std::optional<Row>> next();

 private:
  [[nodiscard]] base::Diagnostic fault(std::string message, std::string hint, std::string rule);
  [[nodiscard]] base::Result<std::optional<Row>> read();
  [[nodiscard]] base::Diagnostics read_quoted(Row& row);
  int take();
  int peek();

  std::istream& in_;
  std::string name_;
  int line_ = 1;
  int row_line_ = 1;
  std::size_t row_bytes_ = 0;
  bool begun_ = false;
  bool broken_ = false;
};

/// The first row: the names of the columns and where each stands.
class Header {
 public:
  /// Error when a required column is missing, a name stands twice, or one is not in `known`; names
  /// are compared without regard to case and spaces around them.
  [[nodiscard]] static base::Result<Header> read(const Row& row, std::string_view file,
                                                 const std::vector<std::string>& required,
                                                 const std::vector<std::string>& known);

  /// The field of that column, trimmed of spaces; empty when the column is not there.
  [[nodiscard]] std::string_view field(const Row& row, std::string_view column) const;
  [[nodiscard]] std::size_t columns() const { return names_.size(); }

 private:
  std::vector<std::string> names_;
};

/// A table, and the columns it may have.
struct Table {
  std::string_view what;  ///< as messages call it: "stock file"
  std::vector<std::string> required;
  std::string_view columns;  ///< all it may have, with commas, as they are usually written
  bool whole_rows = true;    ///< a row has as many fields as the first one
};

/// Walks the rows below the header of a table called `name` in messages. `tell` gets what is wrong
/// with the table itself, row by row; a row with the wrong number of fields is not taken.
void each_row(std::istream& in, const std::string& name, const Table& table,
              const std::function<void(const Header&, const Row&)>& take,
              const std::function<void(const base::Diagnostics&)>& tell);

}  // namespace winchbook::tabular
