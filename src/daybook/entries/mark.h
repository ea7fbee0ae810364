#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "daybook/entry.h"
#include "record/pieces.h"

namespace winchbook::daybook {

/// An end of what a mark says: "1940 hard", "1946 soft"; soft when it does not say.
struct TypedEnd {
  record::MarkEnd end;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, TypedEnd& into);

/// A mark on a piece.
struct MarkRequest : Entry {
  std::string id;    ///< empty: made from the part
  std::string text;  ///< as read; lines parted by line breaks, [ ] round what is guessed
  std::string part;
  std::string where;
  record::MarkMethod method = record::MarkMethod::not_determined;
  record::MarkOf whose = record::MarkOf::not_determined;
  record::MarkState state = record::MarkState::not_determined;
  record::Legibility legibility = record::Legibility::not_determined;
  std::string person;  ///< whom it names
  std::optional<base::EdtfDate> claims;
  std::optional<base::EdtfDate> cut;
  std::optional<TypedEnd> not_before;
  std::optional<TypedEnd> not_after;
  std::string because;
  std::string source;
  std::string note;
  std::vector<std::string> photos;
  std::string salt;     ///< 32 hexadecimal digits drawn at random
  bool serial = false;  ///< it is the reel's serial number
  bool none = false;    ///< looked for marks (with `serial`, for a number) and found none
  std::string by;       ///< who looked, as named
};

/// Adds the mark; with `serial`, the reel's serial number is set to it too.
[[nodiscard]] base::Result<Said> mark(const MarkRequest& request, Draft& draft);

[[nodiscard]] forms::Job mark_job();

}  // namespace winchbook::daybook
