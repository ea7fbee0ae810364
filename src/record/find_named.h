#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "record/record.h"

/// Finding what somebody named on the command line. An id, the beginning of one, a name, or its
/// first words do; a number behind the words takes the so-many-th of several: "drag washer 2".
/// Errors (rule "command-name"): nothing is called so, or several things are; these are listed.
namespace winchbook::record {

[[nodiscard]] base::Result<const record::Piece*> find_piece(const record::Record& record,
                                                            std::string_view said);
/// A part by the name of its piece, or by that of a place of the list about which nothing was
/// entered and whose piece is not in the record yet.
struct NamedPart {
  const record::Piece* piece = nullptr;
  const record::Place* place = nullptr;  ///< only when there is no piece
};
[[nodiscard]] base::Result<NamedPart> find_part(const record::Record& record,
                                                std::string_view said);
[[nodiscard]] base::Result<const record::Place*> find_place(const record::Record& record,
                                                            std::string_view said);
[[nodiscard]] base::Result<const record::Person*> find_person(const record::Record& record,
                                                              std::string_view said);
[[nodiscard]] base::Result<const record::Photo*> find_photo(const record::Record& record,
                                                            std::string_view said);
[[nodiscard]] base::Result<const record::Marking*> find_marking(const record::Record& record,
                                                                std::string_view said);
[[nodiscard]] base::Result<const record::Donor*> find_donor(const record::Record& record,
                                                            std::string_view said);
/// Among the agreements of all visits.
[[nodiscard]] base::Result<const record::Agreement*> find_agreement(const record::Record& record,
                                                                    std::string_view said);

/// A piece and how many of it: "tail screws: 4"; all of it when no number is given.
struct CountedPiece {
  const record::Piece* piece = nullptr;
  int count = 1;
};
[[nodiscard]] base::Result<std::vector<CountedPiece>> find_counted(
    const record::Record& record, const std::vector<std::string>& said);

/// Whether each wanted word begins a word of the text, in this order, whatever their case.
[[nodiscard]] bool holds_words(std::string_view text, std::string_view wanted);

/// "Pinion", "Pinion and Spool", "Pinion, Spool and 3 more".
[[nodiscard]] std::string listed(const std::vector<const record::Piece*>& pieces);

}  // namespace winchbook::record
